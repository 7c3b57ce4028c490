package induct

import "math"

// This file integrates the kernel over one pair of pieces,
//
//	∫∫ (T·T') f(|x−x'|) dl dl'
//
// with piece p at distance tp and piece q at distance tq from their skeletons. Sides are done
// in closed form; only the angle of an arc is integrated numerically.

// touch says at which end of an arc the other piece of a pair joins it.
type touch int

const (
	apart touch = iota
	atStart
	atEnd
)

// parallelSides is exact. The sides may be displaced along each other.
func parallelSides(p, q *piece, tp, tq float64, k kernel) float64 {
	gap := q.start.minus(p.start).plus(q.out.times(tq)).minus(p.out.times(tp))
	d := math.Abs(gap.dot(p.out))
	x := gap.dot(p.along)
	way := p.along.dot(q.along)
	far := x + way*q.length
	// q runs from x to far, p from 0 to p.length; double is even.
	sum := k.double(far, d) - k.double(far-p.length, d) - k.double(x, d) + k.double(x-p.length, d)
	return sum
}

// alignedSides is parallelSides for two copies of one side, the distance delta apart.
func alignedSides(length, delta float64, k kernel) float64 {
	return 2 * (k.double(length, delta) - k.double(0, delta))
}

// obliqueSides integrates the closed-form potential of q along p.
func obliqueSides(p, q *piece, tp, tq float64, k kernel, r rule, end touch) float64 {
	cos := p.along.dot(q.along)
	if math.Abs(cos) < 1e-15 {
		return 0
	}
	sum := 0.0
	for i, x := range r.x {
		if end == atEnd {
			x = 1 - x
		}
		at, _ := p.at(x, tp)
		sum += r.w[i] * sidePotential(q, tq, at, k)
	}
	return cos * p.length * sum
}

// sidePotential is the integral of f along side q as seen from a point.
func sidePotential(q *piece, tq float64, at vec, k kernel) float64 {
	gap := at.minus(q.start)
	d := gap.dot(q.out) - tq
	x := gap.dot(q.along)
	return k.side(x-q.length, x, d)
}

// arcSide integrates the closed-form potential of side q along arc p.
func arcSide(p, q *piece, tp, tq float64, k kernel, r rule, end touch) float64 {
	if tp == 0 {
		return 0
	}
	sum := 0.0
	for i, x := range r.x {
		if end == atEnd {
			x = 1 - x
		}
		at, tangent := p.at(x, tp)
		sum += r.w[i] * tangent.dot(q.along) * sidePotential(q, tq, at, k)
	}
	return p.span * tp * sum
}

// arcs integrates over two arcs that do not share a centre.
func arcs(p, q *piece, tp, tq float64, k kernel, rp, rq rule) float64 {
	var at, tangent [maxOrder]vec
	for j, y := range rq.x {
		at[j], tangent[j] = q.at(y, tq)
	}
	sum := 0.0
	for i, x := range rp.x {
		a, ta := p.at(x, tp)
		for j, w := range rq.w {
			gap := a.minus(at[j])
			sum += rp.w[i] * w * ta.dot(tangent[j]) * k.point(gap.dot(gap))
		}
	}
	return p.span * tp * q.span * tq * sum
}

// alignedArcs integrates over two arcs of one centre and one range of angles, radii tp and
// tq. The angle between two points, v, occurs with the weight (span − |v|), so that
//
//	tp tq ∫ (span−|v|) cos v f(√(δ²+4s² sin²(v/2))) dv,  s² = tp tq,  δ = tp − tq
//
// remains, in which the near-singular part at v = 0 is that of two straight sides of length
// s·span the distance δ apart: this is taken in closed form and the smooth
// difference by quadrature. A full circle has the weight 2π instead.
func alignedArcs(span, tp, tq float64, k kernel, r rule) float64 {
	s2 := tp * tq
	if s2 == 0 {
		return 0
	}
	s, delta := math.Sqrt(s2), tp-tq
	d2 := delta * delta
	full := span > 2*math.Pi-1e-9
	if full {
		span = math.Pi
	}
	sum := 0.0
	for i, x := range r.x {
		v := x * span
		sin := math.Sin(v / 2)
		bend := (1-2*sin*sin)*k.point(d2+4*s2*sin*sin) - k.point(d2+s2*v*v)
		if !full {
			bend *= 1 - x
		}
		sum += r.w[i] * bend
	}
	if full {
		return 4*math.Pi*s2*span*sum + 4*math.Pi*s*k.side(0, s*span, delta)
	}
	return 2*s2*span*span*sum + alignedSides(s*span, delta, k)
}
