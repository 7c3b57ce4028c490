package wire

import (
	"math"
	"testing"

	"lode/units"
)

// Gauge 42 by hand: 2.5 mil is 0.0635 mm; NBS Handbook 100 prints 1/58 Ω·mm²/m as 10.371 Ω per
// circular mil and foot, so 10.371/6.25 Ω per foot at 2.5 mil.
func TestGauge42(t *testing.T) {
	w, err := AWG(42)
	if err != nil {
		t.Fatal(err)
	}
	if got := w.Name(); got != "AWG 42, single build" {
		t.Errorf("Name() = %q", got)
	}
	if got := w.Bare(); math.Abs(float64(got/(2.5*units.Mil))-1) > 1e-12 {
		t.Errorf("Bare() = %v", got)
	}
	perFoot := 10.371 / 6.25
	if got := float64(w.ResistancePerLength()) * float64(units.Foot); math.Abs(got/perFoot-1) > 5e-5 {
		t.Errorf("resistance per foot = %v, want %v", got, perFoot)
	}
}
