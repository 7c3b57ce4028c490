package coil

import (
	"math"
	"testing"

	"lode/stdlib/coil/internal/kernel"
	"lode/stdlib/wire"
	"lode/units"
)

// In a long winding the field falls evenly from the inside to the outside, as Dowell (1966) takes it between the
// layers of a transformer. Two windings that differ in length by 30 mm have the same ends, and
// the core is wide, so that his square wires (5 %) and the shorter inner turns make the difference.
func TestResistanceACAgainstDowell(t *testing.T) {
	w, added := gauge(t, 33), [2]float64{}
	var piece Winding
	for i, height := range []units.Length{30 * mm, 60 * mm} {
		f := Round{CoreDiameter: 8 * mm, Height: height}
		one := wound(t, f, w, 1, Style{Lay: Layered})
		c := wound(t, f, w, 10*one.TurnsPerLayer(), Style{Lay: Layered})
		r, err := c.ResistanceAC(20 * units.Kilohertz)
		if err != nil {
			t.Fatal(err)
		}
		added[i] = float64(r - c.Resistance())
		if i == 0 {
			piece = c
		}
	}
	dowell := kernel.Dowell(10, float64(w.Bare()), float64(piece.Pitch()), kernel.SkinDepth(1/58e6, 20e3)) - 1
	α := float64(piece.Build()) / 0.004
	close(t, "added by 30 mm", added[1]-added[0], 0.95*(1+α/4)/(1+α/2)*dowell*float64(piece.Resistance()), 0.06)
}

func TestResistanceACLaws(t *testing.T) {
	c := wound(t, steel, gauge(t, 42), 6000)
	at := func(f units.Frequency) float64 {
		r, err := c.ResistanceAC(f)
		if err != nil {
			t.Fatal(err)
		}
		return float64(r / c.Resistance())
	}
	if at(0) != 1 {
		t.Errorf("direct current: %g", at(0))
	}
	close(t, "the addition grows with the square of the frequency", (at(20000)-1)/(at(10000)-1), 4, 0.01)
	if x := at(10000); x < 1+1e-6 || x > 1.2 {
		t.Errorf("fine wire at 10 kHz: %g", x)
	}
	for _, bad := range []units.Frequency{-1, units.Frequency(math.NaN()), units.Frequency(math.Inf(1)), 1e13} {
		if _, err := c.ResistanceAC(bad); err == nil {
			t.Errorf("%v was accepted", bad)
		}
	}
}

func BenchmarkResistanceAC(b *testing.B) {
	w, err := wire.AWG(42)
	if err != nil {
		b.Fatal(err)
	}
	c := wound(b, steel, w, 6000)
	for b.Loop() {
		if _, err := c.ResistanceAC(1e4); err != nil {
			b.Fatal(err)
		}
	}
}
