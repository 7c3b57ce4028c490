package coil

import (
	"math"
	"strings"
	"testing"

	"lode/units"
)

// What fills a cover and what is in it add up to the cover: wire, compound and the core's solid.
func TestCastingAddsUp(t *testing.T) {
	c := wound(t, Round{CoreDiameter: 12 * mm, Height: 8 * mm}, gauge(t, 42), 6000)
	cover := Cover{Length: 30 * mm, Width: 30 * mm, CornerRadius: 15 * mm, Height: 12 * mm}
	wire := math.Pi / 4 * sq(float64(c.Wire().Overall())) * float64(c.WireLength())
	core := math.Pi * sq(0.006) * 0.008
	close(t, "volume", float64(must(c.CastingVolume(cover)))+wire+core, math.Pi*sq(0.015)*0.012, 1e-9)
	// scatter winding is 65 % wire
	close(t, "between the wires", float64(c.CompoundVolume()), wire*35/65, 1e-9)
	cover.Width, cover.CornerRadius = 13*mm, 6*mm
	if _, err := c.CastingVolume(cover); err == nil || !strings.Contains(err.Error(), "does not go over") {
		t.Errorf("narrow cover: %v", err)
	}
}

func TestFlangeInTheCasting(t *testing.T) {
	c := wound(t, Round{CoreDiameter: 12 * mm, Height: 8 * mm, FlangeDiameter: 24 * mm}, gauge(t, 43), 3000)
	if _, err := c.CastingVolume(Cover{Length: 22 * mm, Width: 22 * mm, CornerRadius: 11 * mm, Height: 9 * mm}); err == nil || !strings.Contains(err.Error(), "the flange is larger than the cover") {
		t.Errorf("cover of 22 mm over a flange of 24 mm: %v", err)
	}
}

// The mass of a casting is its volume times 1.15 g/cm³ of cast epoxy; without a compound it is not known, and air is one.
func TestCastingMass(t *testing.T) {
	c := wound(t, Round{CoreDiameter: 12 * mm, Height: 8 * mm}, gauge(t, 42), 6000)
	cover := Cover{Length: 30 * mm, Width: 30 * mm, CornerRadius: 15 * mm, Height: 12 * mm}
	epoxy := must(c.Potted(must(CompoundNamed("epoxy"))))
	close(t, "mass", float64(must(epoxy.CastingMass(cover))), 1150*float64(must(c.CastingVolume(cover))), 1e-12)
	if _, err := c.CastingMass(cover); err == nil || !strings.Contains(err.Error(), "compound: density not known: got no compound, want ") {
		t.Errorf("not potted: %v", err)
	}
	air := must(c.Potted(must(CompoundNamed("air"))))
	if air.CapacitanceRange() != c.CapacitanceRange() {
		t.Errorf("air: %v, want %v", air.CapacitanceRange(), c.CapacitanceRange())
	}
	if f := Compounds(); f.Rows() != len(compounds) || f.Columns[0].Texts[0] != "air" {
		t.Errorf("%v", f)
	}
}

func TestFitWithin(t *testing.T) {
	c := wound(t, steel, gauge(t, 42), 6000)
	if fit := must(c.FitWithin(20 * mm)); fit != c.Fit() {
		t.Errorf("more room than the flanges: %v, %v", fit, c.Fit())
	}
	fit := must(c.FitWithin(2 * mm))
	there := must(Fits(Racetrack{CoreLength: 71 * mm, CoreWidth: 6.5 * mm, Height: 10 * mm, FlangeWidth: 10.5 * mm}, gauge(t, 42), 6000))
	if fit.OK() || fit.TurnsThatFit != there.TurnsThatFit {
		t.Errorf("2 mm: %v, want %v", fit, there)
	}
	for _, bad := range []float64{0, -1, math.NaN()} {
		if _, err := c.FitWithin(units.Length(bad)); err == nil {
			t.Errorf("%g was accepted", bad)
		}
	}
}
