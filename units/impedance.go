package units

import "math/cmplx"

// Impedance is a complex resistance in Ω.
type Impedance complex128

// Resistance returns the real part.
func (z Impedance) Resistance() Resistance { return Resistance(real(z)) }

// Reactance returns the imaginary part.
func (z Impedance) Reactance() Resistance { return Resistance(imag(z)) }

// Magnitude returns |z|.
func (z Impedance) Magnitude() Resistance { return Resistance(cmplx.Abs(complex128(z))) }

// Phase returns the angle between voltage and current.
func (z Impedance) Phase() Angle { return Angle(cmplx.Phase(complex128(z))) }

// String writes z by magnitude and phase.
func (z Impedance) String() string {
	return polar(z.Magnitude().String(), z.Phase())
}
