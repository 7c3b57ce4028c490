package coil

import (
	"math"

	"lode/stdlib/coil/internal/induct"
)

// This file takes the parts of a laid winding as blocks: between two taps lie the end of a layer, full layers and the
// begin of one.

// A filled is turns that fill a window evenly, and where its middle lies over that of the bobbin.
type filled struct {
	section          induct.Section
	away             float64
	layers, perLayer int
}

func (f filled) turns() float64 { return float64(f.layers * f.perLayer) }

// blocksBetween returns the blocks of the turns between two numbers of turns of a laid winding.
func (c Winding) blocksBetween(from, to int) (list []filled) {
	n := c.layout.perLayer
	for layer := from / n; layer*n < to; layer++ {
		first, last := max(from-layer*n, 0), min(to-layer*n, n)
		if k := len(list) - 1; first == 0 && last == n && k >= 0 && list[k].perLayer == n {
			list[k] = c.filled(layer-list[k].layers, list[k].layers+1, 0, n)
			continue
		}
		list = append(list, c.filled(layer, 1, first, last))
	}
	return list
}

// filled is some layers from one on, from one place along to another.
func (c Winding) filled(layer, layers, first, last int) filled {
	o, shift := c.layout, c.style.shift(c.layout.pitch)
	begin := c.style.depth(layer, o.rise)
	end := c.style.depth(layer+layers, o.rise)
	under := (float64(c.wire.Overall()) - (end-begin)/float64(layers)) / 2
	f := filled{section: c.block(under+begin, end-begin), layers: layers, perLayer: last - first}
	f.section.Height = float64(last-first) * o.pitch
	middle := (float64(first+last) - float64(o.perLayer)) / 2 * o.pitch
	if layer%2 == 1 {
		middle = -middle // wound back
	}
	f.away = middle
	if layers%2 == 1 { // one more to the one side than to the other
		f.away += shift * (float64(layer%2) - 0.5) / float64(layers)
	}
	if layers > 1 {
		f.section.Height = math.Hypot(f.section.Height, math.Sqrt(3)*shift) // of equal second moment
	}
	return f
}

// sumOfBlocks is the inductance of the blocks in series to a relative accuracy, with an estimate of the error, and with what round
// wires have more.
func (c Winding) sumOfBlocks(relative float64) (henry, err float64) {
	add := func(times, part, off float64) { henry, err = henry+times*part, err+times*off }
	for i, a := range c.layout.blocks {
		own, off := induct.SelfTo(a.section, a.turns(), relative)
		add(1, own, off)
		add(1, induct.RoundWire(a.section, a.layers, a.perLayer, c.conductor()), 0)
		for _, b := range c.layout.blocks[:i] {
			m, off := induct.CoaxialTo(a.section, b.section, a.turns(), b.turns(), b.away-a.away, relative)
			add(2, m, off)
		}
	}
	return henry, err
}

// filledBlocks are those of laid turns or of a part between taps, or the whole window.
func (c Winding) filledBlocks() []filled {
	switch {
	case len(c.layout.blocks) > 0:
		return c.layout.blocks
	case c.laid() && c.layout.layers > 1:
		return c.blocksBetween(0, c.turns)
	}
	return []filled{{section: c.section(), layers: 1, perLayer: c.turns}}
}

// mutual returns the mutual inductance of two windings that both run the same way.
func mutual(a, b Placed) float64 {
	place := induct.Placement{Shift: a.turned(b.position().Plus(-1, a.position()), -1), Turn: a.between(b)}
	if turn, ok := a.levelWith(b); ok && (a.Winding.isFree() || b.Winding.isFree()) {
		return induct.ParallelOutlines(a.Winding.anyOutline(), b.Winding.anyOutline(), float64(a.Winding.turns), float64(b.Winding.turns), turn, place.Shift)
	}
	up := place.Axis()
	sum, pairs := 0.0, float64(a.Winding.turns*b.Winding.turns)
	for _, p := range a.Winding.filledBlocks() {
		for _, q := range b.Winding.filledBlocks() {
			at := place
			for i := range at.Shift {
				at.Shift[i] += q.away * up[i]
			}
			at.Shift[2] -= p.away
			sum += induct.PairPart(p.section, q.section, p.turns(), q.turns(), at, p.turns()*q.turns()/pairs)
		}
	}
	return sum
}
