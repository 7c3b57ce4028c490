package coil

import (
	"math/rand"
	"strings"
	"testing"
)

// The parts of a tapped winding add up to the whole in resistance, inductance and area.

func TestTappedAddsUp(t *testing.T) {
	random := rand.New(rand.NewSource(10))
	for range 12 {
		f, turns := randomFormer(random), 900+random.Intn(5000)
		for _, style := range []Style{{}, {Lay: Layered}, {Lay: Orthocyclic}} {
			c := wound(t, f, gauge(t, 42), turns, style)
			cut, err := c.Tapped(turns/4, turns/2)
			if err != nil {
				t.Fatal(err)
			}
			close(t, "resistance", float64(cut.Resistance()), float64(c.Resistance()), 1e-9)
			tolerance := 2e-4
			if style.Lay != Scatter { // single turns at the tap know their neighbours across it
				tolerance = 5e-4
			}
			close(t, "inductance", float64(cut.Inductance()), float64(c.Inductance()), tolerance)
			areas := 0.0
			for i := range 3 {
				part, _ := cut.Coil(i + 1)
				areas += float64(part.Area()) * float64(part.Turns())
			}
			close(t, "area", areas, float64(c.Area())*float64(turns), 1e-9)
			if k, _ := cut.Coupling(1, 2); k < 0.5 || k >= 1 {
				t.Errorf("%v: coupling of nested parts %g", c, k)
			}
		}
	}
	c := wound(t, steel, gauge(t, 42), 3000)
	for want, few := range map[string]Winding{"got no winding, want ": {}, "got 1 turn of ": wound(t, steel, gauge(t, 42), 1)} {
		if _, err := few.Tapped(1); err == nil || !strings.Contains(err.Error(), "too few turns for a tap: "+want) {
			t.Errorf("%v: %v", few, err)
		}
	}
	for _, bad := range [][]int{{0}, {3000}, {4000}, {2000, 1000}, {-5}} {
		if _, err := c.Tapped(bad...); err == nil || !strings.Contains(err.Error(), "tap: ") {
			t.Errorf("taps at %v: %v", bad, err)
		}
	}
}
