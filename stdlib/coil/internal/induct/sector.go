package induct

import "math"

// This file integrates the potential of a block, a side of all turns, over a corner of all turns.
// Two of the four integrals over a corner and a side are then closed forms.

// joinedSector is sector for a corner p and the side q that begins where it ends. The end of the side that
// is far from the corner is smooth and needs few points.
func (e *engine) joinedSector(p, q *piece, wp, wq window, around rule, end touch) float64 {
	depths := e.depths(wp, wq, e.acrossFor(wp, wq))
	if n := orderFor(p.extent(wp.to), e.smooth, e.o.digits, p.leastOrder(), maxOrder); e.smooth > 0 && n < len(around.x) {
		around = gauss(n)
	}
	few := orderFor(p.extent(wp.to), q.length, e.o.digits, p.leastOrder(), maxOrder)
	flat := orderFor(wp.width(), q.length, e.o.digits, p.leastAcross(wp, q.length), maxOrder)
	if few*flat <= len(around.x)*len(depths) {
		near := e.nearEnd(p, wp, wq, func() float64 { return e.sector(p, q, wp, wq, around, depths, end, (*sheets).near) })
		return near + e.sector(p, q, wp, wq, gauss(few), e.plain(wp, flat), end, (*sheets).far)
	}
	return e.sector(p, q, wp, wq, around, depths, end, (*sheets).row)
}

// A corner is what the near ends of both its sides have in common, seen from it.
type corner struct {
	span   float64
	wp, wq window
	near   float64
}

// nearEnd is find for a corner, once: the sides on its left and right are mirror images but for their length.
func (e *engine) nearEnd(p *piece, wp, wq window, find func() float64) float64 {
	for _, c := range e.corners {
		if c.wp == wp && c.wq == wq && math.Abs(c.span-p.span) < 1e-12 {
			return c.near
		}
	}
	near := find()
	e.corners = append(e.corners, corner{p.span, wp, wq, near})
	return near
}

// sector is the integral over arc p and side q, averaged over both windows. The rule of the angle counts
// from the end of p at which q may join it; row is the share of the side's ends.
func (e *engine) sector(p, q *piece, wp, wq window, around rule, depths []node, end touch, row func(k *sheets, x, length, y float64) float64) float64 {
	k := e.k.(*sheets)
	sum := 0.0
	for i, x := range around.x {
		if end == atEnd {
			x = 1 - x
		}
		x0, xt, y0, yt, cos := q.sees(p, x)
		part := 0.0
		for _, at := range depths {
			x, y := x0+xt*at.tp, y0+yt*at.tp
			part += at.w * at.tp * (row(k, x, q.length, y-wq.from) - row(k, x, q.length, y-wq.to))
		}
		sum += around.w[i] * cos * part
	}
	return p.span * sum / wq.width()
}

// row is the difference of block between both ends of a side that runs from 0 to length, seen from x.
func (k *sheets) row(x, length, y float64) float64 {
	if x > 0 && x < length {
		return k.block(x, y) + k.block(length-x, y) - 2*k.block(0, y)
	}
	return k.near(x, length, y) + k.far(x, length, y)
}

// near is the end of the side that is nearer to x, which lies beyond it, far the other end.
func (k *sheets) near(x, length, y float64) float64 { return -k.block(max(-x, x-length, 0), y) }
func (k *sheets) far(x, length, y float64) float64  { return k.block(max(length-x, x), y) }

// acrossFor is the number of points over the depth of a corner: fewer where it is thin beside the block or where
// an axial gap smooths the potential.
func (e *engine) acrossFor(wp, wq window) int {
	n := min(e.o.across, e.o.across-2+int(4*wp.width()/wq.width()))
	if e.o.across > ordersAt(defaultLevel).across {
		n = e.o.across
	}
	if e.smooth > 0 {
		n = min(n, orderFor(wp.width(), e.smooth, e.o.digits, 2, n))
	}
	return max(n, 2)
}

// plain fills nodes over the depth of a corner far from the block.
func (e *engine) plain(wp window, n int) []node { return e.depths(wp, window{}, n) }

// depths fills nodes over the depth of a corner, cut where the block beside it begins and ends.
func (e *engine) depths(wp, wq window, n int) []node {
	e.nodes = e.nodes[:0]
	if wp.width() == 0 {
		return append(e.nodes, node{tp: wp.from, w: 1})
	}
	left, r := wp.from, gauss(n)
	for _, cut := range [3]float64{wq.from, wq.to, wp.to} {
		right := math.Min(math.Max(cut, left), wp.to)
		if right-left > 1e-9*wp.width() {
			for i, x := range r.x {
				e.nodes = append(e.nodes, node{tp: left + x*(right-left), w: r.w[i] * (right - left) / wp.width()})
			}
			left = right
		}
	}
	return e.nodes
}
