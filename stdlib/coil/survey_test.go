package coil

import (
	"math/rand/v2"
	"runtime"
	"slices"
	"testing"
	"time"

	"lode/units"
)

// BenchmarkSurvey times inductances of 200 random windings of each kind on one processor, the
// least of a few tries each, and tells how they are spread: a fixed set of shapes hides the slow ones.
func BenchmarkSurvey(b *testing.B) {
	for _, kind := range surveyed {
		b.Run(kind.name, func(b *testing.B) {
			defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
			var times []float64
			for range b.N {
				times = times[:0]
				for r := rand.New(rand.NewPCG(21, 22)); len(times) < 200; {
					if f := kind.make(b, r); f != nil {
						times = append(times, quickest(f))
					}
				}
			}
			slices.Sort(times)
			b.ReportMetric(times[100], "µs-median")
			b.ReportMetric(times[180], "µs-p90")
			b.ReportMetric(times[199], "µs-worst")
			b.ReportMetric(0, "ns/op")
		})
	}
}

// quickest is the least time of a few calls in microseconds.
func quickest(f func()) float64 {
	best := time.Duration(1 << 62)
	for range 20 {
		began := time.Now()
		f()
		best = min(best, time.Since(began))
	}
	return float64(best) / 1e3
}

var surveyed = []struct {
	name string
	make func(b *testing.B, r *rand.Rand) func()
}{
	{"scatter", func(b *testing.B, r *rand.Rand) func() { return inductance(randomWinding(b, r, Scatter)) }},
	{"layered", func(b *testing.B, r *rand.Rand) func() { return inductance(randomWinding(b, r, Layered)) }},
	{"orthocyclic", func(b *testing.B, r *rand.Rand) func() { return inductance(randomWinding(b, r, Orthocyclic)) }},
	{"stacked alike", func(b *testing.B, r *rand.Rand) func() {
		c, ok := randomWinding(b, r, Scatter)
		return pair(c, c, 1+r.Float64(), ok, ok)
	}},
	{"stacked unlike", func(b *testing.B, r *rand.Rand) func() {
		c, ok := randomWinding(b, r, Scatter)
		d, ok2 := randomWinding(b, r, Scatter)
		return pair(c, d, 1+r.Float64(), ok, ok2)
	}},
	{"stacked layered", func(b *testing.B, r *rand.Rand) func() {
		c, ok := randomWinding(b, r, Layered)
		return pair(c, c, 1+r.Float64(), ok, ok)
	}},
	{"one around the other", func(b *testing.B, r *rand.Rand) func() {
		c, ok := randomWinding(b, r, Scatter)
		w := c.window()
		depth := units.Length(c.layout.build) + units.Length(r.Float64()*0.004)
		outer := Rectangle{
			CoreLength: units.Length(w.Along+2*w.Radius) + 2*depth, CoreWidth: units.Length(w.Across+2*w.Radius) + 2*depth,
			CornerRadius: units.Length(w.Radius) + depth, Height: units.Length(w.Height * (0.3 + r.Float64())),
		}
		outer.FlangeLength, outer.FlangeWidth = outer.CoreLength+10*mm, outer.CoreWidth+10*mm
		d, err := Wind(outer, gauge(b, 34), 200)
		return pair(c, d, 0, ok, err == nil)
	}},
}

func inductance(c Winding, ok bool) func() {
	if !ok {
		return nil
	}
	return func() { c.henry() }
}

func pair(c, d Winding, apart float64, ok, ok2 bool) func() {
	if !ok || !ok2 {
		return nil
	}
	z := units.Length((c.height() + d.height()) / 2 * apart)
	return func() { mutual(Placed{Winding: c}, Placed{Winding: d, Z: z}) }
}

// randomWinding draws a winding such as a bench makes: small and large, flat and tall, round, long
// and square, of any number of turns that fits.
func randomWinding(b testing.TB, r *rand.Rand, lay Lay) (Winding, bool) {
	b.Helper()
	between := func(low, high float64) units.Length { return units.Length(low+r.Float64()*(high-low)) * mm }
	s := Rectangle{CoreLength: between(8, 95), CoreWidth: between(3, 30), Height: between(1.5, 18)}
	short := min(s.CoreLength, s.CoreWidth)
	switch r.IntN(4) {
	case 0:
		s.CornerRadius = between(0, 2)
	case 1:
		s.CornerRadius = short / 2
	case 2:
		s.CornerRadius = short / 2 * units.Length(r.Float64())
	case 3:
		s.CoreLength, s.CoreWidth, s.CornerRadius = short, short, short/2
	}
	s.CornerRadius = min(s.CornerRadius, short/2)
	deep := between(1, 9)
	s.FlangeLength, s.FlangeWidth = s.CoreLength+2*deep, s.CoreWidth+2*deep
	w := gauge(b, float64(26+2*r.IntN(9)))
	one, err := Wind(s, w, 1, Style{Lay: lay})
	if err != nil {
		return Winding{}, false
	}
	most := one.Fit().TurnsThatFit
	c, err := Wind(s, w, 1+int(float64(most)*r.Float64()), Style{Lay: lay})
	return c, err == nil
}
