// Package study asks questions of a calculation written as a function of one quantity:
// where does it reach a value, where is it least or greatest, and how does it run over a
// range.
//
//	func resonance(c units.Capacitance) units.Frequency {
//		return 1 / (2*π*sqrt(2.2*H*c))
//	}
//	study.Solve(resonance, 5*kHz, 50*pF, 5*nF)
//
// The functions take quantities of any kind, and their dimensions are checked: the answer
// has the kind of the function's argument.
package study

// This file holds what notebooks call. Each generic function has a twin on plain numbers,
// with the kinds of its type parameters behind its arguments, which a running notebook
// calls in its place; both are one computation.

import (
	"lode/units"
)

// Number is a quantity of any kind, or a plain number.
type Number interface{ ~float64 }

// Solve finds the argument between low and high at which a function has the wanted value.
// The function must lie above the value at one end and below it at the other.
//
// Source: R. P. Brent, Algorithms for Minimization without Derivatives, Prentice-Hall 1973, chapter 4.
//
// Valid: functions without jumps of more than a tenth of their way over the range, which are an error; where several arguments give the value, one of them is found.
//
// Accuracy: a relative 1e-12 of the argument.
//
// Example: study.Solve(func(c units.Capacitance) units.Frequency { return 1 / (2*π*sqrt(2.2*H*c)) }, 5*kHz, 50*pF, 5*nF)
func Solve[X, Y Number](f func(X) Y, want Y, low, high X) (X, error) {
	x, err := SolveNumbers(numbers(f), float64(want), float64(low), float64(high), kindOf[X](), kindOf[Y]())
	return X(x), err
}

// Least finds the argument between low and high at which a function is least.
//
// Source: golden section, J. Kiefer, Proceedings of the American Mathematical Society 4 (1953) 502, from the lowest of 65 points.
//
// Valid: functions with valleys wider than a sixtieth of the range.
//
// Accuracy: a relative 1e-7 of the argument; a valley is flat at its bottom.
//
// Example: study.Least(func(x float64) float64 { return (x-2)*(x-2) }, 0, 5)
func Least[X, Y Number](f func(X) Y, low, high X) (X, error) {
	x, err := LeastNumbers(numbers(f), float64(low), float64(high), kindOf[X](), kindOf[Y]())
	return X(x), err
}

// Greatest finds the argument between low and high at which a function is greatest.
//
// Source: golden section, J. Kiefer, Proceedings of the American Mathematical Society 4 (1953) 502, from the highest of 65 points.
//
// Valid: functions with peaks wider than a sixtieth of the range.
//
// Accuracy: a relative 1e-7 of the argument; a peak is flat at its top.
//
// Example: study.Greatest(func(x float64) float64 { return x*(4-x) }, 0, 5)
func Greatest[X, Y Number](f func(X) Y, low, high X) (X, error) {
	x, err := GreatestNumbers(numbers(f), float64(low), float64(high), kindOf[X](), kindOf[Y]())
	return X(x), err
}

// Over runs a function over a range in even steps, both ends included, and returns argument
// and value as two columns for a table or a figure.
//
// Example: study.Over(func(d units.Length) units.Area { return π*d*d/4 }, 1*mm, 10*mm, 10)
func Over[X, Y Number](f func(X) Y, low, high X, points int) (Run, error) {
	return OverNumbers(numbers(f), float64(low), float64(high), points, kindOf[X](), kindOf[Y]())
}

// OverDecades is Over in even ratios, as frequencies want it.
//
// Example: study.OverDecades(func(f units.Frequency) units.Resistance { return 2*π*f*2.2*H }, 20*Hz, 20*kHz, 31)
func OverDecades[X, Y Number](f func(X) Y, low, high X, points int) (Run, error) {
	return OverDecadesNumbers(numbers(f), float64(low), float64(high), points, kindOf[X](), kindOf[Y]())
}

// numbers makes a function of quantities one of plain numbers.
func numbers[X, Y Number](f func(X) Y) func(float64) float64 {
	if f == nil {
		return nil
	}
	return func(x float64) float64 { return float64(f(X(x))) }
}

func kindOf[X Number]() units.Kind {
	var x X
	if q, ok := any(x).(units.Quantity); ok {
		return q.Kind()
	}
	return units.Number()
}
