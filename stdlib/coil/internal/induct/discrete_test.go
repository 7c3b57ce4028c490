package induct

import (
	"fmt"
	"math"
	"testing"
)

// Circular turns: the sum of Maxwell's loops, with the thin-wire formula for each turn itself.
func TestDiscreteSelfOfCircles(t *testing.T) {
	s := Circle(0.02, 0.006, 0.004)
	wire := Wire{Radius: 0.0002}
	turns := Grid(s, 4, 5)
	want := 0.0
	for i, a := range turns {
		ra := s.CornerRadius + a.Depth
		want += Mu0 * ra * (math.Log(8*ra/wire.Radius) - 1.75)
		for j, b := range turns {
			if i != j {
				want += loops(ra, s.CornerRadius+b.Depth, a.Z-b.Z)
			}
		}
	}
	got, err := DiscreteSelf(s, turns, wire)
	closeTo(t, "20 turns", got, want, 1e-5)
	if err > 1e-4*got {
		t.Errorf("estimated error %.2g", err/got)
	}
}

// Any core: the turns one by one are coils of no section, coupled by the coaxial route.
func TestDiscreteSelfIsSumOfCoaxial(t *testing.T) {
	s := Section{0.07, 0.012, 0.003, 0.006, 0.003}
	wire := Wire{Radius: 0.0003}
	turns := []Turn{{0.001, 0.002}, {0.001, -0.002}, {0.002, 0.0005}}
	want := 0.0
	for i, a := range turns {
		own, _ := DiscreteSelf(s, []Turn{a}, wire)
		want += own
		for _, b := range turns[:i] {
			m := filamentSum(filaments(at(s, a.Depth), 1, 48, Placement{}),
				filaments(at(s, b.Depth), 1, 48, Placement{Shift: [3]float64{0, 0, a.Z - b.Z}}))
			want += 2 * m
		}
	}
	got, _ := DiscreteSelf(s, turns, wire)
	closeTo(t, "three turns", got, want, 5e-4)
}

// at is the section of no height and build at a depth.
func at(s Section, depth float64) Section {
	return Section{CoreLength: s.CoreLength + 2*depth, CoreWidth: s.CoreWidth + 2*depth, CornerRadius: s.CornerRadius + depth}
}

// Maxwell (art. 693) and Rosa and Grover 1912: ln 1.14805 = 0.1381 for square cells filled with
// wire; one layer of 2 and 3 turns: E = 0.006528 and 0.009045 (recalled); a large square
// coil: about 0.018 (recalled).
func TestRoundWireConstants(t *testing.T) {
	d := 0.001
	own := math.Log(RectangleMeanDistance(d, d) / Wire{Radius: d / 2}.meanDistance())
	closeTo(t, "own turn", own, 0.1381, 5e-4)
	c := cell{d, d}
	closeTo(t, "two turns", c.neighbours(1, 2, false), 0.006528, 2e-3)
	closeTo(t, "three turns", c.neighbours(1, 3, false), 0.009045, 2e-3)
	closeTo(t, "large coil", c.neighbours(60, 60, false), 0.018, 0.05)
}

// The quadrupole continues the full average.
func TestRoundWireFarNeighbours(t *testing.T) {
	c := cell{1, 0.6}
	near := c.excess(5, 4.9)
	scaled := c.excess(50, 49) * 100
	closeTo(t, "excess", near, scaled, 0.05)
}

// Both methods at about 150 turns, tightly and loosely wound.
func TestTurnByTurnAgreesWithSmeared(t *testing.T) {
	for _, c := range []struct {
		s                Section
		layers, perLayer int
		bare             float64
	}{
		{Section{0.07, 0.012, 0.003, 0.0075, 0.005}, 10, 15, 0.4},
		{Section{0.07, 0.012, 0, 0.0075, 0.005}, 10, 15, 0.2},
		{Circle(0.012, 0.006, 0.006), 12, 12, 0.45},
		{Section{0.03, 0.03, 0.01, 0.012, 0.003}, 6, 25, 0.3},
	} {
		cellSide := min(c.s.Build/float64(c.layers), c.s.Height/float64(c.perLayer))
		wire := Wire{Radius: c.bare * cellSide}
		single, _ := DiscreteSelf(c.s, Grid(c.s, c.layers, c.perLayer), wire)
		filled, _ := Self(c.s, float64(c.layers*c.perLayer))
		round := RoundWire(c.s, c.layers, c.perLayer, wire)
		closeTo(t, fmt.Sprint(c), filled+round, single, 3e-4)
	}
}
