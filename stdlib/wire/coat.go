package wire

import (
	"strings"

	"lode/stdlib/wire/internal/tables"
)

// Single returns the same wire with the thin enamel: single build, or grade 1 of a metric
// size.
//
// Source: NEMA MW 1000 (AWG), IEC 60317 (metric), as read through an open data set.
//
// Valid: every AWG and metric size, SWG 20 and finer.
//
// Accuracy: nominal; see OverallLimits.
//
// Example: wire.AWG(42).Single()
func (w Wire) Single() (Wire, error) { return w.build(0) }

// Heavy returns the same wire with the thick enamel: heavy build, or grade 2 of a metric size.
//
// Source: NEMA MW 1000 (AWG), IEC 60317 (metric), as read through an open data set.
//
// Valid: AWG 24 and finer, metric sizes, SWG 20 and finer.
//
// Accuracy: nominal; see OverallLimits.
//
// Example: wire.AWG(42).Heavy()
func (w Wire) Heavy() (Wire, error) { return w.build(1) }

// Grade returns the same wire with another grade of enamel: 1 and 2 are the thin and the thick one, as Single and Heavy
// give them, 3 is the thickest of metric sizes.
//
// Source: IEC 60317 (metric), NEMA MW 1000 (AWG), as read through an open data set.
//
// Valid: 1 to 3; grade 3 for metric sizes from 0.01 mm to 0.5 mm.
//
// Accuracy: nominal; see OverallLimits.
//
// Example: wire.Metric(0.1 * mm).Grade(3)
func (w Wire) Grade(number int) (Wire, error) {
	if number < 1 || number > 3 {
		return Wire{}, refuse("enamel grade: out of range", number, "1 to 3", "")
	}
	return w.build(number - 1)
}

// Uncoated returns the conductor alone, without enamel.
//
// Example: wire.AWG(42).Uncoated()
func (w Wire) Uncoated() Wire {
	w.coat, w.overall, w.guessed = "bare", w.bare, false
	return w
}

// Of returns the same wire made of another metal, such as "aluminium", "silver" or
// "constantan".
//
// Source: see MaterialNamed.
//
// Valid: the names in Materials; MadeOf takes any other metal.
//
// Accuracy: that of the material's figures, about 1 % for resistivities.
//
// Example: wire.AWG(42).Of("silver")
func (w Wire) Of(metal string) (Wire, error) {
	if err := w.check(); err != nil {
		return Wire{}, err
	}
	material, err := MaterialNamed(metal)
	if err != nil {
		return Wire{}, err
	}
	w.material = material
	return w, nil
}

// MadeOf returns the same wire of a metal with figures of your own. Begin with one from
// MaterialNamed and change what differs, or fill in the fields of a Material.
//
// Valid: Name, Resistivity and Density must be given, the strengths only where they are used. Resistivity 1 to
// 10000 nΩ·m, Density 500 to 25000 kg/m³, Coefficient within 0.01 per kelvin.
//
// Example: wire.AWG(42).MadeOf(wire.MaterialNamed("silver"))
func (w Wire) MadeOf(metal Material) (Wire, error) {
	if err := w.check(); err != nil {
		return Wire{}, err
	}
	metal = metal.filled()
	if err := metal.check(); err != nil {
		return Wire{}, err
	}
	w.material = metal
	return w, nil
}

// build returns the wire with another build of its own table.
func (w Wire) build(number int) (Wire, error) {
	if err := w.check(); err != nil {
		return Wire{}, err
	}
	if w.system == "" {
		return Wire{}, refuse("enamel build: not known of a wire without a table", w.Name(), "a wire from AWG, SWG, Metric or Sized", "wire.Measured takes the overall diameter itself")
	}
	gauge, err := gaugeNamed(w.system)
	if err != nil {
		return Wire{}, err
	}
	row, _ := find(gauge, w.size)
	coated := fromRow(gauge, row, number)
	if number >= len(gauge.Builds) || coated.coat != gauge.Builds[number] {
		return Wire{}, refuse("enamel build: not in the table", w.label, coatedRange(gauge, number), "wire.Measured takes any diameters")
	}
	coated.material = w.material
	return coated, nil
}

// coatedRange words the sizes that have the numbered build.
func coatedRange(gauge tables.Gauge, number int) string {
	if number >= len(gauge.Builds) {
		return "one of the builds of " + gauge.System + ", " + strings.Join(gauge.Builds, " or ")
	}
	var have []string
	for _, row := range gauge.Sizes {
		if fromRow(gauge, row, number).coat != "bare" {
			have = append(have, sizeText(gauge.System, row.Size))
		}
	}
	if len(have) == 0 {
		return "a table with this build"
	}
	return have[0] + " to " + have[len(have)-1]
}
