package piezo

import (
	"fmt"

	"lode/stdlib/piezo/internal/kernel"
	"lode/units"
)

// This file holds the charge amplifier, which makes the level independent of the cable.

// ChargeAmplifier is an inverting amplifier with a capacitor and a resistor as feedback.
type ChargeAmplifier struct {
	FeedbackCapacitance units.Capacitance // in F
	FeedbackResistance  units.Resistance  // in Ω
}

// String writes the feedback.
func (a ChargeAmplifier) String() string {
	return fmt.Sprintf("charge amplifier, feedback %v and %v", a.FeedbackCapacitance, a.FeedbackResistance)
}

func (a ChargeAmplifier) check() error {
	if err := positive("feedback capacitance", a.FeedbackCapacitance); err != nil {
		return err
	}
	return positive("feedback resistance", a.FeedbackResistance)
}

// VoltagePerNewton returns the output for 1 N, whatever the cable: the charge over the feedback
// capacitance.
//
// Valid: an amplifier with much gain to spare, above the low corner.
func (a ChargeAmplifier) VoltagePerNewton(e Element) (units.Voltage, error) {
	if err := a.check(); err != nil {
		return 0, err
	}
	return units.Voltage(e.ChargePerNewton.SI() / a.FeedbackCapacitance.SI()), e.check()
}

// LowCorner returns the lower -3 dB frequency, which the feedback alone sets.
func (a ChargeAmplifier) LowCorner() (units.Frequency, error) {
	if err := a.check(); err != nil {
		return 0, err
	}
	return units.Frequency(kernel.Corner(a.FeedbackResistance.SI(), a.FeedbackCapacitance.SI())), nil
}

// NoiseGain returns how much the amplifier's own input noise voltage is raised at the output: this is
// what a long cable costs with a charge amplifier.
func (a ChargeAmplifier) NoiseGain(e Element, cable units.Capacitance) (units.Level, error) {
	if err := a.check(); err != nil {
		return 0, err
	}
	if err := e.with(units.Ohm, cable); err != nil {
		return 0, err
	}
	return units.LevelOf(1 + (e.Capacitance+cable).SI()/a.FeedbackCapacitance.SI()), nil
}
