package induct

import "math"

// This file integrates over both depths of two parallel sides of all turns: bars of rectangular section.

// bar is the antiderivative of double, twice along d: all six integrals of two bars in closed form (C. Hoer and
// C. Love, J. Res. NBS 69C, 1965; formula recalled, the tests compare it with quadrature). It is even in x and d.
func (k *sheets) bar(x, d float64) float64 {
	x, d = math.Abs(x), math.Abs(d)
	sum := 0.0
	for i := range k.n {
		sum += k.w[i] * rectangularBar(x, d, k.u[i])
	}
	return sum
}

func rectangularBar(x, y, z float64) float64 {
	x2, y2, z2 := x*x, y*y, z*z
	r := math.Sqrt(x2 + y2 + z2)
	sum := (x2*x2 + y2*y2 + z2*z2 - 3*(x2*y2+y2*z2+z2*x2)) * r / 60
	sum += barLog(x, y2, z2, r) + barLog(y, z2, x2, r) + barLog(z, x2, y2, r)
	if xyz := x * y * z; xyz > 0 {
		a, b := angle(x*y, z*r), angle(x*z, y*r) // a right angle with the third one
		sum -= xyz / 6 * (z2*a + y2*b + x2*(math.Pi/2-a-b))
	}
	return sum
}

func barLog(x, y2, z2, r float64) float64 {
	if x == 0 || y2+z2 == 0 {
		return 0
	}
	return (y2*z2/4 - (y2*y2+z2*z2)/24) * x / 2 * ln((x+r)*(x+r)/(y2+z2))
}

// lostInBars bounds how much of sixteen digits the closed form may lose to cancellation.
const lostInBars = 1e8

// bars is the integral over two parallel sides, averaged over both windows, whose depths count from one line;
// ok is false where the windows are too thin for the closed form.
func (e *engine) bars(p, q *piece, wp, wq window) (value float64, ok bool) {
	k, tall := e.k.(*sheets)
	if !tall || wp.width() == 0 || wq.width() == 0 {
		return 0, false
	}
	x := q.start.minus(p.start).dot(p.along)
	far := x + p.along.dot(q.along)*q.length
	size := max(math.Abs(x), math.Abs(far), p.length, wp.to-wq.from, wq.to-wp.from, k.u[0])
	if size*size*k.w[0]*size*size > lostInBars*wp.width()*wq.width() {
		return 0, false
	}
	edge := func(d float64) float64 {
		if x == 0 && far == p.length {
			return 2 * (k.bar(far, d) - k.bar(0, d))
		}
		return k.bar(far, d) - k.bar(far-p.length, d) - k.bar(x, d) + k.bar(x-p.length, d)
	}
	sum := edge(wq.to-wp.from) - edge(wq.from-wp.from) - edge(wq.to-wp.to) + edge(wq.from-wp.to)
	return sum / (wp.width() * wq.width()), true
}
