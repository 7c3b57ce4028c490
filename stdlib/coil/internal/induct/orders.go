package induct

import "math"

// This file chooses the numbers of quadrature points.

// orders are the points of each quadrature. The tests measure what they reach.
type orders struct {
	aligned, joined int     // differences of distance
	middle          int     // mean distance
	across          int     // depth of a corner beside a block
	thin            int     // depth of a window that is thin beside another
	arc, joinedArc  int     // angle
	digits          float64 // separate pieces: error exp(-digits)
	most            int     // points over the depth of separate pieces at most, twice as many along them
}

// ordersAt returns the orders of a level of effort; every level takes about one digit
// off the error. Level 2 is the default.
func ordersAt(level int) orders {
	return orders{
		aligned: 4 + level, joined: 3 + level, middle: 1 + (level+1)/2, across: 3 + level, thin: max(2, level+1),
		arc: 4 + 2*level, joinedArc: 5 + level, digits: 5 + 2*float64(level), most: int(10 * math.Pow(2, max(0, min(float64(level), 6)-2)/2)),
	}
}

// deepen adds points over the mean distance for deep windows, where the radius of the corners grows many times over from
// the first turn to the last.
func (o orders) deepen(w window) orders {
	if w.width() > 0.6*w.from {
		o.middle += 2
	}
	if w.width() > 20*w.from {
		o.middle += 2
	}
	return o
}

// distance is the least distance in the plane of two pieces anywhere in their windows, from
// samples: it only chooses the number of quadrature points. Pieces of one skeleton
// are nearest at the inside of their windows.
func (e *engine) distance(p, q *piece) float64 {
	if e.common {
		return math.Sqrt(distance2(p, q, e.wp.from, e.wq.from))
	}
	least := math.Inf(1)
	for _, tp := range [2]float64{e.wp.from, e.wp.to} {
		for _, tq := range [2]float64{e.wq.from, e.wq.to} {
			least = min(least, distance2(p, q, tp, tq), distance2(q, p, tq, tp))
		}
	}
	return math.Sqrt(least)
}

// distance2 is the square of the least distance of five points of p from q.
func distance2(p, q *piece, tp, tq float64) float64 {
	if p.arc && !q.arc {
		p, q, tp, tq = q, p, tq, tp
	}
	least := math.Inf(1)
	var at [5]vec
	for i := range at {
		at[i], _ = p.at(float64(i)/4, tp)
	}
	for j := range 5 {
		b, _ := q.at(float64(j)/4, tq)
		for _, a := range at {
			gap := a.minus(b)
			least = min(least, gap.dot(gap))
		}
		if !p.arc {
			least = min(least, sideDistance2(p, tp, b))
		}
	}
	return least
}

// sideDistance2 is the square of the distance of a point from a side.
func sideDistance2(p *piece, tp float64, b vec) float64 {
	gap := b.minus(p.start)
	x := gap.dot(p.along)
	x -= min(max(x, 0), p.length)
	y := gap.dot(p.out) - tp
	return x*x + y*y
}
