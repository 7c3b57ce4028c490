package wire

import (
	"lode/units"
	"lode/units/frame"
)

// Figures lays out all that is known of the wire, a row each: diameters and resistance with their limits, mass with the enamel,
// turns per centimetre, breaking load and winding tension. Temperatures that are given get a row of resistance each.
//
// Source: as the methods of Wire that are named like the rows.
//
// Valid: temperatures within the range of the material, for copper -60 to 250 °C.
//
// Accuracy: as those methods.
//
// Example: wire.AWG(42).Figures(35 * degC)
func (w Wire) Figures(temperatures ...units.Temperature) (frame.Frame, error) {
	if err := w.check(); err != nil {
		return frame.Frame{}, err
	}
	rows := []pair{{"Bare diameter", w.BareLimits()}, {"Over the enamel", w.OverallLimits()}, {"Cross-section of the metal", w.Conductor()},
		{"Resistance at 20 °C", w.ResistanceLimits()}}
	for _, t := range temperatures {
		limits, err := w.ResistanceLimitsAt(t)
		if err != nil {
			return frame.Frame{}, err
		}
		rows = append(rows, pair{"Resistance at " + t.String(), limits})
	}
	rows = append(rows, pair{"Mass with enamel", w.MassPerLength()},
		pair{"Turns per centimetre, side by side", units.Digits(float64(w.TurnsPerLength()*units.PerLength(units.Centimetre)), 4)})
	if len(w.breakingLoadLeft()) == 0 {
		rows = append(rows, pair{"Breaking load", w.BreakingLoad()})
	}
	if len(w.windingTensionLeft()) == 0 {
		rows = append(rows, pair{"Winding tension", w.WindingTension()})
	}
	return laidOut(w.Name(), rows), nil
}

// pair is a row of a list of figures.
type pair struct {
	name  string
	value any
}

func laidOut(title string, rows []pair) frame.Frame {
	names, values := frame.Column{Name: "Quantity"}, []any{}
	for _, row := range rows {
		names.Texts, values = append(names.Texts, row.name), append(values, row.value)
	}
	return frame.Frame{Title: title, Columns: []frame.Column{names, frame.Collect("Value", values)}}
}
