package circuit

import (
	"fmt"
	"math"

	"lode/stdlib/circuit/internal/kernel"
	"lode/stdlib/pace"
	"lode/units"
)

// This file changes part values and answers for chosen frequencies only, which is what
// sweeps over many sets of part values need.

// WithResistance returns the network with another resistance in a resistor or coil.
func (n Network) WithResistance(name string, r units.Resistance) Network {
	return n.changed(name, "resistance", r.SI(), atLeastZero("resistance", r.SI(), "Ω"))
}

// WithInductance returns the network with another inductance in an inductor or coil.
func (n Network) WithInductance(name string, l units.Inductance) Network {
	return n.changed(name, "inductance", l.SI(), aboveZero("inductance", l.SI(), "H"))
}

// WithCapacitance returns the network with another capacitance in a capacitor or coil.
func (n Network) WithCapacitance(name string, c units.Capacitance) Network {
	return n.changed(name, "capacitance", c.SI(), aboveZero("capacitance", c.SI(), "F"))
}

// WithEMF returns the network with another voltage in a coil or voltage source.
func (n Network) WithEMF(name string, v units.Voltage) Network {
	return n.changed(name, "EMF", v.SI(), finite("EMF", v.SI(), "V"))
}

// changed sets one quantity of one part, in an array of its own.
func (n Network) changed(name, quantity string, value float64, problem error) Network {
	parts := append([]part(nil), n.parts...)
	for i := range parts {
		if parts[i].name != name {
			continue
		}
		if field := parts[i].quantities()[quantity]; field != nil {
			*field = value
			n.parts = parts
			return n.refuse(name, problem)
		}
	}
	return n.refuse(name, fmt.Errorf("%s: %w: there is no part of that name that has one", quantity, ErrName))
}

// Refuse returns the network with a mistake in one of its parts, found by who makes parts of several;
// the call that asks for a result returns it.
func (n Network) Refuse(name string, problem error) Network { return n.refuse(name, problem) }

func (n Network) refuse(name string, problem error) Network {
	if problem != nil && n.err == nil {
		n.err = fmt.Errorf("part %q: %w", name, problem)
	}
	return n
}

// quantities returns where p keeps the quantities that it has.
func (p *part) quantities() map[string]*float64 {
	switch p.kind {
	case resistor:
		return map[string]*float64{"resistance": &p.value}
	case capacitor:
		return map[string]*float64{"capacitance": &p.value}
	case inductor:
		return map[string]*float64{"inductance": &p.value}
	case coil:
		return map[string]*float64{"resistance": &p.series, "inductance": &p.value, "capacitance": &p.across, "EMF": &p.source}
	case voltageSource:
		return map[string]*float64{"EMF": &p.source}
	}
	return nil
}

// Levels returns the level of a node at the frequencies given, in their order.
func (n Network) Levels(node string, frequencies []units.Frequency) ([]units.Level, error) {
	if len(frequencies) == 0 {
		return nil, nil
	}
	low, high := frequencies[0], frequencies[0]
	for _, f := range frequencies {
		if err := checkFrequency(f); err != nil {
			return nil, fmt.Errorf("%s: %w", called("network", n.title), err)
		}
		low, high = min(low, f), max(high, f)
	}
	p, err := n.plan()
	if err != nil {
		return nil, err
	}
	output, err := p.output(node, Ground)
	if err != nil {
		return nil, err
	}
	curve := kernel.Transfer(p.system, output, low.Angular().SI(), high.Angular().SI())
	raise, levels := kernel.Decibels(complex(1/n.relative(), 0)), make([]units.Level, len(frequencies))
	for i := range pace.Of(len(frequencies)) {
		f := frequencies[i]
		level := kernel.Decibels(curve.At(2*math.Pi*float64(f))) + raise
		if level != level { // not a number
			return nil, n.undetermined(f)
		}
		levels[i] = units.Level(level)
	}
	return levels, nil
}
