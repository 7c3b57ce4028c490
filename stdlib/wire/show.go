package wire

import (
	"lode/units"
	"lode/units/frame"
)

// String names the wire with its diameters and resistance.
func (w Wire) String() string {
	if w.label == "" {
		return "no wire"
	}
	text := w.Name() + ": bare " + w.Bare().String()
	if w.overall.Nominal > w.bare.Nominal {
		text += ", overall " + w.Overall().String()
		if w.guessed {
			text += " (estimate)"
		}
	}
	return text + ", " + w.ResistancePerLength().String() + " at 20 °C"
}

// Frame lays the wire out as a table of one row.
func (w Wire) Frame() frame.Frame { return List(w) }

// List lays several wires out as one table, a row each: diameters, resistance at 20 °C and
// mass.
//
// Example: wire.List(wire.AWG(42), wire.AWG(43))
func List(wires ...Wire) frame.Frame {
	names := make([]string, len(wires))
	column := func(name string, figure func(Wire) units.Quantity) frame.Column {
		values := make([]float64, len(wires))
		for i, w := range wires {
			values[i] = figure(w).SI()
		}
		return frame.Of(name, figure(Wire{}).Kind(), values)
	}
	for i, w := range wires {
		names[i] = w.Name()
	}
	return frame.Frame{Title: "Wire", Columns: []frame.Column{
		{Name: "Wire", Texts: names},
		column("Bare", func(w Wire) units.Quantity { return w.Bare() }),
		column("Overall", func(w Wire) units.Quantity { return w.Overall() }),
		column("Resistance at 20 °C", func(w Wire) units.Quantity { return w.ResistancePerLength() }),
		column("Mass", func(w Wire) units.Quantity { return w.MassPerLength() }),
	}}
}
