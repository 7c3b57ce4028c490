package kernel

import (
	"math"
	"sync"

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

// Flux returns the mean flux through the turns of the window in a field of the potential A, counted upwards. The
// source of the field is a gap away from the winding; an infinite one stands for a field that is the same everywhere.
func (w Window) Flux(A func(Vector) Vector, gap float64) float64 {
	rules, sum := w.rules(gap), 0.0
	for _, t := range rules.window {
		for _, z := range rules.window {
			sum += t.weight * z.weight * w.turn(rules, w.Radius+t.x*w.Build, (z.x-0.5)*w.Height, A)
		}
	}
	return sum
}

// Gap returns how far an endless line through p along the unit vector u stays away from the winding and its core; 0
// where it goes through.
func (w Window) Gap(p, u Vector) float64 {
	away := func(s float64) float64 {
		at := p.Plus(s, u)
		over := math.Hypot(math.Max(0, math.Abs(at[0])-w.Along/2), math.Max(0, math.Abs(at[1])-w.Across/2))
		return math.Hypot(math.Max(0, over-w.Radius-w.Build), math.Max(0, math.Abs(at[2])-w.Height/2))
	}
	middle := -p.Dot(u)
	low, high := middle-w.reach(), middle+w.reach() // nearest to the ball, and to what is in it
	for range 60 {                                  // the distance from a convex body has one valley
		if a, b := low+(high-low)/3, high-(high-low)/3; away(a) < away(b) {
			high = b
		} else {
			low = a
		}
	}
	return away(low)
}

// reach is the radius of the ball around the middle that holds the winding.
func (w Window) reach() float64 {
	return math.Hypot(math.Hypot(w.Along/2+w.Radius+w.Build, w.Across/2+w.Radius+w.Build), w.Height/2)
}

// turn integrates A along the turn with corners of radius R at the height z, counterclockwise.
func (w Window) turn(rules *rules, R, z float64, A func(Vector) Vector) float64 {
	sum := 0.0
	a, b := w.Along/2, w.Across/2
	for q, c := range [4]Vector{{a, b, z}, {-a, b, z}, {-a, -b, z}, {a, -b, z}} {
		for _, at := range rules.corner[q] {
			sum += at.weight * R * A(c.Plus(R, at.out)).Dot(at.along)
		}
		side := w.Along
		if q%2 == 1 {
			side = w.Across
		}
		if side == 0 {
			continue
		}
		end := directions[(q+1)%4]
		start, along := c.Plus(R, end), Vector{-end[1], end[0], 0}
		for _, at := range rules.side {
			sum += at.weight * side * A(start.Plus(at.x*side, along)).Dot(along)
		}
	}
	return sum
}

// directions are those in which the four corners begin.
var directions = [4]Vector{{1, 0, 0}, {0, 1, 0}, {-1, 0, 0}, {0, -1, 0}}

// rules are where to look along a turn and across the window, with weights: Gauss-Legendre rules of some points
// across the window, in each corner and on each straight side.
type rules struct {
	window, side []place
	corner       [4][]bend
}

// place is a place between 0 and 1.
type place struct{ x, weight float64 }

// bend is a place in a corner: the directions outwards and along the turn.
type bend struct {
	out, along Vector
	weight     float64
}

// sets are rules for sources that are far: fewer points tell as much, to 1e-11.
type sets struct{ far, endless *rules }

// farOff is how many times its own reach a source is far from a winding.
const farOff = 2

var humRules = sync.OnceValue(func() sets {
	return sets{far: newRules(places(4, 1), places(8, 1), places(8, 1)), endless: newRules(places(2, 1), places(8, 1), places(2, 1))}
})

// rules are those for a source at a distance; nearer than farOff it cuts sides and corners into pieces no
// longer than twice the gap, and the window, over which the flux changes less, into such of four times the gap.
func (w Window) rules(gap float64) *rules {
	switch reach := w.reach(); {
	case math.IsInf(gap, 1):
		return humRules().endless
	case gap >= farOff*reach:
		return humRules().far
	default:
		gap = math.Max(gap, reach/100)
	}
	pieces := func(length float64) int { return 1 + int(length/(2*gap)) }
	return newRules(places(4, pieces(math.Max(w.Height, w.Build)/2)), places(10, pieces(math.Pi/2*(w.Radius+w.Build))), places(10, pieces(math.Max(w.Along, w.Across))))
}

func newRules(window, corner, side []place) *rules {
	r := &rules{window: window, side: side}
	for q := range r.corner {
		for _, p := range corner {
			sin, cos := math.Sincos(math.Pi / 2 * (float64(q) + p.x))
			r.corner[q] = append(r.corner[q], bend{Vector{cos, sin, 0}, Vector{-sin, cos, 0}, math.Pi / 2 * p.weight})
		}
	}
	return r
}

// places returns the n-point Gauss-Legendre rule in each of some pieces.
func places(n, pieces int) []place {
	x, weight := make([]float64, n), make([]float64, n)
	quad.Legendre{}.FixedLocations(x, weight, 0, 1)
	var list []place
	for k := range pieces {
		for i := range x {
			list = append(list, place{(x[i] + float64(k)) / float64(pieces), weight[i] / float64(pieces)})
		}
	}
	return list
}

// rule visits the places and weights of an n-point Gauss-Legendre rule over [a, b].
func rule(n int, a, b float64, visit func(x, weight float64)) {
	if a == b {
		return
	}
	for _, p := range places(n, 1) {
		visit(a+p.x*(b-a), p.weight*(b-a))
	}
}
