package wire

import (
	"strconv"
	"strings"

	"lode/stdlib/wire/internal/tables"
	"lode/units"
)

// Single returns the same wire with the thin enamel: single build, or grade 1 of a metric
// size.
//
// Source: NEMA MW 1000 (AWG), IEC 60317 (metric), as read through an open data set.
//
// Example: wire.AWG(42).Single()
func (w Wire) Single() (Wire, error) { return w.build(0) }

// Heavy returns the same wire with the thick enamel: heavy build, or grade 2 of a metric size.
//
// Source: NEMA MW 1000 (AWG), IEC 60317 (metric), as read through an open data set.
//
// Valid: AWG 24 and finer, metric sizes, SWG 20 and finer.
//
// Example: wire.AWG(42).Heavy()
func (w Wire) Heavy() (Wire, error) { return w.build(1) }

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
// Example: wire.AWG(42).Of("silver")
func (w Wire) Of(metal string) (Wire, error) {
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
// Valid: Name, Resistivity, Density and the temperature range must be given; the strengths only where they are
// used.
//
// Example: wire.AWG(42).MadeOf(wire.MaterialNamed("silver"))
func (w Wire) MadeOf(metal Material) (Wire, error) {
	if metal.Name == "" {
		return Wire{}, refuse("material: no name", strconv.Quote(metal.Name), "the name of a metal", "")
	}
	for _, figure := range []struct {
		name           string
		got, low, high units.Quantity
	}{
		{"Resistivity", metal.Resistivity, units.Resistivity(1e-9), units.Resistivity(1e-5)},
		{"Coefficient", metal.Coefficient, units.TemperatureCoefficient(-0.01), units.TemperatureCoefficient(0.01)},
		{"Density", metal.Density, units.Density(500), units.Density(25000)},
		{"Coldest temperature", metal.Coldest, units.Temperature(1), units.Temperature(3000)},
		{"Hottest temperature", metal.Hottest, max(metal.Coldest, units.Celsius(20)), units.Temperature(3000)},
		{"Weakest strength", metal.Weakest, units.Pressure(0), units.Pressure(1e10)},
		{"Strongest strength", metal.Strongest, metal.Weakest, units.Pressure(1e10)},
		{"Modulus", metal.Modulus, units.Pressure(0), units.Pressure(2e12)},
		{"WindingStress", metal.WindingStress, units.Pressure(0), units.Pressure(1e10)},
	} {
		if err := within(figure.name, figure.got, figure.low, figure.high); err != nil {
			return Wire{}, err
		}
	}
	if !(metal.Hardening >= 0 && metal.Hardening < 1) {
		return Wire{}, refuse("Hardening: out of range", units.Digits(metal.Hardening, 6), "0 to below 1", "")
	}
	w.material = metal
	return w, nil
}

// build returns the wire with another build of its own table.
func (w Wire) build(number int) (Wire, error) {
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
	var have []string
	for _, row := range gauge.Sizes {
		if !strings.HasPrefix(fromRow(gauge, row, number).coat, "bare") {
			have = append(have, sizeText(gauge.System, row.Size))
		}
	}
	if len(have) == 0 {
		return "a table with this build"
	}
	return have[0] + " to " + have[len(have)-1]
}
