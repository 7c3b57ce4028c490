package induct

import (
	"fmt"
	"math"
	"testing"
)

// A rule of n points is exact for powers up to 2n−1.
func TestGaussRules(t *testing.T) {
	for n := 1; n <= maxOrder; n++ {
		r := gauss(n)
		for _, power := range []float64{0, 1, float64(n), float64(2*n - 1)} {
			sum := 0.0
			for i, x := range r.x {
				sum += r.w[i] * math.Pow(x, power)
			}
			closeTo(t, fmt.Sprint(n, " points, power ", power), sum, 1/(power+1), 1e-13)
		}
	}
}
