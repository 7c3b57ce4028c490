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
	Turn     units.Angle  // seen from above, to the left, tilt included; zero: the core along x
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
	return angles(name, p.Tilt, p.Turn)
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
	if way < 0 {
		return tilted(turnedLeft(v, -float64(p.Turn)), -float64(p.Tilt))
	}
	return turnedLeft(tilted(v, float64(p.Tilt)), float64(p.Turn))
}

// tilted turns a vector about x, turnedLeft about z.
func tilted(v kernel.Vector, angle float64) kernel.Vector {
	sin, cos := math.Sincos(angle)
	return kernel.Vector{v[0], v[1]*cos - v[2]*sin, v[1]*sin + v[2]*cos}
}

func turnedLeft(v kernel.Vector, angle float64) kernel.Vector {
	sin, cos := math.Sincos(angle)
	return kernel.Vector{v[0]*cos - v[1]*sin, v[0]*sin + v[1]*cos, v[2]}
}

// between is how another winding is turned, seen from this one: as a rotation vector.
func (p Placed) between(q Placed) [3]float64 {
	sinP, cosP := math.Sincos(float64(p.Tilt) / 2)
	sinQ, cosQ := math.Sincos(float64(q.Tilt) / 2)
	sin, cos := math.Sincos(float64(q.Turn-p.Turn) / 2)
	// The product of three quaternions: back about x, about z, about x.
	w := cos * (cosP*cosQ + sinP*sinQ)
	v := [3]float64{cos * (cosP*sinQ - sinP*cosQ), sin * (sinP*cosQ + cosP*sinQ), sin * (cosP*cosQ - sinP*sinQ)}
	size := math.Sqrt(v[0]*v[0] + v[1]*v[1] + v[2]*v[2])
	if size == 0 {
		return [3]float64{}
	}
	angle := 2 * math.Atan2(size, w)
	return [3]float64{v[0] / size * angle, v[1] / size * angle, v[2] / size * angle}
}

// levelWith reports whether another winding has a parallel axis that points the same way, and how far it is turned to the left of
// this one.
func (p Placed) levelWith(q Placed) (turn float64, ok bool) {
	v := p.between(q)
	return v[2], math.Hypot(v[0], v[1]) < 1e-12
}

// linked returns the flux of a field through all turns, with the sign of the winding.
func (p Placed) linked(field HumField) float64 {
	at := p.position()
	local := func(r kernel.Vector) kernel.Vector { return field.potential(r.Plus(1, at)) }
	if p.Tilt != 0 || p.Turn != 0 {
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
