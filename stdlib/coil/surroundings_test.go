package coil

import (
	"math"
	"strings"
	"testing"

	"lode/units"
)

// A long round coil in a close cover is a coaxial line; the faces vanish, and so does the field that it had outside.
func TestCoverAgainstCoaxialLine(t *testing.T) {
	c := wound(t, Round{CoreDiameter: 20 * mm, Height: 100 * mm}, gauge(t, 40), 20000)
	inside := 2*c.Build() + 21*mm
	got := must(c.CoverCapacitance(Cover{Length: inside, Width: inside, CornerRadius: inside / 2, Height: 200 * mm}, Finish))
	ratio := float64(inside / (20*mm + 2*c.Build()))
	close(t, "cover capacitance", float64(got.Low)/0.85, 2*math.Pi*8.8541878188e-12*0.1/math.Log(ratio), 0.15) // the last layer is not all at the full voltage
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

// Winding faces close to each other are plates, and winding sides are cylinders or plates; edges add to that.
func TestCapacitanceBetweenAgainstPlates(t *testing.T) {
	const air = 8.8541878188e-12
	deep := wound(t, Round{CoreDiameter: 12 * mm, Height: 8 * mm}, gauge(t, 42), 15000)
	r := 0.006 + float64(deep.Build())
	stack := must(InSeries(Placed{Winding: deep}, Placed{Winding: deep, Z: -8.5 * mm}))
	close(t, "stacked", float64(must(stack.CapacitanceBetween(2, 1)).Low)/0.8, air*math.Pi*(r*r-0.006*0.006)/0.0005, 0.2)
	tall := wound(t, Rectangle{CoreLength: 80 * mm, CoreWidth: 12 * mm, Height: 25 * mm}, gauge(t, 36), 1000)
	outside := 12*mm + 2*tall.Build()
	beside := must(InSeries(Placed{Winding: tall}, Placed{Winding: tall, Y: outside + 0.5*mm}))
	close(t, "side by side", float64(must(beside.CapacitanceBetween(1, 2)).Low)/0.8, air*0.025*0.08/0.0005, 0.2)
}

func TestCapacitanceBetweenLaws(t *testing.T) {
	c := wound(t, Racetrack{CoreLength: 30 * mm, CoreWidth: 6 * mm, Height: 8 * mm}, gauge(t, 42), 2000)
	at := func(x, y units.Length) float64 {
		return float64(must(must(InSeries(Placed{Winding: c}, Placed{Winding: c, X: x, Y: y})).CapacitanceBetween(1, 2)).Low)
	}
	side, end := 6*mm+2*c.Build()+2*mm, 30*mm+2*c.Build()+2*mm
	if !(at(0, side) > at(10*mm, side) && at(10*mm, side) > at(28*mm, side) && at(0, side) > at(0, side+mm)) {
		t.Errorf("moved along: %g, %g, %g; moved away: %g", at(0, side), at(10*mm, side), at(28*mm, side), at(0, side+mm))
	}
	if at(end, 0) > at(0, side)/2 {
		t.Errorf("end to end %g, side by side %g", at(end, 0), at(0, side))
	}
	round := wound(t, Round{CoreDiameter: 12 * mm, Height: 8 * mm}, gauge(t, 42), 2000)
	along := must(InSeries(Placed{Winding: round}, Placed{Winding: round, X: 20 * mm}, Placed{Winding: round, Y: -20 * mm}, Placed{Winding: round, Z: 30 * mm, X: 9 * mm}))
	close(t, "whichever way", float64(must(along.CapacitanceBetween(1, 2)).Low), float64(must(along.CapacitanceBetween(1, 3)).Low), 1e-9)
	for _, pair := range [][2]int{{1, 4}, {1, 1}, {1, 5}} {
		if _, err := along.CapacitanceBetween(pair[0], pair[1]); err == nil {
			t.Errorf("windings %v: no error", pair)
		}
	}
}
