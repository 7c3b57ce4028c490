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
// the turns (J. C. Maxwell, Treatise, 1873, for energy and capacitance); walls as plates and cylinders, less the field that the
// winding has outside without a cover; the factors for that and for the edges are fitted to 40 windings by boundary elements.
//
// Valid: cover and winding in line, a convex core as Inside has it, the cover in the middle, open below and tied to the grounded
// lead; space around and above of up to the winding's height; below the first resonance.
//
// Accuracy: in air within 20 % of boundary elements with the finish hot, mostly within 10 %; within 40 % with the start hot, where it
// is small and poles in the core matter. An estimate all the same: the space may be filled and the winding bulges. The range is for that.
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
	gap := max(float64(space.Above), thinnestFlange)
	side, face := c.coverSide(cover, hot), c.coverFace(gap, hot)
	if hot == Start { // the innermost turns face the plate through the core
		core := c.shape.corePerimeter()
		side += 0.3 * kernel.VacuumPermittivity * core * math.Log(1+core/(10*gap))
	}
	return c.surrounded(side, face), nil
}

// coverSide is what the cover's walls add in air: the field between the walls, less the one that the winding has without
// them. Between concentric balls the two make the whole as the radii are to each other, here the perimeters.
func (c Winding) coverSide(cover Cover, hot Lead) float64 {
	const fitted = 0.95
	in, out := c.outline(), kernel.Outline{Length: float64(cover.Length), Width: float64(cover.Width), Radius: float64(cover.CornerRadius)}
	layers := float64(max(1, c.layout.layers))
	square := 1 - 1/layers + 1/(3*layers*layers) // mean of the outermost layer's voltage
	if hot == Start {
		square = 1 / (3 * layers * layers)
	}
	return fitted * square * in.Perimeter() / out.Perimeter() * kernel.Walls(in, out) * float64(c.shape.Height)
}

// coverFace is what the cover's plate adds in air over turns whose voltage grows or falls with the depth.
func (c Winding) coverFace(gap float64, hot Lead) float64 {
	core, build := c.shape.corePerimeter(), c.layout.build
	if hot == Start {
		return 0.9 * kernel.Ring(build*(core/3+math.Pi*build/6), gap)
	}
	return 1.1 * kernel.Ring(build*(core/3+math.Pi*build/2), gap)
}

// thinnestFlange lies between the winding and a cover that rests on the bobbin: common practice, no source. Flanges of fibre
// and plastic have relative permittivities of 3 to 5.
const thinnestFlange, flangePermittivity = 0.5e-3, 4

// surrounded puts the part of the sides and that of the faces together: in air at the least; with the faces under
// a flange that fills half of the gap; filled all over and nearer at the most.
func (c Winding) surrounded(side, face float64) CapacitanceRange {
	filled := c.filling()
	return CapacitanceRange{
		Low:   units.Capacitance(0.85 * (side + face)),
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

// CapacitanceBetween returns the capacitance between two windings of the chain, counted from 1, that stand beside each other or are
// stacked, all turns of each taken as one piece of metal. It adds in full to a hot winding whose neighbour is grounded. Within a chain
// it adds the part (u-v)², with u and v the voltages of the two sides that face each other, as parts of the chain's: nothing
// where these are joined, a quarter where two equal windings are joined finish to start, since one outside is then at the middle
// and the other at the end.
//
// Source: cylinders and plates (W. R. Smythe, Static and Dynamic Electricity, 1950), with the logarithm of H. B. Palmer (AIEE
// Transactions 56, 1937, 363-366) for the field around their edges, twice it since windings are thick.
//
// Valid: upright windings whose gap is small against their size: up to half of the side that faces it.
//
// Accuracy: in air within 25 % of boundary elements, mostly within 15 %; what is in the gap makes the range: a compound between windings side by
// side, flanges between stacked ones.
//
// Example: pair.CapacitanceBetween(1, 2)
func (c Chain) CapacitanceBetween(one, other int) (CapacitanceRange, error) {
	if err := c.has(one, other); err != nil {
		return CapacitanceRange{}, err
	}
	a, b := c.coils[one-1], c.coils[other-1]
	if one == other || a.Tilt != 0 || b.Tilt != 0 || a.between(b) != [3]float64{} {
		return CapacitanceRange{}, refuse("windings: not two upright ones", fmt.Sprintf("%d and %d", one, other), "two windings without Tilt, turned alike", "")
	}
	switch f := a.faces(b); {
	case f.beside && f.gap > 0 && f.over > 0:
		plates := kernel.SideBySide(f.straight, f.radius, f.gap) * f.over
		edges := 2 * kernel.Edge(f.straight+math.Sqrt(f.radius*f.gap), f.over+f.thick, f.gap)
		return facing(plates, edges, max(a.Winding.filling(), b.Winding.filling())), nil
	case !f.beside && f.gap >= 0:
		small := a.Winding
		if b.Winding.faceArea() < small.faceArea() {
			small = b.Winding
		}
		gap := max(f.gap, thinnestFlange)
		edges := kernel.Edge(small.outline().Perimeter()+small.shape.corePerimeter(), small.layout.build+f.thick, gap)
		return facing(kernel.Ring(small.faceArea(), gap), edges, flangePermittivity), nil
	}
	d := b.position().Plus(-1, a.position())
	return CapacitanceRange{}, refuse("windings: do not face each other", fmt.Sprintf("x %v, y %v, z %v apart", units.Length(d[0]), units.Length(d[1]), units.Length(d[2])), "beside each other, or stacked in line along z", "")
}

// facings is how two upright windings face each other.
type facings struct {
	beside           bool    // or else stacked
	gap              float64 // between them
	straight, radius float64 // of the sides that face each other; side by side
	over, thick      float64 // height in common, or nothing; how far they reach away from the gap
}

func (p Placed) faces(q Placed) facings {
	d, a, b := p.turned(q.position().Plus(-1, p.position()), -1), p.Winding.outline(), q.Winding.outline()
	high, low := float64(p.Winding.shape.Height), float64(q.Winding.shape.Height)
	if math.Hypot(d[0], d[1]) < (a.Width+b.Width)/4 && math.Abs(d[2]) > min(high, low)/2 {
		return facings{gap: math.Abs(d[2]) - (high+low)/2, thick: min(high, low)}
	}
	f := facings{beside: true, radius: min(a.Radius, b.Radius), over: min(high, low, (high+low)/2-math.Abs(d[2]))}
	// gaps between the straight cores, negative where they overlap
	dx := math.Abs(d[0]) - (a.Length+b.Length)/2 + a.Radius + b.Radius
	dy := math.Abs(d[1]) - (a.Width+b.Width)/2 + a.Radius + b.Radius
	f.gap = math.Hypot(max(0, dx), max(0, dy)) - a.Radius - b.Radius
	f.straight, f.thick = min(max(0, -dx), a.Length-2*a.Radius, b.Length-2*b.Radius), min(a.Width, b.Width)
	if dx > dy {
		f.straight, f.thick = min(max(0, -dy), a.Width-2*a.Radius, b.Width-2*b.Radius), min(a.Length, b.Length)
	}
	return f
}

// facing is air at the least; the gap half filled; filled all over and narrower at the most.
func facing(plates, edges, filled float64) CapacitanceRange {
	return CapacitanceRange{
		Low:   units.Capacitance(0.8 * (plates + edges)),
		Value: units.Capacitance(plates*math.Sqrt(filled) + edges),
		High:  units.Capacitance(1.3 * (plates*filled + edges*math.Sqrt(filled))),
	}
}
