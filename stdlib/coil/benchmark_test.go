package coil

import (
	"testing"

	"lode/stdlib/wire"
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

// BenchmarkQuantities times each quantity of a winding that was asked for it before, and of a pair.
func BenchmarkQuantities(b *testing.B) {
	c := wound(b, steel, gauge(b, 42), 6000)
	pair, err := InSeries(Placed{Winding: c, Y: -9 * mm}, Placed{Winding: must(c.With(5950)), Y: 9 * mm, Reversed: true})
	if err != nil {
		b.Fatal(err)
	}
	cover := Cover{Length: 88 * mm, Width: 20 * mm, CornerRadius: 9 * mm, Height: 14 * mm}
	field, far, near := UniformField{FluxDensity: 1e-7}, MainsWire{Current: 2, Distance: 0.6}, MainsWire{Current: 2, Distance: 0.02, Bearing: 90 * units.Degree}
	for _, q := range []struct {
		name string
		ask  func() error
	}{
		{"wire", func() error { _, err := wire.AWG(42); return err }},
		{"wind", func() error { _, err := Wind(steel, c.wire, 6000); return err }},
		{"fit", func() error { _, err := Fits(steel, c.wire, 6000); return err }},
		{"turns that fit", func() error { _, err := TurnsThatFit(steel, c.wire); return err }},
		{"turns from resistance", func() error { _, err := TurnsFromResistance(steel, c.wire, 5000); return err }},
		{"resistance", func() error { c.ResistanceRange(); return nil }},
		{"mass", func() error { c.Mass(); return nil }},
		{"inductance, new", func() error { c.henry(); return nil }},
		{"mutual inductance, new", func() error { mutual(pair.coils[0], pair.coils[1]); return nil }},
		{"capacitance", func() error { c.CapacitanceRange(); return nil }},
		{"cover", func() error { _, err := c.CoverCapacitance(cover, Finish); return err }},
		{"neighbour", func() error { _, err := pair.CapacitanceBetween(1, 2); return err }},
		{"calibration", func() error { _, err := c.Calibrated(Resonance{Frequency: 6000, Inductance: 2}); return err }},
		{"AC resistance, new", func() error { c.findSquare(); return nil }},
		{"AC resistance", func() error { _, err := c.ResistanceAC(5000); return err }},
		{"hum, uniform", func() error { _, err := c.Hum(field, 50); return err }},
		{"hum, wire", func() error { _, err := c.Hum(far, 50); return err }},
		{"hum, wire close by", func() error { _, err := c.Hum(near, 50); return err }},
		{"residual of a pair", func() error { _, err := pair.Residual(far); return err }},
		{"correction of a pair", func() error { _, err := pair.Correction(far, 2); return err }},
		{"field", func() error { _, err := c.FieldAt(0, 0, 10*mm, 1); return err }},
		{"build sheet", func() error { _, err := c.BuildSheet(); return err }},
		{"flange", func() error {
			_, err := Flange(steel, Drilling{Strings: Strings{Count: 8, Pitch: 8 * mm}, Hole: 4 * mm})
			return err
		}},
	} {
		b.Run(q.name, func(b *testing.B) {
			for b.Loop() {
				if err := q.ask(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// BenchmarkDesigns is a study: 120 windings with fit, resistance, inductance, capacitance and mass, and once more with losses and
// hum.
func BenchmarkDesigns(b *testing.B) {
	plain := func(c Winding) {
		c.Fit()
		c.Resistance()
		c.Inductance()
		c.CapacitanceRange()
		c.Mass()
	}
	for name, each := range map[string]func(Winding){"120": plain, "120 with losses and hum": func(c Winding) {
		plain(c)
		must(c.Q(5000))
		must(c.Hum(MainsWire{Current: 2, Distance: 0.6}, 50))
	}} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				for i := range 120 {
					former := Racetrack{CoreLength: 71 * mm, CoreWidth: (5 + 0.2*units.Length(i%10)) * mm, Height: (8 + 0.3*units.Length(i/10)) * mm, FlangeWidth: 18 * mm}
					each(wound(b, former, gauge(b, 42), 5000+10*i))
				}
			}
		})
	}
}
