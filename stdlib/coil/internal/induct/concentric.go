package induct

import "math"

// This file integrates over two arcs of one centre and one range of angles, whose windows lie above each other.

// concentricFrom is the number of pairs of depths from which this takes less time than alignedArcs.
const concentricFrom = 30

// concentric is the integral over two copies of an arc. As in turning, the angle between two points occurs with the weight
// span − |v|, so that the potential need be known along one radius only. It is cut where the other window begins and ends.
func (e *engine) concentric(p *piece) float64 {
	wp, wq := e.wp, e.wq
	if wq.width() < wp.width() {
		wp, wq = wq, wp
	}
	inner := e.potentialOf(p, wq, 1.5*e.o.digits)
	if wp.width() == 0 {
		return wp.from * inner.turned(wp.from)
	}
	sum, left := 0.0, wp.from
	for _, cut := range [3]float64{wq.from, wq.to, wp.to} {
		right := min(max(cut, left), wp.to)
		if right-left > 1e-9*wp.width() {
			r := gauss(orderFor(right-left, e.close()+wq.width()/4, 1.6*e.o.digits, 3, e.o.most))
			for i, y := range r.x {
				t := left + y*(right-left)
				sum += r.w[i] * (right - left) * t * inner.turned(t)
			}
		}
		left = right
	}
	return sum / wp.width()
}

// turned is the potential at a distance from the centre, weighted by how often each angle occurs.
func (f *potentialOf) turned(y float64) float64 {
	_, across := f.q.off(sight{f.q.span / 2, y}, f.w)
	f.fillDepth(y, f.peak(0))
	full, span := f.q.span > 2*math.Pi-1e-9, f.q.span
	if full {
		span = math.Pi
	}
	f.along.about(0, f.angle(y, f.peak(across)), 0, span, f.digits, f.q.leastOrder(), maxOrder)
	sum := 0.0
	for i, v := range f.along.x[:f.along.n] {
		weight := 2 * (span - v)
		if full {
			weight = 4 * math.Pi
		}
		sin := math.Sin(v / 2)
		sum += f.along.w[i] * weight * (1 - 2*sin*sin) * f.line(y, 4*y*sin*sin, 0)
	}
	return sum
}
