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
