package coil

import (
	"fmt"
	"math"

	"lode/stdlib/coil/internal/induct"
	"lode/stdlib/coil/internal/kernel"
	"lode/units"
)

// FluxVector is a flux density with its three components: x along the core's length, y along its width, z up to the
// strings.
type FluxVector struct {
	X units.FluxDensity // along the core's length
	Y units.FluxDensity // along its width
	Z units.FluxDensity // up to the strings
}

// Magnitude returns the length of the vector.
func (b FluxVector) Magnitude() units.FluxDensity {
	return units.FluxDensity(math.Sqrt(sq(float64(b.X)) + sq(float64(b.Y)) + sq(float64(b.Z))))
}

// String writes the three components.
func (b FluxVector) String() string { return fmt.Sprintf("x %v, y %v, z %v", b.X, b.Y, b.Z) }

// FieldAt returns the flux density of the winding with a current in it at a point, without iron. By reciprocity it
// is also how well the winding hears a small magnet at that point.
//
// Source: Biot and Savart (1820), over turns spread evenly over the window.
//
// Valid: points outside the winding itself, its core included, from the thickness of its wire on.
//
// Accuracy: 0.1 % there.
//
// Example: c.FieldAt(0*mm, 0*mm, 10*mm, 1*mA)
func (c Winding) FieldAt(x, y, z units.Length, current units.Current) (FluxVector, error) {
	for _, v := range []units.Length{x, y, z} {
		if !(math.Abs(float64(v)) <= 100) {
			return FluxVector{}, refuse("point: out of range", v, "at most 100 m away", "write the unit, such as 10*mm")
		}
	}
	if !(math.Abs(float64(current)) <= 1e6) {
		return FluxVector{}, refuse("current: out of range", current, "at most 1 MA", "")
	}
	if c.turns == 0 {
		return FluxVector{}, refuse("winding: none", c, "a winding made by coil.Wind", "")
	}
	if within(c.window(), kernel.Vector{float64(x), float64(y), float64(z)}, 0) {
		return FluxVector{}, refuse("point: inside the winding", fmt.Sprintf("x %v, y %v, z %v", x, y, z), "a point in the core or outside the winding", "")
	}
	b := induct.Field(c.section(), float64(c.turns)*float64(current), [3]float64{float64(x), float64(y), float64(z)})
	return fluxVector(b), nil
}

// fluxVector drops components that are nothing but rounding.
func fluxVector(b kernel.Vector) FluxVector {
	rounding := 1e-12 * math.Sqrt(b.Dot(b))
	for i := range b {
		if math.Abs(b[i]) < rounding {
			b[i] = 0
		}
	}
	return FluxVector{units.FluxDensity(b[0]), units.FluxDensity(b[1]), units.FluxDensity(b[2])}
}
