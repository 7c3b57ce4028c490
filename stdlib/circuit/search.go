package circuit

import (
	"math"
	"sort"
)

// This file holds the two one-dimensional searches, both over the logarithm of frequency.

// fine is the relative step in frequency at which a search ends.
const fine = 1e-9

// maximum returns where f, with a single maximum between a and b, has it: golden-section search
// (Kiefer, Sequential minimax search for a maximum, Proc. AMS 4, 1953). A level is flat at its
// peak, so 1e-8 is what double precision allows.
func maximum(f func(float64) float64, a, b float64) float64 {
	golden := (math.Sqrt(5) - 1) / 2
	lo, hi := math.Log(a), math.Log(b)
	c, d := hi-golden*(hi-lo), lo+golden*(hi-lo)
	fc, fd := f(math.Exp(c)), f(math.Exp(d))
	for hi-lo > fine {
		if fc >= fd {
			hi, d, fd = d, c, fc
			c = hi - golden*(hi-lo)
			fc = f(math.Exp(c))
		} else {
			lo, c, fc = c, d, fd
			d = lo + golden*(hi-lo)
			fd = f(math.Exp(d))
		}
	}
	return math.Exp((lo + hi) / 2)
}

// root returns where f changes its sign between a and b, by halving.
func root(f func(float64) float64, a, b float64) float64 {
	below := f(a) < 0
	for b/a > 1+fine/1e3 {
		middle := math.Sqrt(a * b)
		if middle <= a || middle >= b {
			break
		}
		if (f(middle) < 0) == below {
			a = middle
		} else {
			b = middle
		}
	}
	return math.Sqrt(a * b)
}

// merge returns the numbers of both slices in rising order.
func merge(a, b []float64) []float64 {
	all := append(a, b...)
	sort.Float64s(all)
	return all
}
