// Package circuit answers what a network of resistors, capacitors, coils and sources does at
// audio frequencies: its response, its resonance and its -3 dB points.
//
// A network is built part by part, each with a name and two nodes; nodes come into being by
// being named, and "ground" is the reference:
//
//	n := circuit.New("coil on a cable").
//		Coil("pickup", "hot", "ground", circuit.Coil{Resistance: 6*kΩ, Inductance: 2.5*H, EMF: 1*V}).
//		Resistor("input", "hot", "ground", 1*MΩ).
//		Capacitor("cable", "hot", "ground", 600*pF)
//	r := n.Sweep("hot", 20*Hz, 20*kHz)
//	r.Resonance()
//
// A Network is a value: adding a part returns a new network and leaves the old one as it was, so
// that variants may branch off a common start. The first mistake is kept and returned by the
// call that asks for a result.
package circuit

import (
	"fmt"

	"lode/units"
)

// This file holds the building of a network; check.go judges it, assemble.go turns it into
// equations, response.go and peak.go read results.

// Ground is the name of the reference node.
const Ground = "ground"

// Network is a circuit under construction. The zero Network is empty and ready to use.
type Network struct {
	title       string
	parts       []part
	couplings   []coupling
	reference   units.Voltage
	temperature units.Temperature
	err         error
}

// New returns an empty network with a title that its results carry.
func New(title string) Network { return Network{title: title} }

// Coil says what a coil is made of: an EMF in series with its resistance and inductance, and
// its self-capacitance across both ends. What is left out is absent.
type Coil struct {
	Resistance  units.Resistance  // DC resistance in Ω
	Inductance  units.Inductance  // self-inductance in H
	Capacitance units.Capacitance // self-capacitance in F
	EMF         units.Voltage     // induced voltage in V, positive at the first node; negative for a reversed coil

	// Further is an impedance in series that depends on frequency, such as what eddy currents
	// in a cover bring into the coil; it may be left out.
	Further func(units.Frequency) units.Impedance
}

// Resistor adds a resistor between two nodes. 0 Ω is a wire.
func (n Network) Resistor(name, from, to string, r units.Resistance) Network {
	return n.with(part{name: name, kind: resistor, from: from, to: to, value: r.SI()}, atLeastZero("resistance", r.SI(), "Ω"))
}

// Capacitor adds a capacitor between two nodes.
func (n Network) Capacitor(name, from, to string, c units.Capacitance) Network {
	return n.with(part{name: name, kind: capacitor, from: from, to: to, value: c.SI()}, aboveZero("capacitance", c.SI(), "F"))
}

// Inductor adds an inductor between two nodes.
func (n Network) Inductor(name, from, to string, l units.Inductance) Network {
	return n.with(part{name: name, kind: inductor, from: from, to: to, value: l.SI()}, aboveZero("inductance", l.SI(), "H"))
}

// Coil adds a coil with an EMF in it.
func (n Network) Coil(name, from, to string, c Coil) Network {
	p := part{name: name, kind: coil, from: from, to: to, value: c.Inductance.SI(), series: c.Resistance.SI(), across: c.Capacitance.SI(), source: c.EMF.SI(), law: c.Further}
	return n.with(p, aboveZero("inductance", p.value, "H"), atLeastZero("resistance", p.series, "Ω"),
		atLeastZero("capacitance", p.across, "F"), finite("EMF", p.source, "V"))
}

// VoltageSource adds an ideal voltage source, positive at its first node.
func (n Network) VoltageSource(name, from, to string, v units.Voltage) Network {
	return n.with(part{name: name, kind: voltageSource, from: from, to: to, source: v.SI()}, finite("voltage", v.SI(), "V"))
}

// CurrentSource adds an ideal current source that drives its current into the second node.
func (n Network) CurrentSource(name, from, to string, i units.Current) Network {
	return n.with(part{name: name, kind: currentSource, from: from, to: to, source: i.SI()}, finite("current", i.SI(), "A"))
}

// Couple couples two inductors or coils, named before, by the coupling factor k from -1 to 1.
// A positive k means that the ends named first have the same polarity.
func (n Network) Couple(first, second string, k float64) Network {
	if n.err == nil {
		n.err = n.coupleProblem(first, second, k)
	}
	n.couplings = append(n.couplings[:len(n.couplings):len(n.couplings)], coupling{first, second, k})
	return n
}

// Reference sets the voltage that levels are relative to. Without it that is the voltage or EMF
// of the first source that is not zero, or 1 V where there are current sources only.
func (n Network) Reference(v units.Voltage) Network {
	if problem := aboveZero("reference", v.SI(), "V"); problem != nil && n.err == nil {
		n.err = fmt.Errorf("%s: %w", called("network", n.title), problem)
	}
	n.reference = v
	return n
}

// Named gives the network another title.
func (n Network) Named(title string) Network {
	n.title = title
	return n
}

// with returns n and one more part, in an array of its own.
func (n Network) with(p part, problems ...error) Network {
	if n.err == nil {
		n.err = n.partProblem(p, problems)
	}
	n.parts = append(n.parts[:len(n.parts):len(n.parts)], p)
	return n
}
