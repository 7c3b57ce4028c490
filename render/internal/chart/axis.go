// Package chart holds a drawing before it is drawn: panels of curves over axes, in SI
// values. It chooses ranges, ticks and labels, thins curves and places labels, so that the
// page and the terminal show the same thing.
package chart

import (
	"fmt"
	"math"
	"strings"

	"lode/units"
)

// Axis is one direction of a panel. Min and Max are SI values; both must be positive when
// Log is set.
type Axis struct {
	Name     string
	Kind     units.Kind
	Log      bool
	Min, Max float64
}

// At returns where v lies between Min (0) and Max (1).
func (a Axis) At(v float64) float64 {
	if a.Log {
		return math.Log(v/a.Min) / math.Log(a.Max/a.Min)
	}
	return (v - a.Min) / (a.Max - a.Min)
}

// Holds reports whether v lies on the axis.
func (a Axis) Holds(v float64) bool {
	slack := 1e-9
	at := a.At(v)
	return at >= -slack && at <= 1+slack
}

// Title names the axis and the unit its labels count in.
func (a Axis) Title() string {
	unit := a.unit()
	if unit == "" {
		return a.Name
	}
	if a.Name == "" {
		return unit
	}
	return a.Name + ", " + unit
}

func (a Axis) unit() string {
	if a.prefixed() {
		return a.Kind.Symbol
	}
	return a.step().Symbol
}

// prefixed reports whether labels carry a prefix each (100, 1 k, 10 k) under the coherent
// unit: on log axes of quantities whose units go by prefixes.
func (a Axis) prefixed() bool {
	return a.Log && len(a.Kind.Steps()) > 5
}

// step is the one unit that all labels count in.
func (a Axis) step() units.Step {
	if a.Log {
		return a.Kind.StepFor(math.Sqrt(a.Min * a.Max))
	}
	return a.Kind.StepFor(max(math.Abs(a.Min), math.Abs(a.Max)))
}

// Label writes v as it stands at a tick.
func (a Axis) Label(v float64) string {
	if a.prefixed() {
		step := a.Kind.StepFor(v)
		prefix := strings.TrimSuffix(step.Symbol, a.Kind.Symbol)
		return strings.TrimSpace(minus(units.Digits(a.Kind.In(v, step), a.digits())) + "\u00a0" + prefix)
	}
	shown := a.Kind.In(v, a.step())
	return minus(units.Digits(shown, a.digits()))
}

// digits returns how many significant digits tell neighbouring ticks apart.
func (a Axis) digits() int {
	low, high, _ := a.span()
	size := max(math.Abs(low), math.Abs(high)) / (high - low)
	return min(max(4, 3+int(math.Ceil(math.Log10(size)))), 15)
}

// Data writes the axis for a reader that turns places back into values: its scale, its ends
// in SI values, the unit, how values are counted in it (divided by a factor, then shifted)
// and whether they take a prefix.
func (a Axis) Data() string {
	scale, prefix, unit := "linear", "plain", a.unit()
	if a.Log {
		scale = "log"
	}
	if a.prefixed() {
		prefix = "prefix"
	}
	if unit == "" {
		unit = "-"
	}
	step := a.step()
	return fmt.Sprintf("%s %.9g %.9g %s %g %g %s", scale, a.Min, a.Max, unit, step.Factor, a.Kind.In(0, step), prefix)
}

// minus puts the sign of mathematics in place of the hyphen.
func minus(number string) string { return strings.Replace(number, "-", "−", 1) }

// Value writes v with its unit, for a sentence or a note: to three significant digits, and
// no finer than a thousandth of a linear axis.
func (a Axis) Value(v float64) string {
	if width := a.Max - a.Min; !a.Log && width > 0 && !math.IsInf(width, 0) {
		grain := math.Pow(10, math.Floor(math.Log10(width))-3)
		if math.Abs(v) < grain/2 {
			v = 0
		}
	}
	step := a.Kind.StepFor(v)
	if v == 0 && !a.Log && a.Max > a.Min {
		step = a.step()
	}
	number := minus(units.Digits(a.Kind.In(v, step), 3))
	if step.Symbol == "" || step.Symbol == "°" {
		return number + step.Symbol
	}
	return number + "\u00a0" + step.Symbol
}
