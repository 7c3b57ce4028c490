package circuit

import (
	"fmt"

	"lode/units"
)

// This file holds the parts beyond resistor, capacitor and coil: impedances given by a
// function, ideal transformers and controlled sources.

// Impedance adds a two-terminal part whose impedance is a function of frequency.
//
// Example: n.Impedance("loss", "a", "b", func(f units.Frequency) units.Impedance { return units.Impedance(complex(float64(f)*0.1, 0)) })
func (n Network) Impedance(name, from, to string, law func(units.Frequency) units.Impedance) Network {
	var problem error
	if law == nil {
		problem = fmt.Errorf("function: %w: got none, want a function of frequency", ErrValue)
	}
	return n.with(part{name: name, kind: impedance, from: from, to: to, law: law}, problem)
}

// Transformer adds an ideal transformer: primary, secondary, and the ratio of secondary to
// primary turns. The ends named first of both windings have the same polarity.
//
// Example: n.Transformer("T", "in", "ground", "out", "ground", 10)
func (n Network) Transformer(name, primaryFrom, primaryTo, secondaryFrom, secondaryTo string, ratio float64) Network {
	p := part{name: name, kind: transformer, from: secondaryFrom, to: secondaryTo, plus: primaryFrom, minus: primaryTo, value: ratio}
	return n.with(p, finite("turns ratio", ratio, "to 1"), notZero("turns ratio", ratio), ends(primaryFrom, primaryTo))
}

// VoltageAmplifier adds an ideal voltage source of gain times the voltage from plus to minus.
func (n Network) VoltageAmplifier(name, from, to, plus, minus string, gain float64) Network {
	p := part{name: name, kind: voltageAmplifier, from: from, to: to, plus: plus, minus: minus, value: gain}
	return n.with(p, finite("gain", gain, "V/V"), ends(plus, minus))
}

// Transconductance adds a current source that drives g times the voltage from plus to minus out of
// its first node and into its second.
func (n Network) Transconductance(name, from, to, plus, minus string, g units.Conductance) Network {
	p := part{name: name, kind: transconductance, from: from, to: to, plus: plus, minus: minus, value: g.SI()}
	return n.with(p, finite("transconductance", p.value, "S"), ends(plus, minus))
}

// CurrentAmplifier adds a current source that drives gain times the current through another part, named
// before, out of its first node and into its second.
func (n Network) CurrentAmplifier(name, from, to, through string, gain float64) Network {
	p := part{name: name, kind: currentAmplifier, from: from, to: to, through: through, value: gain}
	return n.with(p, finite("gain", gain, "A/A"), n.listens(through))
}

// Transresistance adds a voltage source of r times the current through another part, named before.
func (n Network) Transresistance(name, from, to, through string, r units.Resistance) Network {
	p := part{name: name, kind: transresistance, from: from, to: to, through: through, value: r.SI()}
	return n.with(p, finite("transresistance", p.value, "Ω"), n.listens(through))
}

// listens returns what speaks against a source listening to the current through a part.
func (n Network) listens(name string) error {
	if p, found := n.find(name); found && (p.kind == coil || p.kind == voltageSource) {
		return nil
	}
	return fmt.Errorf("current through %q: %w: want a coil or voltage source named before", name, ErrName)
}

func notZero(what string, value float64) error {
	if value != 0 {
		return nil
	}
	return fmt.Errorf("%s: %w: got 0", what, ErrValue)
}

func ends(from, to string) error {
	if from != "" && to != "" && from != to {
		return nil
	}
	return fmt.Errorf("second pair of nodes: %w: got %q and %q, want two nodes", ErrName, from, to)
}
