package transformer

import (
	"fmt"
	"math"

	"lode/units"
)

// This file takes models at the taps of their windings.

// TappedPrimary returns the model used on a share of the primary's turns: a tap nearer to the cold end gives a
// higher ratio.
//
// Source: inductance with the square of the turns, resistance with the turns of one wire.
//
// Valid: a tap whose turns couple as the whole winding does; leakage of a tap is then that of the whole, seen from fewer turns, and measuring it says more.
//
// Example: transformer.Nameplate{Primary: 500*ohm, Secondary: 20*kΩ}.Model().TappedPrimary(0.5)
func (m Model) TappedPrimary(share float64) (Model, error) {
	if err := tapProblem(share); err != nil {
		return Model{}, err
	}
	squared := share * share
	m.Ratio /= share
	m.PrimaryInductance *= units.Inductance(squared)
	m.Leakage *= units.Inductance(squared)
	m.CoreLoss *= units.Resistance(squared)
	m.PrimaryResistance *= units.Resistance(share)
	m.PrimaryCapacitance /= units.Capacitance(squared)
	return m, m.check()
}

// TappedSecondary returns the model used on a share of the secondary's turns.
//
// Source: see TappedPrimary.
func (m Model) TappedSecondary(share float64) (Model, error) {
	if err := tapProblem(share); err != nil {
		return Model{}, err
	}
	m.Ratio *= share
	m.SecondaryResistance *= units.Resistance(share)
	m.SecondaryCapacitance /= units.Capacitance(share * share)
	return m, m.check()
}

func tapProblem(share float64) error {
	if share > 0 && share <= 1 {
		return nil
	}
	return fmt.Errorf("transformer tap: got a share of %s of the turns, want more than 0 and at most 1", units.Digits(share, 4))
}

// Taps returns a transformer whose primary is tapped for several rated impedances, such as 50, 200 and 500 Ω
// to 20 kΩ: one tap for each, named after it. Primary is the whole winding's and the highest of them.
//
// Source: rated impedances go with the square of the turns.
//
// Example: transformer.Nameplate{Primary: 500*ohm, Secondary: 20*kΩ, LowCorner: 30*Hz, HighCorner: 20*kHz}.Taps(50*ohm, 200*ohm, 500*ohm)
func (p Nameplate) Taps(impedances ...units.Resistance) ([]Tap, error) {
	whole, err := p.Model()
	if err != nil {
		return nil, err
	}
	var taps []Tap
	for _, z := range impedances {
		if !(z > 0 && z <= p.Primary) {
			return nil, fmt.Errorf("transformer tap: rated impedance: got %v, want more than 0 Ω and at most that of the whole primary, %v", z, p.Primary)
		}
		m, err := whole.TappedPrimary(math.Sqrt(z.SI() / p.Primary.SI()))
		if err != nil {
			return nil, err
		}
		taps = append(taps, Tap{z.String(), m})
	}
	return taps, nil
}
