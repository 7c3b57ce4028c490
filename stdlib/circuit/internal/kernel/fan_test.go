package kernel

import (
	"math"
	"math/cmplx"
	"testing"
)

// places are where noise enters the chain: the coil, the tone control, both halves of the volume control.
var places = []Pair{{3, Ground}, {0, 1}, {0, 2}, {2, Ground}}

// A fan is another way to the same transfers as elimination.
func TestFanAgrees(t *testing.T) {
	s, c := chain()
	d := NewDirect(s)
	fan, ok := Spread(s, d, c, places, 2*math.Pi, 2e5*math.Pi)
	if !ok {
		t.Fatal("the chain has no fan")
	}
	h, y := make([]complex128, len(places)), make([]complex128, s.N)
	for f := 1.0; f < 1e5; f *= 1.3 {
		omega := 2 * math.Pi * f
		fan.At(omega, h)
		d.Factor(complex(0, omega))
		d.SolveTransposed(c, y)
		for i, at := range places {
			if want := pick(y, at.P) - pick(y, at.Q); cmplx.Abs(h[i]-want) > 1e-9*cmplx.Abs(want) {
				t.Errorf("place %d at %g Hz: got %v, want %v", i, f, h[i], want)
			}
		}
	}
}

// Poles do not help where a part varies.
func TestNoFan(t *testing.T) {
	v, c := chain()
	v.Varies = []Varying{{Pair{3, Ground}, func(omega float64) complex128 { return complex(-omega/1e6, 0) }}}
	if _, ok := Spread(v, NewDirect(v), c, places, 1, 1e7); ok {
		t.Error("a part that varies was taken for one that does not")
	}
}

func noisy(low, high float64) *Noise {
	s, c := chain()
	var inputs []NoiseInput
	for _, at := range places {
		inputs = append(inputs, NoiseInput{at, func(float64) float64 { return 1e-18 }})
	}
	return NewNoise(s, c, inputs, low, high)
}

// Beyond the range that it was prepared for a noise is found by elimination.
func TestNoiseInAndOutOfRange(t *testing.T) {
	wide, narrow := noisy(1, 1e6), noisy(1e3, 2e3)
	a, b := make([]float64, len(places)), make([]float64, len(places))
	for omega := 1.0; omega < 1e6; omega *= 3 {
		x, _ := wide.At(omega, a)
		y, _ := narrow.At(omega, b)
		if math.Abs(x-y) > 1e-9*y {
			t.Errorf("%g rad/s: got %g and %g", omega, x, y)
		}
		for i := range a {
			if math.Abs(a[i]-b[i]) > 1e-9*b[i] {
				t.Errorf("%g rad/s, place %d: got %g and %g", omega, i, a[i], b[i])
			}
		}
	}
}

func BenchmarkNoiseAt(b *testing.B) {
	n, shares := noisy(1, 1e7), make([]float64, len(places))
	for b.Loop() {
		n.At(1e4, shares)
	}
}
