package load

import (
	"errors"
	"fmt"
	"math"

	"lode/stdlib/circuit"
	"lode/units"
	"lode/units/ladder"
)

// This file holds what a chain ends in, or passes through: inputs, buffers, transformers.

// Usual input resistances; common practice, no source. A measured or stated value is better.
const (
	InstrumentInput units.Resistance = 1e6  // instrument amplifier
	LineInput       units.Resistance = 10e3 // desk, line level
	MicrophoneInput units.Resistance = 2e3  // desk, microphone level, both legs together
)

// Buffer is an active stage: an amplifier between the coil and what follows.
type Buffer struct {
	InputResistance  units.Resistance   // in Ω
	InputCapacitance units.Capacitance  // in F, 0 for none
	Gain             units.Level        // 0 dB for a follower
	OutputResistance units.Resistance   // in Ω, 0 for none
	NoiseVoltage     units.VoltageNoise // input noise voltage density in V/√Hz, 0 for none
	NoiseCurrent     units.CurrentNoise // input noise current density in A/√Hz, 0 for none
}

// Buffer adds an active stage. The chain goes on after it.
//
// Valid: as long as the stage neither clips nor runs out of bandwidth; it is taken as ideal but for the values given.
//
// Example: load.From(c).Buffer(load.Buffer{InputResistance: 2.2*MΩ, OutputResistance: 1*kΩ}).Cable(10*metre).Input(10*kΩ)
func (l Line) Buffer(b Buffer) Line {
	if !(b.InputResistance > 0) {
		return l.fail(fmt.Errorf("buffer input resistance: not possible: got %v, want more than 0 Ω", b.InputResistance))
	}
	l = l.check(notNegative("buffer input capacitance", b.InputCapacitance), notNegative("buffer output resistance", b.OutputResistance)).
		InputNoise(b.NoiseVoltage, b.NoiseCurrent)
	in, out := l.node, l.single("buffer")+" out"
	l = l.add("buffer", fmt.Sprintf("buffer %v", b.Gain), func(n circuit.Network, name string) circuit.Network {
		n = shunt(n.Resistor(name+" input", in, circuit.Ground, b.InputResistance), name+" input capacitance", in, b.InputCapacitance)
		return n.VoltageAmplifier(name, name, circuit.Ground, in, circuit.Ground, b.Gain.Ratio()).Resistor(name+" output", name, out, b.OutputResistance)
	}).draw(b.steps(l.single("buffer"))...)
	l.node = out
	return l
}

// steps draws the stage.
func (b Buffer) steps(name string) []ladder.Step {
	steps := []ladder.Step{down(ladder.Resistor, "", b.InputResistance)}
	if b.InputCapacitance > 0 {
		steps = append(steps, down(ladder.Capacitor, "", b.InputCapacitance))
	}
	steps = append(steps, ladder.Step{Way: ladder.Amplifier, Name: name, Value: b.Gain.String()})
	if b.OutputResistance > 0 {
		steps = append(steps, along(ladder.Resistor, "", b.OutputResistance))
	}
	return steps
}

// InputNoise adds the input noise of the amplifier that follows: its noise voltage in series and
// its noise current across. Noise then counts them in.
//
// Example: load.From(c).Cable(5*metre).InputNoise(units.VoltageNoise(5e-9), units.CurrentNoise(0.5e-12)).Input(1*MΩ)
func (l Line) InputNoise(voltage units.VoltageNoise, current units.CurrentNoise) Line {
	l = l.check(notNegative("input noise voltage", voltage), notNegative("input noise current", current))
	if voltage == 0 && current == 0 {
		return l
	}
	in, out := l.node, l.single("input noise")+" out"
	l = l.add("input noise", fmt.Sprintf("input noise %v, %v", voltage, current), func(n circuit.Network, name string) circuit.Network {
		return n.NoiseVoltage(name, in, out, voltage).NoiseCurrent(name+" current", out, circuit.Ground, current)
	}).draw(along(ladder.VoltageSource, "noise", voltage), down(ladder.CurrentSource, "noise", current))
	l.node = out
	return l
}

// Stage is something with an input and an output against ground, such as a transformer's model.
type Stage interface {
	Into(n circuit.Network, name, in, out string) circuit.Network
}

// Through passes the signal through a stage, such as a model of package transformer.
//
// Example: load.From(c).Through(transformer.Nameplate{Primary: 150*ohm, Secondary: 15*kΩ}.Model()).Input(1*MΩ)
func (l Line) Through(s Stage) Line {
	if s == nil {
		return l.fail(errors.New("stage: missing: got nothing, want a transformer's model"))
	}
	name := l.single("stage")
	in, out := l.node, name+" out"
	l = l.add("stage", fmt.Sprintf("stage %v", s), func(n circuit.Network, name string) circuit.Network { return s.Into(n, name, in, out) }).
		draw(drawn(s, ladder.Step{Way: ladder.Along, Branch: ladder.Part(ladder.Impedance, name, fmt.Sprint(s))})...)
	l.node = out
	return l
}

// Desk is the input of a mixing desk or recorder.
type Desk struct {
	Resistance  units.Resistance  // between both legs, in Ω; 0 for MicrophoneInput
	Capacitance units.Capacitance // between both legs, in F, 0 for none
	Cable       units.Length      // of the balanced cable to it, in m
	Transformer Stage             // input transformer in front of Resistance, nil for an electronic input
}

// Desk ends the chain with a balanced input. The coil's two ends go to the two legs, so that the
// input's resistance between its legs is what loads it.
//
// Valid: a cable as CableOf has it.
//
// Caution: A microphone input may carry 48 V phantom power on both legs. It does no harm to a coil
// connected to both legs alike, but an unbalanced plug, a leg to ground or an active stage not made for
// it lets current flow: switch phantom power off before connecting, or put a transformer or capacitors
// made for it in between, and leave mains-powered gear to those licensed to open it.
func (l Line) Desk(d Desk) Line {
	if d.Resistance == 0 {
		d.Resistance = MicrophoneInput
	}
	if d.Cable != 0 {
		l = l.Cable(d.Cable)
	}
	if d.Transformer != nil {
		l = l.Through(d.Transformer)
	}
	if d.Capacitance != 0 {
		return l.Input(d.Resistance, d.Capacitance)
	}
	return l.Input(d.Resistance)
}

// Input ends the chain with an amplifier's input resistance and, if given, its capacitance.
func (l Line) Input(r units.Resistance, c ...units.Capacitance) Line {
	if len(c) > 1 {
		return l.fail(fmt.Errorf("input: too many values: got %d capacitances, want none or one", len(c)))
	}
	if !(r > 0) || math.IsInf(r.SI(), 1) {
		return l.fail(fmt.Errorf("input resistance: not possible: got %v, want more than 0 Ω", r))
	}
	total := units.Capacitance(0)
	for _, one := range c {
		total = one
	}
	l = l.check(notNegative("input capacitance", total))
	before := l.network
	l = l.add("input", "input "+r.String(), func(n circuit.Network, name string) circuit.Network {
		return shunt(n.Resistor(name, l.node, circuit.Ground, r), name+" capacitance", l.node, total)
	}).draw(down(ladder.Resistor, "input", r))
	if total > 0 {
		l = l.draw(down(ladder.Capacitor, "", total))
	}
	l.before, l.ended = before, true
	return l
}
