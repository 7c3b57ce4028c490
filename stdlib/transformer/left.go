package transformer

import (
	"fmt"
	"math"

	"lode/units"
)

// This file says where calls leave the range they are valid for and still have a result.

// Ranges returns, under the name of a function or method, what tells where a call of it left its range. It takes
// what the call took, the receiver first, and returns the warnings: "what: got X, valid Y".
func Ranges() map[string]any {
	return map[string]any{
		"CompareTaps":      compareTapsLeft,
		"Limits.At":        Limits.atLeft,
		"Model.HighCorner": Model.highCornerLeft,
		"Model.LowCorner":  Model.lowCornerLeft,
	}
}

// wellAway is how far a resonance has to be from a corner to be left out of it: the corner then moves by less than
// a tenth.
const wellAway = 3

// resonance returns that of an inductance on the primary side with the capacitances, infinite without any.
func (m Model) resonance(henry units.Inductance) units.Frequency {
	farad := m.PrimaryCapacitance.SI() + m.Ratio*m.Ratio*m.SecondaryCapacitance.SI()
	return units.Frequency(1 / (2 * math.Pi * math.Sqrt(henry.SI()*farad)))
}

func (m Model) highCornerLeft(source, load units.Resistance) []string {
	corner, err := m.HighCorner(source, load)
	switch at := m.resonance(m.Leakage); {
	case err != nil:
		return nil
	case at < wellAway*corner:
		return []string{fmt.Sprintf("resonance of leakage and capacitances: got %v, valid from three times the corner on, %v; Sweep includes it", at, wellAway*corner)}
	case m.Ratio > steep && m.SecondaryCapacitance == 0:
		return []string{fmt.Sprintf("ratio without a secondary capacitance: got 1 to %s, valid up to about 1 to %d", units.Digits(m.Ratio, 3), steep)}
	}
	return nil
}

func (m Model) lowCornerLeft(source, load units.Resistance) []string {
	corner, err := m.LowCorner(source, load)
	if err != nil {
		return nil
	}
	var list []string
	if most := m.PrimaryInductance / 10; m.Leakage > most {
		list = append(list, fmt.Sprintf("leakage: got %v, valid up to a tenth of the primary inductance, %v; Sweep includes it", m.Leakage, most))
	}
	if at := m.resonance(m.PrimaryInductance); at < wellAway*corner {
		list = append(list, fmt.Sprintf("resonance of primary inductance and capacitances: got %v, valid from three times the corner on, %v; Sweep includes it", at, wellAway*corner))
	}
	return list
}

func compareTapsLeft(source, load units.Resistance, taps ...Tap) []string {
	var list []string
	for _, t := range taps {
		for _, text := range append(t.Model.lowCornerLeft(source, load), t.Model.highCornerLeft(source, load)...) {
			list = append(list, fmt.Sprintf("tap %q: %s", t.Name, text))
		}
	}
	return list
}

// lowEnough is how far above the frequency of a limit the core still is what limits: common practice, no source.
const lowEnough = 10

func (l Limits) atLeft(f units.Frequency) []string {
	if most := lowEnough * l.Frequency; f > most {
		return []string{fmt.Sprintf("frequency: got %v, valid at low frequency, up to ten times that of the limit, %v", f, most)}
	}
	return nil
}
