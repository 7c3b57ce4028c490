package induct

import "math"

// This file integrates over two pieces that come close to each other or lie above each other. The potential of a filled
// piece is smooth even where the kernel is not: its slope is continuous. So few points over one piece are enough, the outer
// one, if the potential of the other is right at each of them. The rules of both crowd where they come nearest.

// nearFrom is the number of points of plain rules from which near takes less time than they do.
const nearFrom = 3000

// mayCrowd reports whether near is for these windows: a coil by itself has rules of its own beyond a table's digits.
func (e *engine) mayCrowd() bool {
	_, tall := e.k.(*sheets)
	return tall && (e.quick || e.wp != e.wq)
}

// close is the axial gap as far as the peak of the kernel goes, which is sharper than smooth says, above all between thin
// windows.
func (e *engine) close() float64 { return e.gapOver(1. / 3) }

func (e *engine) gapOver(share float64) float64 {
	return e.gap + min(share*(e.smooth-e.gap), (e.wp.width()+e.wq.width())/8)
}

// peak is the sharpness of the kernel in digits more than those asked for: a pole beside windows that overlap in height, a
// kink above each other.
func (e *engine) peak(beside, above float64) float64 {
	if e.smooth > 0 {
		return above * e.sharp()
	}
	return beside * e.sharp()
}

// sharp is the digits asked for; beyond those of a table the rules are slower to gain any.
func (e *engine) sharp() float64 {
	if e.quick {
		return e.o.digits
	}
	return 1.4 * e.o.digits
}

// near is the integral over a pair of pieces, of which at most one is a side or both run in different directions. The outer
// one is the corner, the thinner corner or the shorter side.
func (e *engine) near(p, q *piece) float64 {
	wp, wq := e.wp, e.wq
	if q.isOuter(p, wq, wp) {
		p, q, wp, wq = q, p, wq, wp
	}
	inner := e.potentialOf(q, wq, e.peak(1.3, 1.1))
	along, depth, sum := e.outer(p, q, wp, wq), crowd{}, 0.0
	for i, x := range along.x[:along.n] {
		base, out, tangent := p.frame(x / p.width())
		e.outerDepths(&depth, q, base, out, wp, wq)
		part := 0.0
		for j, t := range depth.x[:depth.n] {
			value := inner.at(base.plus(out.times(t)), tangent)
			if p.arc {
				value *= t
			}
			part += depth.w[j] * value
		}
		sum += along.w[i] * part
	}
	return sum
}

func (p *piece) isOuter(q *piece, wp, wq window) bool {
	switch {
	case p.arc != q.arc:
		return p.arc
	case p.arc:
		return wp.width() < wq.width()
	}
	return p.length < q.length
}

// outer is the rule along the piece p on which the potential of q is taken. That changes over a share of q's depth, and most
// of all at the ends of the range in which both lie above each other.
func (e *engine) outer(p, q *piece, wp, wq window) (along crowd) {
	layer := e.close() + wq.width()/4
	x0, spread, least := nearestPlace(p, q, wp, wq, layer)
	d := math.Hypot(least, e.close()) + wq.width()/4
	if p.arc {
		d /= wp.to
	}
	digits, most := 1.6*e.sharp(), e.o.most*9/5
	if !p.arc {
		digits, most = 2*e.sharp(), e.o.most*3
	}
	most = min(most, maxOrder)
	n := orderFor(arsinh((p.width()-x0)/d)+arsinh(x0/d), math.Pi/2, digits, p.leastOrder()+1, most)
	along.about(x0, math.Hypot(d, 1.5*spread), 0, p.width(), 0, n, n)
	return along
}

// nearestPlace is where p comes nearest to q along itself, in the mean of places that are near alike, how far those are
// spread, and how near.
func nearestPlace(p, q *piece, wp, wq window, width float64) (x, spread, least float64) {
	const n = 16
	sum, square, times := 0.0, 0.0, 0.0
	least = math.Inf(1)
	for i := range n + 1 {
		x := float64(i) / n
		base, out, _ := p.frame(x)
		d := min(q.off2(base.plus(out.times(wp.from)), wq), q.off2(base.plus(out.times(wp.to)), wq))
		w := 1 / sq(d+width*width)
		sum, square, times, least = sum+w*x, square+w*x*x, times+w, min(least, d)
	}
	x = sum / times
	return x * p.width(), math.Sqrt(max(square/times-x*x, 0)) * p.width(), math.Sqrt(least)
}

// outerDepths fills the rule over the depth of a piece at one place along it: about where it crosses the middle of q.
func (e *engine) outerDepths(c *crowd, q *piece, base, out vec, wp, wq window) {
	if wp.width() == 0 {
		c.n, c.x[0], c.w[0] = 1, wp.from, 1
		return
	}
	t, slope := q.crossed(base, out, wp, (wq.from+wq.to)/2)
	d := math.Sqrt(q.off2(base.plus(out.times(t)), wq)+sq(e.close())) + wq.width()/4
	c.about(t, d/max(slope, 0.1), wp.from, wp.to, e.peak(1.6, 2.2), 2, min(e.o.most*9/10, maxOrder))
	c.times(1 / wp.width())
}

// crossed is the depth at which a line out of a window's skeleton crosses a piece at a distance from its own, or comes
// nearest to that, and the sine of the angle between both.
func (p *piece) crossed(base, out vec, w window, distance float64) (t, slope float64) {
	gap := base.minus(p.start)
	if !p.arc {
		slope = out.dot(p.out)
		t = (distance - gap.dot(p.out)) / slope
	} else {
		t = -gap.dot(out)
		if root := math.Sqrt(max(t*t-gap.dot(gap)+distance*distance, 0)); t < (w.from+w.to)/2 {
			t += root
		} else {
			t -= root
		}
		s := gap.plus(out.times(t))
		slope = s.dot(out) / max(s.length(), 1e-9)
	}
	if math.IsNaN(t) {
		t = w.from
	}
	return min(max(t, w.from-w.width()), w.to+w.width()), math.Abs(slope)
}
