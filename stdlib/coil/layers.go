package coil

import (
	"math"

	"lode/stdlib/coil/internal/induct"
)

// This file takes laid turns as full layers and a begun one around them.

// inBlocks adds up the full layers and the begun one. Each layer fills the depth from halfway to the layer below to
// halfway to the one above. Layers that are shifted to and fro spread the block a little: by the second moment of the
// shift, which is what the flux of a filled block depends on first.
func (c Winding) inBlocks() float64 {
	b, wire := c.blocks(), c.conductor()
	if !c.cornersCount() {
		return induct.Sum(append(b.filled(1), func() float64 { return b.rounding(wire).of(b) })...)
	}
	corners := c.corners()
	circle := corners.blocks()
	share := 2 * circle.full.MeanTurnLength() / b.full.MeanTurnLength() // deep around a small radius
	return induct.Sum(append(b.filled(1),
		corners.circles,
		func() float64 { return -induct.Sum(circle.filled(share)...) },
		func() float64 { r := b.rounding(wire); return r.of(b) - r.of(circle) },
	)...)
}

// inBlocksTo is inBlocks to a relative accuracy, with an estimate of the error.
func (c Winding) inBlocksTo(relative float64) (henry, err float64) {
	b := c.blocks()
	henry, err = b.filledTo(relative)
	round := b.rounding(c.conductor())
	henry += round.of(b)
	if !c.cornersCount() {
		return henry, err
	}
	corners := c.corners()
	circle := corners.blocks()
	filled, off := circle.filledTo(max(1e-7, relative/10))
	return henry + corners.circles() - filled - round.of(circle), err + off
}

// cornersCount reports whether turns are so few that their corners are looked at one by one. What single turns have more than
// blocks there is found for all corners together, which are a circle; along the sides the correction for round wire is right.
func (c Winding) cornersCount() bool { return c.layout.layers*c.turns <= mostCircles }

// mostCircles is the number of layers times turns up to which that matters.
const mostCircles = 500

// corners is the winding without its sides.
func (c Winding) corners() Winding {
	c.shape.Length, c.shape.Width = 2*c.shape.CornerRadius, 2*c.shape.CornerRadius
	return c
}

// blocks are the full layers of a winding and the begun one around them.
type blocks struct {
	full, last             induct.Section
	layers, perLayer, left int
	away                   float64 // from the middle of the bobbin to that of the begun layer
}

func (c Winding) blocks() blocks {
	o := c.layout
	b := blocks{layers: c.turns / o.perLayer, perLayer: o.perLayer, left: c.turns % o.perLayer}
	step := c.style.depth(o.layers-1, o.rise) / float64(o.layers-1)
	under := (float64(c.wire.Overall()) - step) / 2
	shift := c.style.shift(o.pitch)
	b.full = c.block(under, float64(b.layers)*step)
	b.full.Height = float64(o.perLayer) * o.pitch
	if b.layers > 1 {
		b.full.Height = math.Sqrt(sq(b.full.Height) + 3*sq(shift))
	}
	b.last = c.block(under+b.full.Build, step)
	b.last.Height = float64(b.left) * o.pitch
	b.away = (float64(o.perLayer-b.left)*o.pitch + shift) / 2
	if b.layers%2 == 1 {
		b.away += shift / 2 / float64(b.layers) // an odd number of layers has its middle on the other side
	}
	return b
}

// turns are those of the full layers.
func (b blocks) turns() float64 { return float64(b.layers * b.perLayer) }

// filled are the parts of the inductance of evenly filled blocks, which are themselves a share of a whole.
func (b blocks) filled(share float64) []func() float64 {
	full, last := b.turns(), float64(b.left)
	parts := []func() float64{func() float64 { return induct.SelfPart(b.full, full, share) }}
	if b.left == 0 {
		return parts
	}
	begun := last / (full + last)
	return append(parts,
		func() float64 { return 2 * induct.CoaxialPart(b.full, b.last, full, last, b.away, 2*begun*share) },
		func() float64 { return induct.SelfPart(b.last, last, begun*begun*share) },
	)
}

// filledTo is the sum of filled to a relative accuracy, with an estimate of the error.
func (b blocks) filledTo(relative float64) (henry, err float64) {
	full, last := b.turns(), float64(b.left)
	henry, err = induct.SelfTo(b.full, full, 0.6*relative)
	if b.left == 0 {
		return henry, err
	}
	if relative >= 1e-5 {
		for _, part := range b.filled(1)[1:] {
			henry += part()
		}
		return henry, err + induct.PartOff*henry
	}
	share := last / full
	m, errM := induct.CoaxialTo(b.full, b.last, full, last, b.away, min(1e-3, relative/8/share))
	own, errOwn := induct.SelfTo(b.last, last, min(1e-3, relative/4/share/share))
	return henry + 2*m + own, err + 2*errM + errOwn
}

// A rounding is what round wires have more than filled blocks, in henry a metre of turn: the full layers, the begun one
// and both together.
type rounding struct{ full, last, both float64 }

func (b blocks) rounding(wire induct.Wire) (r rounding) {
	r.full = induct.RoundWire(b.full, b.layers, b.perLayer, wire) / b.full.MeanTurnLength()
	if b.left > 0 {
		r.last = induct.RoundWire(b.last, 1, b.left, wire) / b.last.MeanTurnLength()
		r.both = induct.BegunLayer(b.full, b.layers, b.perLayer, b.left, wire) / b.full.TurnLength(b.full.Build)
	}
	return r
}

func (r rounding) of(b blocks) float64 {
	return r.full*b.full.MeanTurnLength() + r.last*b.last.MeanTurnLength() + r.both*b.full.TurnLength(b.full.Build)
}

// block is a window of the winding that begins at a depth over the core, which may lie a little within it.
func (c Winding) block(depth, build float64) induct.Section {
	s := c.shape.section(build)
	s.CoreLength, s.CoreWidth, s.CornerRadius = s.CoreLength+2*depth, s.CoreWidth+2*depth, s.CornerRadius+depth
	if s.CornerRadius < 0 {
		s.CornerRadius = 0
	}
	return s
}
