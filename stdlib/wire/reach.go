package wire

import (
	"strings"

	"lode/stdlib/wire/internal/tables"
	"lode/units"
)

// This file refuses measurements that no table reaches.

// gauges are the tables that the measurement is looked for in.
func (m Measurement) gauges() []tables.Gauge {
	var searched []tables.Gauge
	for _, gauge := range tables.Gauges() {
		if m.System == "" || strings.EqualFold(m.System, gauge.System) {
			searched = append(searched, gauge)
		}
	}
	return searched
}

// reach is what some tables go from and to, in SI units.
type reach struct{ low, high float64 }

func (r *reach) take(low, high float64) {
	if r.high == 0 {
		r.low = low
	}
	r.low, r.high = min(r.low, low), max(r.high, high)
}

// refused words the error for a figure further out than its own error, which is given.
func (r reach) refused(name string, got units.Quantity, off float64, of func(float64) units.Quantity, hint string) error {
	if x := got.SI(); x == 0 || x >= r.low-off && x <= r.high+off {
		return nil
	}
	return refuse(name+": outside the tables", got, of(r.low).String()+" to "+of(r.high).String(), hint)
}

// reached refuses a measurement with a figure that lies outside the tables searched.
func (m Measurement) reached(metal Material) error {
	hint, off := "wire.Measured takes any diameters", m.DiameterError.SI()
	if m.System != "" {
		hint = "an empty System searches all tables; " + hint
	}
	length := func(x float64) units.Quantity { return units.Length(x) }
	bare, overall, perLength := m.reaches(metal)
	if err := bare.refused("Bare diameter", m.Bare, off, length, hint); err != nil {
		return err
	}
	if err := overall.refused("Overall diameter", m.Overall, off, length, hint); err != nil || m.Resistance == 0 {
		return err
	}
	r := units.ResistancePerLength(m.perLength(metal))
	return perLength.refused("Resistance per length at 20 °C", r, m.ResistanceError*r.SI(),
		func(x float64) units.Quantity { return units.ResistancePerLength(x) }, hint)
}

// reaches returns what the tables searched go from and to.
func (m Measurement) reaches(metal Material) (bare, overall, perLength reach) {
	for _, gauge := range m.gauges() {
		for _, row := range gauge.Sizes {
			for build := range min(searchedBuilds, len(gauge.Builds)) {
				w := fromRow(gauge, row, build)
				w.material = metal
				r := w.ResistanceLimits()
				bare.take(w.bare.Min, w.bare.Max)
				overall.take(w.overall.Min, w.overall.Max)
				perLength.take(r.Min.SI(), r.Max.SI())
			}
		}
	}
	return bare, overall, perLength
}
