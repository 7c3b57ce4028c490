package coil

import (
	"math"
	"testing"

	"lode/units"
)

// Fine wire, by hand: skin effect adds x⁴/48 with x the radius in skin depths; the field B of 1 A turns
// πω²B²d⁴/64ρ per metre into heat (C. R. Sullivan 1999).
func TestResistanceACByHand(t *testing.T) {
	c := wound(t, steel, gauge(t, 42), 6000)
	const d, f = 63.5e-6, 10e3
	x := d / 2 / 0.66085e-3 // skin depth of annealed copper at 10 kHz, handbook
	B2 := c.window().OwnSquare() * 6000 * 6000
	want := float64(c.Resistance())*math.Pow(x, 4)/48 + math.Pi*sq(2*math.Pi*f)*B2*math.Pow(d, 4)/64*58e6*float64(c.WireLength())
	got, err := c.ResistanceAC(f)
	if err != nil {
		t.Fatal(err)
	}
	close(t, "AC resistance added", float64(got-c.Resistance()), want, 1e-3)
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
	q, err := c.Q(5000)
	r, _ := c.ResistanceAC(5000)
	if err != nil {
		t.Fatal(err)
	}
	close(t, "Q", q, 2*math.Pi*5000*float64(c.Inductance())/float64(r), 1e-12)
	if _, err := (Winding{}).ResistanceAC(1000); err == nil {
		t.Error("no winding has a resistance")
	}
	for _, bad := range []units.Frequency{-1, units.Frequency(math.NaN()), units.Frequency(math.Inf(1)), 1e13} {
		if _, err := c.ResistanceAC(bad); err == nil {
			t.Errorf("%v was accepted", bad)
		}
	}
}
