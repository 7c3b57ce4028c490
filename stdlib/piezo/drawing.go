package piezo

import (
	"lode/units"
	"lode/units/ladder"
)

// This file tells how elements and their amplifier are drawn.

// Ladder returns the element as it is drawn: its open voltage behind its capacitance.
func (e Element) Ladder() (ladder.Ladder, error) {
	if err := e.check(); err != nil {
		return ladder.Ladder{}, err
	}
	l := ladder.Ladder{Title: "Piezo element", Steps: []ladder.Step{{Way: ladder.Down, Branch: ladder.Series(
		ladder.Part(ladder.Capacitor, "piezo", e.Capacitance.String()), ladder.Part(ladder.VoltageSource, "", "open voltage"))}}}
	if e.Leakage > 0 {
		l.Steps = append(l.Steps, ladder.Step{Way: ladder.Down, Branch: ladder.Part(ladder.Resistor, "leakage", e.Leakage.String())})
	}
	if e.LossTangent > 0 {
		l.Notes = []string{"The capacitance has a loss tangent of " + units.Digits(e.LossTangent, 3) + "."}
	}
	l.Steps = append(l.Steps, ladder.Step{Way: ladder.Terminal, Name: "out"})
	return l, nil
}

// Ladder returns the amplifier as it is drawn.
func (a ChargeAmplifier) Ladder() (ladder.Ladder, error) {
	if err := a.check(); err != nil {
		return ladder.Ladder{}, err
	}
	feedback := ladder.Parallel(ladder.Part(ladder.Capacitor, "", a.FeedbackCapacitance.String()), ladder.Part(ladder.Resistor, "", a.FeedbackResistance.String()))
	return ladder.Ladder{Title: "Charge amplifier", Steps: []ladder.Step{
		{Way: ladder.Terminal, Name: "in"}, {Way: ladder.Amplifier, Name: "inverting", Branch: feedback}, {Way: ladder.Terminal, Name: "out"}}}, nil
}

var (
	_ ladder.Source = Element{}
	_ ladder.Source = ChargeAmplifier{}
)
