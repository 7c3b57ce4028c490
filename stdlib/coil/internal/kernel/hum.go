package kernel

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"
)

// Hum is the flux of a field from elsewhere through the turns. The field is given by a vector
// potential A, so that the flux through a turn is the integral of A along it (Stokes), and
// the flux of a winding is the mean of that over its window, times the turns. Gauss-Legendre
// rules take both: the field is smooth where its source is outside the coil.

// Vector has the components x along the core's length, y along its width and z along the axis.
type Vector [3]float64

// Dot returns the scalar product.
func (v Vector) Dot(w Vector) float64 { return v[0]*w[0] + v[1]*w[1] + v[2]*w[2] }

// Cross returns the vector product.
func (v Vector) Cross(w Vector) Vector {
	return Vector{v[1]*w[2] - v[2]*w[1], v[2]*w[0] - v[0]*w[2], v[0]*w[1] - v[1]*w[0]}
}

// Plus returns v + k·w.
func (v Vector) Plus(k float64, w Vector) Vector {
	return Vector{v[0] + k*w[0], v[1] + k*w[1], v[2] + k*w[2]}
}

// UniformPotential returns the vector potential of the uniform field B at r: B×r/2.
func UniformPotential(B, r Vector) Vector { return Vector{}.Plus(0.5, B.Cross(r)) }

// Mu0 is the magnetic constant, µ0 = 4π·10⁻⁷ H/m, which the measured one (CODATA 2022) equals within 2e-10.
const Mu0 = 4e-7 * math.Pi

// WirePotential returns the vector potential at r of the current I in an endless straight wire
// along the unit vector u through the point p, against that at the distance |p|.
//
// Source: J. D. Jackson, Classical Electrodynamics; A = -µ0·I/2π·ln(ρ/ρ0)·u, whose curl is
// the field µ0·I/2πρ of Biot and Savart (1820).
func WirePotential(I float64, p, u, r Vector) Vector {
	away := r.Plus(-1, p)
	away = away.Plus(-away.Dot(u), u)
	return Vector{}.Plus(-Mu0*I/(4*math.Pi)*math.Log(away.Dot(away)/p.Dot(p)), u)
}

// Window is a winding as hum sees it: turns spread evenly over a rounded-rectangle window.
type Window struct {
	Along, Across float64 // straight sides of the core
	Radius        float64 // of its corners
	Height, Build float64
}

// Flux returns the mean flux through the turns of the window in a field of the potential A, counted upwards.
func (w Window) Flux(A func(Vector) Vector) float64 {
	sum := 0.0
	rule(4, 0, w.Build, func(t, wt float64) {
		rule(4, -w.Height/2, w.Height/2, func(z, wz float64) {
			sum += wt * wz * w.turn(w.Radius+t, z, A)
		})
	})
	return sum / (w.Build * w.Height)
}

// turn integrates A along the turn with corners of radius R at the height z, counterclockwise.
func (w Window) turn(R, z float64, A func(Vector) Vector) float64 {
	sum := 0.0
	a, b := w.Along/2, w.Across/2
	for q, c := range [4]Vector{{a, b, z}, {-a, b, z}, {-a, -b, z}, {a, -b, z}} {
		from := math.Pi / 2 * float64(q)
		rule(12, from, from+math.Pi/2, func(φ, weight float64) {
			sin, cos := math.Sincos(φ)
			sum += weight * R * A(c.Plus(R, Vector{cos, sin, 0})).Dot(Vector{-sin, cos, 0})
		})
		sin, cos := math.Sincos(from + math.Pi/2)
		side := w.Along
		if q%2 == 1 {
			side = w.Across
		}
		start, along := c.Plus(R, Vector{cos, sin, 0}), Vector{-sin, cos, 0}
		rule(20, 0, side, func(x, weight float64) {
			sum += weight * A(start.Plus(x, along)).Dot(along)
		})
	}
	return sum
}

// rule visits the places and weights of an n-point Gauss-Legendre rule over [a, b].
func rule(n int, a, b float64, visit func(x, weight float64)) {
	if a == b {
		return
	}
	var x, weight [20]float64
	quad.Legendre{}.FixedLocations(x[:n], weight[:n], a, b)
	for i := range n {
		visit(x[i], weight[i])
	}
}
