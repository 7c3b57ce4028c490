package coil

import (
	"fmt"
	"strings"

	"lode/units"
	"lode/units/frame"
)

// AtHeight winds the same turns of the same wire in the same style on the same core between flanges at another height.
//
// Source: as Wind.
//
// Valid: heights up to 2 m at which the turns fit.
//
// Accuracy: as Wind.
//
// Example: c.AtHeight(8*mm)
func (c Winding) AtHeight(height units.Length) (Winding, error) {
	former, known := raised(c.former, height)
	if !known {
		return Winding{}, refuse("winding: none", c, "a winding made by coil.Wind", "")
	}
	return c.On(former)
}

// raised returns a former with its flanges at another height.
func raised(former Former, height units.Length) (Former, bool) {
	switch f := former.(type) {
	case Racetrack:
		f.Height = height
		return f, true
	case Rectangle:
		f.Height = height
		return f, true
	case Round:
		f.Height = height
		return f, true
	case Convex:
		f.Height = height
		return f, true
	}
	return nil, false
}

// Compare lays windings out side by side, a row each. What they share of former, wire and
// turns stands in the title instead of a column.
//
// Source: as the methods of Winding.
//
// Valid: the level for the same core and height, each within a tenth, see LevelAgainst; the rest for any.
//
// Example: coil.Compare(c, c.AtHeight(8*mm), c.AtHeight(12*mm))
func Compare(windings ...Winding) frame.Frame {
	f := frame.Frame{Title: "Windings"}
	var shared []string
	for _, t := range traits() {
		if value, same := sharedBy(windings, t.cell); same {
			shared = append(shared, strings.TrimSpace(fmt.Sprint(value)+" "+t.unit))
			continue
		}
		f.Columns = append(f.Columns, column(t.name, windings, t.cell))
	}
	if len(shared) > 0 {
		f.Title = "Windings: " + strings.Join(shared, "; ")
	}
	for _, r := range results(windings) {
		f.Columns = append(f.Columns, column(r.name, windings, r.cell))
	}
	return f
}

type trait struct {
	name, unit string
	cell       func(Winding) any
}

// traits are what windings are made of.
func traits() []trait {
	return []trait{
		{"Former", "", func(c Winding) any { return core(c.former) }},
		{"Wire", "", func(c Winding) any { return c.wire.Name() }},
		{"Turns", "turns", func(c Winding) any { return c.turns }},
	}
}

// results are what comes of them.
func results(windings []Winding) []trait {
	return []trait{
		{"Height", "", func(c Winding) any { return c.shape.Height }},
		{"Build", "", func(c Winding) any { return c.Build() }},
		{"Resistance", "", func(c Winding) any { return c.Resistance() }},
		{"Inductance", "", func(c Winding) any { return c.Inductance() }},
		{"Capacitance", "", func(c Winding) any { return c.Capacitance() }},
		{"Level against the first", "", func(c Winding) any { return c.LevelAgainst(windings[0]) }},
		{"Fit", "", func(c Winding) any { return c.Fit().Verdict() }},
	}
}

// core describes a former without its height, which has a column of its own.
func core(f Former) string {
	text := fmt.Sprint(f)
	if i := strings.LastIndex(text, ", "); i > 0 && strings.HasSuffix(text, " high") {
		return text[:i]
	}
	return text
}

// sharedBy returns what a cell holds in every row of a table of several.
func sharedBy(windings []Winding, cell func(Winding) any) (value any, same bool) {
	if len(windings) < 2 || windings[0].turns == 0 {
		return nil, false
	}
	value = cell(windings[0])
	for _, c := range windings[1:] {
		if c.turns == 0 || cell(c) != value {
			return nil, false
		}
	}
	return value, true
}

func column(name string, windings []Winding, cell func(Winding) any) frame.Column {
	var cells []any
	for _, c := range windings {
		if c.turns == 0 {
			cells = append(cells, nil)
			continue
		}
		cells = append(cells, cell(c))
	}
	return frame.Collect(name, cells)
}
