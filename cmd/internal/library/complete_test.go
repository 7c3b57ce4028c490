package library_test

import (
	"slices"
	"testing"

	"lode/engine"
	"lode/engine/book"
)

// TestFittingFirst wants what fits an argument's kind in front of everything else, and nothing
// without a unit among it.
func TestFittingFirst(t *testing.T) {
	lib := load(t)
	b := book.Parse("x.md", []byte("```go\ngap := 2*mm\nload1 := 5*kΩ\nshop := 21*degC\n```\n"))
	for line, want := range map[string][]string{
		"load.From(c).Cable(":                 {"gap", "mm", "metre", "inch"},
		"wire.AWG(42).Resistance(":            {"gap", "mm"},
		"load.Linear(":                        {"load1", "kΩ", "MΩ", "ohm"},
		"wire.AWG(42).ResistancePerLengthAt(": {"shop", "degC"},
	} {
		b := b
		if line[:5] == "load." && line[5] == 'F' {
			b = book.Parse("x.md", []byte("```go\ngap := 2*mm\nc := coil.Wind(coil.Round{CoreDiameter: 10*mm, Height: 8*mm, FlangeDiameter: 24*mm}, wire.AWG(42), 3000)\n```\n"))
		}
		_, candidates := engine.Complete(lib, b, line)
		last := 0
		for _, w := range want {
			last = max(last, slices.Index(candidates, w))
			if !slices.Contains(candidates, w) {
				t.Errorf("%s: %s is not offered in %q", line, w, candidates)
			}
		}
		for _, n := range []string{"percent", "Hz", "math"} {
			if i := slices.Index(candidates, n); i >= 0 && i < last {
				t.Errorf("%s: %s stands before what fits: %q", line, n, candidates)
			}
		}
	}
}
