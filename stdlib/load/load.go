// Package load puts a coil into its circuit: volume and tone controls, cable and amplifier input.
//
// The chain is written in the order the signal takes, and ends in a question:
//
//	line := load.From(c).Tone(500*kΩ, 22*nF).Volume(500*kΩ, 0.7).Cable(5*metre).Input(1*MΩ)
//	line.Resonance()
//	figure.Response(line.Sweep(20*Hz, 20*kHz))
//
// c is a winding of package coil, or a measured coil:
//
//	load.From(load.Coil{DCResistance: 6*kΩ, SelfInductance: 2.5*H, SelfCapacitance: 100*pF})
//
// A Line is a value: each call returns a new one, so that variants may branch off a common start.
// The first mistake is kept and returned by the call that asks for a result.
package load

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"lode/stdlib/circuit"
	"lode/units"
	"lode/units/ladder"
)

// This file holds the chain; pot.go the controls, ask.go the questions.

// CableCapacitance is the capacitance of screened instrument cable per length: common practice,
// no source; real cables are between 70 pF/m and 160 pF/m. A stated value goes into CableOf.
const CableCapacitance units.CapacitancePerLength = 100e-12

// Source is what a chain starts with: anything that has the three values of a coil.
type Source interface {
	Resistance() units.Resistance
	Inductance() units.Inductance
	Capacitance() units.Capacitance
}

// Coil is a coil known by measured values.
type Coil struct {
	DCResistance    units.Resistance  // in Ω
	SelfInductance  units.Inductance  // in H
	SelfCapacitance units.Capacitance // in F, 0 for none
}

// Resistance returns the DC resistance.
func (c Coil) Resistance() units.Resistance { return c.DCResistance }

// Inductance returns the self-inductance.
func (c Coil) Inductance() units.Inductance { return c.SelfInductance }

// Capacitance returns the self-capacitance.
func (c Coil) Capacitance() units.Capacitance { return c.SelfCapacitance }

// String writes the three values.
func (c Coil) String() string {
	return fmt.Sprintf("%v, %v, %v", c.DCResistance, c.SelfInductance, c.SelfCapacitance)
}

// Line is a coil with what is connected to it.
type Line struct {
	network circuit.Network // with the input
	before  circuit.Network // without the input
	node    string          // where the next part goes
	words   string
	names   []string // of the parts so far
	label   string
	steps   []ladder.Step // of the drawing
	notes   []string      // under the drawing
	ended   bool
	err     error
}

// From starts a chain with a coil, one end of it grounded. Levels are relative to the coil's EMF.
//
// Example: load.From(c).Volume(500*kΩ).Tone(500*kΩ, 22*nF).Cable(5*metre).Input(1*MΩ)
func From(c Source) Line { return FromCoils(One(c)) }

// Starter is a source that puts itself into a network, such as a piezo element of package piezo.
type Starter interface {
	Start(n circuit.Network, node string) circuit.Network
	String() string
}

// FromSource starts a chain with a source that is not a coil. Levels are relative to its open
// voltage.
//
// Example: load.FromSource(disc).Cable(5*metre).Input(10*MΩ)
func FromSource(s Starter) Line {
	if s == nil {
		return Line{err: errors.New("source: missing: got nothing, want a piezo element")}
	}
	l := Line{node: "hot", words: s.String()}
	return l.now(s.Start(circuit.New(""), l.node)).draw(drawn(s, down(ladder.VoltageSource, "source", s))...)
}

// Named gives the chain the name that its response carries.
func (l Line) Named(label string) Line {
	l.label = label
	l.network, l.before = l.network.Named(label), l.before.Named(label)
	return l
}

// Cable adds a screened cable of the given length with CableCapacitance.
//
// Valid: as CableOf.
func (l Line) Cable(length units.Length) Line { return l.CableOf(length, CableCapacitance) }

// CableOf adds a cable of the given length and capacitance per length and, if given, with the resistance per length of
// its core and screen together.
//
// Valid: a cable short against the wavelength, up to a kilometre for 20 kHz. With a resistance it is taken
// as half of it, all the capacitance, and the other half, within 0.3 dB while the resistance is below the reactance of
// the capacitance at 20 kHz.
//
// Example: load.From(c).CableOf(10*metre, 85*pF/metre, 0.09*ohm/metre).Input(1*MΩ)
func (l Line) CableOf(length units.Length, per units.CapacitancePerLength, loop ...units.ResistancePerLength) Line {
	l = l.check(notNegative("cable length", length), notNegative("cable capacitance", per))
	name, words := l.single("cable"), fmt.Sprintf("cable %v at %v", length, per)
	total := units.Capacitance(length.SI() * per.SI())
	half, err := l.halfLoop(length, loop)
	l = l.check(err).lead(name+" half", half)
	l = l.add("cable", words, func(n circuit.Network, name string) circuit.Network { return shunt(n, name, l.node, total) })
	if total > 0 {
		l = l.draw(down(ladder.Capacitor, cableName(name, length), total))
	}
	return l.lead(name+" other half", half)
}

// cableName tells a cable's length behind its name.
func cableName(name string, length units.Length) string {
	if name != "cable" {
		name += "," // it ends with a number of its own
	}
	return fmt.Sprintf("%s %v", name, length)
}

// halfLoop returns half the resistance of a cable.
func (l Line) halfLoop(length units.Length, loop []units.ResistancePerLength) (units.Resistance, error) {
	switch len(loop) {
	case 0:
		return 0, nil
	case 1:
		return units.Resistance(length.SI() * loop[0].SI() / 2), notNegative("cable resistance", loop[0])
	}
	return 0, fmt.Errorf("cable: too many values: got %d resistances, want none or one", len(loop))
}

// lead adds a resistance in the signal's way, or nothing for none.
func (l Line) lead(name string, r units.Resistance) Line {
	if r == 0 || l.err != nil || l.ended || l.words == "" {
		return l
	}
	out := name + " out"
	l = l.now(l.network.Resistor(name, l.node, out, r)).draw(along(ladder.Resistor, "", r))
	l.node = out
	return l
}

// Capacitor adds a capacitance from the signal to ground.
func (l Line) Capacitor(c units.Capacitance) Line {
	l = l.check(notNegative("capacitor", c))
	return l.add("capacitor", "capacitor "+c.String(), func(n circuit.Network, name string) circuit.Network {
		return shunt(n, name, l.node, c)
	}).draw(down(ladder.Capacitor, "", c))
}

// Resistor adds a resistance from the signal to ground.
func (l Line) Resistor(r units.Resistance) Line {
	return l.add("resistor", "resistor "+r.String(), func(n circuit.Network, name string) circuit.Network {
		return n.Resistor(name, l.node, circuit.Ground, r)
	}).draw(down(ladder.Resistor, "", r))
}

// add appends parts made by build under a name of their own.
func (l Line) add(name, words string, build func(n circuit.Network, name string) circuit.Network) Line {
	switch {
	case l.err != nil:
		return l
	case l.words == "":
		return l.fail(errors.New("chain: no coil: want load.From(coil) first"))
	case l.ended:
		return l.fail(fmt.Errorf("%s: after the input: the input ends the chain, want it before", words))
	}
	name = l.single(name)
	l.names = append(l.names[:len(l.names):len(l.names)], name)
	l.words += ", " + words
	return l.now(build(l.network, name))
}

// single returns a name that no part has yet.
func (l Line) single(name string) string {
	made := name
	for i := 2; slices.Contains(l.names, made); i++ {
		made = fmt.Sprintf("%s %d", name, i)
	}
	return made
}

func (l Line) now(n circuit.Network) Line {
	l.network, l.before = n, n
	return l
}

func (l Line) fail(err error) Line {
	if l.err == nil {
		l.err = err
	}
	return l
}

func (l Line) check(problems ...error) Line {
	for _, p := range problems {
		if p != nil {
			return l.fail(p)
		}
	}
	return l
}

// shunt adds a capacitance to ground, or nothing for none.
func shunt(n circuit.Network, name, node string, c units.Capacitance) circuit.Network {
	return across(n, name, node, circuit.Ground, c)
}

func across(n circuit.Network, name, from, to string, c units.Capacitance) circuit.Network {
	if c == 0 {
		return n
	}
	return n.Capacitor(name, from, to, c)
}

func notNegative(what string, q units.Quantity) error {
	if q.SI() >= 0 && !math.IsInf(q.SI(), 1) {
		return nil
	}
	return fmt.Errorf("%s: not possible: got %v, want 0 %s or more", what, q, q.Kind().Symbol)
}
