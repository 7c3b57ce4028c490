package coil

import (
	"math"

	"lode/stdlib/coil/internal/kernel"
	"lode/units"
)

// Capacitance returns the middle of CapacitanceRange.
//
// Source: as CapacitanceRange.
//
// Valid: as CapacitanceRange.
//
// Accuracy: an estimate, good to a factor of about two; calibrate it with one measured resonance.
func (c Winding) Capacitance() units.Capacitance { return c.CapacitanceRange().Value }

// CapacitanceRange returns the capacitance of the winding alone, with the range that it is
// expected in. The layers are charged against each other by a voltage that grows evenly
// along the wire. Leads, grounded poles, a cover or foil add to it.
//
// Source: A. Massarini, M. K. Kazimierczuk, IEEE Trans. Power Electronics 12 (1997) 671-676, for two
// enamelled wires; energies of layers wound back and forth summed (E. C. Snelling, Soft Ferrites, 1969,
// from memory); R. G. Medhurst, Wireless Engineer 24 (1947), for the field outside. The factor
// between layered and scatter windings comes from simulated heaps of wires.
//
// Valid: below the first resonance, one end at ground; where the field outside counts, heights of 0.1 to 50 mean diameters.
//
// Accuracy: an estimate: layered windings lie between wires in the grooves and wires on
// top of each other, a factor of two; scatter windings within a factor of five.
func (c Winding) CapacitanceRange() CapacitanceRange {
	if c.proven > 0 {
		return CapacitanceRange{max(0, c.proven-c.doubt), c.proven, c.proven + c.doubt}
	}
	low, value, high := c.layersCapacitance()
	outside := kernel.Medhurst(c.height(), c.layout.meanTurn/math.Pi)
	return CapacitanceRange{units.Capacitance(low + 0.8*outside), units.Capacitance(value + outside), units.Capacitance(high + 1.2*outside)}
}

// enamelPermittivity of polyurethane, polyester-imide and polyvinyl formal films lies
// between 3 and 4.5 at audio frequencies; common practice, no source.
const enamelPermittivity = 3.5

// cell is two neighbouring wires; a filling of 1 is air.
func (c Winding) cell(gap, filling float64) kernel.Cell {
	return kernel.Cell{Bare: float64(c.wire.Bare()), Overall: float64(c.wire.Overall()), Enamel: enamelPermittivity, Filling: filling, Gap: gap}
}

// Scatter windings against the same turns in touching layers. Wires that were let fall on a
// heap turn by turn held 0.3 of the energy at a packing of 0.45 and 0.5 to 0.8 at 0.7 (see
// the test of the kernel); the high end allows for enamel that is damp or of higher
// permittivity.
const scatterLow, scatterUsual, scatterHigh = 0.3, 0.6, 1.5

// layersCapacitance returns the layers' part, without the field outside.
func (c Winding) layersCapacitance() (low, value, high float64) {
	groove, row := c.charged(0, kernel.Cell.GrooveToLayer), c.charged(0, kernel.Cell.RowToLayer)
	switch c.style.Lay {
	case Layered:
		return row, math.Sqrt(row * groove), groove
	case Orthocyclic:
		return math.Sqrt(row * groove), groove, 1.1 * groove
	}
	_, _, loose := c.style.packings()
	apart := kernel.GrooveSpacing(float64(c.wire.Overall()), loose) - float64(c.wire.Overall())
	even := c.charged(apart, kernel.Cell.GrooveToLayer) * 3 / 4 // the voltage grows with the depth alone
	return max(even, scatterLow*groove), max(even, scatterUsual*groove), scatterHigh * groove
}

// charged sums the gaps between layers. A wire has the capacitance toLayer against the next
// layer, over a gap that tape adds to.
func (c Winding) charged(gap float64, toLayer func(kernel.Cell) float64) float64 {
	o, sum := c.layout, 0.0
	plain, taped := toLayer(c.cell(gap, c.filling())), 0.0
	if c.style.Tape > 0 {
		taped = toLayer(c.cell(gap+float64(c.style.Tape), c.style.tapePermittivity()))
	}
	for k := 1; k < o.layers; k++ {
		n, perLength := min(o.perLayer, o.wires-k*o.perLayer), plain
		if c.style.taped(k) {
			perLength = taped
		}
		length := kernel.TurnLength(c.shape.corePerimeter(), c.style.depth(k, o.rise))
		sum += kernel.BackAndForth(float64(n), float64(o.wires), perLength*length)
	}
	return sum
}

// StrandCapacitance returns the capacitance between two strands that are wound side by side, all other strands left
// open; it is nothing for a single wire. Strands used as separate windings, or joined in series, meet it in full.
//
// Source: A. Massarini, M. K. Kazimierczuk (1997) for two enamelled wires that touch, over the length of a strand.
//
// Valid: two or more strands guided together; there is none between the turns of one.
//
// Accuracy: an estimate: one to four of a wire's neighbours belong to the other strand, two in the middle.
//
// Example: c.StrandCapacitance()
func (c Winding) StrandCapacitance() CapacitanceRange {
	if c.style.strands() < 2 {
		return CapacitanceRange{}
	}
	strand := float64(c.WireLength()) / float64(c.style.strands())
	one := units.Capacitance(c.cell(0, c.filling()).PerLength(math.Pi/6) * strand)
	return CapacitanceRange{Low: one, Value: 2 * one, High: 4 * one}
}
