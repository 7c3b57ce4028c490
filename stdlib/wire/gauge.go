package wire

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"lode/stdlib/wire/internal/kernel"
	"lode/stdlib/wire/internal/tables"
	"lode/units"
)

// AWG returns copper wire of an American wire gauge with single-build enamel. Half sizes such
// as 42.5 are in the table.
//
// Its bare diameter is the nominal one of the magnet-wire standard, rounded to 0.1 mil (to
// 0.01 mil from gauge 45 on), and not the unrounded one of the gauge formula, since wire is
// drawn and sold to the rounded size. The two differ by up to 1.4 %, the resistances by up to
// 2.9 % (gauge 40). AWGDiameter gives the unrounded one. Gauges 45 and finer are those of 1961 and
// later; older lists call 1.8 mil gauge 45.
//
// Source: NEMA MW 1000 (read through an open data set) for diameters and enamel from gauge 24 on; a magnet-wire data
// sheet for the bare sizes 18 to 23; ASTM B258 for the gauge.
//
// Valid: gauge 18 to 46, and half sizes from 24.5 to 45.5.
//
// Accuracy: nominal sizes; see BareLimits and OverallLimits.
//
// Example: wire.AWG(42)
func AWG(gauge float64) (Wire, error) { return sized("AWG gauge", "AWG", gauge) }

// SWG returns copper wire of a British standard wire gauge. That gauge says nothing of enamel, so
// the diameter over a grade 1 enamel is an estimate from the metric table: the increase of the
// next larger metric size. Sizes 1 to 19, thicker than that table, come bare.
//
// Source: BS 3737:1964 (withdrawn), read through a public table. Enamel: IEC 60317 by its rule for intermediate
// sizes, recalled.
//
// Valid: gauge 1 to 50, whole numbers.
//
// Accuracy: the overall diameter is an estimate; grade 1 of the metric sizes itself varies by 5 %. Measure your
// own wire where it matters.
//
// Example: wire.SWG(46)
func SWG(gauge float64) (Wire, error) { return sized("SWG gauge", "SWG", gauge) }

// Metric returns enamelled copper wire of a metric size, named by its nominal conductor
// diameter, with grade 1 enamel.
//
// Source: IEC 60317 (read through an open data set); above 0.5 mm the least increase by enamel is recalled.
//
// Valid: the sizes of the standard between 0.01 mm and 1 mm. For a size between them use Measured; the error for one says how.
//
// Accuracy: nominal sizes; see BareLimits and OverallLimits.
//
// Example: wire.Metric(0.063 * mm)
func Metric(diameter units.Length) (Wire, error) {
	return sized("conductor diameter", "metric", float64(diameter)*1e3)
}

// Sized returns wire of any table by the name of its system, such as "AWG", "SWG" or "metric"
// (in millimetres), with the thin enamel build. Systems lists the names.
//
// Source: each table names its own; see Table.
//
// Example: wire.Sized("SWG", 46)
func Sized(system string, size float64) (Wire, error) {
	return sized(system+" size", system, size)
}

// AWGDiameter returns the unrounded bare diameter of an American wire gauge, whole or not, from
// the formula that defines the gauge. Gauge 0000 is -3. AWG uses the rounded nominal diameter instead.
//
// Source: ASTM B258; NBS Handbook 100 (1966): 0.005 inch · 92^((36-n)/39).
//
// Valid: gauge -3 (called 0000) to 56.
//
// Accuracy: exact by definition; wire sold under the gauge differs by up to 1.4 % from rounding and more from
// drawing.
//
// Example: wire.AWGDiameter(42)
func AWGDiameter(gauge float64) (units.Length, error) {
	if !finite(gauge) || gauge < -3 || gauge > 56 {
		return 0, refuse("AWG gauge: out of range", units.Digits(gauge, 6), "-3 (called 0000) to 56", "")
	}
	return units.Length(kernel.AWGDiameter(gauge)), nil
}

// Systems names every table of wire sizes.
func Systems() []string {
	var names []string
	for _, gauge := range tables.Gauges() {
		names = append(names, gauge.System)
	}
	return names
}

func sized(subject, system string, size float64) (Wire, error) {
	gauge, err := gaugeNamed(system)
	if err != nil {
		return Wire{}, err
	}
	row, ok := find(gauge, size)
	if !ok {
		return Wire{}, unknownSize(subject, gauge, size)
	}
	return fromRow(gauge, row, 0), nil
}

func gaugeNamed(system string) (tables.Gauge, error) {
	for _, gauge := range tables.Gauges() {
		if strings.EqualFold(gauge.System, strings.TrimSpace(system)) {
			return gauge, nil
		}
	}
	return tables.Gauge{}, refuse("system: unknown table of wire sizes", strconv.Quote(system), "one of "+strings.Join(Systems(), ", "), "")
}

// find looks a size up; a relative difference of a billionth is a rounding of the unit and
// not another size.
func find(gauge tables.Gauge, size float64) (tables.Size, bool) {
	for _, row := range gauge.Sizes {
		if math.Abs(row.Size-size) <= 1e-9*row.Size {
			return row, true
		}
	}
	return tables.Size{}, false
}

func unknownSize(subject string, gauge tables.Gauge, size float64) error {
	first, last := gauge.Sizes[0], gauge.Sizes[len(gauge.Sizes)-1]
	want := "a size of its table, " + sizeText(gauge.System, first.Size) + " to " + sizeText(gauge.System, last.Size)
	hint := ""
	if finite(size) && size > 0 {
		hint = neighbours(gauge, size) + "; " + measuredInstead(gauge, size)
	}
	return refuse(subject+": not in the table", sizeText(gauge.System, size), want, hint)
}

// measuredInstead says how to make a wire of a size that is missing. A metric one gets the enamel of the next larger size, as the
// standard has it for intermediate sizes (recalled, see lenderSize).
func measuredInstead(gauge tables.Gauge, size float64) string {
	if gauge.System == "metric" && size >= gauge.Sizes[0].Size {
		for _, row := range gauge.Sizes {
			if row.Size > size {
				overall := size + 1e3*(row.Overall[0].Nominal-row.Bare.Nominal)
				return fmt.Sprintf("wire.Measured(%s*mm, %s*mm) has the enamel of the next larger size", units.Digits(size, 6), units.Digits(overall, 4))
			}
		}
	}
	return "wire.Measured takes any diameters"
}

// neighbours names the sizes of a table between which a size lies, or the one at the end that it lies beyond.
func neighbours(gauge tables.Gauge, size float64) string {
	var below, above *tables.Size
	for _, row := range gauge.Sizes { // rising
		if row.Size < size {
			below = &row
		} else if above == nil {
			above = &row
		}
	}
	switch {
	case below == nil:
		return "the nearest is " + sizeText(gauge.System, above.Size)
	case above == nil:
		return "the nearest is " + sizeText(gauge.System, below.Size)
	}
	return "it lies between " + sizeText(gauge.System, below.Size) + " and " + sizeText(gauge.System, above.Size)
}

// sizeText writes a size as its wire is called.
func sizeText(system string, size float64) string {
	number := strconv.FormatFloat(size, 'g', 6, 64)
	if system == "metric" {
		return number + " mm"
	}
	return system + " " + number
}

// fromRow makes the wire of a row with the numbered build, or bare where there is none.
func fromRow(gauge tables.Gauge, row tables.Size, build int) Wire {
	w := Wire{label: sizeText(gauge.System, row.Size), system: gauge.System, size: row.Size,
		material: copper()}
	w.bare, w.loose = conductorLimits(gauge, row)
	if build < len(row.Overall) && row.Overall[build].Stated() {
		w.coat, w.overall = gauge.Builds[build], row.Overall[build]
		return w
	}
	if overall, ok := borrowed(gauge, row, build); ok {
		w.coat, w.overall, w.guessed = gauge.Builds[build], overall, true
		return w
	}
	return w.Uncoated()
}
