package coil

import (
	"math"

	"lode/stdlib/coil/internal/kernel"
	"lode/units"
)

// This file takes strands that were wound side by side as windings of their own.

// StrandsInSeries takes a winding in several strands apart and joins the strands in series, so that they aid each other: two
// strands are a bifilar winding with a centre tap. Turns are counted per strand.
//
// Source: energies: all strands together are a winding of as many turns as they have in all, each alone one of its own turns
// spread over the same window; the mutual inductance follows from both.
//
// Valid: 2 to 100 strands. Wire in grooves counts as lying in straight rows.
//
// Accuracy: inductances as Winding.Inductance; how far the coupling stays below 1, about 20 % for one layer round a round core, and not checked for more. The capacitance between the strands, each at the same
// share of the voltage from the next, is an estimate within a factor of two and far above that of one winding.
//
// Example: coil.Wind(coil.Round{CoreDiameter: 12*mm, Height: 8*mm, FlangeDiameter: 24*mm}, wire.AWG(43), 2000, coil.Style{Strands: 2}).StrandsInSeries()
func (c Winding) StrandsInSeries() (Chain, error) {
	n := c.style.strands()
	if c.turns == 0 || n < 2 {
		return Chain{}, refuse("winding: no strands to join", c, "a winding of two or more, such as coil.Style{Strands: 2}", "")
	}
	all, err := wind(c.former, c.wire, c.turns*n, []Style{c.style.single()})
	if err != nil {
		return Chain{}, err
	}
	one := c.strand()
	own := float64(one.Inductance())
	mutual := min(own, (float64(all.Inductance())/float64(n)-own)/float64(n-1))
	chain := Chain{strands: float64(c.StrandCapacitance().Value) * float64(n-1) / float64(n*n)}
	for i := range n {
		row := make([]float64, n)
		for j := range row {
			row[j] = mutual
		}
		row[i] = own
		chain.coils, chain.coupled = append(chain.coils, Placed{Winding: one}), append(chain.coupled, row)
	}
	return chain, nil
}

// single is the style with one strand.
func (s Style) single() Style {
	s.Strands = 1
	return s
}

// strand is one of the strands alone, its turns spread over the window of all.
func (c Winding) strand() Winding {
	n := c.style.strands()
	one := c
	one.style, one.found, one.proven = c.style.single(), &found{}, units.Capacitance(0)
	o := &one.layout
	o.cut, o.wires = true, c.turns
	if one.style.Lay == Scatter {
		o.rise *= math.Sqrt(float64(n))
		o.pitch *= math.Sqrt(float64(n))
		o.perLayer = max(1, kernel.Rows(float64(c.shape.Height), float64(c.wire.Overall()), o.pitch))
		o.layers = (c.turns + o.perLayer - 1) / o.perLayer
		return one
	}
	o.perLayer = max(1, o.perLayer/n)
	o.pitch *= float64(n)
	return one
}
