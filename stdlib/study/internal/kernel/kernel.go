// Package kernel finds roots and extremes of functions of one variable, on plain numbers.
// The functions are called as often as needed and must give the same value each time.
package kernel

import (
	"errors"
	"math"
)

// Errors that a search may end in.
var (
	ErrSides  = errors.New("no change of sign")
	ErrNumber = errors.New("not a number")
)

// most is how often a search may turn; bisection alone needs 64 for a float64.
const most = 200

// Root finds x between a and b with f(x) = 0 to a relative tolerance.
//
// Bisection, the secant and inverse quadratic interpolation, whichever is safe: R. P. Brent,
// Algorithms for Minimization without Derivatives, Prentice-Hall 1973, chapter 4 (method
// from memory).
func Root(f func(float64) float64, a, b, tolerance float64) (float64, error) {
	fa, fb := f(a), f(b)
	if math.IsNaN(fa) || math.IsNaN(fb) {
		return math.NaN(), ErrNumber
	}
	if fa*fb > 0 {
		return math.NaN(), ErrSides
	}
	if math.Abs(fa) < math.Abs(fb) {
		a, b, fa, fb = b, a, fb, fa
	}
	c, fc, last, bisected := a, fa, 0.0, true
	for range most {
		if fb == 0 || math.Abs(b-a) <= tolerance*math.Abs(b)+math.SmallestNonzeroFloat64 {
			return b, nil
		}
		s := interpolated(a, b, c, fa, fb, fc)
		if unsafe(s, a, b, c, last, bisected, tolerance) {
			s, bisected = (a+b)/2, true
		} else {
			bisected = false
		}
		fs := f(s)
		if math.IsNaN(fs) {
			return math.NaN(), ErrNumber
		}
		last, c, fc = c, b, fb
		if fa*fs < 0 {
			b, fb = s, fs
		} else {
			a, fa = s, fs
		}
		if math.Abs(fa) < math.Abs(fb) {
			a, b, fa, fb = b, a, fb, fa
		}
	}
	return b, nil
}

// interpolated is the inverse quadratic through three points, or the secant through two.
func interpolated(a, b, c, fa, fb, fc float64) float64 {
	if fa != fc && fb != fc {
		return a*fb*fc/((fa-fb)*(fa-fc)) + b*fa*fc/((fb-fa)*(fb-fc)) + c*fa*fb/((fc-fa)*(fc-fb))
	}
	return b - fb*(b-a)/(fb-fa)
}

// unsafe reports whether a step leaves the bracket's better part or shrinks it too slowly.
func unsafe(s, a, b, c, last float64, bisected bool, tolerance float64) bool {
	quarter := (3*a + b) / 4
	inside := s > math.Min(quarter, b) && s < math.Max(quarter, b)
	step := math.Abs(c - last)
	if bisected {
		step = math.Abs(b - c)
	}
	return !inside || math.IsNaN(s) || math.Abs(s-b) >= step/2 || step < tolerance*math.Abs(b)
}

// golden is the smaller part of the golden section.
var golden = (3 - math.Sqrt(5)) / 2

// Least finds where f is least between a and b: a scan that brackets the lowest point, then
// the golden section (Kiefer 1953; Brent 1973, chapter 5). The place of a minimum is known
// to about the square root of the precision of f.
func Least(f func(float64) float64, a, b float64, scan int, tolerance float64) (float64, error) {
	low, high, err := bracket(f, a, b, scan)
	if err != nil {
		return math.NaN(), err
	}
	x := low + golden*(high-low)
	y := high - golden*(high-low)
	fx, fy := f(x), f(y)
	for range most {
		if math.Abs(high-low) <= tolerance*math.Max(math.Abs(low), math.Abs(high)) {
			break
		}
		if fx < fy {
			high, y, fy = y, x, fx
			x = low + golden*(high-low)
			fx = f(x)
		} else {
			low, x, fx = x, y, fy
			y = high - golden*(high-low)
			fy = f(y)
		}
	}
	return best(f, a, b, (low+high)/2), nil
}

// bracket scans f and returns the neighbours of its lowest point.
func bracket(f func(float64) float64, a, b float64, scan int) (low, high float64, err error) {
	at := func(i int) float64 { return a + (b-a)*float64(i)/float64(scan) }
	lowest, least := -1, math.Inf(1)
	for i := range scan + 1 {
		v := f(at(i))
		if math.IsNaN(v) {
			return 0, 0, ErrNumber
		}
		if v < least {
			lowest, least = i, v
		}
	}
	return at(max(lowest-1, 0)), at(min(lowest+1, scan)), nil
}

// best prefers an end of the range where it is lower than the inner point.
func best(f func(float64) float64, a, b, inner float64) float64 {
	x, fx := inner, f(inner)
	for _, end := range []float64{a, b} {
		if v := f(end); v < fx {
			x, fx = end, v
		}
	}
	return x
}
