package coil

import (
	"math"
	"strings"
	"testing"

	"lode/stdlib/coil/internal/induct"
	"lode/stdlib/wire"
	"lode/units"
)

// Whatever way a laid winding is taken, it agrees with the sum over its turns, each a round wire.
func TestMethodsAgree(t *testing.T) {
	mm := units.Millimetre
	thick := must(wire.AWG(24))
	worst := map[Lay]float64{}
	for _, former := range []Former{Racetrack{CoreLength: 74 * mm, CoreWidth: 7 * mm, Height: 9 * mm}, Round{CoreDiameter: 12 * mm, Height: 8 * mm},
		Rectangle{CoreLength: 40 * mm, CoreWidth: 30 * mm, CornerRadius: 2 * mm, Height: 4 * mm}} {
		for _, style := range []Style{{Lay: Layered}, {Lay: Layered, Pitch: 0.9 * mm}, {Lay: Orthocyclic}} {
			for _, turns := range []int{3, 16, 20, 25, 45, 60, 100, 150, 180} {
				c := must(Wind(former, thick, turns, style))
				want, _ := induct.DiscreteSelf(c.section(), c.places(), c.conductor())
				off := math.Abs(float64(c.Inductance())/want - 1)
				worst[style.Lay] = max(worst[style.Lay], off)
				if off > 0.001 {
					t.Errorf("%v, %d turns %v (%s): off by %.2g", former, turns, style.Lay, c.InductanceMethod(), off)
				}
			}
		}
	}
	t.Logf("largest differences %v", worst)
}

// More accuracy moves the inductance by no more than the documented 0.005 %.
func TestInductanceTo(t *testing.T) {
	c := wound(t, steel, gauge(t, 42), 6000)
	fine := must(c.InductanceTo(1e-7))
	if off := math.Abs(float64(c.Inductance()/fine) - 1); off > 5e-5 || off == 0 {
		t.Errorf("off by %.2g", off)
	}
	for _, bad := range []float64{0, 1e-9, 0.1, math.NaN()} {
		if _, err := c.InductanceTo(bad); err == nil || !strings.Contains(err.Error(), "want 1e-8 to 1e-3") {
			t.Errorf("%g: %v", bad, err)
		}
	}
}
