package circuit

import (
	"fmt"
	"math"

	"lode/units"
)

// This file holds what a part is and refuses parts that cannot be.

type kind int

const (
	resistor kind = iota
	capacitor
	inductor
	coil
	voltageSource
	currentSource
	impedance
	transformer
	voltageAmplifier
	transconductance
	currentAmplifier
	transresistance
	noiseVoltage
	noiseCurrent
)

var kindNames = [...]string{"resistor", "capacitor", "inductor", "coil", "voltage source", "current source", "impedance", "transformer",
	"voltage amplifier", "transconductance", "current amplifier", "transresistance", "noise voltage", "noise current"}

// part is one part with two ends. Value is in SI units of its kind; a coil has a resistance in
// series with its inductance and a capacitance across as well. Plus and minus are a transformer's
// primary or the nodes that a source listens to; through is the part whose current it listens to.
type part struct {
	name           string
	kind           kind
	from, to       string
	value          float64
	series, across float64
	source         float64
	plus, minus    string
	through        string
	law            func(units.Frequency) units.Impedance
}

func (p part) String() string { return fmt.Sprintf("%s %q", kindNames[p.kind], p.name) }

// branch tells whether p's current is an unknown of its own.
func (p part) branch() bool {
	switch p.kind {
	case resistor:
		return p.value > 0 && p.value < asBranch
	case capacitor, currentSource, transconductance, currentAmplifier, noiseCurrent:
		return false
	}
	return true
}

// fixed tells whether p forces the voltage between its ends.
func (p part) fixed() bool {
	switch p.kind {
	case voltageSource, voltageAmplifier, transresistance, noiseVoltage:
		return true
	}
	return false
}

// links returns the pairs of nodes that p holds together; a current source holds nothing.
func (p part) links() [][2]string {
	switch p.kind {
	case currentSource, transconductance, currentAmplifier, noiseCurrent:
		return nil
	case transformer:
		return [][2]string{{p.from, p.to}, {p.plus, p.minus}}
	}
	return [][2]string{{p.from, p.to}}
}

// nodes returns the names of all nodes that p touches or listens to.
func (p part) nodes() []string {
	if p.plus == "" {
		return []string{p.from, p.to}
	}
	return []string{p.from, p.to, p.plus, p.minus}
}

type coupling struct {
	first, second string
	k             float64
}

// Fault names what is wrong with a network; errors of this package wrap one of them.
type Fault string

// Error returns the name.
func (f Fault) Error() string { return string(f) }

// The faults of networks.
const (
	ErrValue    Fault = "value not possible"
	ErrName     Fault = "name"
	ErrFloating Fault = "floating node"
	ErrShorted  Fault = "shorted source"
	ErrCoupling Fault = "coupling not possible"
	ErrSingular Fault = "no single solution"
	ErrRange    Fault = "frequency range"
)

// aboveZero refuses what is not a positive, finite value; a passive part has no other.
func aboveZero(what string, value float64, unit string) error {
	if value > 0 && !math.IsInf(value, 1) {
		return nil
	}
	return fmt.Errorf("%s: %w: got %s, want more than 0 %s", what, ErrValue, amount(value, unit), unit)
}

func atLeastZero(what string, value float64, unit string) error {
	if value >= 0 && !math.IsInf(value, 1) {
		return nil
	}
	return fmt.Errorf("%s: %w: got %s, want 0 %s or more", what, ErrValue, amount(value, unit), unit)
}

func finite(what string, value float64, unit string) error {
	if !math.IsNaN(value) && !math.IsInf(value, 0) {
		return nil
	}
	return fmt.Errorf("%s: %w: got %s, want a finite number of %s", what, ErrValue, amount(value, unit), unit)
}

func amount(value float64, unit string) string { return units.Digits(value, 4) + " " + unit }

// partProblem returns the first thing wrong with p as a part of n.
func (n Network) partProblem(p part, problems []error) error {
	for _, problem := range problems {
		if problem != nil {
			return fmt.Errorf("%v: %w", p, problem)
		}
	}
	switch {
	case p.name == "":
		return fmt.Errorf("%s: %w: got an empty text, want a name for the part", kindNames[p.kind], ErrName)
	case p.from == "" || p.to == "":
		return fmt.Errorf("%v: %w: got an empty text, want the names of two nodes", p, ErrName)
	case p.from == p.to && p.source != 0:
		return fmt.Errorf("%v: %w: both ends are at node %q", p, ErrShorted, p.from)
	case p.from == p.to:
		return fmt.Errorf("%v: %w: both ends are at node %q, want two nodes", p, ErrName, p.from)
	}
	if _, found := n.find(p.name); found {
		return fmt.Errorf("%v: %w: there is a part of that name already, want a new one", p, ErrName)
	}
	return nil
}

func (n Network) coupleProblem(first, second string, k float64) error {
	for _, name := range []string{first, second} {
		if p, found := n.find(name); !found || p.kind != inductor && p.kind != coil {
			return fmt.Errorf("coupling of %q and %q: %w: %q is no inductor or coil named before", first, second, ErrName, name)
		}
	}
	if first == second {
		return fmt.Errorf("coupling of %q: %w: with itself, want two coils", first, ErrCoupling)
	}
	if !(math.Abs(k) <= 1) {
		return fmt.Errorf("coupling of %q and %q: %w: got k = %s, want -1 to 1", first, second, ErrCoupling, units.Digits(k, 6))
	}
	for _, c := range n.couplings {
		if c.first == first && c.second == second || c.first == second && c.second == first {
			return fmt.Errorf("coupling of %q and %q: %w: stated twice", first, second, ErrName)
		}
	}
	return nil
}

func (n Network) find(name string) (part, bool) {
	for _, p := range n.parts {
		if p.name == name {
			return p, true
		}
	}
	return part{}, false
}

// called names a thing in an error, with its label if it has one.
func called(what, label string) string {
	if label == "" {
		return what
	}
	return fmt.Sprintf("%s %q", what, label)
}
