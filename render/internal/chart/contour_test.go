package chart

import (
	"math"
	"testing"
)

func grid(n int, f func(x, y float64) float64) *Map {
	m := &Map{}
	for i := range n {
		m.X, m.Y = append(m.X, 2*float64(i)/float64(n-1)-1), append(m.Y, 2*float64(i)/float64(n-1)-1)
	}
	for _, y := range m.Y {
		var row []float64
		for _, x := range m.X {
			row = append(row, f(x, y))
		}
		m.Values = append(m.Values, row)
	}
	return m
}

// area sums the loops' signed areas: holes count negative.
func area(loops [][]Point) float64 {
	sum := 0.0
	for _, loop := range loops {
		for i, p := range loop {
			q := loop[(i+1)%len(loop)]
			sum += (p.X*q.Y - q.X*p.Y) / 2
		}
	}
	return math.Abs(sum)
}

func TestRegions(t *testing.T) {
	radius := func(x, y float64) float64 { return math.Hypot(x, y) }
	for _, c := range []struct {
		name  string
		m     *Map
		level float64
		loops int
		area  float64
	}{
		{"all above", grid(11, radius), -1, 1, 4},
		{"all below", grid(11, radius), 5, 0, 0},
		{"disc", grid(201, func(x, y float64) float64 { return -radius(x, y) }), -0.5, 1, math.Pi / 4},
		{"hole", grid(201, radius), 0.5, 2, 4 - math.Pi/4},
		{"ring", grid(201, func(x, y float64) float64 { return -math.Abs(radius(x, y) - 0.5) }), -0.2, 2, math.Pi * (0.49 - 0.09)},
		{"half", grid(21, func(x, _ float64) float64 { return x }), 0, 1, 2},
		{"two corners", grid(201, func(x, y float64) float64 { return x * y }), 0.25, 2, 2 * (0.75 - 0.25*math.Log(4))},
		{"gap", grid(3, func(x, y float64) float64 {
			if x == 0 && y == 0 {
				return math.NaN()
			}
			return 1
		}), 0, 2, 2},
	} {
		loops := c.m.Regions(c.level)
		if got := area(loops); len(loops) != c.loops || math.Abs(got-c.area) > 0.002 {
			t.Errorf("%s: got %d loops of area %.4f, want %d of %.4f", c.name, len(loops), got, c.loops, c.area)
		}
	}
}

// A saddle of four values falls into two corners or one band, by the mean of its corners.
func TestSaddle(t *testing.T) {
	for _, c := range []struct {
		high  float64
		loops int
	}{{1, 2}, {3, 1}} {
		m := &Map{X: []float64{0, 1}, Y: []float64{0, 1}, Values: [][]float64{{c.high, -2}, {-2, c.high}}}
		if got := len(m.Regions(0)); got != c.loops {
			t.Errorf("corners of %g: got %d loops, want %d", c.high, got, c.loops)
		}
	}
}
