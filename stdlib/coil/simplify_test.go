package coil

import (
	"math"
	"testing"

	"lode/stdlib/coil/internal/induct"
	"lode/units"
)

// Witnesses of outlines of many corners: a circle and a racetrack by their own formulas, an ellipse and an oval with one flat side
// by all their corners.
func TestInductanceOfManyCorners(t *testing.T) {
	w := gauge(t, 42)
	circle := wound(t, Convex{Corners: ring(720, 0.01, 0.01), Height: 8 * mm}, w, 4000)
	round := wound(t, Round{CoreDiameter: 20 * mm, Height: 8 * mm}, w, 4000)
	close(t, "circle", float64(circle.Inductance()), float64(round.Inductance()), simplifiedOff/2)

	var track, flat []Point
	for _, p := range ring(720, 0.004, 0.004) {
		track = append(track, Point{p.X + 20*mm, p.Y}, Point{p.X - 20*mm, p.Y})
	}
	convex := wound(t, Convex{Corners: track, Height: 8 * mm}, w, 4000)
	racetrack := wound(t, Racetrack{CoreLength: 48 * mm, CoreWidth: 8 * mm, Height: 8 * mm, FlangeWidth: 30 * mm}, w, 4000)
	close(t, "racetrack", float64(convex.Inductance()), float64(racetrack.Inductance()), simplifiedOff/2)

	for _, p := range ring(150, 0.03, 0.012) {
		flat = append(flat, Point{p.X, max(p.Y, -4*mm)})
	}
	for name, corners := range map[string][]Point{"ellipse": ring(150, 0.03, 0.012), "one side flat": flat} {
		c := wound(t, Convex{Corners: corners, Height: 8 * mm}, w, 3000)
		o := c.freeOutline()
		o.Points = nil
		for _, p := range c.shape.hull {
			o.Points = append(o.Points, [2]float64{float64(p.X), float64(p.Y)})
		}
		want := induct.SelfOutlineValue(o, 3000)
		close(t, name, c.smeared(), want, simplifiedOff/2)
	}
}

func TestSimplifiedKeepsArea(t *testing.T) {
	var hull []Point
	for i := range 5000 {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / 5000)
		hull = append(hull, Point{units.Length(0.03 + 0.02*cos), units.Length(0.01 * sin)})
	}
	few := simplified(hull, 40)
	if len(few) != 40 {
		t.Errorf("%d corners, want 40", len(few))
	}
	close(t, "area", areaOf(few), areaOf(hull), 1e-12)
	if three := simplified(hull[:3], 40); len(three) != 3 {
		t.Errorf("%d corners, want 3", len(three))
	}
	c := wound(t, Convex{Corners: ring(720, 0.01, 0.01), Height: 8 * mm}, gauge(t, 42), 4000)
	if _, err := c.InductanceTo(1e-6); err == nil {
		t.Error("a core of 720 corners to 1e-6: no error")
	}
	var _ units.Inductance = must(c.InductanceTo(1e-3))
}
