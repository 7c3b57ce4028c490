package coil

import (
	"math"
	"strings"
	"testing"
)

// A round coil of one thick layer in a long round cover is a coaxial line; the faces vanish.
func TestCoverIsCoaxialLine(t *testing.T) {
	c := wound(t, Round{CoreDiameter: 20 * mm, Height: 100 * mm}, gauge(t, 40), 20000)
	cover := Cover{Length: 30 * mm, Width: 30 * mm, CornerRadius: 15 * mm, Height: 200 * mm}
	got := must(c.CoverCapacitance(cover, Finish))
	b := 0.01 + float64(c.Build())
	want := 2 * math.Pi * 8.8541878188e-12 * 0.1 / math.Log(0.015/b)
	if r := float64(got.Low) / want; r < 0.75 || r > 0.95 { // 0.9, and the last layer is not all at the full voltage
		t.Errorf("%v against %g pF", got, want*1e12)
	}
}

func TestCoverLaws(t *testing.T) {
	c := wound(t, steel, gauge(t, 42), 6000)
	cover := Cover{Length: 90 * mm, Width: 24 * mm, CornerRadius: 9 * mm, Height: 14 * mm}
	wider := cover
	wider.Length, wider.Width = 100*mm, 34*mm
	near, far := must(c.CoverCapacitance(cover, Finish)), must(c.CoverCapacitance(wider, Finish))
	start := must(c.CoverCapacitance(cover, Start))
	if !(near.Low < near.Value && near.Value < near.High && far.Value < near.Value && start.Value < near.Value/2) {
		t.Errorf("near %v, far %v, start hot %v", near, far, start)
	}
	potted := must(c.Potted(must(CompoundNamed("epoxy"))))
	if filled := must(potted.CoverCapacitance(cover, Finish)); filled.Value <= near.Value {
		t.Errorf("filled %v, empty %v", filled, near)
	}
	cover.Width, cover.CornerRadius = 12*mm, 5*mm
	if _, err := c.CoverCapacitance(cover, Finish); err == nil || !strings.Contains(err.Error(), "cover: does not go over the winding") {
		t.Errorf("narrow cover: %v", err)
	}
	if _, err := c.CoverCapacitance(wider, 7); err == nil || !strings.Contains(err.Error(), "hot lead: unknown") {
		t.Errorf("lead 7: %v", err)
	}
}

// Two round coils side by side are two cylinders, and a stack is a condenser of two rings.
func TestCapacitanceBetween(t *testing.T) {
	c := wound(t, Round{CoreDiameter: 12 * mm, Height: 8 * mm}, gauge(t, 42), 3000)
	r := 0.006 + float64(c.Build())
	beside := must(InSeries(Placed{Winding: c}, Placed{Winding: c, Y: 30 * mm}))
	want := math.Pi * 8.8541878188e-12 * 0.008 / math.Log((0.03+math.Sqrt(0.03*0.03-4*r*r))/(2*r))
	close(t, "side by side", float64(must(beside.CapacitanceBetween(1, 2)).Low), want, 1e-6)
	stack := must(InSeries(Placed{Winding: c}, Placed{Winding: c, Z: -10 * mm}))
	want = 8.8541878188e-12 * math.Pi * (r*r - 0.006*0.006) / 0.002
	close(t, "stacked", float64(must(stack.CapacitanceBetween(2, 1)).Low), want, 1e-6)
	apart := must(InSeries(Placed{Winding: c}, Placed{Winding: c, X: 60 * mm}))
	for _, pair := range [][2]int{{1, 2}, {1, 1}, {1, 3}} {
		if _, err := apart.CapacitanceBetween(pair[0], pair[1]); err == nil {
			t.Errorf("windings %v: no error", pair)
		}
	}
}
