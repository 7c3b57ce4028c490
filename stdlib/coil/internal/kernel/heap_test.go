package kernel

import (
	"math"
	"math/rand"
	"testing"
)

// A heap is a scatter winding in cross-section: wires of diameter 1 fall one by one on those
// that lie already, where a traverse that goes to and fro with some jitter lets them go.
// Some stay where they touch first, as a crossing wire does, the rest roll into a groove.
type heap struct {
	width float64
	x, y  []float64
}

func (h *heap) surface(x float64) float64 {
	top := 0.5
	for i := len(h.x) - 1; i >= 0 && i > len(h.x)-800; i-- {
		if dx := h.x[i] - x; math.Abs(dx) < 1 {
			top = math.Max(top, h.y[i]+math.Sqrt(1-dx*dx))
		}
	}
	return top
}

func (h *heap) add(x float64, rolls bool) {
	const step = 0.04
	x = math.Min(math.Max(x, 0.5), h.width-0.5)
	y := h.surface(x)
	for moved := rolls; moved; {
		moved = false
		for _, next := range []float64{x - step, x + step} {
			if next < 0.5 || next > h.width-0.5 {
				continue
			}
			if lower := h.surface(next); lower < y-1e-9 {
				x, y, moved = next, lower, true
				break
			}
		}
	}
	h.x, h.y = append(h.x, x), append(h.y, y)
}

// wind lets turns fall, perPass of them on each way of the traverse.
func wind(random *rand.Rand, width float64, turns int, perPass float64) *heap {
	h := &heap{width: width}
	for i := range turns {
		phase := math.Mod(float64(i)/perPass, 2)
		h.add(0.5+(width-1)*math.Min(phase, 2-phase)+random.Float64()-0.5, random.Float64() > 0.3)
	}
	return h
}

// energy returns the packing of the heap and the capacitance that its neighbours give per
// length of turn.
func (h *heap) energy(bare, enamel, filling float64) (packing, capacitance float64) {
	top, N := 0.0, float64(len(h.x))
	for i := range h.x {
		top = math.Max(top, h.y[i])
		for j := range i {
			gap := math.Hypot(h.x[i]-h.x[j], h.y[i]-h.y[j]) - 1
			if gap < 0.7 {
				volts := float64(i-j) / N
				capacitance += Cell{bare, 1, enamel, filling, math.Max(gap, 0)}.PerLength(math.Pi/6) * volts * volts
			}
		}
	}
	return SquarePacking * N / (h.width * (top + 0.5)), capacitance
}

// The witness of the scatter factor: heaps hold between evenly spaced wires and touching layers
// of the same turns, around 0.6 of the latter.
func TestScatterAgainstHeaps(t *testing.T) {
	const width, turns, bare, enamel = 40, 1000, 63.5 / 71, 3.5
	random := rand.New(rand.NewSource(4))
	for _, perPass := range []float64{4.7, 11.3, 24.6} {
		packing, got := wind(random, width, turns, perPass).energy(bare, enamel, 1)
		if packing < 0.6 || packing > 0.75 {
			t.Errorf("%g turns a pass: packing %.3f, want that of a scatter winding", perPass, packing)
		}
		layers := float64(turns) / width
		touching := layerFactor(layers) * width * Cell{bare, 1, enamel, 1, 0}.GrooveToLayer()
		apart := GrooveSpacing(1, packing) - 1
		even := 0.75 * layerFactor(layers) * width * Cell{bare, 1, enamel, 1, apart}.GrooveToLayer()
		book.Note(t, "scatter factor of 0.6", math.Abs(got/touching/0.6-1))
		if got < even || got > touching || math.Abs(got/touching/0.6-1) > 0.4 {
			t.Errorf("%g turns a pass, packing %.3f: %.3g F/m, evenly spaced %.3g, touching %.3g", perPass, packing, got, even, touching)
		}
	}
}
