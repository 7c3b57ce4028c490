package circuit

import (
	"fmt"
	"math"
	"math/cmplx"

	"lode/stdlib/circuit/internal/kernel"
	"lode/units"
)

// This file measures impedances, with all sources off and a test current, and group delay.

// silent returns n with all its sources at zero.
func (n Network) silent() Network {
	n.parts = append([]part(nil), n.parts...)
	for i := range n.parts {
		n.parts[i].source = 0
	}
	return n
}

// ImpedanceAt returns the impedance that a node shows against ground at one frequency, with all
// sources off: the output impedance that whatever is connected there sees.
//
// Source: Thévenin's theorem; solved by nodal analysis.
func (n Network) ImpedanceAt(node string, f units.Frequency) (units.Impedance, error) {
	return n.ImpedanceBetween(node, Ground, f)
}

// ImpedanceBetween returns the impedance between two nodes at one frequency, with all sources off.
// An input impedance is that between the nodes where the source was, without it.
func (n Network) ImpedanceBetween(node, against string, f units.Frequency) (units.Impedance, error) {
	if err := checkFrequency(f); err != nil {
		return 0, fmt.Errorf("%s: %w", called("network", n.title), err)
	}
	p, err := n.silent().plan()
	if err != nil {
		return 0, err
	}
	output, err := p.output(node, against)
	if err != nil {
		return 0, err
	}
	p.drive(output)
	z := kernel.Exact(p.system, output).At(f.Angular().SI())
	if cmplx.IsNaN(z) {
		return 0, n.undetermined(f)
	}
	return units.Impedance(z), nil
}

// drive makes a current of 1 A into the output the only source.
func (p *plan) drive(output []float64) {
	for i, v := range output {
		p.system.B[i] = v * kernel.Scale
	}
}

// ImpedanceSweep returns the impedance of a node against ground over frequency, for
// figure.Impedance: its magnitude, which as a level is relative to 1 Ω, and its phase.
//
// Source: as Sweep, with a current of 1 A into the node as the only source.
//
// Example: figure.Impedance(n.ImpedanceSweep("out", 20*Hz, 20*kHz))
func (n Network) ImpedanceSweep(node string, low, high units.Frequency) (Response, error) {
	if err := checkRange(low, high); err != nil {
		return Response{}, fmt.Errorf("%s: %w", called("network", n.title), err)
	}
	p, err := n.silent().plan()
	if err != nil {
		return Response{}, err
	}
	output, err := p.output(node, Ground)
	if err != nil {
		return Response{}, err
	}
	p.drive(output)
	r, err := p.response(output, low, high, 1)
	r.ohms = true
	return r, err
}

// stride is the relative step that a phase is differentiated with.
const stride = 1e-5

// DelayAt returns the group delay at one frequency: minus the slope of the phase over angular
// frequency.
func (r Response) DelayAt(f units.Frequency) (units.Time, error) {
	above, err := r.value(f * (1 + stride))
	if err != nil {
		return 0, err
	}
	below, err := r.value(f * (1 - stride))
	if err != nil {
		return 0, err
	}
	return units.Time(-cmplx.Phase(above/below) / (4 * math.Pi * stride * f.SI())), nil
}
