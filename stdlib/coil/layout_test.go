package coil

import (
	"lode/stdlib/coil/internal/induct"
	"math/rand"
	"testing"

	"lode/units"
)

// layersIn is the inverse of depth.
func TestLayersIn(t *testing.T) {
	random := rand.New(rand.NewSource(7))
	for range 300 {
		s := Style{Lay: Layered, Tape: units.Length(random.Intn(2)) * 0.03 * mm, TapeEvery: random.Intn(4)}
		rise, room := 5e-5+1e-4*random.Float64(), 3e-3*random.Float64()
		n := s.layersIn(room, rise)
		if s.depth(n-1, rise) > room+1e-12 || s.depth(n, rise) <= room {
			t.Errorf("%+v: %d layers in %g, the last at %g, one more at %g", s, n, room, s.depth(n-1, rise), s.depth(n, rise))
		}
	}
}

// The witness of mutual inductances of laid turns: every circle with every other by Maxwell's formula, stacked, and around each other.
func TestMutualOfLaidTurns(t *testing.T) {
	w := gauge(t, 28)
	inner := Round{CoreDiameter: 20 * mm, Height: 8 * mm, FlangeDiameter: 60 * mm}
	around := Round{CoreDiameter: 36 * mm, Height: 6 * mm, FlangeDiameter: 60 * mm}
	for _, lay := range []Lay{Layered, Orthocyclic} {
		a := wound(t, inner, w, 57, Style{Lay: lay})
		for _, p := range []Placed{
			{Winding: wound(t, inner, w, 48, Style{Lay: lay}), Z: 9 * mm}, {Winding: wound(t, inner, w, 70, Style{Lay: lay}), Z: -9 * mm},
			{Winding: wound(t, around, w, 30, Style{Lay: lay}), Z: mm},
		} {
			sum := 0.0
			for _, one := range a.places() {
				for _, other := range p.Winding.places() {
					ra, rb := float64(a.shape.CornerRadius)+one.Depth, float64(p.Winding.shape.CornerRadius)+other.Depth
					sum += induct.Circles(ra, rb, float64(p.Z)+other.Z-one.Z)
				}
			}
			close(t, lay.String()+", "+p.Winding.String(), mutual(Placed{Winding: a}, p), sum, 3e-4)
		}
	}
}
