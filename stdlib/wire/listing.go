package wire

import (
	"math"

	"lode/stdlib/wire/internal/tables"
	"lode/units"
	"lode/units/frame"
)

// Table lays out a whole table of wire sizes by the name of its system, such as "AWG": bare
// and overall diameters with their limits, and the nominal resistance at 20 °C.
//
// Source: TableSource says what was seen of the standard that the title names.
//
// Example: wire.Table("AWG")
func Table(system string) (frame.Frame, error) {
	gauge, err := gaugeNamed(system)
	if err != nil {
		return frame.Frame{}, err
	}
	sizes := frame.Column{Name: "Size"}
	resistance := make([]float64, len(gauge.Sizes))
	bare := make([]tables.Limits, len(gauge.Sizes))
	overall := make([][]tables.Limits, len(gauge.Builds))
	for i, row := range gauge.Sizes {
		w := fromRow(gauge, row, 0)
		sizes.Texts = append(sizes.Texts, w.label)
		bare[i], resistance[i] = w.bare, w.ResistancePerLength().SI()
		for build := range gauge.Builds {
			overall[build] = append(overall[build], overallOrNone(fromRow(gauge, row, build)))
		}
	}
	columns := append([]frame.Column{sizes}, limitColumns("Bare", bare)...)
	for build, name := range gauge.Builds {
		columns = append(columns, limitColumns("Overall, "+name, overall[build])...)
	}
	columns = append(columns, frame.Of("Resistance at 20 °C", units.ResistancePerLength(0).Kind(), resistance))
	return frame.Frame{Title: gauge.Title, Columns: columns}, nil
}

// TableSource says where a table of wire sizes comes from, what of it was seen and how its
// figures are rounded.
//
// Example: wire.TableSource("SWG")
func TableSource(system string) (string, error) {
	gauge, err := gaugeNamed(system)
	if err != nil {
		return "", err
	}
	return gauge.Source + " Note: " + gauge.Note, nil
}

// overallOrNone leaves a gap where a build is not in the table.
func overallOrNone(w Wire) tables.Limits {
	if w.coat == "bare" {
		return tables.Limits{Min: math.NaN(), Nominal: math.NaN(), Max: math.NaN()}
	}
	return w.overall
}

func limitColumns(name string, limits []tables.Limits) []frame.Column {
	low, nominal, high := make([]float64, len(limits)), make([]float64, len(limits)), make([]float64, len(limits))
	for i, l := range limits {
		low[i], nominal[i], high[i] = l.Min, l.Nominal, l.Max
	}
	kind := units.Length(0).Kind()
	return []frame.Column{frame.Of(name+", least", kind, low), frame.Of(name, kind, nominal), frame.Of(name+", most", kind, high)}
}
