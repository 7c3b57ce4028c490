package coil

import (
	"math"
	"testing"

	"lode/units"
)

// Map of mutual checks of inductance beyond those of package induct:
//
//	few turns      a single round loop by its textbook formula; a short solenoid by Nagaoka's table
//	ways           turn by turn, in blocks and smeared agree where they meet
//	convex         a rectangle given by its corners; a hexagon between its circles; many corners

func TestSingleLoop(t *testing.T) {
	w := gauge(t, 30)
	c := wound(t, Round{CoreDiameter: 50 * mm, Height: 10 * mm}, w, 1, Style{Lay: Layered})
	R, a := 0.025+float64(w.Overall())/2, float64(w.Bare())/2
	// Grover, Inductance Calculations, 1946: L = µ0·R·(ln(8R/a) - 1.75) with the current all through the wire
	close(t, "laid", float64(c.Inductance()), 4e-7*math.Pi*R*(math.Log(8*R/a)-1.75), 1e-4)
}

func TestShortSolenoid(t *testing.T) {
	w := gauge(t, 40)
	f := Round{CoreDiameter: 20 * mm, Height: 10 * mm}
	c := wound(t, f, w, 100, Style{Lay: Layered, Pitch: 0.1 * mm})
	// Nagaoka's factor at length/diameter 0.5 is 0.525510 (Grover, table 36). With a diameter of 20 mm and the wire's
	// thickness the ratio is a little less; its slope there is about 0.53.
	d := 0.02 + float64(w.Overall())
	K := 0.525510 + 0.53*(0.01/d-0.5)
	sheet := 4e-7 * math.Pi * sq(100) * math.Pi / 4 * d * d / 0.01 * K
	// E. B. Rosa's correction of a current sheet to round wires: -µ0·R·N·(A+B), A = 5/4 - ln(2p/d), B = 0.3292 for 100 turns.
	A := 1.25 - math.Log(2*0.1e-3/float64(w.Bare()))
	close(t, "laid", float64(c.Inductance()), sheet-4e-7*math.Pi*d/2*100*(A+0.3292), 1e-3)
}

func TestWaysAgree(t *testing.T) {
	w := gauge(t, 34)
	f := Racetrack{CoreLength: 40 * mm, CoreWidth: 6 * mm, Height: 5 * mm}
	for _, lay := range []Lay{Layered, Orthocyclic} {
		last := wound(t, f, w, mostSingle, Style{Lay: lay})
		blocks := last.inBlocks()
		close(t, lay.String()+": single turns and blocks", float64(must(last.InductanceTo(1e-6))), blocks, 1e-3)
		n := last.TurnsPerLayer()
		full := wound(t, f, w, 12*n, Style{Lay: lay})
		close(t, lay.String()+": blocks and smeared", full.inBlocks(), full.smeared(), 3e-2) // which fills the flange to flange and the first layer's grooves, too
	}
	one := wound(t, f, w, 20)
	laid := wound(t, f, w, 20, Style{Lay: Layered, Pitch: 0.25 * mm})
	close(t, "scattered and laid over the same height", float64(one.Inductance()), float64(laid.Inductance()), 0.02)
}

func TestConvexInductance(t *testing.T) {
	w := gauge(t, 42)
	hexagon := wound(t, Convex{Corners: ring(6, 0.01, 0.01), Height: 8 * mm}, w, 3000)
	// between the circles of its own perimeter and of its own area: of all outlines the circle has most inductance for its
	// perimeter, and least for its area
	around := wound(t, Round{CoreDiameter: units.Length(6*0.01/math.Pi) * 1, Height: 8 * mm}, w, 3000)
	within := wound(t, Round{CoreDiameter: units.Length(2 * math.Sqrt(1.5*math.Sqrt(3)*1e-4/math.Pi)), Height: 8 * mm}, w, 3000)
	if l := hexagon.Inductance(); l >= around.Inductance() || l <= within.Inductance() {
		t.Errorf("hexagon %v, circle of its perimeter %v, of its area %v", l, around.Inductance(), within.Inductance())
	}
	many := wound(t, Convex{Corners: ring(41, 0.02, 0.008), Height: 8 * mm}, w, 3000)
	few := wound(t, Convex{Corners: ring(39, 0.02, 0.008), Height: 8 * mm}, w, 3000)
	close(t, "ellipse as it is and as a rounded rectangle", float64(many.Inductance()), float64(few.Inductance()), 0.01)
}
