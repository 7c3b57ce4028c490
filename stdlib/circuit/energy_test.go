package circuit

import (
	"fmt"
	"math"
	"math/cmplx"
	"math/rand"
	"testing"

	"lode/units"
)

// reactive returns a random network of capacitors and inductors on a chain of nodes, with resistors where lossy.
func reactive(r *rand.Rand, lossy bool) (Network, int) {
	n, nodes := New("reactive"), 3+r.Intn(4)
	name := func(i int) string {
		if i == 0 {
			return Ground
		}
		return fmt.Sprint("n", i)
	}
	for i := range 3 * nodes {
		a, b := r.Intn(nodes), r.Intn(nodes)
		if i < nodes-1 {
			a, b = i+1, i
		}
		kind := r.Intn(3)
		switch {
		case a == b:
		case kind == 0 && lossy:
			n = n.Resistor(fmt.Sprint("R", i), name(a), name(b), units.Resistance(spread(r, 10, 1e6)))
		case kind == 1:
			n = n.Inductor(fmt.Sprint("L", i), name(a), name(b), units.Inductance(spread(r, 1e-3, 10)))
		default:
			n = n.Capacitor(fmt.Sprint("C", i), name(a), name(b), units.Capacitance(spread(r, 1e-11, 1e-7)))
		}
	}
	return n, nodes
}

// What a source gives is what the resistors take and what inductors and capacitors hold: Tellegen's theorem (Philips Research
// Reports 7, 1952).
func TestEnergy(t *testing.T) {
	r := rand.New(rand.NewSource(11))
	for range 60 {
		n, _ := reactive(r, true)
		n = n.CurrentSource("I", Ground, "n1", 1)
		for _, f := range []units.Frequency{50, 700, 9000} {
			volts := map[string]complex128{Ground: 0}
			for _, node := range n.Nodes() {
				if node != Ground {
					volts[node] = phasor(t, n, node, f)
				}
			}
			var taken complex128
			size := 0.0
			for _, p := range n.parts {
				s, v := complex(0, f.Angular().SI()), volts[p.from]-volts[p.to]
				var y complex128
				switch p.kind {
				case resistor:
					y = complex(1/p.value, 0)
				case capacitor:
					y = s * complex(p.value, 0)
				case inductor:
					y = 1 / (s * complex(p.value, 0))
				}
				one := v * cmplx.Conj(v*y)
				taken, size = taken+one, size+cmplx.Abs(one)
			}
			if given := volts["n1"]; !(cmplx.Abs(given-taken) <= 1e-7*size) {
				t.Errorf("%v\nat %v: given %v, taken %v", n, f, given, taken)
			}
		}
	}
}

// The reactance of a lossless network rises with frequency, and faster than its distance from zero over frequency: Foster, A
// reactance theorem, Bell System Technical Journal 3 (1924).
func TestFoster(t *testing.T) {
	r := rand.New(rand.NewSource(12))
	for range 100 {
		n, _ := reactive(r, false)
		for range 5 {
			f, step := spread(r, 20, 2e5), 1e-5
			x := func(f float64) float64 {
				z, err := n.ImpedanceAt("n1", units.Frequency(f))
				if err != nil {
					t.Fatal(err)
				}
				if math.Abs(real(complex128(z))) > 1e-6*cmplx.Abs(complex128(z)) {
					t.Errorf("%v\nat %g Hz: a resistance, %v", n, f, complex128(z))
				}
				return imag(complex128(z))
			}
			below, at, above := x(f*(1-step)), x(f), x(f*(1+step))
			slope := (above - below) / (2 * step) // times f
			if above < below && below*above < 0 {
				continue // a pole between
			}
			if !(slope >= math.Abs(at)*(1-1e-4)) {
				t.Errorf("%v\nat %g Hz: reactance %g rises by %g", n, f, at, slope)
			}
		}
	}
}
