package coil

import (
	"fmt"
	"math"

	"lode/stdlib/coil/internal/kernel"
	"lode/units"
)

// This file estimates the capacitance that what stands around a winding adds.

// Lead is one of the two ends of a winding.
type Lead int

// The leads.
const (
	Finish Lead = iota // the outer end
	Start              // the inner end
)

// String names the lead.
func (l Lead) String() string {
	if l == Start {
		return "start"
	}
	return "finish"
}

// CoverCapacitance returns what a grounded metal cover adds to the capacitance of the winding, whose hot lead is the one
// given and whose other lead is grounded. With the finish hot the outermost turns face the cover at the full voltage; with the
// start hot they are all but grounded.
//
// Source: energies of the fields between the outside of the winding and the cover's walls, and of a voltage that grows evenly with
// the turns (J. C. Maxwell, Treatise, 1873, for energy and capacitance); walls as plates and cylinders.
//
// Valid: cover and winding in line, a convex core as Inside has it, the cover in the middle and tied to the grounded lead; below the first resonance.
//
// Accuracy: the walls' field 4 % against finite differences; an estimate all the same: the space may be
// filled and the winding bulges. The range is for that.
//
// Example: c.CoverCapacitance(coil.Cover{Length: 88*mm, Width: 20*mm, CornerRadius: 9*mm, Height: 14*mm}, coil.Finish)
func (c Winding) CoverCapacitance(cover Cover, hot Lead) (CapacitanceRange, error) {
	if hot != Finish && hot != Start {
		return CapacitanceRange{}, refuse("hot lead: unknown", int(hot), "coil.Finish or coil.Start", "")
	}
	if c.turns == 0 {
		return CapacitanceRange{}, refuse("winding: none", c, "a winding made by coil.Wind", "")
	}
	space, err := c.Inside(cover)
	if err != nil {
		return CapacitanceRange{}, err
	}
	if nearest := min(space.Ends, space.Sides, space.Corners); !(nearest > 0 && space.Above >= 0) {
		return CapacitanceRange{}, refuse("cover: does not go over the winding", space, "a cover with space all around", "")
	}
	outside := kernel.Outline{Length: float64(cover.Length), Width: float64(cover.Width), Radius: float64(cover.CornerRadius)}
	side := kernel.Walls(c.outline(), outside) * float64(c.shape.Height)
	face := kernel.Ring(c.faceArea(), max(float64(space.Above), thinnestFlange))
	layers := float64(max(1, c.layout.layers))
	outer := 1 - 1/layers + 1/(3*layers*layers) // mean square of the outermost layer's voltage
	if hot == Start {
		outer = 1 / (3 * layers * layers)
	}
	return c.surrounded(side*outer, face/3), nil
}

// thinnestFlange lies between the winding and a cover that rests on the bobbin: common practice, no source. Flanges of fibre
// and plastic have relative permittivities of 3 to 5.
const thinnestFlange, flangePermittivity = 0.5e-3, 4

// surrounded puts the part of the sides and that of the faces together: in air at the least; with the faces under
// a flange; filled all over and nearer at the most.
func (c Winding) surrounded(side, face float64) CapacitanceRange {
	filled := c.filling()
	return CapacitanceRange{
		Low:   units.Capacitance(0.9*side + face),
		Value: units.Capacitance(side*math.Sqrt(filled) + face*math.Sqrt(flangePermittivity)),
		High:  units.Capacitance(1.3*side*max(filled, 1.2) + face*flangePermittivity),
	}
}

// outline is that of the outermost turns.
func (c Winding) outline() kernel.Outline {
	s, t := c.shape, c.layout.build
	return kernel.Outline{Length: float64(s.Length) + 2*t, Width: float64(s.Width) + 2*t, Radius: float64(s.CornerRadius) + t}
}

// faceArea is that of the turns seen from the strings.
func (c Winding) faceArea() float64 {
	return kernel.TurnArea(c.shape.corePerimeter(), c.shape.coreArea(), c.layout.build) - c.shape.coreArea()
}

// CapacitanceBetween returns the capacitance between two windings of the chain, counted from 1, that stand side by side or are
// stacked, all turns of each taken as one piece of metal. It counts in full where a hot outside faces a grounded one and
// not at all where the two sides that face each other are joined: the share is the square of their voltage against that of the
// chain.
//
// Source: cylinders and plates (W. R. Smythe, Static and Dynamic Electricity, 1950).
//
// Valid: upright windings whose gap is small against their size: up to half of the side that faces it.
//
// Accuracy: an estimate; the field around the edges is left out of the low end and flanges in the gap are in the high end.
//
// Example: pair.CapacitanceBetween(1, 2)
func (c Chain) CapacitanceBetween(one, other int) (CapacitanceRange, error) {
	if err := c.has(one, other); err != nil {
		return CapacitanceRange{}, err
	}
	a, b := c.coils[one-1], c.coils[other-1]
	if one == other || a.Tilt != 0 || b.Tilt != 0 {
		return CapacitanceRange{}, refuse("windings: not two upright ones", fmt.Sprintf("%d and %d", one, other), "two windings without Tilt", "")
	}
	d := b.position().Plus(-1, a.position())
	p, q := a.Winding.outline(), b.Winding.outline()
	over := min(float64(a.Winding.shape.Height), float64(b.Winding.shape.Height))
	switch gap := math.Abs(d[1]) - (p.Width+q.Width)/2; {
	case gap > 0 && math.Abs(d[2]) < over:
		beside := kernel.SideBySide(max(0, min(p.Length-2*p.Radius, q.Length-2*q.Radius)), min(p.Radius, q.Radius), gap)
		return facing(beside * (over - math.Abs(d[2]))), nil
	case math.Hypot(d[0], d[1]) < (p.Width+q.Width)/4 && math.Abs(d[2]) > over/2:
		apart := math.Abs(d[2]) - float64(a.Winding.shape.Height+b.Winding.shape.Height)/2
		return facing(kernel.Ring(min(a.Winding.faceArea(), b.Winding.faceArea()), max(apart, thinnestFlange))), nil
	}
	return CapacitanceRange{}, refuse("windings: do not face each other", fmt.Sprintf("x %v, y %v, z %v apart", units.Length(d[0]), units.Length(d[1]), units.Length(d[2])), "side by side along y, or stacked along z", "")
}

func facing(air float64) CapacitanceRange {
	return CapacitanceRange{Low: units.Capacitance(air), Value: units.Capacitance(air * math.Sqrt(flangePermittivity)), High: units.Capacitance(1.3 * air * flangePermittivity)}
}
