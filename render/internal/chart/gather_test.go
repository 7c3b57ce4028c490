package chart

import (
	"math"
	"math/rand/v2"
	"testing"

	"lode/units"
)

func TestGather(t *testing.T) {
	x, y, v := []float64{2, 1, 2, 1, 1, 2}, []float64{5, 5, 3, 3, 4, 4}, []float64{25, 15, 23, 13, 14, 24}
	m, err := Gather(x, y, v)
	if err != nil || len(m.X) != 2 || len(m.Y) != 3 {
		t.Fatalf("got %+v, %v", m, err)
	}
	for j, row := range m.Values {
		for i, got := range row {
			if got != 10*m.X[i]+m.Y[j] {
				t.Errorf("at %g, %g: got %g", m.X[i], m.Y[j], got)
			}
		}
	}
	for name, c := range map[string][3][]float64{
		"hole":  {{1, 2, 1}, {1, 1, 2}, {0, 0, 0}},
		"twice": {{1, 2, 1, 1}, {1, 1, 2, 2}, {0, 0, 0, 0}},
		"short": {{1, 2}, {1, 1, 2}, {0, 0, 0}},
		"line":  {{1, 2}, {1, 1}, {0, 0}},
		"empty": {{1, 2, 1, 2}, {1, 1, 2, 2}, {math.NaN(), math.NaN(), math.NaN(), math.NaN()}},
	} {
		if _, err := Gather(c[0], c[1], c[2]); err == nil {
			t.Errorf("%s: taken for a grid", name)
		}
	}
}

// Every value is counted once and the columns touch.
func TestSteps(t *testing.T) {
	random := rand.New(rand.NewPCG(9, 9))
	for range 300 {
		n := 2 + random.IntN(2000)
		values := make([]float64, n)
		for i := range values {
			values[i] = 6e3 + 150*random.NormFloat64()
		}
		s := Steps(Axis{Kind: units.Resistance(0).Kind()}, values)
		total := 0.0
		for k := 1; k+1 < len(s.X); k += 2 {
			total += s.Y[k]
			if !(s.X[k+1] > s.X[k]) || k > 1 && s.X[k] != s.X[k-1] {
				t.Fatalf("columns do not touch: %v", s.X)
			}
		}
		if int(total) != n || len(s.X) > 150 {
			t.Fatalf("%d values: %g counted, %d corners", n, total, len(s.X))
		}
	}
}

func TestSquare(t *testing.T) {
	for _, size := range [][2]float64{{100, 100}, {600, 200}, {100, 300}} {
		p := Panel{X: Axis{Min: -2, Max: 6}, Y: Axis{Min: 1, Max: 2}}
		p.Square(size[0], size[1])
		across, up := (p.X.Max-p.X.Min)/size[0], (p.Y.Max-p.Y.Min)/size[1]
		if math.Abs(across-up) > 1e-12 || !(p.X.Min <= -2 && p.X.Max >= 6 && p.Y.Min <= 1 && p.Y.Max >= 2) {
			t.Errorf("%v: got %+v", size, p)
		}
	}
}
