package chart

import (
	"fmt"
	"math"
	"sort"
)

// Gather arranges rows of two sides and a value as a map. Every pair of sides must be there
// once; a value may be NaN.
func Gather(x, y, v []float64) (*Map, error) {
	if len(x) != len(y) || len(y) != len(v) {
		return nil, fmt.Errorf("columns of different length: got %d, %d and %d rows, want as many of each", len(x), len(y), len(v))
	}
	m := &Map{X: distinct(x), Y: distinct(y)}
	if len(m.X) < 2 || len(m.Y) < 2 || len(m.X)*len(m.Y) != len(v) {
		return nil, fmt.Errorf("not a full grid: got %d rows for %d by %d different sides, want one row for each pair", len(v), len(m.X), len(m.Y))
	}
	for range m.Y {
		m.Values = append(m.Values, make([]float64, len(m.X)))
	}
	filled := map[[2]int]bool{}
	for i := range v {
		at := [2]int{sort.SearchFloat64s(m.X, x[i]), sort.SearchFloat64s(m.Y, y[i])}
		if filled[at] {
			return nil, fmt.Errorf("row %d: got the pair %g and %g again, want each pair once", i+1, x[i], y[i])
		}
		filled[at] = true
		m.Values[at[1]][at[0]] = v[i]
	}
	m.Scale.Min, m.Scale.Max = Range(v, math.Inf(1), math.Inf(-1), nil)
	if math.IsInf(m.Scale.Min, 0) {
		return nil, fmt.Errorf("nothing to draw: got no finite value")
	}
	m.Scale.Min, m.Scale.Max = opened(m.Scale.Min, m.Scale.Max, false)
	return m, nil
}

// distinct returns the different finite values in rising order.
func distinct(values []float64) []float64 {
	sorted := append([]float64(nil), values...)
	sort.Float64s(sorted)
	var kept []float64
	for _, v := range sorted {
		if !math.IsNaN(v) && !math.IsInf(v, 0) && (len(kept) == 0 || v > kept[len(kept)-1]) {
			kept = append(kept, v)
		}
	}
	return kept
}

// Levels returns round values of the map's quantity that cut its range into steps.
func (m *Map) Levels() []float64 {
	var levels []float64
	for _, t := range m.Scale.Ticks(9) {
		if t.Label != "" && t.At > m.Scale.Min && t.At < m.Scale.Max {
			levels = append(levels, t.At)
		}
	}
	return levels
}

// At returns the value at the grid point nearest to x and y as a share of the map's range; ok
// is false outside the map and at gaps.
func (m *Map) At(x, y float64) (share float64, ok bool) {
	i, okX := nearest(m.X, x)
	j, okY := nearest(m.Y, y)
	if !okX || !okY || math.IsNaN(m.Values[j][i]) {
		return 0, false
	}
	return min(max(m.Scale.At(m.Values[j][i]), 0), 1), true
}

func nearest(grid []float64, at float64) (int, bool) {
	if at < grid[0] || at > grid[len(grid)-1] {
		return 0, false
	}
	i := min(sort.SearchFloat64s(grid, at), len(grid)-1)
	if i > 0 && at-grid[i-1] < grid[i]-at {
		i--
	}
	return i, true
}

// Steps counts values in bins of a round width and returns the outline of the columns.
//
// The width is that of D. Freedman and P. Diaconis, "On the histogram as a density
// estimator", Zeitschrift für Wahrscheinlichkeitstheorie 57 (1981): twice the interquartile
// range over the cube root of the count; made round on the axis's own unit.
func Steps(a Axis, values []float64) Series {
	sorted := append([]float64(nil), values...)
	sort.Float64s(sorted)
	n := len(sorted)
	a.Min, a.Max = opened(sorted[0], sorted[n-1], false)
	width := 2 * (sorted[(3*n)/4] - sorted[n/4]) / math.Cbrt(float64(n))
	bins := 8
	if width > 0 {
		bins = int(min(max((a.Max-a.Min)/width, 4), 60))
	}
	low, high, si := a.span()
	stride := a.stride(low, high, bins+1)
	first := math.Floor(low/stride + 1e-9)
	counts := make([]float64, int(math.Floor(high/stride+1e-9)-first)+1)
	for _, v := range sorted {
		k := int(math.Floor(a.Kind.In(v, a.step())/stride+1e-9) - first)
		counts[min(max(k, 0), len(counts)-1)]++
	}
	s := Series{Filled: true}
	edge := func(k int) float64 { return si((first + float64(k)) * stride) }
	s.X, s.Y = []float64{edge(0)}, []float64{0}
	for k, c := range counts {
		s.X, s.Y = append(s.X, edge(k), edge(k+1)), append(s.Y, c, c)
	}
	s.X, s.Y = append(s.X, edge(len(counts))), append(s.Y, 0)
	return s
}

// FitBars sets the axes for the panel's bars: X from zero to the values, Y one step a bar.
func (p *Panel) FitBars() {
	low, high := 0.0, 0.0
	for _, b := range p.Bars {
		low, high = min(low, b.Value), max(high, b.Value)
	}
	p.X.Min, p.X.Max = opened(low, high, false)
	p.X.round()
	p.Y.Min, p.Y.Max = 0, float64(len(p.Bars))
}

// FitOutline sets both axes around the outlines, with room for their dimensions.
func (p *Panel) FitOutline() {
	low, high := math.Inf(1), math.Inf(-1)
	for _, s := range p.Series {
		low, high = Range(s.Y, low, high, nil)
	}
	p.Y.Min, p.Y.Max = opened(low, high, false)
	size := max(p.X.Max-p.X.Min, p.Y.Max-p.Y.Min)
	p.X.Min, p.X.Max = p.X.Min-0.04*size, p.X.Max+0.06*size
	p.Y.Min, p.Y.Max = p.Y.Min-0.04*size, p.Y.Max+0.12*size
}

// Square widens one of the axes about its middle until one unit is as long on both, for a
// field of the given size.
func (p *Panel) Square(width, height float64) {
	across, up := (p.X.Max-p.X.Min)/width, (p.Y.Max-p.Y.Min)/height
	scale := max(across, up)
	widen := func(a *Axis, size float64) {
		extra := (scale*size - (a.Max - a.Min)) / 2
		a.Min, a.Max = a.Min-extra, a.Max+extra
	}
	widen(&p.X, width)
	widen(&p.Y, height)
}
