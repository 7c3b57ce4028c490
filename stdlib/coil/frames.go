package coil

import (
	"math"

	"lode/units"
	"lode/units/frame"
)

// This file lays windings out as tables.

// Frame lays out all that is known of the winding.
func (c Winding) Frame() frame.Frame {
	if c.turns == 0 {
		return list("Winding")
	}
	return list("Winding of "+c.wire.Name()+", "+c.style.String(),
		"Turns", c.turns, "Resistance at 20 °C", c.Resistance(), "Inductance without iron", c.Inductance(), "Turns taken", c.InductanceMethod(),
		"Capacitance", c.CapacitanceRange(), "Build", c.BuildRange(), "Room left", open(c.Fit().RoomLeft()),
		"Turns per layer", c.TurnsPerLayer(), "Layers", c.Layers(), "Mean turn", c.MeanTurn(), "Mean area", c.Area(),
		"Wire length", c.WireLength(), "Mass of wire", c.Mass(), "Fit", c.Fit().Verdict())
}

// Frame lays out how the winding lies on its former.
func (f Fit) Frame() frame.Frame {
	return list("Fit of "+f.wire.Name(), "Turns", f.Turns, "Build", f.Build, "Room", open(f.Room), "Room left", open(f.RoomLeft()),
		"Turns per layer", f.TurnsPerLayer, "Layers", f.Layers, "Turns that fit", f.TurnsThatFit, "Verdict", f.Verdict())
}

// String gives the verdict, with the build and the room that it comes from.
func (f Fit) String() string {
	text := f.Verdict() + ": build " + f.Build.String()
	if !math.IsInf(float64(f.Room), 1) {
		text += ", room " + f.Room.String()
	}
	return text
}

// open words a room that no flange limits.
func open(x units.Length) any {
	if math.IsInf(float64(x), 1) {
		return "open, no flange"
	}
	return x
}

// list makes a table of names and values out of pairs.
func list(title string, pairs ...any) frame.Frame {
	names, values := frame.Column{Name: "Quantity", Texts: []string{}}, []any{}
	for i := 0; i+1 < len(pairs); i += 2 {
		names.Texts = append(names.Texts, pairs[i].(string))
		values = append(values, pairs[i+1])
	}
	return frame.Frame{Title: title, Columns: []frame.Column{names, frame.Collect("Value", values)}}
}
