package coil

import (
	"math"
	"math/rand/v2"
	"testing"

	"lode/stdlib/coil/internal/induct"
)

// Full layers and a begun one, each at the level that its share asks for, against the same at 1e-7.
func TestLayeredOnRandomBobbins(t *testing.T) {
	r := rand.New(rand.NewPCG(91, 92))
	worst := 0.0
	for found := 0; found < 120; {
		c, ok := randomWinding(t, r, []Lay{Layered, Orthocyclic}[r.IntN(2)])
		if !ok || c.single() || c.layout.layers < 2 {
			continue
		}
		found++
		fine, _ := c.inBlocksTo(1e-7)
		off := math.Abs(c.inBlocks()/fine - 1)
		worst = max(worst, off)
		book.Note(t, "inductance of layers, finer levels", off)
		if off > 1.5e-5 {
			t.Errorf("%v, %d turns: off by %.2g", c.shape, c.turns, off)
		}
	}
	t.Logf("worst %.2g", worst)
}

// Few laid turns, however Inductance takes them, against the sum over single turns.
func TestFewTurnsOnRandomBobbins(t *testing.T) {
	r := rand.New(rand.NewPCG(93, 94))
	worst := 0.0
	for found := 0; found < 40; {
		c, ok := randomWinding(t, r, []Lay{Layered, Orthocyclic}[r.IntN(2)])
		if !ok || c.turns > mostSingle {
			continue
		}
		found++
		fine, _ := induct.DiscreteSelfTo(c.section(), c.places(), c.conductor(), 1e-4)
		off := math.Abs(c.henry()/fine - 1)
		worst = max(worst, off)
		book.Note(t, "inductance of few turns, one by one", off)
		if off > 1e-3 {
			t.Errorf("%v, %d turns in %d layers: off by %.2g", c.shape, c.turns, c.layout.layers, off)
		}
	}
	t.Logf("worst %.2g", worst)
}
