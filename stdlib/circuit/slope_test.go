package circuit

import (
	"math"
	"testing"

	"lode/units"
)

// One and two poles by their formulas; a corner goes with the inverse of R and of C.
func TestSlopeAndBandwidth(t *testing.T) {
	n := New("RC").VoltageSource("V", "in", Ground, 1).Resistor("R", "in", "out", 1e4).Capacitor("C", "out", Ground, 1e-8)
	corner := 1 / (2 * math.Pi * 1e-4)
	r, err := n.Sweep("out", 1, 1e6)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range []float64{corner / 100, corner, 100 * corner} {
		x := f * f / corner / corner
		got, err := r.SlopeAt(units.Frequency(f))
		want := -20 * math.Log10(2) * x / (1 + x)
		if err != nil || math.Abs(got.SI()-want) > 1e-4*math.Abs(want) {
			t.Errorf("slope at %g: got %v, want %g, %v", f, got, want, err)
		}
	}
	if b, err := r.Bandwidth(); err != nil || math.Abs(b.SI()/corner-1) > 1e-4 {
		t.Errorf("bandwidth: got %v, want %g, %v", b, corner, err)
	}
	band, err := New("RLC").VoltageSource("V", "in", Ground, 1).Inductor("L", "in", "a", 0.1).Capacitor("C", "a", "out", 1e-8).Resistor("R", "out", Ground, 500).Sweep("out", 10, 1e6)
	if err != nil {
		t.Fatal(err)
	}
	if f, err := band.Crossings(-1); err != nil || len(f) != 2 {
		t.Errorf("band-pass: got %v, %v", f, err)
	}
	all, err := n.Influences(func(n Network) float64 {
		r, err := n.Sweep("out", 1, 1e6)
		if err != nil {
			t.Fatal(err)
		}
		f, _ := r.Cutoff()
		return f.SI()
	})
	if err != nil || len(all) != 2 {
		t.Fatal(all, err)
	}
	for _, one := range all {
		if math.Abs(one.Change+1) > 1e-4 {
			t.Errorf("%v: want -1 %% for 1 %%", one)
		}
	}
	if _, err := n.Influences(nil); err == nil {
		t.Error("no function was accepted")
	}
	if _, err := n.Influences(func(Network) float64 { return 0 }); err == nil {
		t.Error("a result of zero was accepted")
	}
}
