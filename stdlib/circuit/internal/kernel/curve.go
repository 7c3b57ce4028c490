package kernel

import (
	"math"
	"math/cmplx"
	"sync"
)

// Curve is the transfer from the sources of a network to one output.
type Curve interface {
	// At returns the transfer at an angular frequency in rad/s, NaN where the network has no
	// solution.
	At(omega float64) complex128
}

// exact is a Curve that solves the whole network each time.
type exact struct {
	lock   sync.Mutex
	direct *Direct
	output []float64
	x      []complex128
}

func (e *exact) At(omega float64) complex128 {
	e.lock.Lock()
	defer e.lock.Unlock()
	if !e.direct.Factor(complex(0, omega)) {
		return cmplx.NaN()
	}
	e.direct.Solve(e.direct.sys.B, e.x)
	return dot(e.output, e.x)
}

// Exact returns the curve by elimination at each frequency.
func Exact(s *System, output []float64) Curve {
	return &exact{direct: NewDirect(s), output: output, x: make([]complex128, s.N)}
}

// agreement is how close, relative to the transfer itself, the sum over poles must come to
// elimination for the poles to be used.
const agreement = 1e-9

// Transfer returns the quickest curve that is right between two angular frequencies: the sum
// over poles where elimination confirms it, else elimination.
func Transfer(s *System, output []float64, low, high float64) Curve {
	e := Exact(s, output).(*exact)
	poles, ok := Reduce(s, e.direct, output, math.Sqrt(low*high))
	if !ok {
		return e
	}
	for i := range 5 {
		omega := low * math.Pow(high/low, float64(i)/4)
		want := e.At(omega)
		if !(cmplx.Abs(poles.At(omega)-want) <= agreement*cmplx.Abs(want)) {
			return e
		}
	}
	return poles
}

// Decibels returns 20·log10|v|, -∞ for zero.
func Decibels(v complex128) float64 {
	return 10 / math.Ln10 * math.Log(real(v)*real(v)+imag(v)*imag(v))
}
