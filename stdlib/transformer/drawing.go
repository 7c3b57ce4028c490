package transformer

import (
	"fmt"

	"lode/units"
	"lode/units/ladder"
)

// This file tells how a transformer is drawn: its equivalent circuit between two pairs of terminals.

// Ladder returns the model as it is drawn.
//
// Example: schematic.Of(transformer.Bench{PrimaryOpen: 0.8*H, PrimaryShorted: 2*mH, VoltageRatio: 9.9}.Model())
func (m Model) Ladder() (ladder.Ladder, error) {
	if err := m.check(); err != nil {
		return ladder.Ladder{}, err
	}
	d := drawing{{Way: ladder.Terminal, Name: "primary"}}
	d.part(ladder.Down, ladder.Capacitor, "", m.PrimaryCapacitance)
	d.part(ladder.Along, ladder.Resistor, "primary", m.PrimaryResistance)
	d.part(ladder.Along, ladder.Inductor, "leakage", m.Leakage)
	d.part(ladder.Down, ladder.Inductor, "magnetising", m.PrimaryInductance)
	d.part(ladder.Down, ladder.Resistor, "core loss", m.CoreLoss)
	d = append(d, ladder.Step{Way: ladder.Transformer, Name: "ideal", Value: "1 : " + units.Digits(m.Ratio, 3)})
	d.part(ladder.Along, ladder.Resistor, "secondary", m.SecondaryResistance)
	d.part(ladder.Down, ladder.Capacitor, "", m.SecondaryCapacitance)
	return ladder.Ladder{Title: fmt.Sprintf("Transformer %v", m), Steps: append(d, ladder.Step{Way: ladder.Terminal, Name: "secondary"})}, nil
}

type drawing []ladder.Step

// part adds a part unless it is left out of the model.
func (d *drawing) part(way ladder.Way, symbol ladder.Symbol, name string, value units.Quantity) {
	if value.SI() != 0 {
		*d = append(*d, ladder.Step{Way: way, Branch: ladder.Part(symbol, name, fmt.Sprint(value))})
	}
}

var _ ladder.Source = Model{}
