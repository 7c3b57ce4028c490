package circuit

import (
	"fmt"
	"math"

	"lode/stdlib/pace"
	"lode/units"
	"lode/units/frame"
)

// This file asks how much each part matters.

// Sensitivity is what one quantity of one part does to a result when it grows by one percent.
type Sensitivity struct {
	Part      string
	Quantity  string
	Resonance float64     // change of the resonance in percent
	Height    units.Level // change of its height
	Level     units.Level // change of its level
}

// Sensitivities is a table of what each part does.
type Sensitivities []Sensitivity

// Sensitivities returns how resonance, height and level of a node move when each part in turn grows
// by one percent.
//
// Source: central differences of a tenth of a percent, each resonance found on the network.
func (n Network) Sensitivities(node string, low, high units.Frequency) (Sensitivities, error) {
	var all Sensitivities
	for i := range pace.Of(len(n.parts)) {
		for _, quantity := range [...]string{"resistance", "inductance", "capacitance"} {
			field := n.parts[i].quantities()[quantity]
			if field == nil || *field == 0 {
				continue
			}
			s, err := n.sensitivity(node, low, high, n.parts[i].name, quantity, *field)
			if err != nil {
				return nil, fmt.Errorf("sensitivity to the %s of %q: %w", quantity, n.parts[i].name, err)
			}
			all = append(all, s)
		}
	}
	return all, nil
}

func (n Network) sensitivity(node string, low, high units.Frequency, name, quantity string, value float64) (Sensitivity, error) {
	const step = 1e-3
	var peaks [2]Peak
	for i, factor := range [...]float64{1 - step, 1 + step} {
		r, err := n.changed(name, quantity, value*factor, nil).Sweep(node, low, high)
		if err != nil {
			return Sensitivity{}, err
		}
		if peaks[i], err = r.Peak(); err != nil {
			return Sensitivity{}, err
		}
	}
	per := 0.01 / (2 * step)
	return Sensitivity{
		Part: name, Quantity: quantity,
		Resonance: 100 * per * math.Log(peaks[1].Frequency.SI()/peaks[0].Frequency.SI()),
		Height:    units.Level(per) * (peaks[1].Height - peaks[0].Height),
		Level:     units.Level(per) * (peaks[1].Level - peaks[0].Level),
	}, nil
}

// told is how fine a change is told in a table, in percent or dB: what is less changes nothing that is heard or measured.
const told = 1e-4

// Frame returns the table in columns; Resonance is in percent. Changes are rounded to a ten-thousandth of a percent or dB.
func (s Sensitivities) Frame() frame.Frame {
	parts, quantities := make([]string, len(s)), make([]string, len(s))
	var columns [3][]float64
	for i, one := range s {
		parts[i], quantities[i] = one.Part, one.Quantity
		for j, v := range [...]float64{one.Resonance, one.Height.SI(), one.Level.SI()} {
			columns[j] = append(columns[j], math.Round(v/told)*told+0)
		}
	}
	level := units.Level(0).Kind()
	return frame.Frame{Title: "When each part grows by one percent", Columns: []frame.Column{
		{Name: "Part", Texts: parts}, {Name: "Quantity", Texts: quantities},
		frame.Of("Resonance in %", units.Number(), columns[0]), frame.Of("Height", level, columns[1]), frame.Of("Level", level, columns[2]),
	}}
}
