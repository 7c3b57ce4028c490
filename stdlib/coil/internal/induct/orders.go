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
	a, b := p.spots(), q.spots()
	if e.common {
		return math.Sqrt(a.distance2(&b, e.wp.from, e.wq.from))
	}
	least := math.Inf(1)
	for _, tp := range [2]float64{e.wp.from, e.wp.to} {
		for _, tq := range [2]float64{e.wq.from, e.wq.to} {
			least = min(least, a.distance2(&b, tp, tq))
		}
	}
	return math.Sqrt(least)
}

// spots are five places along a piece, on its skeleton and with the way out of it.
type spots struct {
	p    *piece
	base [5]vec
	out  [5]vec
}

func (p *piece) spots() (s spots) {
	s.p = p
	for i := range s.base {
		s.base[i], s.out[i], _ = p.frame(float64(i) / 4)
	}
	return s
}

// distance2 is the square of the least distance of the places of both pieces at their depths, and of either's places from
// the other if that is a side.
func (s *spots) distance2(o *spots, ts, to float64) float64 {
	least := math.Inf(1)
	for i := range s.base {
		a := s.base[i].plus(s.out[i].times(ts))
		for j := range o.base {
			gap := a.minus(o.base[j]).minus(o.out[j].times(to))
			least = min(least, gap.dot(gap))
		}
		if !o.p.arc {
			least = min(least, sideDistance2(o.p, to, a))
		}
		if !s.p.arc {
			least = min(least, sideDistance2(s.p, ts, o.base[i].plus(o.out[i].times(to))))
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
