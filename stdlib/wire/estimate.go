package wire

import (
	"math"

	"lode/stdlib/wire/internal/tables"
)

// This file fills what a table leaves empty: enamel borrowed from another table, and the
// limits of a conductor whose standard states none. Everything made here is marked as an
// estimate.

// lenderSize returns the size of the lending table that stands in for a diameter: the next
// larger one, as IEC 60317-0-1 has it for intermediate sizes (recalled; a general-data page of
// a wire works prints the same rule for the tolerance of the conductor).
func lenderSize(gauge tables.Gauge, d float64) (tables.Size, bool) {
	if gauge.Enamel == "" {
		return tables.Size{}, false
	}
	lender, err := gaugeNamed(gauge.Enamel)
	if err != nil {
		return tables.Size{}, false
	}
	for _, size := range lender.Sizes {
		if size.Bare.Nominal >= d*(1-1e-9) {
			return size, true
		}
	}
	return tables.Size{}, false
}

// borrowed estimates the diameter over the numbered build: the bare diameter and the increase
// of the size that stands in for it.
func borrowed(gauge tables.Gauge, row tables.Size, build int) (tables.Limits, bool) {
	size, ok := lenderSize(gauge, row.Bare.Nominal)
	if !ok || build >= len(size.Overall) || !size.Overall[build].Stated() {
		return tables.Limits{}, false
	}
	o, shift := size.Overall[build], row.Bare.Nominal-size.Bare.Nominal
	return tables.Limits{Min: o.Min + shift, Nominal: o.Nominal + shift, Max: o.Max + shift}, true
}

// Resistance of the finest wires and diameter of the thickest vary by these shares. 10 % is what
// a wire works' data page of fine stranded wire gives for strands of 0.020 mm (±10 % on the
// resistance); 1 % is the tolerance of conductors from 1 to 5 mm on a general-data page.
const (
	fineResistanceShare = 0.10
	thickDiameterShare  = 0.01
	thinnestByDiameter  = 71e-6 // from here on IEC 60317 limits the diameter
)

// conductorLimits returns the limits of the conductor, and whether they are an estimate.
func conductorLimits(gauge tables.Gauge, row tables.Size) (limits tables.Limits, estimate bool) {
	d := row.Bare.Nominal
	switch {
	case row.Bare.Min > 0 && row.Bare.Max > 0:
		return row.Bare, false
	case d < thinnestByDiameter:
		return tables.Limits{Min: d / math.Sqrt(1+fineResistanceShare), Nominal: d, Max: d / math.Sqrt(1-fineResistanceShare)}, true
	}
	if size, ok := lenderSize(gauge, d); ok && size.Bare.Min > 0 {
		n := size.Bare.Nominal
		return tables.Limits{Min: d - (n - size.Bare.Min), Nominal: d, Max: d + (size.Bare.Max - n)}, true
	}
	return tables.Limits{Min: d * (1 - thickDiameterShare), Nominal: d, Max: d * (1 + thickDiameterShare)}, true
}
