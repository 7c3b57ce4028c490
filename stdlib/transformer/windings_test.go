package transformer

import (
	"math"
	"strings"
	"testing"

	"lode/stdlib/circuit"
	"lode/units"
)

// A tapped winding is an autotransformer: two coupled coils on one core, one of them left open.
func TestTapIsCoupledCoils(t *testing.T) {
	const share, lp, ratio, k = 0.4, 0.9, 8.0, 0.9985
	whole, err := Bench{PrimaryOpen: lp, PrimaryShorted: lp * (1 - k*k), VoltageRatio: k * ratio}.Model()
	if err != nil {
		t.Fatal(err)
	}
	tap, err := whole.TappedPrimary(share)
	if err != nil {
		t.Fatal(err)
	}
	got, err := tap.Sweep(60, 47e3, 10, 1e5)
	if err != nil {
		t.Fatal(err)
	}
	// The part below the tap has share² of the inductance and couples to the secondary by the same k.
	want, err := circuit.New("").VoltageSource("V", "e", circuit.Ground, 1).Resistor("R", "e", "p", 60).
		Inductor("below", "p", circuit.Ground, units.Inductance(share*share*lp)).Inductor("above", "open", "p", units.Inductance((1-share)*(1-share)*lp)).
		Inductor("secondary", "s", circuit.Ground, units.Inductance(ratio*ratio*lp)).Couple("below", "above", 1).Couple("below", "secondary", k).Couple("above", "secondary", k).
		Resistor("load", "s", circuit.Ground, 47e3).Sweep("s", 10, 1e5)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range []units.Frequency{10, 60, 1e3, 2e4, 9e4} {
		a, _ := got.LevelAt(f)
		b, _ := want.LevelAt(f)
		if math.Abs(float64(a-b)) > 1e-6 {
			t.Errorf("at %v: got %v, want %v", f, a, b)
		}
	}
}

// Between their rated impedances all taps have one gain and one pair of corners.
func TestTapsKeepCorners(t *testing.T) {
	plate := Nameplate{Primary: 500, Secondary: 20e3, LowCorner: 30, HighCorner: 25e3}
	taps, err := plate.Taps(50, 200, 500)
	if err != nil || len(taps) != 3 || taps[0].Name != "50 Ω" {
		t.Fatal(taps, err)
	}
	for i, z := range []units.Resistance{50, 200, 500} {
		low, _ := taps[i].Model.LowCorner(z, 20e3)
		high, _ := taps[i].Model.HighCorner(z, 20e3)
		near(t, "low corner", low.SI(), 30, 1e-9)
		near(t, "high corner", high.SI(), 25e3, 1e-9)
		near(t, "ratio", taps[i].Model.Ratio, math.Sqrt(20e3/z.SI()), 1e-12)
	}
	if _, err := plate.Taps(600); err == nil {
		t.Error("a tap above the whole winding was accepted")
	}
	m := taps[2].Model
	m.SecondaryResistance, m.SecondaryCapacitance = 800, 2e-10
	half, err := m.TappedSecondary(0.5)
	if err != nil || half.Ratio != m.Ratio/2 || half.SecondaryResistance != 400 || half.SecondaryCapacitance != 8e-10 {
		t.Errorf("tapped secondary: got %v, %v", half, err)
	}
	for _, share := range []float64{0, 1.1, math.NaN()} {
		if _, err := m.TappedSecondary(share); err == nil {
			t.Errorf("a share of %g was accepted", share)
		}
	}
}

// The limit is where FluxDensity gives the flux density asked for; the current is that whose energy's flux is half of it.
func TestLimits(t *testing.T) {
	w := Windings{Primary: 300, Secondary: 3000, InductanceFactor: 2e-6}
	l, err := w.Limits(40e-6, 0.5, 30)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range []units.Frequency{15, 30, 200} {
		v, err := l.At(f)
		if err != nil {
			t.Fatal(err)
		}
		b, err := FluxDensity(v, f, 300, 40e-6)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "flux density", b.SI(), 0.5, 1e-12)
	}
	near(t, "direct current", l.DirectCurrent.SI()*2e-6*300/40e-6, 0.25, 1e-12)
	for _, c := range []struct {
		v    units.Voltage
		f    units.Frequency
		i    units.Current
		want string
	}{{0.1, 30, 0, ""}, {1, 30, 0, "level"}, {0.1, 30, -0.1, "direct current"}, {1, 15, 1, "level direct current"}} {
		all, err := l.Warnings(c.v, c.f, c.i)
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, text := range all {
			name, _, _ := strings.Cut(text, ":")
			got = append(got, name)
		}
		if strings.Join(got, " ") != c.want {
			t.Errorf("%v at %v with %v: got %v, want %q", c.v, c.f, c.i, all, c.want)
		}
	}
	if _, err := (Limits{}).Warnings(1, 30, 0); err == nil {
		t.Error("empty limits were accepted")
	}
	if _, err := l.Warnings(1, 30, units.Current(math.NaN())); err == nil {
		t.Error("a current that is no number was accepted")
	}
}
