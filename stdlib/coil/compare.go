package coil

import (
	"lode/units"
	"lode/units/frame"
)

// AtHeight winds the same turns of the same wire in the same style on the same core between flanges at another height.
//
// Source: as Wind.
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

// Compare lays windings out side by side, a row each.
//
// Source: as the methods of Winding.
//
// Example: coil.Compare(c, c.AtHeight(8*mm), c.AtHeight(12*mm))
func Compare(windings ...Winding) frame.Frame {
	columns := []struct {
		name string
		cell func(Winding) any
	}{
		{"Former", func(c Winding) any { return c.former.String() }},
		{"Wire", func(c Winding) any { return c.wire.Name() }},
		{"Turns", func(c Winding) any { return c.turns }},
		{"Height", func(c Winding) any { return c.shape.Height }},
		{"Build", func(c Winding) any { return c.Build() }},
		{"Resistance", func(c Winding) any { return c.Resistance() }},
		{"Inductance", func(c Winding) any { return c.Inductance() }},
		{"Capacitance", func(c Winding) any { return c.Capacitance() }},
		{"Level against the first", func(c Winding) any { return c.LevelAgainst(windings[0]) }},
		{"Fit", func(c Winding) any { return c.Fit().Verdict() }},
	}
	f := frame.Frame{Title: "Windings"}
	for _, column := range columns {
		var cells []any
		for _, c := range windings {
			if c.turns == 0 {
				cells = append(cells, nil)
				continue
			}
			cells = append(cells, column.cell(c))
		}
		f.Columns = append(f.Columns, frame.Collect(column.name, cells))
	}
	return f
}
