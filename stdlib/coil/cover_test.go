package coil

import (
	"math"
	"math/rand"
	"strings"
	"testing"

	"lode/units"
)

// The witness of clearances: points of both outlines measured one against the other.

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

// A round winding in a round cover leaves the difference of the radii, less the largest build.
func TestLeaves(t *testing.T) {
	c := wound(t, Round{CoreDiameter: 12 * mm, Height: 8 * mm}, gauge(t, 42), 4000)
	left := 15*mm - 6*mm - c.BuildRange().High
	space := must(c.Inside(Cover{Length: 30 * mm, Width: 30 * mm, CornerRadius: 15 * mm, Height: 14 * mm}))
	if !space.Leaves(left*0.999) || space.Leaves(left*1.001) || space.Leaves(units.Length(math.NaN())) {
		t.Errorf("%v: leaves %v, not %v", space, left*0.999, left*1.001)
	}
	low := must(c.Inside(Cover{Length: 30 * mm, Width: 30 * mm, CornerRadius: 15 * mm, Height: 8.5 * mm}))
	if !low.Leaves(0.49*mm) || low.Leaves(0.51*mm) {
		t.Errorf("%v under a low cover", low)
	}
	flanged := must(wound(t, Round{CoreDiameter: 12 * mm, Height: 8 * mm, FlangeDiameter: 29 * mm}, gauge(t, 42), 4000).Inside(Cover{Length: 30 * mm, Width: 30 * mm, CornerRadius: 15 * mm, Height: 14 * mm}))
	if !flanged.Leaves(0.49*mm) || flanged.Leaves(0.51*mm) {
		t.Errorf("%v with a wide flange", flanged)
	}
}
