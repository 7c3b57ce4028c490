package chart

import "math"

// Series is one curve: SI values, NaN where there is a gap. A filled one is an area: down to
// the axis, or the inside of an outline where the panel has equal scales.
type Series struct {
	Label  string
	Row    int // row of the series colours and line styles
	X, Y   []float64
	Notes  []Note
	Filled bool
}

// Note is a named point of a curve.
type Note struct {
	Name string
	X, Y float64
}

// Panel is one pair of axes with what is drawn between them: curves, or bars, or a map.
type Panel struct {
	X, Y   Axis
	Series []Series
	Bars   []Bar
	Map    *Map
	Equal  bool // one scale for both axes, as in a drawing of parts
}

// Bar is a named value, drawn from zero along X.
type Bar struct {
	Label string
	Value float64
}

// Map is a quantity over a rectangular grid: Values[j][i] stands at X[i] and Y[j]. Both
// grids rise.
type Map struct {
	Name   string
	Scale  Axis // the quantity, with its range
	X, Y   []float64
	Values [][]float64
}

// Range widens low and high to hold the finite values that keep approves.
func Range(values []float64, low, high float64, keep func(i int) bool) (float64, float64) {
	for i, v := range values {
		if !math.IsNaN(v) && !math.IsInf(v, 0) && (keep == nil || keep(i)) {
			low, high = min(low, v), max(high, v)
		}
	}
	return low, high
}

// FitX sets the ends of X to those of the data.
func (p *Panel) FitX() {
	p.X.Min, p.X.Max = math.Inf(1), math.Inf(-1)
	for _, s := range p.Series {
		p.X.Min, p.X.Max = Range(s.X, p.X.Min, p.X.Max, func(i int) bool {
			return i < len(s.Y) && !math.IsNaN(s.Y[i]) && !math.IsInf(s.Y[i], 0)
		})
	}
	p.X.Min, p.X.Max = opened(p.X.Min, p.X.Max, p.X.Log)
}

// FitY sets the ends of Y to round values around the data that lie on X. Of a level no more
// than depth decibels below the highest value are kept: a notch may be endlessly deep.
func (p *Panel) FitY(depth float64) {
	low, high := math.Inf(1), math.Inf(-1)
	for _, s := range p.Series {
		low, high = Range(s.Y, low, high, func(i int) bool { return p.X.Holds(s.X[i]) })
	}
	if math.IsInf(low, 0) {
		low, high = 0, 1
	}
	if p.Y.Kind.Symbol == "dB" {
		low = max(low, high-depth)
	}
	p.Y.Min, p.Y.Max = opened(low, high, p.Y.Log)
	p.Y.round()
}

// opened gives an empty range some width, so that a constant is drawn in the middle.
func opened(low, high float64, log bool) (float64, float64) {
	switch {
	case high-low > 1e-9*max(math.Abs(low), math.Abs(high)):
		return low, high
	case log:
		return low / 2, high * 2
	case low == 0:
		return -1, 1
	}
	return low - 0.1*math.Abs(low), high + 0.1*math.Abs(high)
}

// round moves the ends outwards to the next division, a minor one where the labelled one is
// far off.
func (a *Axis) round() {
	if a.Log {
		a.Min, a.Max = digitBelow(a.Min), digitAbove(a.Max)
		return
	}
	low, high, si := a.span()
	stride := a.stride(low, high, 6)
	a.Min, a.Max = si(outward(-low, stride, -1)), si(outward(high, stride, 1))
}

func outward(x, stride, sign float64) float64 {
	whole := math.Ceil(x/stride-1e-9) * stride
	if minor := stride / minorParts(stride); whole-x > 0.6*stride {
		whole = math.Ceil(x/minor-1e-9) * minor
	}
	return sign * whole
}

func digitBelow(v float64) float64 {
	p := math.Pow(10, math.Floor(math.Log10(v)+1e-9))
	return math.Floor(v/p+1e-9) * p
}

func digitAbove(v float64) float64 {
	p := math.Pow(10, math.Floor(math.Log10(v)-1e-9))
	return math.Ceil(v/p-1e-9) * p
}
