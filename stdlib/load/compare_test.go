package load

import (
	"math"
	"strings"
	"testing"
)

// A resistive coil into capacitors and resistors: every column by its formula.
func TestCompare(t *testing.T) {
	c := Coil{10e3, 1e-6, 0}
	all, err := Compare(1e-3, From(c).Capacitor(10e-9).Input(90e3).Named("dull"), From(c).Capacitor(100e-12).Input(1e6).Named("bright"),
		From(c).InputNoise(20e-9, 0).Capacitor(100e-12).Input(10e6))
	if err != nil {
		t.Fatal(err)
	}
	dull := all[0]
	corner := 1 / (2 * math.Pi * 9e3 * 10e-9)
	near(t, "high", dull.High.SI(), corner, 1e-5)
	near(t, "level", dull.Level.SI(), 20*math.Log10(0.9)-10*math.Log10(1+math.Pow(1000/corner, 2)), 1e-6)
	if dull.Low != 0 || all[2].Name != "chain 3" {
		t.Errorf("got %v, %q", dull.Low, all[2].Name)
	}
	for _, x := range all {
		near(t, "signal to noise", x.SignalToNoise.SI(), 20*math.Log10(1e-3*x.Level.Ratio()/x.Noise.SI()), 1e-9)
	}
	loudest, _ := all.Loudest()
	widest, _ := all.Widest()
	quietest, _ := all.Quietest()
	if loudest.Name != "chain 3" || widest.Name != "bright" || quietest.Name != "dull" { // the dull one loses more noise than signal
		t.Errorf("loudest %q, widest %q, quietest %q", loudest.Name, widest.Name, quietest.Name)
	}
	if f := all.Frame(); f.Rows() != 3 || !math.IsNaN(f.Columns[2].Values[0]) {
		t.Errorf("frame: got %v", f)
	}
	if _, err := Compare(0, From(c).Input(1e6)); err == nil {
		t.Error("no EMF was accepted")
	}
	if _, err := Compare(1); err == nil {
		t.Error("no chains were accepted")
	}
	if _, err := Compare(1, From(c).Input(-1)); err == nil || !strings.Contains(err.Error(), "chain 1: input resistance") {
		t.Errorf("got %v", err)
	}
}
