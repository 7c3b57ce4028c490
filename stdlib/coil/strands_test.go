package coil

import (
	"math"
	"strings"
	"testing"

	"lode/stdlib/coil/internal/induct"
)

// Two strands in one layer round a round core, turn by turn: Maxwell's circles for every turn of both, and the chain of
// the strands from energies.
func TestBifilarAgainstCircles(t *testing.T) {
	w := gauge(t, 30)
	for _, turns := range []int{20, 40} {
		c := wound(t, Round{CoreDiameter: 20 * mm, Height: 40 * mm}, w, turns, Style{Lay: Layered, Strands: 2})
		pitch, radius := float64(c.Pitch()), 0.01
		row := func(first float64) induct.Row {
			return induct.Row{Depth: float64(w.Overall()) / 2, Lowest: first, Turns: turns}
		}
		conductor := induct.Wire{Radius: float64(w.Bare()) / 2}
		own := induct.CircularRows(radius, []induct.Row{row(0)}, 2*pitch, conductor)
		both := induct.CircularRows(radius, []induct.Row{{Depth: float64(w.Overall()) / 2, Turns: 2 * turns}}, pitch, conductor)
		chain := must(c.StrandsInSeries())
		close(t, "in series", float64(chain.Inductance()), both, 3e-3)
		k := must(chain.Coupling(1, 2))
		if want := (both/2 - own) / own; math.Abs((1-k)/(1-want)-1) > 0.2 {
			t.Errorf("%d turns: the coupling is %.5f, want %.5f", turns, k, want)
		}
	}
}

// Strands in series have n² times the resistance and inductance of the same in parallel, and of their capacitance against
// each other what the share of the voltage between them makes: a quarter for two.
func TestStrandsInSeries(t *testing.T) {
	for _, style := range []Style{{Strands: 2}, {Strands: 3, Lay: Layered}, {Strands: 2, Lay: Orthocyclic}, {Strands: 4, Packing: 0.6}} {
		c, n := wound(t, steel, gauge(t, 43), 1200, style), float64(style.Strands)
		chain := must(c.StrandsInSeries())
		close(t, "resistance", float64(chain.Resistance()), n*n*float64(c.Resistance()), 1e-9)
		close(t, "inductance", float64(chain.Inductance()), n*n*float64(c.Inductance()), 2e-3)
		close(t, "wire", float64(chain.WireLength()), float64(c.WireLength()), 1e-9)
		if k := must(chain.Coupling(1, 2)); k < 0.99 || k > 1 {
			t.Errorf("%+v: coupling %g", style, k)
		}
		between := float64(c.StrandCapacitance().Value) * (n - 1) / (n * n)
		if got := float64(chain.Capacitance()); got < between || got > 1.1*between {
			t.Errorf("%+v: capacitance %g, between the strands %g", style, got, between)
		}
	}
	for _, c := range []Winding{{}, wound(t, steel, gauge(t, 43), 1200)} {
		if _, err := c.StrandsInSeries(); err == nil || !strings.Contains(err.Error(), "no strands to join: got ") {
			t.Errorf("%v: %v", c, err)
		}
	}
}
