package coil

import (
	"encoding/csv"
	"math"
	"math/rand"
	"os"
	"strconv"
	"strings"
	"testing"

	"lode/units"
)

// Map of mutual checks of taps, outlines, covers and resonances:
//
//	Tapped           parts add up to the whole in resistance, mass, inductance and area
//	Convex           a polygon of many corners is a circle, a racetrack, an ellipse; order and inner points do not matter
//	Inside           points of both outlines measured one against the other
//	Calibrated       put back into the resonance
//	SelfCapacitance  printed test cases; Calibrated

func TestTappedAddsUp(t *testing.T) {
	random := rand.New(rand.NewSource(10))
	for range 12 {
		f, turns := randomFormer(random), 900+random.Intn(5000)
		for _, style := range []Style{{}, {Lay: Layered}} {
			c := wound(t, f, gauge(t, 42), turns, style)
			cut, err := c.Tapped(turns/4, turns/2)
			if err != nil {
				t.Fatal(err)
			}
			close(t, "resistance", float64(cut.Resistance()), float64(c.Resistance()), 1e-9)
			tolerance := 2e-4
			if style.Lay == Layered { // the tap falls in the middle of a layer
				tolerance = 0.02
			}
			close(t, "inductance", float64(cut.Inductance()), float64(c.Inductance()), tolerance)
			areas := 0.0
			for i := range 3 {
				part, _ := cut.Coil(i + 1)
				areas += float64(part.Area()) * float64(part.Turns())
			}
			close(t, "area", areas, float64(c.Area())*float64(turns), 1e-9)
			if k, _ := cut.Coupling(1, 2); k < 0.5 || k >= 1 {
				t.Errorf("%v: coupling of nested parts %g", c, k)
			}
		}
	}
	c := wound(t, steel, gauge(t, 42), 3000)
	for _, bad := range [][]int{{0}, {3000}, {4000}, {2000, 1000}, {-5}} {
		if _, err := c.Tapped(bad...); err == nil || !strings.Contains(err.Error(), "tap: ") {
			t.Errorf("taps at %v: %v", bad, err)
		}
	}
}

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

// boundary walks around a rounded rectangle at a depth.
func boundary(s Shape, depth float64) (points [][2]float64) {
	r := float64(s.CornerRadius)
	for q, c := range [][2]float64{{1, 1}, {-1, 1}, {-1, -1}, {1, -1}} {
		for i := range 400 {
			sin, cos := math.Sincos(math.Pi / 2 * (float64(q) + float64(i)/399))
			points = append(points, [2]float64{c[0]*(float64(s.Length)/2-r) + (r+depth)*cos, c[1]*(float64(s.Width)/2-r) + (r+depth)*sin})
		}
	}
	return points
}

// apart is the least distance of the points of one convex outline to the lines through the sides of the other,
// negative where one lies outside.
func apart(inner, outer [][2]float64) float64 {
	least := math.Inf(1)
	for i, a := range outer {
		b := outer[(i+1)%len(outer)]
		dx, dy := b[0]-a[0], b[1]-a[1]
		length := math.Hypot(dx, dy)
		if length < 1e-12 {
			continue
		}
		for _, p := range inner {
			least = math.Min(least, (dx*(p[1]-a[1])-dy*(p[0]-a[0]))/length)
		}
	}
	return least
}

func TestInside(t *testing.T) {
	random := rand.New(rand.NewSource(11))
	for range 30 {
		c := wound(t, randomFormer(random), gauge(t, 42), 3000)
		s, grow := c.Shape(), units.Length(8*random.Float64())*mm
		cover := Cover{Length: s.Length + grow, Width: s.Width + grow*units.Length(0.7+0.6*random.Float64()), Height: s.Height + mm}
		cover.CornerRadius = min(cover.Length, cover.Width) / 2 * units.Length(random.Float64())
		got, err := c.Inside(cover)
		if err != nil {
			t.Fatal(err)
		}
		outer := boundary(Shape{Length: cover.Length, Width: cover.Width, CornerRadius: cover.CornerRadius}, 0)
		want := apart(boundary(s, float64(c.Build())), outer)
		if nearest := float64(min(got.Ends, got.Sides, got.Corners)); math.Abs(nearest-want) > 2e-7 {
			t.Errorf("%v in %+v: %g, want %g", c, cover, nearest, want)
		}
		if (got.Verdict() == "fits") != (got.Worst >= 0) || got.Frame().Rows() != 7 {
			t.Errorf("verdict %q of %+v", got.Verdict(), got)
		}
	}
	c := wound(t, steel, gauge(t, 42), 3000)
	for _, bad := range []Cover{{}, {Length: 90 * mm, Width: 20 * mm}, {Length: 90 * mm, Width: 20 * mm, Height: 20 * mm, CornerRadius: 11 * mm}} {
		if _, err := c.Inside(bad); err == nil || !strings.Contains(err.Error(), "cover ") {
			t.Errorf("%+v: %v", bad, err)
		}
	}
}

func TestCalibrated(t *testing.T) {
	c := wound(t, steel, gauge(t, 42), 6000)
	const L, C, added = 2.4, 95e-12, 120e-12
	f := units.Frequency(1 / (2 * math.Pi * math.Sqrt(L*(C+added))))
	got, err := c.Calibrated(Resonance{Frequency: f, Added: added, Inductance: L})
	if err != nil {
		t.Fatal(err)
	}
	close(t, "Capacitance", float64(got.Capacitance()), C, 1e-9)
	if r := got.CapacitanceRange(); r.Low >= C || r.High <= C {
		t.Errorf("range %v", r)
	}
	for _, bad := range []Resonance{{}, {Frequency: -1}, {Frequency: f, Added: -1}, {Frequency: 1e6, Added: 1e-9}, {Frequency: f, Inductance: units.Inductance(math.NaN())}} {
		if _, err := c.Calibrated(bad); err == nil {
			t.Errorf("%+v was accepted", bad)
		}
	}
}

func TestSelfCapacitanceReference(t *testing.T) {
	file, err := os.Open("../../testdata/reference/capacitance_two_frequency.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	lines, err := csv.NewReader(file).ReadAll()
	if err != nil || len(lines) != 4 {
		t.Fatalf("%d lines, %v", len(lines), err)
	}
	for _, line := range lines[1:] {
		var x [7]float64
		for i := range x {
			if x[i], err = strconv.ParseFloat(line[i], 64); err != nil {
				t.Fatal(err)
			}
		}
		one := Resonance{Frequency: units.Frequency(x[5]), Added: units.Capacitance(x[2])}
		other := Resonance{Frequency: units.Frequency(x[6]), Added: units.Capacitance(x[3])}
		got, err := SelfCapacitance(one, other)
		if err != nil {
			t.Fatal(err)
		}
		close(t, "SelfCapacitance", float64(got), x[1], 1e-5)
		if swapped, _ := SelfCapacitance(other, one); math.Abs(float64(swapped/got)-1) > 1e-9 {
			t.Errorf("the order matters: %v, %v", got, swapped)
		}
		if _, err := SelfCapacitance(one, one); err == nil {
			t.Error("one measurement was taken for two")
		}
	}
}
