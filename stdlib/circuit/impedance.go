package circuit

import (
	"fmt"
	"math/cmplx"

	"lode/stdlib/circuit/internal/kernel"
	"lode/units"
)

// This file measures impedances: all sources off, a test current into the node.

// silent returns n with all its sources at zero.
func (n Network) silent() Network {
	n.parts = append([]part(nil), n.parts...)
	for i := range n.parts {
		n.parts[i].source = 0
	}
	return n
}

// Impedance returns the impedance that a node shows against ground, with all sources off: what
// is connected there sees it as the source's output impedance.
//
// Source: Thévenin's theorem.
func (n Network) Impedance(node string, f units.Frequency) (units.Impedance, error) {
	if err := checkFrequency(f); err != nil {
		return 0, fmt.Errorf("network %q: %w", n.title, err)
	}
	p, err := n.silent().plan()
	if err != nil {
		return 0, err
	}
	output, err := p.output(node, Ground)
	if err != nil {
		return 0, err
	}
	for i, v := range output {
		p.system.B[i] = v * kernel.Scale
	}
	z := kernel.Exact(p.system, output).At(f.Angular().SI())
	if cmplx.IsNaN(z) {
		return 0, fmt.Errorf("network %q: %w at %v", n.title, ErrSingular, f)
	}
	return units.Impedance(z), nil
}
