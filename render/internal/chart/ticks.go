package chart

import (
	"math"
	"sort"
)

// Tick is one division of an axis. A tick without a label is a minor one; Grid marks those
// that a line across the panel suits.
type Tick struct {
	At    float64
	Label string
	Grid  bool
}

// Ticks divides the axis so that about room labels or fewer stand on it. At least two are
// always labelled.
func (a Axis) Ticks(room int) []Tick {
	room = max(room, 2)
	if a.Log {
		return a.logTicks(room)
	}
	return a.linearTicks(room)
}

// span returns the ends of the axis and the way from them to SI values, both in the unit
// that the labels count in, so that round numbers are round in that unit.
func (a Axis) span() (low, high float64, si func(float64) float64) {
	step := a.step()
	zero := a.Kind.In(0, step)
	si = func(shown float64) float64 { return (shown - zero) * step.Factor }
	return a.Kind.In(a.Min, step), a.Kind.In(a.Max, step), si
}

func (a Axis) linearTicks(room int) []Tick {
	low, high, si := a.span()
	stride := a.stride(low, high, room)
	minor := stride / minorParts(stride)
	slack := (high - low) * 1e-9
	var ticks []Tick
	for i := math.Ceil((low - slack) / minor); i*minor <= high+slack; i++ {
		t := Tick{At: si(i * minor)}
		if math.Abs(math.Remainder(i*minor, stride)) < minor*1e-6 {
			t.Label, t.Grid = a.Label(si(snap(i*minor, stride))), true
		}
		ticks = append(ticks, t)
	}
	return ticks
}

// snap rounds away the dust that repeated addition of stride leaves.
func snap(x, stride float64) float64 {
	n := math.Round(x / stride)
	if n == 0 {
		return 0
	}
	return n * stride
}

var (
	tenths  = []float64{1, 2, 5}
	decibel = []float64{1, 2, 3, 6}
	degrees = []float64{1, 2, 5, 10, 15, 30, 45, 90, 180, 360}
)

// stride returns the round distance between labels: the smallest that leaves no more than
// room labels, yet no fewer than two.
func (a Axis) stride(low, high float64, room int) float64 {
	width := high - low
	slack, last := width*1e-9, width
	for _, s := range a.strides(width) {
		count := math.Floor((high+slack)/s) - math.Ceil((low-slack)/s) + 1
		if count < 2 {
			return last
		}
		if last = s; count <= float64(room) {
			return s
		}
	}
	return last
}

func (a Axis) strides(width float64) []float64 {
	mantissas := tenths
	if a.Kind.Symbol == "dB" {
		mantissas = decibel
	}
	if a.Kind.Form == "angle" && width > 3 && width <= 2000 {
		return degrees
	}
	var all []float64
	start := math.Floor(math.Log10(width)) - 3
	for p := start; p <= start+4; p++ {
		for _, m := range mantissas {
			all = append(all, m*math.Pow(10, p))
		}
	}
	return all
}

// minorParts tells into how many parts a labelled distance is divided.
func minorParts(stride float64) float64 {
	mantissa := stride / math.Pow(10, math.Floor(math.Log10(stride)+1e-9))
	switch math.Round(mantissa * 100) {
	case 200, 600:
		return 2
	case 150, 300, 900:
		return 3
	case 180, 450, 360:
		return 3
	}
	return 5
}

// The sets of digits that may be labelled in every decade, from sparse to dense.
var digitSets = [][]float64{{1}, {1, 3}, {1, 2, 5}, {1, 2, 3, 5, 7}, {1, 2, 3, 4, 5, 6, 7, 8, 9}}

// logTicks labels the densest set of round values that fits: every n-th decade, whole
// decades, some digits in each, or, when the axis lies between two round values, the
// divisions a linear axis would have. Every digit of a decade is a minor tick as long as
// decades are few.
func (a Axis) logTicks(room int) []Tick {
	labelled := a.labelled(room)
	ticks := make([]Tick, 0, len(labelled)+40)
	for _, v := range labelled {
		ticks = append(ticks, Tick{At: v, Label: a.Label(v), Grid: wholeDecade(v) || len(labelled) < 4})
	}
	for _, v := range a.minors(labelled) {
		ticks = append(ticks, Tick{At: v, Grid: wholeDecade(v)})
	}
	sort.Slice(ticks, func(i, j int) bool { return ticks[i].At < ticks[j].At })
	return ticks
}

func (a Axis) labelled(room int) []float64 {
	best := a.multiples([]float64{1})
	for n := 3; len(best) > room; n += 3 {
		best = nth(a.multiples([]float64{1}), n)
	}
	for _, set := range digitSets {
		if values := a.multiples(set); len(values) <= room && a.spread(values, room) {
			best = values
		}
	}
	if len(best) < 2 || len(best) < 3 && a.Max/a.Min < 3 {
		best = a.between(room)
	}
	return best
}

// nth keeps every n-th decade, those whose power n divides.
func nth(decades []float64, n int) []float64 {
	var kept []float64
	for _, d := range decades {
		if int(math.Round(math.Log10(d)))%n == 0 {
			kept = append(kept, d)
		}
	}
	return kept
}

// multiples returns the set's digits in every decade of the axis.
func (a Axis) multiples(set []float64) []float64 {
	var values []float64
	for p := math.Floor(math.Log10(a.Min)); p <= math.Log10(a.Max)+1e-9; p++ {
		for _, digit := range set {
			if v := digit * math.Pow(10, p); a.Holds(v) {
				values = append(values, v)
			}
		}
	}
	return values
}

// between divides a short log axis as a linear one, dropping labels that crowd together, and
// names at least its two ends.
func (a Axis) between(room int) []float64 {
	linear := a
	linear.Log = false
	var values []float64
	for _, t := range linear.linearTicks(room) {
		if t.Label != "" && t.At > 0 && (len(values) == 0 || a.At(t.At)-a.At(values[len(values)-1]) >= 0.6/float64(room)) {
			values = append(values, t.At)
		}
	}
	if len(values) < 2 {
		return []float64{a.Min, a.Max}
	}
	return values
}

// spread reports whether neighbours keep a fair share of the axis.
func (a Axis) spread(values []float64, room int) bool {
	for i := 1; i < len(values); i++ {
		if a.At(values[i])-a.At(values[i-1]) < 0.6/float64(room) {
			return false
		}
	}
	return true
}

func (a Axis) minors(labelled []float64) []float64 {
	set := digitSets[len(digitSets)-1]
	if math.Log10(a.Max/a.Min) > 8 {
		set = digitSets[0]
	}
	var values []float64
	for _, v := range a.multiples(set) {
		i := sort.SearchFloat64s(labelled, v*(1-1e-9))
		if i == len(labelled) || labelled[i] > v*(1+1e-9) {
			values = append(values, v)
		}
	}
	return values
}

func wholeDecade(v float64) bool {
	p := math.Log10(v)
	return math.Abs(p-math.Round(p)) < 1e-9
}
