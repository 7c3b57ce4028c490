package induct

import (
	"math"
	"math/rand/v2"
	"testing"
)

// The standard library's functions are the witness, over the range of squared lengths and beyond the normal numbers.
func TestQuickFunctions(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	size := func() float64 { return math.Exp(120*r.Float64() - 60) }
	worst := [3]float64{}
	for range 300_000 {
		x, y := size(), size()*math.Exp(-40*r.Float64())
		off := [3]float64{(ln(x) - math.Log(x)) / max(1, math.Abs(math.Log(x))), angle(y, x) - math.Atan(y/x)}
		if r.IntN(2) == 0 {
			x = -x
		}
		if r.IntN(2) == 0 {
			y = -y
		}
		off[2] = turn(y, x) - math.Atan2(y, x)
		for i := range off {
			worst[i] = max(worst[i], math.Abs(off[i]))
		}
	}
	for i, name := range []string{"ln", "angle", "turn"} {
		if worst[i] > 1e-15 {
			t.Errorf("%s: off by %.2g", name, worst[i])
		}
	}
	t.Logf("off by at most %.2g", worst)
}

func TestQuickFunctionsAtTheirEnds(t *testing.T) {
	for _, x := range []float64{1, 2, math.Nextafter(1, 0), math.Nextafter(2, 0), 5e-324, 1e-310, math.MaxFloat64, 1 + 1e-9} {
		closeTo(t, "ln", 1+ln(x), 1+math.Log(x), 1e-15)
	}
	if got := ln(0); !math.IsInf(got, -1) {
		t.Errorf("ln 0: got %g, want -Inf", got)
	}
	if got := angle(0, 0); !math.IsNaN(got) {
		t.Errorf("angle of no direction: got %g, want NaN", got)
	}
	for _, p := range [][3]float64{{0, 1, 0}, {1, 0, math.Pi / 2}, {1, 1, math.Pi / 4}, {1e-300, 1, 1e-300}} {
		closeTo(t, "angle", angle(p[0], p[1]), p[2], 1e-15)
	}
}

func BenchmarkQuickFunctions(b *testing.B) {
	x, sum := 1.3, 0.0
	for name, f := range map[string]func(x float64) float64{
		"ln": ln, "math.Log": math.Log, "math.Atan": math.Atan, "angle": func(x float64) float64 { return angle(x, 1) },
		"slab": func(x float64) float64 { return slab(x, 0.3, 0.7) }, "bar": func(x float64) float64 { return rectangularBar(x, 0.2, 1) },
		"tapeSide": func(x float64) float64 { return tapeSide(x, 2*x, 0.7, 0.2, 1, 2) },
	} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				x += 1e-6
				sum += f(x)
			}
		})
	}
}
