package present

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"lode/engine"
	"lode/engine/issue"
	"lode/render/page"
	"lode/units"
)

// This file writes and reads the values of knobs.

// kind returns the kind of a knob's values.
func kind(k engine.Knob) units.Kind {
	if named, ok := units.KindNamed(k.Type); ok {
		return named
	}
	return units.KindFor(units.Dimension(k.Vector))
}

// Amount writes a value of a knob as a result is written.
func Amount(k engine.Knob, value float64) string {
	if k.Whole {
		return strconv.FormatFloat(value, 'f', 0, 64)
	}
	return units.Text(value, kind(k))
}

// Turned reads a value for a knob as a person writes it, such as "470 kΩ".
func Turned(k engine.Knob, text string) (float64, *issue.Issue) {
	text = strings.TrimSpace(text)
	p, err := units.Parse(text)
	if err != nil {
		what, _, _ := strings.Cut(strings.TrimPrefix(err.Error(), fmt.Sprintf("%q: ", text)), ": got ")
		return 0, misfit(k, what, text)
	}
	want := kind(k)
	level := strings.HasSuffix(text, "dB")
	if p.Dim != want.Dim || level != (want.Form == "log") {
		return 0, misfit(k, unitFault(want, text), text)
	}
	return p.Value, Allowed(k, p.Value)
}

// unitFault tells what is wrong with the unit of a text that was read.
func unitFault(want units.Kind, text string) string {
	if _, err := strconv.ParseFloat(text, 64); err == nil {
		return "the unit is missing"
	}
	if want.Dim == (units.Dimension{}) && want.Form != "log" {
		return "the knob takes numbers without a unit"
	}
	return "the unit does not fit"
}

// Allowed refuses values that a knob does not reach.
func Allowed(k engine.Knob, value float64) *issue.Issue {
	slack := 1e-9 * math.Max(math.Abs(k.Low), math.Abs(k.High))
	switch {
	case !(value >= k.Low-slack && value <= k.High+slack):
		return misfit(k, "the value lies outside of its bounds", Amount(k, value))
	case k.Whole && value != math.Trunc(value):
		return misfit(k, "the knob takes whole numbers", units.Digits(value, 6))
	}
	return nil
}

// misfit is the issue of a value that a knob cannot take, at the knob's definition.
func misfit(k engine.Knob, what, got string) *issue.Issue {
	want := "a value from "
	if k.Whole {
		want = "a whole number from "
	}
	return &issue.Issue{Place: k.Place, Source: k.Source, Code: "knob-value", What: fmt.Sprintf("knob %q: %s", k.Name, what), Got: got,
		Want: want + Amount(k, k.Low) + " to " + Amount(k, k.High)}
}

// wide is the ratio of the bounds from which on stops grow by a factor instead of a step.
const wide = 20

// Stops returns up to count values from a knob's low to its high bound, the notebook's own
// value among them.
func Stops(k engine.Knob, count int) []float64 {
	var stops []float64
	own := -1
	for i := range count {
		x := k.Low + (k.High-k.Low)*float64(i)/float64(count-1)
		if k.Low > 0 && k.High/k.Low >= wide {
			x = k.Low * math.Pow(k.High/k.Low, float64(i)/float64(count-1))
		}
		if k.Whole {
			x = math.Round(x)
		}
		if i == count-1 {
			x = k.High
		}
		if n := len(stops); n == 0 || x > stops[n-1] {
			stops = append(stops, x)
		}
	}
	for i, x := range stops {
		if own < 0 || math.Abs(x-k.Value) < math.Abs(stops[own]-k.Value) {
			own = i
		}
	}
	switch {
	case stops[own] == k.Value:
	case own == 0:
		stops = append(stops[:1], append([]float64{k.Value}, stops[1:]...)...)
	case own == len(stops)-1:
		stops = append(stops[:own], k.Value, stops[own])
	default:
		stops[own] = k.Value
	}
	return stops
}

// Knob lays out a knob that stands at one of its stops.
func Knob(k engine.Knob, stops []float64, now float64) page.Knob {
	out := page.Knob{Name: k.Name}
	for i, x := range stops {
		out.Stops = append(out.Stops, Amount(k, x))
		out.Exact = append(out.Exact, strconv.FormatFloat(x, 'g', -1, 64))
		if math.Abs(x-now) < math.Abs(stops[out.At]-now) {
			out.At = i
		}
		if x == k.Value {
			out.Base = i
		}
	}
	return out
}

// PageFault turns an issue into what the page draws.
func PageFault(i issue.Issue) page.Fault {
	return page.Fault{Place: i.Place.String(), What: i.What, Source: i.Source, Start: i.Column - 1, End: i.EndColumn - 1, Got: i.Got, Want: i.Want, Hint: i.Hint, From: calls(i)}
}
