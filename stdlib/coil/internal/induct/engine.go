package induct

import "math"

// This file sums the pairs of pieces of two windings with parallel axes. It chooses for every
// pair which of three quadratures over the builds fits:
//
//	aligned   one side or one corner of a common skeleton, which meet along their length
//	joined    a side and the corner next to it, which meet in a point
//	separate  everything else
type engine struct {
	k            kernel
	p, q         []piece
	wp, wq       window
	common       bool    // p and q have one skeleton
	height       float64 // axial scale of the kernel
	gap          float64 // axial distance of the windows
	digits       float64 // wanted error exp(-digits)
	nodes        []node
	cachedJoined []node
}

// A task is a pair of pieces and the number of pairs that are equal to it by symmetry.
type task struct {
	p, q  int
	times float64
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
	if !p.arc && !q.arc && math.Abs(p.along.dot(q.along)) < 1e-15 {
		return 0
	}
	if !e.common {
		return e.separate(p, q)
	}
	n := len(e.p)
	switch {
	case i == j:
		return e.aligned(p)
	case n > 2 && (j == (i+1)%n || (!p.arc && !q.arc && n > 4 && j == (i+2)%n)):
		return e.joined(p, q, atEnd)
	case n > 2 && (i == (j+1)%n || (!p.arc && !q.arc && n > 4 && i == (j+2)%n)):
		return e.joined(p, q, atStart)
	}
	return e.separate(p, q)
}

func (e *engine) aligned(p *piece) float64 {
	outer := max(4, int(e.digits*0.6))
	if !p.arc {
		e.nodes = together(e.nodes[:0], e.wp, e.wq, outer, 1, e.height)
		sum := 0.0
		for _, at := range e.nodes {
			sum += at.w * alignedSides(p.length, at.tp-at.tq, e.k)
		}
		return sum
	}
	e.nodes = together(e.nodes[:0], e.wp, e.wq, outer, max(2, int(e.digits*0.25)), e.height)
	r := gauss(max(6, int(e.digits*0.8)))
	sum := 0.0
	for _, at := range e.nodes {
		sum += at.w * alignedArcs(p.span, at.tp, at.tq, e.k, r)
	}
	return sum
}

// joined integrates a pair that meets at one end of p, seen from p.
func (e *engine) joined(p, q *piece, end touch) float64 {
	if len(e.cachedJoined) == 0 {
		e.cachedJoined = together(nil, e.wp, e.wq, max(3, int(e.digits*0.4)), max(2, int(e.digits*0.2)), e.height)
	}
	r := graded(max(4, int(e.digits*0.7)))
	sum := 0.0
	for _, at := range e.cachedJoined {
		sum += at.w * e.joinedAt(p, q, at, r, end)
	}
	return sum
}

func (e *engine) joinedAt(p, q *piece, at node, r rule, end touch) float64 {
	switch {
	case p.arc:
		return arcSide(p, q, at.tp, at.tq, e.k, r, end)
	case q.arc:
		return arcSide(q, p, at.tq, at.tp, e.k, r, atStart+atEnd-end)
	}
	return obliqueSides(p, q, at.tp, at.tq, e.k, r, end)
}

func (e *engine) separate(p, q *piece) float64 {
	d := math.Hypot(distance(p, q, e.wp, e.wq), e.gap)
	np := orderFor(e.wp.width(), d, e.digits, 2, 10)
	nq := orderFor(e.wq.width(), d, e.digits, 2, 10)
	e.nodes = separate(e.nodes[:0], e.wp, e.wq, np, nq)
	rp := gauss(orderFor(p.extent(e.wp.to), d, e.digits, 3, 20))
	rq := gauss(orderFor(q.extent(e.wq.to), d, e.digits, 3, 20))
	sum := 0.0
	for _, at := range e.nodes {
		sum += at.w * e.separateAt(p, q, at, rp, rq)
	}
	return sum
}

func (e *engine) separateAt(p, q *piece, at node, rp, rq rule) float64 {
	switch {
	case p.arc && q.arc:
		return arcs(p, q, at.tp, at.tq, e.k, rp, rq)
	case p.arc:
		return arcSide(p, q, at.tp, at.tq, e.k, rp, apart)
	case q.arc:
		return arcSide(q, p, at.tq, at.tp, e.k, rq, apart)
	case math.Abs(p.along.cross(q.along)) < 1e-15:
		return parallelSides(p, q, at.tp, at.tq, e.k)
	}
	return obliqueSides(p, q, at.tp, at.tq, e.k, rp, apart)
}

// distance is the least distance in the plane of two pieces anywhere in their windows, from
// samples: it only chooses the number of quadrature points.
func distance(p, q *piece, wp, wq window) float64 {
	least := math.Inf(1)
	for _, tp := range [2]float64{wp.from, wp.to} {
		for _, tq := range [2]float64{wq.from, wq.to} {
			least = math.Min(least, distanceAt(p, q, tp, tq))
			least = math.Min(least, distanceAt(q, p, tq, tp))
		}
	}
	return least
}

// distanceAt is the least distance of five points of p from q.
func distanceAt(p, q *piece, tp, tq float64) float64 {
	least := math.Inf(1)
	for i := range 5 {
		at, _ := p.at(float64(i)/4, tp)
		if !q.arc {
			gap := at.minus(q.start)
			x := math.Min(math.Max(gap.dot(q.along), 0), q.length)
			least = math.Min(least, math.Hypot(gap.dot(q.along)-x, gap.dot(q.out)-tq))
			continue
		}
		for j := range 5 {
			b, _ := q.at(float64(j)/4, tq)
			least = math.Min(least, at.minus(b).length())
		}
	}
	return least
}
