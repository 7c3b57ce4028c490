package induct

import (
	"math"
	"sync"

	"gonum.org/v1/gonum/integrate/quad"
)

// This file holds the quadrature rules, all on [0,1].

const maxOrder = 32

type rule struct{ x, w []float64 }

// gauss returns the Gauss-Legendre rule of n points, 1 ≤ n ≤ maxOrder.
func gauss(n int) rule { return legendreRules()[0][min(max(n, 1), maxOrder)] }

// graded returns the rule of n points crowded towards 0 by x → x³, which turns an
// end-point singularity such as x ln x into one the rule does not notice.
func graded(n int) rule { return legendreRules()[1][min(max(n, 1), maxOrder)] }

// legendreRules computes the rules on first use; they are never changed afterwards.
var legendreRules = sync.OnceValue(func() (rules [2][maxOrder + 1]rule) {
	for n := 1; n <= maxOrder; n++ {
		plain := rule{make([]float64, n), make([]float64, n)}
		quad.Legendre{}.FixedLocations(plain.x, plain.w, 0, 1)
		crowded := rule{make([]float64, n), make([]float64, n)}
		for i, x := range plain.x {
			crowded.x[i] = x * x * x
			crowded.w[i] = 3 * x * x * plain.w[i]
		}
		rules[0][n], rules[1][n] = plain, crowded
	}
	return rules
})

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
