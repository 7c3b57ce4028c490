package wire

import (
	"fmt"

	"lode/stdlib/wire/internal/kernel"
	"lode/stdlib/wire/internal/tables"
	"lode/units"
)

// Diameters is a diameter with the limits that a standard allows.
type Diameters struct {
	// Min is the smallest diameter allowed.
	Min units.Length
	// Nominal is the diameter aimed at.
	Nominal units.Length
	// Max is the largest diameter allowed.
	Max units.Length
	// Estimate is true where the limits are not those of a standard.
	Estimate bool
}

// String writes the nominal diameter with its limits.
func (d Diameters) String() string {
	return spanText(d.Nominal, d.Min, d.Max, d.Estimate)
}

// Resistances is a resistance per length with the limits that follow from those of the
// conductor's diameter.
type Resistances struct {
	// Min is the resistance per length of the thickest conductor allowed.
	Min units.ResistancePerLength
	// Nominal is that of the nominal diameter.
	Nominal units.ResistancePerLength
	// Max is that of the thinnest conductor allowed.
	Max units.ResistancePerLength
	// Estimate is true where the limits are not those of a standard.
	Estimate bool
}

// String writes the nominal resistance with its limits.
func (r Resistances) String() string {
	return spanText(r.Nominal, r.Min, r.Max, r.Estimate)
}

func spanText(nominal, low, high fmt.Stringer, estimate bool) string {
	text := fmt.Sprintf("%v (%v to %v", nominal, low, high)
	if estimate {
		text += ", estimate"
	}
	return text + ")"
}

// BareLimits returns the diameter of the conductor with its limits.
//
// Source: NEMA MW 1000 (AWG) and IEC 60317 (metric from 0.071 mm on), as read through an open data set. Finer metric sizes:
// the ±10 % on resistance that a data page gives for 0.020 mm. SWG: the tolerance of the next larger metric size, or
// 1 % above 1 mm.
//
// Accuracy: where Estimate is true the limits are not those of a standard. A measured wire has no limits but its own
// diameter.
//
// Example: wire.AWG(42).BareLimits()
func (w Wire) BareLimits() Diameters { return diameters(w.bare, w.loose) }

// OverallLimits returns the diameter over the enamel with its limits.
//
// Source: NEMA MW 1000 (AWG) and IEC 60317 (metric), as read through an open data set.
//
// Accuracy: where Estimate is true, as for SWG, the enamel is that of the next larger metric size.
//
// Example: wire.AWG(42).OverallLimits()
func (w Wire) OverallLimits() Diameters {
	return diameters(w.overall, w.guessed || w.coat == "bare" && w.loose)
}

func diameters(l tables.Limits, estimate bool) Diameters {
	return Diameters{units.Length(l.Min), units.Length(l.Nominal), units.Length(l.Max), estimate}
}

// Enamel returns the nominal thickness of the enamel, half of what it adds to the diameter.
//
// Source: the same tables as Overall.
//
// Accuracy: the allowed range is wide, often a factor of two; see OverallLimits.
func (w Wire) Enamel() units.Length { return (w.Overall() - w.Bare()) / 2 }

// ResistanceLimits returns the resistance per length at 20 °C with the limits that follow from
// those of the conductor.
//
// Source: IEC 60028 (1925) for the resistivity, the limits of BareLimits for the diameter. A magnet-wire data
// sheet prints its limits by the same rule.
//
// Accuracy: the limits bound wire within its standard; stretching while winding adds to them.
//
// Example: wire.AWG(42).ResistanceLimits()
func (w Wire) ResistanceLimits() Resistances { return w.resistances(1) }

// ResistanceLimitsAt returns the same at another temperature.
//
// Source: IEC 60028 (1925): R = R20·(1 + α·(T - 20 °C)).
//
// Valid: the temperature range of the material, for copper -60 to 250 °C.
//
// Accuracy: as ResistancePerLengthAt.
//
// Example: wire.AWG(42).ResistanceLimitsAt(units.Celsius(35))
func (w Wire) ResistanceLimitsAt(temperature units.Temperature) (Resistances, error) {
	factor, err := w.warmth(temperature)
	if err != nil {
		return Resistances{}, err
	}
	return w.resistances(factor), nil
}

func (w Wire) resistances(factor float64) Resistances {
	at := func(d float64) units.ResistancePerLength {
		return units.ResistancePerLength(kernel.ResistancePerLength(float64(w.material.Resistivity), d) * factor)
	}
	return Resistances{at(w.bare.Max), at(w.bare.Nominal), at(w.bare.Min), w.loose}
}
