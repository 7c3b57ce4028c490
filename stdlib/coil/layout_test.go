package coil

import (
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
