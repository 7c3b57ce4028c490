package coil

import (
	"math"

	"lode/stdlib/coil/internal/kernel"
	"lode/units"
)

// Placed is a winding in its place: x along the cores' length, y along their width, z up to
// the strings. Positions are those of the middle of the winding.
type Placed struct {
	Winding  Winding      // made by coil.Wind
	X        units.Length // along the cores' length
	Y        units.Length // along their width
	Z        units.Length // up to the strings
	Tilt     units.Angle  // about the long axis of the core; zero: upright
	Reversed bool         // wound, or joined, the other way round
}

func (p Placed) check(name string) error {
	if p.Winding.turns == 0 {
		return refuse(name+" Winding: none", p.Winding, "a winding made by coil.Wind", "")
	}
	for _, x := range []units.Length{p.X, p.Y, p.Z} {
		if !(math.Abs(float64(x)) <= float64(longest)) {
			return refuse(name+" position: out of range", x, "at most "+longest.String()+" from the origin", "write the unit, such as 10*mm")
		}
	}
	return angles(name, p.Tilt)
}

func (p Placed) position() kernel.Vector {
	return kernel.Vector{float64(p.X), float64(p.Y), float64(p.Z)}
}

func (p Placed) sign() float64 {
	if p.Reversed {
		return -1
	}
	return 1
}

// turned takes a vector of the winding into the common directions, or back with a negative way.
func (p Placed) turned(v kernel.Vector, way float64) kernel.Vector {
	sin, cos := math.Sincos(way * float64(p.Tilt))
	return kernel.Vector{v[0], v[1]*cos - v[2]*sin, v[1]*sin + v[2]*cos}
}

// linked returns the flux of a field through all turns, with the sign of the winding.
func (p Placed) linked(field HumField) float64 {
	at := p.position()
	local := func(r kernel.Vector) kernel.Vector { return field.potential(r.Plus(1, at)) }
	if p.Tilt != 0 {
		local = func(r kernel.Vector) kernel.Vector {
			return p.turned(field.potential(p.turned(r, 1).Plus(1, at)), -1)
		}
	}
	return p.sign() * float64(p.Winding.turns) * p.Winding.window().Flux(local, p.gap(field))
}

// gap is how far the source of a field is from the winding and its core.
func (p Placed) gap(field HumField) float64 {
	if field.line == nil {
		return math.Inf(1)
	}
	return p.Winding.window().Gap(p.turned(field.line.point.Plus(-1, p.position()), -1), p.turned(field.line.along, -1))
}

// window is the winding as fields see it.
func (c Winding) window() kernel.Window {
	s := c.shape
	r := float64(s.CornerRadius)
	return kernel.Window{Along: max(0, float64(s.Length)-2*r), Across: max(0, float64(s.Width)-2*r), Radius: r, Height: c.height(), Build: c.layout.build}
}

// overlaps reports whether two upright windings claim the same space.
func (p Placed) overlaps(q Placed) bool {
	if p.Tilt != 0 || q.Tilt != 0 {
		return false
	}
	d := q.position().Plus(-1, p.position())
	a, b := p.Winding.window(), q.Winding.window()
	if math.Abs(d[2]) >= (a.Height+b.Height)/2*(1-1e-9) {
		return false
	}
	gap := math.Hypot(max(0, math.Abs(d[0])-(a.Along+b.Along)/2), max(0, math.Abs(d[1])-(a.Across+b.Across)/2))
	return gap < (a.Radius+a.Build+b.Radius+b.Build)*(1-1e-9) && !inside(a, b, d) && !inside(b, a, d)
}

// inside reports whether winding a lies within the core of b.
func inside(a, b kernel.Window, d kernel.Vector) bool {
	const touching = -1e-9
	R := a.Radius + a.Build
	beyondX, beyondY := (a.Along-b.Along)/2+math.Abs(d[0]), (a.Across-b.Across)/2+math.Abs(d[1])
	if beyondX > 0 && beyondY > 0 {
		return b.Radius-R-math.Hypot(beyondX, beyondY) >= touching
	}
	return min(b.Radius-R-beyondX, b.Radius-R-beyondY) >= touching
}
