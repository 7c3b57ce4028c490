package transformer

import (
	"math"
	"strings"
	"testing"

	"lode/units"
)

func leaves(t *testing.T, what string, list []string, want string) {
	t.Helper()
	if got := strings.Join(list, "\n"); !strings.HasPrefix(got, want) || (got == "") != (want == "") {
		t.Errorf("%s: got %q, want %q", what, got, want)
	}
}

// The whole circuit is the witness: where no warning is given its corners are those of the formulas within a tenth, and
// where the capacitances decide they are not.
func TestCornersLeft(t *testing.T) {
	for _, farad := range []units.Capacitance{0, 1e-12, 10e-12, 100e-12, 1e-9, 10e-9} {
		m := Model{Ratio: 4, PrimaryInductance: 1, Leakage: 1e-3, SecondaryCapacitance: farad}
		formula, err := m.HighCorner(150, 50e3)
		if err != nil {
			t.Fatal(err)
		}
		r, err := m.Sweep(150, 50e3, 20, 10e6)
		if err != nil {
			t.Fatal(err)
		}
		whole, err := r.Cutoff()
		if err != nil {
			t.Fatal(err)
		}
		off := math.Abs(float64(whole/formula) - 1)
		if list := m.highCornerLeft(150, 50e3); len(list) == 0 && off > 0.1 || len(list) > 0 && off < 0.01 {
			t.Errorf("%v: the corner is off by %.2f: got %q", farad, off, list)
		}
	}
	m := Model{Ratio: 10, PrimaryInductance: 1, Leakage: 1e-3}
	leaves(t, "a high ratio", m.highCornerLeft(150, 50e3), "ratio without a secondary capacitance: got 1 to 10, valid up to about 1 to 5")
	leaves(t, "no leakage", Model{Ratio: 10}.highCornerLeft(150, 50e3), "")
	leaves(t, "an ordinary one", m.lowCornerLeft(150, 50e3), "")
	leaves(t, "a loose one", Model{Ratio: 10, PrimaryInductance: 1, Leakage: 0.2}.lowCornerLeft(150, 50e3), "leakage: got 200 mH, valid up to a tenth")
	leaves(t, "much capacitance", Model{Ratio: 10, PrimaryInductance: 1, SecondaryCapacitance: 1e-6}.lowCornerLeft(150, 50e3), "resonance of primary inductance")
	leaves(t, "a tap", compareTapsLeft(150, 50e3, Tap{"whole", m}), `tap "whole": ratio without a secondary capacitance: got 1 to 10`)
	leaves(t, "no inductance", Model{Ratio: 10}.lowCornerLeft(150, 50e3), "")
}

func TestLimitsLeft(t *testing.T) {
	l := Limits{Voltage: 1, Frequency: 30}
	leaves(t, "low", l.atLeft(300), "")
	leaves(t, "high", l.atLeft(310), "frequency: got 310 Hz, valid at low frequency, up to ten times")
}
