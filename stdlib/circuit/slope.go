package circuit

import (
	"fmt"
	"math"

	"lode/units"
	"lode/units/frame"
)

// This file reads how steep and how wide a response is, and how any result follows any part.

// SlopeAt returns how the level changes with frequency at one frequency, per octave: -6 dB beyond one
// capacitor, -12 dB beyond the resonance of a coil.
func (r Response) SlopeAt(f units.Frequency) (units.Level, error) {
	if _, err := r.value(f); err != nil {
		return 0, err
	}
	change := r.level(f.SI()*(1+stride)) - r.level(f.SI()*(1-stride))
	return units.Level(change / (math.Log2((1 + stride) / (1 - stride)))), nil
}

// Bandwidth returns how far the -3 dB points are apart: from the lower one, or from zero where the bass is full,
// to the upper one.
func (r Response) Bandwidth() (units.Frequency, error) {
	high, err := r.Cutoff()
	if err != nil {
		return 0, err
	}
	if low, err := r.LowCutoff(); err == nil && low < high {
		return high - low, nil
	}
	return high, nil
}

// Influence is what one quantity of one part does to a result.
type Influence struct {
	Part     string
	Quantity string
	Change   float64 // of the result in percent, for one percent more of the quantity
}

// Influences is a table of what each part does to a result.
type Influences []Influence

// Influences returns how any result of the network follows each of its parts. Result works it out.
//
// Source: central differences of a tenth of a percent.
//
// Valid: results that are not zero and that follow the parts smoothly.
//
// Example: n.Influences(func(changed circuit.Network) float64 { return float64(changed.Sweep("out", 20*Hz, 20*kHz).Plateau()) })
func (n Network) Influences(result func(Network) float64) (Influences, error) {
	if err := n.check(); err != nil {
		return nil, err
	}
	if result == nil {
		return nil, fmt.Errorf("influences: %w: got no function, want one of a network", ErrValue)
	}
	var all Influences
	base := result(n)
	if base == 0 || math.IsNaN(base) || math.IsInf(base, 0) {
		return nil, fmt.Errorf("influences: result: %w: got %s, want a number that is not 0", ErrValue, units.Digits(base, 4))
	}
	const step = 1e-3
	for i := range n.parts {
		for _, quantity := range [...]string{"resistance", "inductance", "capacitance"} {
			field := n.parts[i].quantities()[quantity]
			if field == nil || *field == 0 {
				continue
			}
			name, value := n.parts[i].name, *field
			more, less := result(n.changed(name, quantity, value*(1+step), nil)), result(n.changed(name, quantity, value*(1-step), nil))
			all = append(all, Influence{name, quantity, (more - less) / (2 * step * base)})
		}
	}
	return all, nil
}

// Frame returns the table in columns.
func (s Influences) Frame() frame.Frame {
	parts, quantities, changes := make([]string, len(s)), make([]string, len(s)), make([]float64, len(s))
	for i, one := range s {
		parts[i], quantities[i], changes[i] = one.Part, one.Quantity, one.Change
	}
	return frame.Frame{Title: "When each part grows by one percent", Columns: []frame.Column{
		{Name: "Part", Texts: parts}, {Name: "Quantity", Texts: quantities}, frame.Of("Change in %", units.Number(), changes)}}
}
