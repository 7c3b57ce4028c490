package induct

import "math"

// This file integrates pairs of parallel sides.

// parallel reports whether two sides are.
func (p *piece) parallel(q *piece) bool { return math.Abs(p.along.cross(q.along)) <= 1e-14 }

// fewPairs is the number of pairs of depths up to which two sides take less time by each pair than in closed form.
const fewPairs = 4

// facing integrates two parallel sides that lie on one line of distances, exactly but for
// the difference of those.
func (e *engine) facing(p, q *piece) float64 {
	op, oq := p.start.dot(p.out), q.start.dot(p.out)
	wp := window{e.wp.from + op, e.wp.to + op}
	wq := window{e.wq.from + oq, e.wq.to + oq}
	if value, ok := e.bars(p, q, wp, wq); ok {
		return value
	}
	e.nodes = together(e.nodes[:0], wp, wq, counts{e.o.aligned, e.o.aligned, 1, e.o.thin}, e.scale)
	sum := 0.0
	for _, at := range e.nodes {
		sum += at.w * parallelSides(p, q, at.tp-op, at.tq-oq, e.k)
	}
	return sum
}

// opposite is facing for sides that run against each other: in closed form, or by few points over both depths.
func (e *engine) opposite(p, q *piece, np, nq int) float64 {
	if np*nq > fewPairs {
		op, oq := p.start.dot(p.out), q.start.dot(p.out)
		if value, ok := e.bars(p, q, window{e.wp.from + op, e.wp.to + op}, window{oq - e.wq.to, oq - e.wq.from}); ok {
			return value
		}
	}
	e.nodes = separate(e.nodes[:0], e.wp, e.wq, np, nq)
	sum := 0.0
	for _, at := range e.nodes {
		sum += at.w * parallelSides(p, q, at.tp, at.tq, e.k)
	}
	return sum
}
