package coil

import (
	"math"
	"math/rand"
	"testing"

	"lode/stdlib/coil/internal/kernel"
	"lode/units"
)

// The energies of single turns: each faces the turn in the next layer that lies on top of it, over its own length, at
// the difference of their voltages. The cell is the kernel's, whose own tests hold it.
func TestLayersAgainstSingleTurns(t *testing.T) {
	random := rand.New(rand.NewSource(31))
	for range 12 {
		former := Round{CoreDiameter: units.Length(6+20*random.Float64()) * mm, Height: units.Length(3+6*random.Float64()) * mm}
		w, filling := gauge(t, float64(30+2*random.Intn(6))), 1+2*random.Float64()
		one := wound(t, former, w, 1, Style{Lay: Layered})
		n := one.TurnsPerLayer()
		c := must(wound(t, former, w, n*(2+random.Intn(9)), Style{Lay: Layered}).Potted(Compound{Permittivity: filling}))
		cell := kernel.Cell{Bare: float64(w.Bare()), Overall: float64(w.Overall()), Enamel: 3.5, Filling: filling}
		facing, N := 0.0, float64(c.Turns())
		for i := range c.Turns() - n {
			k, j := i/n, i%n
			above := (k+1)*n + n - 1 - j // the next layer comes back
			length := math.Pi * (float64(former.CoreDiameter) + float64(w.Overall())*float64(2*k+2))
			facing += length * sq(float64(above-i)/N)
		}
		outside := kernel.Medhurst(float64(former.Height), float64(c.MeanTurn())/math.Pi)
		r := c.CapacitanceRange()
		close(t, "low end, wires on top of each other", float64(r.Low)-0.8*outside, facing*cell.RowToLayer(), 0.02)
		close(t, "high end, wires in grooves", float64(r.High)-1.2*outside, facing*cell.GrooveToLayer(), 0.02)
	}
}

// Single layers over the whole of R. G. Medhurst's table (Wireless Engineer 24, 1947), as printed.
func TestSingleLayersAgainstMedhurst(t *testing.T) {
	w := gauge(t, 36)
	for _, row := range windowRows(t, "capacitance_medhurst_table.csv") {
		const diameter = 0.02
		height := row.number(t, "length_over_diameter") * diameter
		turns := int(height / 0.2e-3)
		c := wound(t, Round{CoreDiameter: units.Length(diameter) - w.Overall(), Height: units.Length(height)}, w, turns, Style{Lay: Layered, Pitch: units.Length(height / float64(turns))})
		if c.Layers() != 1 {
			t.Fatalf("%v: %d layers", c, c.Layers())
		}
		close(t, "capacitance of a single layer", float64(c.Capacitance()), 1e-12*row.number(t, "H_pF_per_m")*diameter, 0.005)
	}
}
