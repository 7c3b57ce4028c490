package coil

import (
	"math"
	"strings"
	"testing"

	"lode/units"
)

// Witnesses of convex cores: a polygon of many corners is a circle, a racetrack, an ellipse; the order of corners and points
// inside do not matter.

func ring(n int, a, b float64) []Point {
	var points []Point
	for i := range n {
		sin, cos := math.Sincos(2 * math.Pi * float64(i*7%n) / float64(n)) // out of order, 7 being prime to n
		points = append(points, Point{units.Length(a * cos), units.Length(b * sin)})
	}
	return points
}

func TestConvex(t *testing.T) {
	w := gauge(t, 42)
	circle := wound(t, Convex{Corners: append(ring(720, 0.01, 0.01), Point{}), Height: 8 * mm}, w, 4000)
	round := wound(t, Round{CoreDiameter: 20 * mm, Height: 8 * mm}, w, 4000)
	close(t, "circle, resistance", float64(circle.Resistance()), float64(round.Resistance()), 1e-4)
	close(t, "circle, inductance", float64(circle.Inductance()), float64(round.Inductance()), 1e-4)

	var track []Point
	for _, p := range ring(720, 0.004, 0.004) {
		track = append(track, Point{p.X + 20*mm, p.Y}, Point{p.X - 20*mm, p.Y})
	}
	convex := wound(t, Convex{Corners: track, Height: 8 * mm, Room: 5 * mm}, w, 4000)
	racetrack := wound(t, Racetrack{CoreLength: 48 * mm, CoreWidth: 8 * mm, Height: 8 * mm, FlangeWidth: 18 * mm}, w, 4000)
	close(t, "racetrack, inductance", float64(convex.Inductance()), float64(racetrack.Inductance()), 1e-3)
	close(t, "racetrack, area", float64(convex.Area()), float64(racetrack.Area()), 1e-4)

	sharp := wound(t, Convex{Corners: []Point{{0, 0}, {30 * mm, 0}, {30 * mm, 8 * mm}, {0, 8 * mm}, {15 * mm, 4 * mm}}, Height: 8 * mm}, w, 3000)
	box := wound(t, Rectangle{CoreLength: 30 * mm, CoreWidth: 8 * mm, Height: 8 * mm}, w, 3000)
	close(t, "rectangle, inductance", float64(sharp.Inductance()), float64(box.Inductance()), 1e-6)

	// Perimeter of an ellipse: S. Ramanujan 1914.
	a, b := 0.03, 0.012
	h := sq((a - b) / (a + b))
	ellipse, err := Convex{Corners: ring(720, a, b), Height: 8 * mm}.Shape()
	if err != nil {
		t.Fatal(err)
	}
	close(t, "ellipse, perimeter", float64(ellipse.Perimeter(0)), math.Pi*(a+b)*(1+3*h/(10+math.Sqrt(4-3*h))), 2e-5)
	close(t, "ellipse, area", float64(ellipse.Area(0)), math.Pi*a*b, 2e-5)

	for _, bad := range []Convex{{}, {Corners: ring(5, 0.01, 0.01)}, {Corners: []Point{{0, 0}, {mm, mm}, {2 * mm, 2 * mm}}, Height: mm},
		{Corners: []Point{{0, 0}, {5, 0}, {5, 5}}, Height: mm}, {Corners: ring(5, 0.01, 0.01), Height: mm, Room: -mm}, {Corners: []Point{{0, 0}, {units.Length(math.NaN()), 0}, {0, mm}}, Height: mm}} {
		if _, err := bad.Shape(); err == nil || !strings.Contains(err.Error(), "convex") {
			t.Errorf("%v: %v", bad, err)
		}
	}
}

// A rectangle written as corners, away from the origin, couples like a rectangle: above, beside and turned against each other and
// with another one; the reverse is the same.
func TestMutualOfConvexCores(t *testing.T) {
	w := gauge(t, 38)
	box := Rectangle{CoreLength: 30 * mm, CoreWidth: 8 * mm, Height: 6 * mm}
	corners := Convex{Corners: []Point{{10 * mm, 5 * mm}, {40 * mm, 5 * mm}, {40 * mm, 13 * mm}, {10 * mm, 13 * mm}}, Height: 6 * mm}
	a, b, c := wound(t, box, w, 800), wound(t, corners, w, 800), wound(t, Racetrack{CoreLength: 40 * mm, CoreWidth: 10 * mm, Height: 5 * mm}, w, 500)
	for _, place := range []Placed{{Z: 8 * mm}, {Y: 25 * mm}, {X: 3 * mm, Y: 2 * mm, Z: 9 * mm, Turn: 40 * units.Degree}} {
		at := func(c Winding) Placed { p := place; p.Winding = c; return p }
		want := mutual(Placed{Winding: a}, at(a))
		close(t, "both", mutual(Placed{Winding: b}, at(b)), want, 2e-5)
		close(t, "one", mutual(Placed{Winding: b}, at(a)), want, 2e-5)
		close(t, "the other", mutual(Placed{Winding: a}, at(b)), want, 2e-5)
		close(t, "a racetrack", mutual(Placed{Winding: b}, at(c)), mutual(Placed{Winding: a}, at(c)), 2e-5)
	}
	wedge := wound(t, Convex{Corners: []Point{{0, 0}, {30 * mm, 0}, {0, 12 * mm}}, Height: 6 * mm}, w, 600)
	p := Placed{Winding: c, X: 4 * mm, Z: 9 * mm, Turn: 30 * units.Degree}
	close(t, "the reverse", mutual(p, Placed{Winding: wedge}), mutual(Placed{Winding: wedge}, p), 2e-5)
}
