package induct

import "math"

// This file integrates the kernel over one pair of pieces,
//
//	∫∫ (T·T') f(|x−x'|) dl dl'
//
// with piece p at distance tp and piece q at distance tq from their skeletons. Sides are done
// in closed form; only the angle of an arc is integrated numerically.

// touch says at which end of a piece the other piece of a pair joins it.
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
	if near := 1e-12 * p.length; math.Abs(x-p.length) < near && math.Abs(far) < near {
		return 2 * (k.double(0, d) - k.double(p.length, d))
	}
	return k.double(far, d) - k.double(far-p.length, d) - k.double(x, d) + k.double(x-p.length, d)
}

// alignedSides is parallelSides for two copies of one side, the distance delta apart.
func alignedSides(length, delta float64, k kernel) float64 {
	return 2 * (k.double(length, delta) - k.double(0, delta))
}

// alongPiece integrates the closed-form potential of side q along piece p, over all nodes; the
// directions at each place along p serve every node. swapped says that the nodes name q first.
func alongPiece(p, q *piece, nodes []node, swapped bool, k kernel, r rule, end touch) float64 {
	sum := 0.0
	for i, x := range r.x {
		if end == atEnd {
			x = 1 - x
		}
		x0, xt, d0, dt, cos := q.sees(p, x)
		part := 0.0
		for _, at := range nodes {
			tp, tq := at.tp, at.tq
			if swapped {
				tp, tq = tq, tp
			}
			far := x0 + xt*tp
			part += at.w * p.extent(tp) * k.side(far-q.length, far, d0+dt*tp-tq)
		}
		sum += r.w[i] * cos * part
	}
	return sum
}

// product integrates over two pieces by points on both, over all nodes. If p's end nearly
// meets q's start, or the other way round, the rules are counted from there.
func product(p, q *piece, nodes []node, k kernel, rp, rq rule, end touch) float64 {
	var places [maxOrder]struct{ base, out, tangent vec }
	others := places[:0]
	for _, y := range rq.x {
		if end == atStart {
			y = 1 - y
		}
		base, out, tangent := q.frame(y)
		others = append(others, struct{ base, out, tangent vec }{base, out, tangent})
	}
	var space [64]float64
	weights := space[:0]
	for _, at := range nodes {
		weights = append(weights, at.w*p.extent(at.tp)*q.extent(at.tq))
	}
	sum := 0.0
	for i, x := range rp.x {
		if end == atEnd {
			x = 1 - x
		}
		b, n, t := p.frame(x)
		for j, w := range rq.w {
			other := &others[j]
			between := b.minus(other.base)
			gap := crossing{between.dot(between), 2 * n.dot(between), -2 * other.out.dot(between), -2 * n.dot(other.out)}
			sum += rp.w[i] * w * t.dot(other.tangent) * gap.over(nodes, weights, k)
		}
	}
	return sum
}

// A crossing is the square of the distance of two points at distances p and q from the skeletons, along directions of
// their own: one + pOnce·p + qOnce·q + both·pq + p² + q².
type crossing struct{ one, pOnce, qOnce, both float64 }

// over is the sum of the kernel over all nodes.
func (c crossing) over(nodes []node, weights []float64, k kernel) float64 {
	if s, ok := k.(*sheets); ok && s.table != nil {
		return s.table.nodes(nodes, weights, c)
	}
	sum := 0.0
	for i := range nodes {
		sum += weights[i] * k.point(c.at(&nodes[i]))
	}
	return sum
}

func (c *crossing) at(n *node) float64 {
	return max(c.one+n.tp*(c.pOnce+n.tp+c.both*n.tq)+n.tq*(c.qOnce+n.tq), 0)
}

// arcs integrates over two arcs of one centre and one range of angles, radii tp and
// tq. The angle between two points, v, occurs with the weight (span − |v|), so that
//
//	tp tq ∫ (span−|v|) cos v f(√(δ²+4s² sin²(v/2))) dv,  s² = tp tq,  δ = tp − tq
//
// remains, in which the near-singular part at v = 0 is that of two straight sides of length
// s·span the distance δ apart: this is taken in closed form and the smooth
// difference by quadrature. A full circle has the weight 2π instead.
func (t turning) arcs(tp, tq float64, k kernel) float64 {
	s2 := tp * tq
	if s2 == 0 {
		return 0
	}
	s, delta := math.Sqrt(s2), tp-tq
	d2, sum := delta*delta, 0.0
	for _, at := range t.points[:t.count] {
		sum += at.w * (at.cos*k.point(d2+4*s2*at.sin2) - k.point(d2+s2*at.v2))
	}
	if t.full {
		return 4*math.Pi*s2*t.span*sum + 4*math.Pi*s*k.side(0, s*t.span, delta)
	}
	return 2*s2*t.span*t.span*sum + alignedSides(s*t.span, delta, k)
}

// A turning holds what all pairs of turns of one arc have in common: the angles between two points.
type turning struct {
	span   float64
	full   bool
	points [maxOrder]turningPoint
	count  int
}

type turningPoint struct{ w, v2, sin2, cos float64 }

func newTurning(span float64, r rule) (t turning) {
	t.span, t.count = span, len(r.x)
	if t.full = span > 2*math.Pi-1e-9; t.full {
		t.span = math.Pi
	}
	for i, x := range r.x {
		v := x * t.span
		sin := math.Sin(v / 2)
		at := turningPoint{w: r.w[i], v2: v * v, sin2: sin * sin, cos: 1 - 2*sin*sin}
		if !t.full {
			at.w *= 1 - x
		}
		t.points[i] = at
	}
	return t
}
