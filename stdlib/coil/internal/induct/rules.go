package induct

import (
	"math"
	"sync"
)

// This file holds the quadrature rules, all on [0,1].

const maxOrder = 32

type rule struct{ x, w []float64 }

// gauss returns the Gauss-Legendre rule of n points, in equal panels where there are many.
func gauss(n int) rule {
	if n > maxOrder {
		return legendreRules()[0][maxOrder/2].inPanels((n + maxOrder/2 - 1) / (maxOrder / 2))
	}
	return legendreRules()[0][max(n, 1)]
}

func (r rule) inPanels(panels int) (to rule) {
	for i := range panels {
		for j, x := range r.x {
			to.x = append(to.x, (float64(i)+x)/float64(panels))
			to.w = append(to.w, r.w[j]/float64(panels))
		}
	}
	return to
}

// squared and cubed return the rule of n points crowded towards 0 by x → x² or x³, which
// turns an end-point singularity such as x² ln x or ln x into one the rule hardly notices.
func squared(n int) rule { return legendreRules()[1][min(max(n, 1), maxOrder)] }
func cubed(n int) rule   { return legendreRules()[2][min(max(n, 1), maxOrder)] }

// legendreRules computes the rules on first use; they are never changed afterwards.
var legendreRules = sync.OnceValue(func() *[3][maxOrder + 1]rule {
	rules := &[3][maxOrder + 1]rule{}
	for n := 1; n <= maxOrder; n++ {
		plain := legendre(n)
		rules[0][n], rules[1][n], rules[2][n] = plain, plain.crowded(2), plain.crowded(3)
	}
	return rules
})

// legendre finds the roots of the Legendre polynomial by Newton's method from Tricomi's estimate
// (Abramowitz and Stegun 1964, 22.16.6 and 25.4.29). The tables in gonum 0.17 are not used
// because the one of 26 points misses a root: its weights add up to 0.989.
func legendre(n int) rule {
	r := rule{make([]float64, n), make([]float64, n)}
	for i := range n {
		x := -math.Cos(math.Pi * (float64(i) + 0.75) / (float64(n) + 0.5))
		var slope float64
		for range 6 {
			var value float64
			value, slope = legendreAt(n, x)
			x -= value / slope
		}
		_, slope = legendreAt(n, x)
		r.x[i] = (1 + x) / 2
		r.w[i] = 1 / ((1 - x*x) * slope * slope)
	}
	return r
}

// legendreAt is the Legendre polynomial of degree n and its slope, by the three-term recurrence.
func legendreAt(n int, x float64) (value, slope float64) {
	before, value := 0.0, 1.0
	for k := 1; k <= n; k++ {
		j := float64(k)
		before, value = value, ((2*j-1)*x*value-(j-1)*before)/j
	}
	return value, float64(n) * (x*value - before) / (x*x - 1)
}

func (r rule) crowded(power float64) rule {
	n := len(r.x)
	to := rule{make([]float64, n), make([]float64, n)}
	for i, x := range r.x {
		to.x[i] = math.Pow(x, power)
		to.w[i] = power * math.Pow(x, power-1) * r.w[i]
	}
	return to
}

// orderFor is the number of Gauss points that integrate a function over an interval of the
// given length to the relative error exp(-digits), when its nearest singularity
// lies the distance away from the middle of the interval, square to it (the worst place):
// the error falls as ρ^(-2n) with ρ the sum of the half-axes of the Bernstein ellipse
// (L. N. Trefethen, Approximation Theory and Approximation Practice, 2013, theorem 19.3,
// recalled).
func orderFor(length, distance, digits float64, least, most int) int {
	if length == 0 {
		return 1
	}
	ratio := 2 * distance / length
	n := digits / (2 * math.Asinh(ratio))
	if n > float64(most) {
		return most
	}
	return max(least, int(math.Ceil(n)))
}
