package induct

import (
	"fmt"
	"testing"
)

var benchmarkSections = map[string]Section{
	"rectangle": {0.07, 0.012, 0.002, 0.01, 0.004},
	"racetrack": {0.07, 0.0065, 0.00325, 0.01, 0.004},
	"circle":    Circle(0.01, 0.01, 0.004),
	"flat":      {0.03, 0.03, 0.003, 0.001, 0.02},
}

func BenchmarkSelf(b *testing.B) {
	for name, s := range benchmarkSections {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				Self(s, 6000)
			}
		})
	}
}

func BenchmarkSelfTo(b *testing.B) {
	for _, relative := range []float64{1e-4, 1e-6, 1e-7} {
		b.Run(fmt.Sprint(relative), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				SelfTo(benchmarkSections["rectangle"], 6000, relative)
			}
		})
	}
}

// BenchmarkSweep is a study of 120 designs.
func BenchmarkSweep(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		for i := range 120 {
			s := benchmarkSections["rectangle"]
			s.CoreLength += float64(i%12) * 0.001
			s.Build += float64(i/12) * 0.0003
			Self(s, 6000)
		}
	}
}

func BenchmarkCoaxial(b *testing.B) {
	s := benchmarkSections["rectangle"]
	wider := s
	wider.CoreWidth += 0.003
	for name, other := range map[string]Section{"same core": s, "other core": wider, "circle": Circle(0.01, 0.01, 0.004)} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				Coaxial(s, other, 6000, 6000, 0.012)
			}
		})
	}
}

func BenchmarkPair(b *testing.B) {
	s := benchmarkSections["rectangle"]
	for name, place := range map[string]Placement{
		"side by side": {Shift: [3]float64{0, 0.022, 0}},
		"tilted":       {Shift: [3]float64{0, 0.025, 0.005}, Turn: [3]float64{0.5, 0.1, 0}},
		"tilted close": {Shift: [3]float64{0, 0, 0.014}, Turn: [3]float64{0, 0.05, 0}},
	} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				Pair(s, s, 6000, 6000, place)
			}
		})
	}
}

func BenchmarkField(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		Field(benchmarkSections["rectangle"], 6000, [3]float64{0.01, 0.002, 0.02})
	}
}

func BenchmarkDiscreteSelf(b *testing.B) {
	s := benchmarkSections["rectangle"]
	turns := Grid(s, 10, 15)
	b.ReportAllocs()
	for b.Loop() {
		DiscreteSelf(s, turns, Wire{Radius: 0.0001})
	}
}

func BenchmarkSelfOutline(b *testing.B) {
	o := Outline{Points: regular(24, 0.02), Height: 0.01, Build: 0.004}
	b.ReportAllocs()
	for b.Loop() {
		SelfOutline(o, 6000)
	}
}
