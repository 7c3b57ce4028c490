package induct

import "math"

// This file sums the pairs of pieces of two windings with parallel axes. It chooses for every
// pair which of three quadratures over the builds fits:
//
//	aligned   one side or one corner of a common skeleton, which meet along their length
//	joined    a side and the corner next to it, which meet in a point
//	separate  everything else
type engine struct {
	k      kernel
	p, q   []piece
	wp, wq window
	common bool    // p and q have one skeleton
	scale  float64 // least length over which the kernel changes
	gap    float64 // axial distance of the windows
	smooth float64 // the same as far as smoothness goes
	o      orders
	quick  bool // a table of the kernel is exact enough
	nodes  []node
	joints []node // of joined pieces, once found

	parts float64 // what the pairs of pieces add up to without their signs, where several engines work

	corners []corner // known near ends of joined sides
	sheets  []engine // of pieces that meet, if q is a thin layer
}

func (e *engine) total(tasks []task) float64 {
	sum := 0.0
	for _, t := range tasks {
		sum += t.times * e.pair(t.p, t.q)
	}
	return sum
}

// pair is the integral over one pair of pieces, averaged over both builds.
func (e *engine) pair(i, j int) float64 {
	p, q := &e.p[i], &e.q[j]
	switch {
	case p.extent(e.wp.to) == 0 || q.extent(e.wq.to) == 0:
		return 0
	case !p.arc && !q.arc && math.Abs(p.along.dot(q.along)) < 1e-15:
		return 0
	case !e.common:
		return e.separate(p, q)
	}
	n := len(e.p)
	if len(e.sheets) > 0 && meet(i, j, n) {
		return e.bySheets(i, j)
	}
	switch {
	case i == j:
		return e.aligned(p)
	case n > 2 && (j == (i+1)%n || (!p.arc && !q.arc && n > 4 && j == (i+2)%n)):
		return e.joined(p, q, atEnd)
	case n > 2 && (i == (j+1)%n || (!p.arc && !q.arc && n > 4 && i == (j+2)%n)):
		return e.joined(p, q, atStart)
	case n > 4 && p.arc && q.arc && e.isShort((i+1)%n) && j == (i+2)%n:
		return e.nearArcs(p, q, atEnd)
	case n > 4 && p.arc && q.arc && e.isShort((j+1)%n) && i == (j+2)%n:
		return e.nearArcs(p, q, atStart)
	}
	return e.separate(p, q)
}

// aligned integrates two copies of one piece. Its value is the same with tp and tq
// exchanged, so with equal windows one sign of the difference is enough.
func (e *engine) aligned(p *piece) float64 {
	if !p.arc {
		if value, ok := e.bars(p, p, e.wp, e.wq); ok {
			return value
		}
	}
	e.alignedNodes(p.arc)
	if p.arc && e.quick && e.smooth > 0 && len(e.nodes) > concentricFrom {
		return e.concentric(p)
	}
	if p.arc {
		return e.alignedArcs(p)
	}
	sum := 0.0
	for _, at := range e.nodes {
		sum += at.w * alignedSides(p.length, at.tp-at.tq, e.k)
	}
	return sum
}

func (e *engine) alignedArcs(p *piece) float64 {
	points := e.o.arc
	if e.wp != e.wq && p.span > 2 {
		points += 3
	}
	t, sum := newTurning(p.span, squared(points)), 0.0
	for _, at := range e.nodes {
		sum += at.w * t.arcs(at.tp, at.tq, e.k)
	}
	return sum
}

func (e *engine) alignedNodes(arc bool) {
	n := counts{e.o.aligned, e.o.aligned, 1, e.o.thin}
	if arc {
		n.middle = e.o.middle
	}
	if e.scale == 0 {
		n.near += 3 // the kernel is itself infinite at 0
	}
	if e.useProduct() {
		return
	}
	e.nodes = together(e.nodes[:0], e.wp, e.wq, n, e.scale)
	e.halve()
}

// halve leaves out the nodes in which tp and tq are exchanged, for equal windows.
func (e *engine) halve() {
	if e.wp != e.wq || e.wp.width() == 0 {
		return
	}
	e.nodes = e.nodes[:len(e.nodes)/2]
	for i := range e.nodes {
		e.nodes[i].w *= 2
	}
}

// useProduct fills the plain product of Gauss points where the axial gap
// keeps the windows so far apart that few of them are enough.
func (e *engine) useProduct() bool {
	n := orderFor(max(e.wp.width(), e.wq.width()), e.gap, e.o.digits, 2, maxOrder)
	if n > 4 {
		return false
	}
	e.nodes = separate(e.nodes[:0], e.wp, e.wq, n, n)
	return true
}

func (e *engine) separate(p, q *piece) float64 {
	if !p.arc && !q.arc && p.along.isNear(q.along, 1e-14) {
		return e.facing(p, q)
	}
	d := math.Hypot(e.distance(p, q), e.close())
	np := orderFor(e.wp.width(), d, e.o.digits, p.leastAcross(e.wp, d), e.o.most)
	nq := orderFor(e.wq.width(), d, e.o.digits, q.leastAcross(e.wq, d), e.o.most)
	if !p.arc && !q.arc && p.parallel(q) {
		return e.opposite(p, q, np, nq)
	}
	if e.common && np > 4 && !e.quick {
		e.nodes = e.jointNodes()
	} else {
		e.nodes = separate(e.nodes[:0], e.wp, e.wq, np, nq)
	}
	ap, aq := e.around(p, e.wp, d), e.around(q, e.wq, d)
	rp, rq := gauss(min(ap, 2*e.o.most)), gauss(min(aq, 2*e.o.most))
	switch {
	case e.mayCrowd() && (np*nq*ap*aq > nearFrom || max(ap, aq) > 2*e.o.most):
		return e.near(p, q)
	case p.arc && q.arc || e.byPoints(p, q, d):
		return product(p, q, e.nodes, e.k, rp, rq, apart)
	case q.arc && e.blocks(e.wp) && len(e.nodes) > 3*nq:
		return e.sector(q, p, e.wq, e.wp, rq, e.plain(e.wq, nq), apart, (*sheets).row)
	case p.arc && e.blocks(e.wq) && len(e.nodes) > 3*np:
		return e.sector(p, q, e.wp, e.wq, rp, e.plain(e.wp, np), apart, (*sheets).row)
	case q.arc:
		return alongPiece(q, p, e.nodes, true, e.k, rq, apart)
	}
	return alongPiece(p, q, e.nodes, false, e.k, rp, apart)
}

// around is the number of points along a piece at a distance from another.
func (e *engine) around(p *piece, w window, distance float64) int {
	return orderFor(p.extent(w.to), distance, e.o.digits, p.leastOrder(), 1000)
}

// byPoints reports whether a corner or a side and another side at a distance are integrated sooner by points of a table along
// the side than in closed form.
func (e *engine) byPoints(p, q *piece, distance float64) bool {
	n := orderFor(p.length+q.length, distance, e.o.digits, 3, maxOrder)
	switch k := e.k.(type) {
	case *sheets:
		return k.table != nil && n < min(20, 5*k.n)
	case *aboveEachOther:
		return k.table != nil && n < min(20, 2*len(k.z2))
	}
	return false
}

// leastAcross is the least number of points over a depth: the middle alone is off by a 24th of the square of width over
// distance, and for corners, whose turns grow with the depth, by a twelfth of width over distance times width over radius.
func (p *piece) leastAcross(w window, distance float64) int {
	if p.arc && sq(w.width()) < 2e-5*distance*w.to || !p.arc && w.width() < 0.01*distance {
		return 1
	}
	return 2
}

// leastOrder integrates the turning of an arc's tangent alone to 1e-6.
func (p *piece) leastOrder() int { return int(2.5 + 1.2*p.span) }
