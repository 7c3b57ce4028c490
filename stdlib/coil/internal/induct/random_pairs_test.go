package induct

import (
	"math"
	"math/rand/v2"
	"runtime"
	"slices"
	"testing"
	"time"
)

// This file draws pairs of coils at random: small and large cores, round and sharp, windows deep and low, thin and tall, as
// close as they get.

type drawnPair struct {
	a, b  Section
	place Placement
}

// evenly draws a length evenly in its logarithm.
func evenly(r *rand.Rand, low, high float64) float64 { return low * math.Pow(high/low, r.Float64()) }

func benchSection(r *rand.Rand) Section {
	s := Section{CoreLength: evenly(r, 0.008, 0.095), CoreWidth: evenly(r, 0.003, 0.030)}
	short := min(s.CoreLength, s.CoreWidth)
	switch r.IntN(4) {
	case 0:
		s = Circle(evenly(r, 0.003, 0.015), 0, 0)
	case 1:
		s.CornerRadius = short / 2
	case 2:
		s.CornerRadius = short / 2 * r.Float64()
	}
	s.Height, s.Build = evenly(r, 0.001, 0.018), evenly(r, 0.0003, 0.009)
	switch r.IntN(6) {
	case 0:
		s.Height, s.Build = evenly(r, 0.001, 0.0016), evenly(r, 0.006, 0.009)
	case 1:
		s.Height, s.Build = evenly(r, 0.014, 0.018), evenly(r, 0.0003, 0.0006)
	}
	return s
}

// anyGap is none in a third of all cases.
func anyGap(r *rand.Rand) float64 {
	if r.IntN(3) == 0 {
		return 0
	}
	return evenly(r, 0.00003, 0.009)
}

// around is a window around another, by a gap, with as round corners or sharper ones.
func around(r *rand.Rand, a Section, gap float64, parallel bool) Section {
	room := a.Build + gap
	b := Section{a.CoreLength + 2*room, a.CoreWidth + 2*room, a.CornerRadius + room, evenly(r, 0.001, 0.018), evenly(r, 0.0003, 0.009)}
	if !parallel {
		b.CoreLength += evenly(r, 0.0003, 0.02)
		b.CornerRadius *= r.Float64()
	}
	return b
}

var randomPairs = []struct {
	name string
	draw func(r *rand.Rand) drawnPair
}{
	{"stacked", func(r *rand.Rand) drawnPair { return stacked(r, benchSection(r), benchSection(r)) }},
	{"stacked, one core", func(r *rand.Rand) drawnPair {
		a, b := benchSection(r), benchSection(r)
		return stacked(r, a, Section{a.CoreLength, a.CoreWidth, a.CornerRadius, b.Height, b.Build})
	}},
	{"around", func(r *rand.Rand) drawnPair {
		a := benchSection(r)
		return drawnPair{a, around(r, a, anyGap(r), true), Placement{Shift: [3]float64{0, 0, (r.Float64() - 0.5) * a.Height}}}
	}},
	{"around loosely", func(r *rand.Rand) drawnPair {
		a := benchSection(r)
		return drawnPair{a, around(r, a, anyGap(r), false), Placement{Shift: [3]float64{0, 0, (r.Float64() - 0.5) * a.Height}}}
	}},
	{"moved", func(r *rand.Rand) drawnPair {
		p := stacked(r, benchSection(r), benchSection(r))
		p.place.Shift[0], p.place.Shift[1] = p.a.CoreLength*(r.Float64()-0.5), p.a.CoreWidth*(r.Float64()-0.5)
		return p
	}},
	{"turned", func(r *rand.Rand) drawnPair {
		p := stacked(r, benchSection(r), benchSection(r))
		p.place.Turn[2] = 3 * (r.Float64() - 0.5)
		return p
	}},
	{"aside", func(r *rand.Rand) drawnPair {
		a, b := benchSection(r), benchSection(r)
		y := (a.CoreWidth+b.CoreWidth)/2 + a.Build + b.Build + anyGap(r)
		return drawnPair{a, b, Placement{Shift: [3]float64{a.CoreLength * r.Float64() / 2, y, a.Height * (r.Float64() - 0.5)}}}
	}},
}

func stacked(r *rand.Rand, a, b Section) drawnPair {
	return drawnPair{a, b, Placement{Shift: [3]float64{0, 0, (a.Height+b.Height)/2 + anyGap(r)}}}
}

// The default level against the fourth, and the estimate against the error. What is left over of large parts that cancel may be
// a few times as far off.
func TestDefaultAccuracyOfRandomPairs(t *testing.T) {
	for _, kind := range randomPairs {
		r := rand.New(rand.NewPCG(11, 12))
		worst, poor := 0.0, 0
		for range 20 {
			p := kind.draw(r)
			got, err := Pair(p.a, p.b, 1, 1, p.place)
			fine, _ := pairAt(p.a, p.b, p.place)(4)
			off := math.Abs(got/fine - 1)
			worst = max(worst, off)
			if off > 1e-5 {
				poor++
			}
			if off > 1e-4 || off > err/math.Abs(got)+2e-6 {
				t.Errorf("%s: %+v: off by %.2g, estimated %.2g", kind.name, p, off, err/math.Abs(got))
			}
		}
		if poor > 2 {
			t.Errorf("%s: %d of 20 are off by more than 1e-5", kind.name, poor)
		}
		t.Logf("%s: worst %.2g, %d above 1e-5", kind.name, worst, poor)
	}
}

// BenchmarkRandomPairs times 300 pairs of each kind on one processor, the least of three tries each.
func BenchmarkRandomPairs(b *testing.B) {
	for _, kind := range randomPairs {
		b.Run(kind.name, func(b *testing.B) {
			defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
			var times []float64
			for range b.N {
				times = times[:0]
				for r := rand.New(rand.NewPCG(13, 14)); len(times) < 300; {
					p, best := kind.draw(r), math.Inf(1)
					for range 3 {
						began := time.Now()
						PairValue(p.a, p.b, 1, 1, p.place)
						best = min(best, float64(time.Since(began))/1e3)
					}
					times = append(times, best)
				}
			}
			slices.Sort(times)
			b.ReportMetric(times[150], "µs-median")
			b.ReportMetric(times[270], "µs-p90")
			b.ReportMetric(times[299], "µs-worst")
			b.ReportMetric(0, "ns/op")
		})
	}
}
