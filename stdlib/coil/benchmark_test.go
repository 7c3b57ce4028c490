package coil

import (
	"testing"

	"lode/units"
)

// BenchmarkInductance is the first time that a winding is asked; it knows afterwards.
func BenchmarkInductance(b *testing.B) {
	for name, c := range map[string]Winding{
		"fine scatter":    wound(b, steel, gauge(b, 42), 8000),
		"thick scatter":   wound(b, steel, gauge(b, 32), 500),
		"few laid":        wound(b, steel, gauge(b, 24), 14, Style{Lay: Layered}),
		"full layers":     wound(b, steel, gauge(b, 32), 20*wound(b, steel, gauge(b, 32), 1, Style{Lay: Layered}).TurnsPerLayer(), Style{Lay: Layered}),
		"a begun layer":   wound(b, steel, gauge(b, 32), 500, Style{Lay: Layered}),
		"wide rectangle":  wound(b, Rectangle{CoreLength: 40 * mm, CoreWidth: 30 * mm, Height: 4 * mm}, gauge(b, 32), 500, Style{Lay: Layered}),
		"150 orthocyclic": wound(b, steel, gauge(b, 28), 150, Style{Lay: Orthocyclic}),
		"convex of 720":   wound(b, Convex{Corners: ring(720, 0.03, 0.012), Height: 8 * mm}, gauge(b, 42), 3000),
		"again":           wound(b, steel, gauge(b, 42), 8000),
	} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if name == "again" {
					c.Inductance()
					continue
				}
				c.henry()
			}
		})
	}
}

func BenchmarkMutual(b *testing.B) {
	c := wound(b, steel, gauge(b, 42), 6000)
	for name, place := range map[string]Placed{"stacked": {Winding: c, Z: -12 * mm}, "side by side": {Winding: c, Y: 20 * mm}} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				mutual(Placed{Winding: c}, place)
			}
		})
	}
}

// BenchmarkResistanceAC is a sweep of a hundred frequencies over a new winding, and one more.
func BenchmarkResistanceAC(b *testing.B) {
	w := gauge(b, 42)
	sweep := func(b *testing.B, c Winding, points int) {
		for i := range points {
			if _, err := c.ResistanceAC(units.Frequency(1000 + 100*float64(i))); err != nil {
				b.Fatal(err)
			}
		}
	}
	b.Run("sweep of 100", func(b *testing.B) {
		for b.Loop() {
			sweep(b, wound(b, steel, w, 6000), 100)
		}
	})
	again := wound(b, steel, w, 6000)
	b.Run("one more", func(b *testing.B) {
		for b.Loop() {
			sweep(b, again, 1)
		}
	})
}

// BenchmarkDesigns is a study: 120 windings with fit, resistance, inductance, capacitance and mass.
func BenchmarkDesigns(b *testing.B) {
	for b.Loop() {
		for i := range 120 {
			former := Racetrack{CoreLength: 71 * mm, CoreWidth: (5 + 0.2*units.Length(i%10)) * mm, Height: (8 + 0.3*units.Length(i/10)) * mm, FlangeWidth: 18 * mm}
			c := wound(b, former, gauge(b, 42), 5000+10*i)
			c.Fit()
			c.Resistance()
			c.Inductance()
			c.CapacitanceRange()
			c.Mass()
		}
	}
}
