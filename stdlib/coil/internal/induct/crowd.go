package induct

import "math"

// This file makes quadrature rules whose points crowd about a place inside or outside the interval,
//
//	x = x0 + d sinh v
//
// which turns a function that is peaked there with the width d into one that Gauss's rule takes in few points
// (P. R. Johnston and D. Elliott, Int. J. Numer. Meth. Engng 62, 2005; recalled).

// A crowd is such a rule.
type crowd struct {
	n    int
	x, w [maxOrder]float64
}

// about fills the rule from one end to the other about x0, to the error exp(-digits).
func (c *crowd) about(x0, d, from, to, digits float64, least, most int) {
	u, v := arsinh((from-x0)/d), arsinh((to-x0)/d)
	c.n = least
	if n := digits / (2 * arsinh(math.Pi/(v-u))); n > float64(least) { // as orderFor, a pole at v = ±iπ/2
		c.n = min(int(math.Ceil(n)), most)
	}
	r, both := gauss(c.n), math.Exp(u+v)
	for i, j := 0, c.n-1; i <= j; i, j = i+1, j-1 { // the nodes are symmetric, which saves half the exponentials
		grown := quickExp(u + r.x[i]*(v-u))
		c.set(i, x0, d, grown, (v-u)*r.w[i])
		if i < j {
			c.set(j, x0, d, both/grown, (v-u)*r.w[i])
		}
	}
}

func (c *crowd) set(i int, x0, d, grown, w float64) {
	shrunk := 1 / grown
	c.x[i] = x0 + d/2*(grown-shrunk)
	c.w[i] = d / 2 * (grown + shrunk) * w
}

func (c *crowd) times(k float64) {
	for i := range c.w[:c.n] {
		c.w[i] *= k
	}
}

// arsinh is quicker than math.Asinh and exact to an absolute 1e-16.
func arsinh(x float64) float64 {
	if x < 0 {
		return -arsinh(-x)
	}
	return ln(x + math.Sqrt(x*x+1))
}

// quickExp is the exponential function within 1e-9: a power of two and a polynomial.
func quickExp(x float64) float64 {
	const shift = 3 << 51 // rounds to a whole number
	n := x*math.Log2E + shift
	k := n - shift
	r := x - k*math.Ln2
	r2 := r * r
	p := 1 + r + r2*(1./2+r*(1./6)) + r2*r2*(1./24+r*(1./120)+r2*(1./720+r*(1./5040)+r2*(1./40320)))
	return p * math.Float64frombits(uint64(int64(k)+1023)<<52)
}
