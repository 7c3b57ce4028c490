package kernel

import (
	"math"
	"math/rand"
	"testing"
)

// Witness for whole windings: the cross-section with all its wires, each at its own voltage, by finite volumes. What the
// formulas put together, a cell times the voltages of back-and-forth layers, is here one field.

// strand is a wire in a cross-section, its overall diameter the unit of length.
type strand struct{ x, y, volt float64 }

// crossSection lays out wires n grid cells thick, with a diameter of space around them.
func crossSection(wires []strand, c Cell, n int) *lattice {
	right, top := 0.0, 0.0
	for _, w := range wires {
		right, top = math.Max(right, w.x), math.Max(top, w.y)
	}
	l := &lattice{nx: int((right + 3) * float64(n)), ny: int((top + 3) * float64(n)), gapRows: 1, open: true}
	size := l.nx * l.ny
	l.fixed, l.volt = make([]bool, size), make([]float64, size)
	resist := make([]float64, size)
	for i := range resist {
		resist[i] = 0.5 / c.Filling
	}
	for _, w := range wires {
		for i := range 2*n + 1 {
			for j := range 2*n + 1 {
				gx, gy := int((w.x+1.5)*float64(n))+i-n, int((w.y+1.5)*float64(n))+j-n
				at := gy*l.nx + gx
				switch r := math.Hypot((float64(gx)+0.5)/float64(n)-w.x-1.5, (float64(gy)+0.5)/float64(n)-w.y-1.5); {
				case r < c.Bare/c.Overall/2:
					resist[at], l.fixed[at], l.volt[at] = 0, true, w.volt
				case r < 0.5 && !l.fixed[at]:
					resist[at] = 0.5 / c.Enamel
				}
			}
		}
	}
	return l.joined(resist)
}

// backAndForth lays wires in layers on top of each other or in the grooves of the layer below.
func backAndForth(perLayer, layers int, grooves bool) (wires []strand) {
	rise, N := 1.0, float64(perLayer*layers)
	if grooves {
		rise = GrooveRise(1, 1)
	}
	for k := range layers {
		for i := range perLayer {
			w := strand{float64(i), float64(k) * rise, (float64(k*perLayer+i) + 0.5) / N}
			if k%2 == 1 {
				w.x = float64(perLayer - 1 - i)
				if grooves {
					w.x += 0.5
				}
			}
			wires = append(wires, w)
		}
	}
	return wires
}

func TestLayersAgainstFiniteVolumes(t *testing.T) {
	random := rand.New(rand.NewSource(21))
	for range 4 {
		n, p := 5+random.Intn(6), 3+random.Intn(4)
		c := Cell{0.8 + 0.08*random.Float64(), 1, 2.5 + 2*random.Float64(), 1 + 2*random.Float64(), 0}
		sum := func(toLayer float64) float64 { return float64(p-1) * BackAndForth(float64(n), float64(n*p), toLayer) }
		row := crossSection(backAndForth(n, p, false), c, 20).capacitance()
		groove := crossSection(backAndForth(n, p, true), c, 20).capacitance()
		close(t, "layers on top of each other", sum(c.RowToLayer()), row, 0.3) // so coarse a grid is off by a tenth where wires touch
		close(t, "layers in grooves", sum(c.GrooveToLayer()), groove, 0.2)
		// with the cell on the same grid, what is left is the sum over the layers
		close(t, "sum over layers on top of each other", sum(layersOf(c, false, 20).capacitance()), row, 0.1)
		close(t, "sum over layers in grooves", sum(layersOf(c, true, 20).capacitance()), groove, 0.1)
	}
}

// TestHeapsAgainstFiniteVolumes holds the sum over neighbours in a heap, which the scatter factor comes from.
func TestHeapsAgainstFiniteVolumes(t *testing.T) {
	random := rand.New(rand.NewSource(22))
	for _, filling := range []float64{1, 2.3} {
		h := wind(random, 12, 110, 5.3+3*random.Float64())
		var wires []strand
		for i := range h.x {
			wires = append(wires, strand{h.x[i], h.y[i], float64(i) / float64(len(h.x))})
		}
		_, got := h.energy(0.85, 3.5, filling)
		close(t, "scatter winding", got, crossSection(wires, Cell{0.85, 1, 3.5, filling, 0}, 20).capacitance(), 0.3)
	}
}
