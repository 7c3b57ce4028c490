package load

import (
	"lode/stdlib/circuit"
	"lode/units"
)

// This file holds the questions a chain answers.

// Sweep returns the voltage at the end of the chain, relative to the coil's EMF.
//
// Source: nodal analysis of the chain, see circuit.Network's Sweep.
//
// Valid: the coil as one inductance with its resistance and self-capacitance; eddy currents in metal
// near the coil, which lower the peak, are not in these three values.
//
// Example: load.From(c).Volume(500*kΩ).Cable(5*metre).Input(1*MΩ).Sweep(20*Hz, 20*kHz)
func (l Line) Sweep(low, high units.Frequency) (circuit.Response, error) {
	n, err := l.Network()
	if err != nil {
		return circuit.Response{}, err
	}
	return n.Sweep(l.node, low, high)
}

// from and to are the frequencies a resonance is looked for between.
const from, to = 10 * units.Hertz, 1 * units.Megahertz

// Resonance returns the frequency of the highest peak between 10 Hz and 1 MHz.
func (l Line) Resonance() (units.Frequency, error) {
	r, err := l.Sweep(from, to)
	if err != nil {
		return 0, err
	}
	return r.Resonance()
}

// Peak returns the resonance with its height above the plateau and quality factor.
func (l Line) Peak() (circuit.Peak, error) {
	r, err := l.Sweep(from, to)
	if err != nil {
		return circuit.Peak{}, err
	}
	return r.Peak()
}

// Impedance returns what the amplifier's input sees: the impedance of the coil with its controls
// and cable, without the input itself.
func (l Line) Impedance(f units.Frequency) (units.Impedance, error) {
	if l.err != nil {
		return 0, l.err
	}
	return l.before.ImpedanceAt(l.node, f)
}

// ImpedanceSweep returns what the amplifier's input sees over frequency, for figure.Impedance.
//
// Source: see circuit.Network's ImpedanceSweep.
//
// Example: figure.Impedance(line.ImpedanceSweep(20*Hz, 20*kHz))
func (l Line) ImpedanceSweep(low, high units.Frequency) (circuit.Response, error) {
	if l.err != nil {
		return circuit.Response{}, l.err
	}
	return l.before.ImpedanceSweep(l.node, low, high)
}

// Noise returns the noise at the end of the chain: of the coil's resistance, the controls, the input
// and what InputNoise or a buffer brought in.
//
// Source: see circuit.Network's Noise.
//
// Example: load.From(c).Volume(500*kΩ).Cable(5*metre).Input(1*MΩ).Noise(20*Hz, 20*kHz)
func (l Line) Noise(low, high units.Frequency) (circuit.Noise, error) {
	n, err := l.Network()
	if err != nil {
		return circuit.Noise{}, err
	}
	return n.Noise(l.node, low, high)
}

// Sensitivities returns how resonance, height and level move when each part in turn grows by one
// percent, see circuit.Network's Sensitivities.
func (l Line) Sensitivities() (circuit.Sensitivities, error) {
	n, err := l.Network()
	if err != nil {
		return nil, err
	}
	return n.Sensitivities(l.node, from, to)
}

// Deck returns the chain as a SPICE deck, see circuit.Network's Deck.
func (l Line) Deck(low, high units.Frequency) (string, error) {
	n, err := l.Network()
	if err != nil {
		return "", err
	}
	return n.Deck(l.node, low, high)
}

// Network returns the chain as a circuit. Its coils lie between "coil hot" and ground.
func (l Line) Network() (circuit.Network, error) { return l.network, l.err }

// Output returns the name of the circuit's node at the end of the chain.
func (l Line) Output() string { return l.node }

// Netlist returns the parts of the chain, one a line, with their nodes and values.
func (l Line) Netlist() (string, error) {
	if l.err != nil {
		return "", l.err
	}
	return l.network.Netlist()
}

// String writes the chain in one line.
func (l Line) String() string {
	if l.err != nil {
		return l.err.Error()
	}
	return l.words
}
