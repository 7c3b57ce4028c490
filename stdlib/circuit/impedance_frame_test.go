package circuit

import (
	"math"
	"testing"

	"lode/units"
)

// TestImpedanceFrame wants an impedance in ohms: that of a coil is |R + jωL|, and its resonance
// with a capacitor is marked at 1/(2π√(LC)) for a coil of high quality.
func TestImpedanceFrame(t *testing.T) {
	n := New("coil").Coil("coil", "hot", Ground, Coil{Resistance: 100, Inductance: 2}).Capacitor("C", "hot", Ground, 100e-12)
	r, err := n.ImpedanceSweep("hot", 20, 50e3)
	if err != nil {
		t.Fatal(err)
	}
	f := r.Frame()
	z, ok := f.OfKind("Resistance")
	if _, level := f.OfKind("Level"); !ok || level {
		t.Fatalf("columns %v", f.Columns)
	}
	hertz, _ := f.OfKind("Frequency")
	w := 2 * math.Pi * hertz.Values[0]
	if want := math.Hypot(100, w*2); math.Abs(z.Values[0]/want-1) > 1e-4 {
		t.Errorf("at %g Hz %g Ω, want %g Ω", hertz.Values[0], z.Values[0], want)
	}
	if want := 1 / (2 * math.Pi * math.Sqrt(2*100e-12)); len(f.Marks) != 1 || math.Abs(f.Marks[0].X/want-1) > 1e-4 {
		t.Errorf("marks %v, want one at %v", f.Marks, units.Frequency(want))
	}
}
