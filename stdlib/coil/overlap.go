package coil

import (
	"math"

	"lode/stdlib/coil/internal/kernel"
)

// This file finds windings that claim the same space.

// overlaps reports whether two windings do.
func (p Placed) overlaps(q Placed) bool {
	if p.between(q) != [3]float64{} {
		return p.reachesInto(q) || q.reachesInto(p)
	}
	d := p.turned(q.position().Plus(-1, p.position()), -1)
	a, b := p.Winding.window(), q.Winding.window()
	if math.Abs(d[2]) >= (a.Height+b.Height)/2*(1-1e-9) {
		return false
	}
	gap := math.Hypot(max(0, math.Abs(d[0])-(a.Along+b.Along)/2), max(0, math.Abs(d[1])-(a.Across+b.Across)/2))
	return gap < (a.Radius+a.Build+b.Radius+b.Build)*(1-1e-9) && !inside(a, b, d) && !inside(b, a, d)
}

// inside reports whether winding a lies within the core of b.
func inside(a, b kernel.Window, d kernel.Vector) bool {
	const least = -1e-9
	R := a.Radius + a.Build
	beyondX, beyondY := (a.Along-b.Along)/2+math.Abs(d[0]), (a.Across-b.Across)/2+math.Abs(d[1])
	if beyondX > 0 && beyondY > 0 {
		return b.Radius-R-math.Hypot(beyondX, beyondY) >= least
	}
	return min(b.Radius-R-beyondX, b.Radius-R-beyondY) >= least
}

// around is how many places of a turn are looked at, and touching how deep in the other winding they lie where they only touch it.
const around, touching = 240, 1e-6

// reachesInto reports whether the surface of a winding comes into another one that is turned against it.
func (p Placed) reachesInto(q Placed) bool {
	w, other := p.Winding.window(), q.Winding.window()
	for i := range around {
		for _, depth := range [3]float64{0, w.Build / 2, w.Build} {
			x, y := onTurn(w, w.Radius+depth, (float64(i)+0.5)/around)
			for _, z := range [5]float64{-0.5, -0.25, 0, 0.25, 0.5} {
				at := p.turned(kernel.Vector{x, y, z * w.Height}, 1).Plus(1, p.position())
				if within(other, q.turned(at.Plus(-1, q.position()), -1), touching) {
					return true
				}
			}
		}
	}
	return false
}

// within reports whether a point lies in a winding window by more than a margin.
func within(w kernel.Window, at kernel.Vector, margin float64) bool {
	dx, dy := math.Abs(at[0])-w.Along/2, math.Abs(at[1])-w.Across/2
	over := math.Hypot(max(0, dx), max(0, dy))
	if over == 0 {
		over = max(dx, dy) // on the straight core, as deep in it as this
	}
	return math.Abs(at[2]) <= w.Height/2-margin && over > w.Radius+margin && over < w.Radius+w.Build-margin
}

// onTurn is the place at a share of the way around a turn with corners of radius R.
func onTurn(w kernel.Window, R, share float64) (x, y float64) {
	quarter, rest := math.Modf(4 * share)
	sx, sy := 1.0, 1.0
	if quarter == 1 || quarter == 2 {
		sx = -1
	}
	if quarter >= 2 {
		sy = -1
	}
	way := rest * (w.Across/2 + math.Pi/2*R + w.Along/2)
	switch {
	case way < w.Across/2:
		return sx * (w.Along/2 + R), sy * way
	case way < w.Across/2+math.Pi/2*R:
		sin, cos := math.Sincos((way - w.Across/2) / R)
		return sx * (w.Along/2 + R*cos), sy * (w.Across/2 + R*sin)
	}
	return sx * (w.Along/2 - (way - w.Across/2 - math.Pi/2*R)), sy * (w.Across/2 + R)
}
