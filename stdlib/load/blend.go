package load

import (
	"errors"
	"fmt"
	"math"

	"lode/stdlib/circuit"
	"lode/units"
	"lode/units/ladder"
)

// This file mixes two chains into one, such as a coil and a piezo element.

// Blending says how a second chain is mixed into a first.
type Blending struct {
	Own      units.Resistance // in the first chain's way, in Ω
	Other    units.Resistance // in the second chain's way, in Ω
	Level    units.Level      // of the second source over the first
	Reversed bool             // the second source has the opposite polarity
}

// Blend mixes a second chain into this one, each through its resistor, and goes on from where they meet. The second
// chain has no input of its own.
//
// Valid: both sources in step with each other; what reaches them from the strings at different places differs in phase.
//
// Example: load.From(c).Blend(load.FromSource(disc).Buffer(load.Buffer{InputResistance: 10*MΩ}), load.Blending{Own: 10*kΩ, Other: 47*kΩ, Level: 6*dB}).Input(1*MΩ)
func (l Line) Blend(other Line, b Blending) Line {
	switch {
	case other.err != nil:
		return l.fail(fmt.Errorf("blend: second chain: %w", other.err))
	case other.words == "":
		return l.fail(errors.New("blend: second chain: none: want load.From(coil) or load.FromSource(element)"))
	case other.ended:
		return l.fail(errors.New("blend: second chain: has an input: want it without, and one input after the blend"))
	case math.IsNaN(b.Level.SI()) || math.IsInf(b.Level.SI(), 0):
		return l.fail(fmt.Errorf("blend: level: got %v, want a number of dB", b.Level))
	}
	l = l.check(notNegative("blend: own resistor", b.Own), notNegative("blend: other resistor", b.Other))
	scale, name := b.Level.Ratio(), l.single("blend")
	if b.Reversed {
		scale = -scale
	}
	in, out := l.node, name+" out"
	l = l.add("blend", "blend with "+other.words, func(n circuit.Network, name string) circuit.Network {
		return n.Including(name, other.network, scale).Resistor(name+" own", in, out, b.Own).Resistor(name+" other", name+" "+other.node, out, b.Other)
	}).draw(along(ladder.Resistor, "", b.Own), ladder.Step{Way: ladder.Down, Branch: ladder.Series(
		ladder.Part(ladder.Resistor, name, b.Other.String()), ladder.Part(ladder.VoltageSource, "second", "chain"))})
	l.notes = append(l.notes[:len(l.notes):len(l.notes)], "The second chain: "+other.words+".")
	l.node = out
	return l
}
