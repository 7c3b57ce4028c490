package units

import (
	"math"
	"math/cmplx"
)

// Phasor is a complex quantity without a type of its own, such as the product of an
// impedance and a current.
type Phasor struct {
	Value complex128
	Dim   Dimension
}

// MakePhasor returns a Phasor; the exponents are halves in the order of the base dimensions.
func MakePhasor(value complex128, halves ...int) Phasor {
	return Phasor{value, Make(0, halves...).Dim}
}

// Magnitude returns |p|.
func (p Phasor) Magnitude() Product { return Product{cmplx.Abs(p.Value), p.Dim} }

// Phase returns the angle of p.
func (p Phasor) Phase() Angle { return Angle(cmplx.Phase(p.Value)) }

// String writes p by magnitude and phase.
func (p Phasor) String() string { return polar(p.Magnitude().String(), p.Phase()) }

func polar(magnitude string, phase Angle) string {
	return magnitude + " at " + Digits(math.Round(phase.SI()/Degree.SI()*10)/10, 4) + "°"
}
