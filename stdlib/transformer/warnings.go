package transformer

import (
	"fmt"

	"lode/units"
)

// steep is the step-up from which the winding capacitances decide the upper corner: common
// practice, no source.
const steep = 5

// Warnings lists where the model leaves the ranges that its answers are valid for.
func (m Model) Warnings() []string {
	var list []string
	if m.Ratio > steep && m.SecondaryCapacitance == 0 {
		list = append(list, fmt.Sprintf("a step-up of 1 to %s without the capacitance of its secondary, which decides above a few kilohertz: measure the resonance of the secondary with the primary open", units.Digits(m.Ratio, 3)))
	}
	if m.PrimaryInductance == 0 {
		list = append(list, "no primary inductance: the bass is taken as without end")
	}
	if m.Leakage == 0 {
		list = append(list, "no leakage: the treble is taken as without end")
	}
	return list
}
