package kernel

import "math"

// The outside of a winding and metal around it are two walls with a field between them. Where they are flat the field
// lines run straight across, and over a corner of the inner wall they are taken to fan out from the corner's centre as between
// two cylinders: per angle ε0/ln(ρ/r), with ρ the way to the outer wall. Round walls in line come out exact.
//
// Source: the field between coaxial cylinders and between plates (C. F. Gauss's law), in any text on electrostatics.

// Outline is a rounded rectangle around the origin.
type Outline struct{ Length, Width, Radius float64 }

// Perimeter returns its length.
func (o Outline) Perimeter() float64 { return RoundedPerimeter(o.Length, o.Width, o.Radius) }

// Walls returns the capacitance per height between one rounded rectangle and another around it, in air.
func Walls(in, out Outline) float64 {
	along, across := in.Length-2*in.Radius, in.Width-2*in.Radius
	sum := 2*along/((out.Width-in.Width)/2) + 2*across/((out.Length-in.Length)/2)
	const steps = 32
	for i := range steps {
		sin, cos := math.Sincos(math.Pi / 2 * (float64(i) + 0.5) / steps)
		ray := out.reach(along/2, across/2, cos, sin)
		sum += 4 * math.Pi / 2 / steps / math.Log(ray/in.Radius)
	}
	return VacuumPermittivity * sum
}

// reach returns how far it is from a point inside the outline to it, along a direction.
func (o Outline) reach(x, y, dx, dy float64) float64 {
	low, high := 0.0, o.Length+o.Width
	for range 60 {
		middle := (low + high) / 2
		px, py := math.Abs(x+middle*dx)-(o.Length/2-o.Radius), math.Abs(y+middle*dy)-(o.Width/2-o.Radius)
		beyond := math.Hypot(math.Max(0, px), math.Max(0, py)) + math.Min(0, math.Max(px, py)) - o.Radius
		if beyond > 0 {
			high = middle
		} else {
			low = middle
		}
	}
	return low
}

// Ring returns the capacitance of a face of the given area to a plate at the distance gap, in air.
func Ring(area, gap float64) float64 { return VacuumPermittivity * area / gap }

// SideBySide returns the capacitance per height between two equal walls beside each other in air: straight sides of some
// length face each other over a gap, with round ends of radius r.
//
// Source: W. R. Smythe, Static and Dynamic Electricity, 1950, chapter 4: two equal cylinders, πε0/arcosh(1+gap/2r), for the ends.
func SideBySide(straight, r, gap float64) float64 {
	return VacuumPermittivity * (straight/gap + math.Pi/math.Acosh(1+gap/(2*r)))
}

// Edge returns what the field around one edge of two thick walls adds, along a length; extent is how far the surfaces reach from
// the edge.
//
// Source: H. B. Palmer, The capacitance of a parallel-plate capacitor by the Schwarz-Christoffel transformation, AIEE
// Transactions 56 (1937) 363-366: 1/2π·(1 + ln(2π·width/gap)) for thin plates; about twice that where the backs are as near.
func Edge(length, extent, gap float64) float64 {
	return VacuumPermittivity * length / math.Pi * math.Log(1+math.Pi*extent/gap)
}
