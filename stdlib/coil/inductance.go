package coil

import (
	"math"

	"lode/stdlib/coil/internal/induct"
	"lode/units"
)

// This file chooses how exactly a winding's inductance has to be found: turn by turn where there are few, as
// full layers and a begun one where it is layered, as an even window where it is scattered.

// Inductance returns the inductance at low frequency without iron, magnets or cover near
// the winding.
//
// Source: Neumann's integral for turns spread evenly over the window, self terms by the geometric mean
// distance (J. C. Maxwell, Treatise, 1873, §691; F. W. Grover, Inductance Calculations, 1946); up to 150 laid turns
// one by one.
//
// Valid: any number of turns. Poles, magnets and plates raise it, often by half or more.
//
// Accuracy: the integral 0.001 %; a scatter winding itself about 3 %, from its build; a convex core of more than
// 40 corners about 1 %.
func (c Winding) Inductance() units.Inductance {
	if c.turns == 0 {
		return 0
	}
	laid := c.style.Lay != Scatter && c.style.strands() == 1 && !c.layout.cut && len(c.shape.hull) == 0
	switch {
	case laid && c.turns <= mostSingle:
		henry, _ := induct.DiscreteSelf(c.section(), c.places(), c.conductor())
		return units.Inductance(henry)
	case laid && c.layout.layers > 1:
		return units.Inductance(c.inBlocks())
	}
	return units.Inductance(c.smeared() + induct.RoundWire(c.section(), c.rows(), max(1, c.turns/c.rows()), c.conductor()))
}

// mostSingle is the number of turns up to which they are summed one by one.
const mostSingle = 150

// mostCorners is the number of corners up to which a convex core is integrated as it is.
const mostCorners = 40

func (c Winding) conductor() induct.Wire { return induct.Wire{Radius: float64(c.wire.Bare()) / 2} }

// rows returns how many rows of turns the build holds, for the share of the round wires themselves.
func (c Winding) rows() int {
	return min(c.turns, max(1, int(math.Round(c.layout.build/c.layout.rise))))
}

// smeared takes the window as filled with turns evenly.
func (c Winding) smeared() float64 {
	s := c.section()
	if n := len(c.shape.hull); n > 0 && n <= mostCorners {
		henry, _ := induct.SelfOutline(induct.Outline{Points: c.shape.hull, Height: s.Height, Build: s.Build}, float64(c.turns))
		return henry
	}
	henry, _ := induct.Self(s, float64(c.turns))
	return henry
}

// places lists the middles of laid wires: layers to and fro from the lower flange on, orthocyclic ones shifted by
// half a pitch to and fro.
func (c Winding) places() []induct.Turn {
	o, list := c.layout, make([]induct.Turn, 0, c.turns)
	d := float64(c.wire.Overall())
	first := -(float64(o.perLayer-1)*o.pitch + c.style.shift(o.pitch)) / 2
	if o.layers == 1 {
		first = -float64(c.turns-1) / 2 * o.pitch
	}
	for i := range c.turns {
		layer, j := i/o.perLayer, i%o.perLayer
		if layer%2 == 1 {
			j = o.perLayer - 1 - j
		}
		z := first + float64(j)*o.pitch + float64(layer%2)*c.style.shift(o.pitch)
		list = append(list, induct.Turn{Depth: d/2 + c.style.depth(layer, o.rise), Z: z})
	}
	return list
}

// inBlocks adds up the full layers and the begun one.
func (c Winding) inBlocks() float64 {
	o, wire := c.layout, c.conductor()
	layers, left := c.turns/o.perLayer, c.turns%o.perLayer
	full := c.shape.section(c.style.depth(layers-1, o.rise) + float64(c.wire.Overall()))
	full.Height = float64(o.perLayer) * o.pitch
	n := float64(layers * o.perLayer)
	henry, _ := induct.Self(full, n)
	henry += induct.RoundWire(full, layers, o.perLayer, wire)
	if left == 0 {
		return henry
	}
	begun := c.shape.grown(units.Length(full.Build))
	last := induct.Section{CoreLength: float64(begun.CoreLength), CoreWidth: float64(begun.CoreWidth), CornerRadius: float64(begun.CornerRadius),
		Height: float64(left) * o.pitch, Build: c.layout.build - full.Build}
	own, _ := induct.Self(last, float64(left))
	m, _ := induct.Coaxial(full, last, n, float64(left), (full.Height-last.Height)/2)
	return henry + own + induct.RoundWire(last, 1, left, wire) + 2*m
}

// section is the window that the turns fill, as the integrals take it.
func (c Winding) section() induct.Section {
	s := c.shape.section(c.layout.build)
	s.Height = c.height()
	return s
}

// height is that of the bobbin, or of a single layer of laid turns that does not fill it.
func (c Winding) height() float64 {
	if c.style.Lay != Scatter && c.layout.layers == 1 {
		return min(float64(c.shape.Height), float64(c.layout.wires)*c.layout.pitch)
	}
	return float64(c.shape.Height)
}
