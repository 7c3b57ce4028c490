package kernel

import (
	"math"
	"math/cmplx"
)

// At a frequency the current crowds within each wire: by its own field (skin effect) and by
// the field of all other turns across it (proximity effect). For a round wire the two do not
// mix and both have closed forms in Bessel functions of k·a, with k = (1-j)/δ and the radius a.
//
// Source: J. A. Ferreira, Improved analytical modeling of conductive losses in magnetic
// components, IEEE Transactions on Power Electronics 9 (1994) 127-131; the two field
// problems are those of W. R. Smythe, Static and Dynamic Electricity, 1950, chapter 11.

// SkinDepth returns δ = √(2ρ/ωµ0).
func SkinDepth(resistivity, frequency float64) float64 {
	return math.Sqrt(resistivity / (math.Pi * frequency * Mu0))
}

// SkinFactor returns the resistance of a lone round wire of diameter d against that for direct
// current: Re[ka/2 · J0(ka)/J1(ka)].
func SkinFactor(d, δ float64) float64 {
	z := complex(1, -1) * complex(d/2/δ, 0)
	return real(z / 2 * bessel(0, z) / bessel(1, z))
}

// ProximityLoss returns the power per length that a field of rms flux density B across a round
// wire of diameter d makes in it, in watts per metre.
func ProximityLoss(d, δ, resistivity, B float64) float64 {
	z := complex(1, -1) * complex(d/2/δ, 0)
	screening := -bessel(2, z) / bessel(0, z) // of the field in the wire; its imaginary part is the loss
	H := B / Mu0
	return 4 * math.Pi * resistivity * H * H * (d / 2 / δ) * (d / 2 / δ) * imag(screening)
}

// bessel returns J of whole order n by its power series: exact to about ten digits up to |z| = 12.
func bessel(n int, z complex128) complex128 {
	term := complex(1, 0)
	for i := 1; i <= n; i++ {
		term *= z / complex(float64(2*i), 0)
	}
	sum, q := term, -z*z/4
	for i := 1; i < 200; i++ {
		term *= q / complex(float64(i*(i+n)), 0)
		sum += term
		if cmplx.Abs(term) < 1e-17*cmplx.Abs(sum) {
			break
		}
	}
	return sum
}
