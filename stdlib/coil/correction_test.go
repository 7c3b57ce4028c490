package coil

import (
	"math/rand"
	"testing"

	"lode/units"
)

// Corrections are applied: the winding is wound anew, and its neighbours in turns leave no less.

func TestCorrection(t *testing.T) {
	w := gauge(t, 42)
	f := Racetrack{CoreLength: 60 * mm, CoreWidth: 5 * mm, Height: 8 * mm, FlangeWidth: 16 * mm}
	air := Racetrack{CoreLength: 55 * mm, CoreWidth: 12 * mm, Height: 5 * mm, FlangeWidth: 26 * mm}
	for _, source := range []HumSource{UniformField{FluxDensity: 1e-7}, MainsWire{Current: 2, Distance: 0.5, Bearing: 1, Elevation: 0.2}} {
		chain := inSeries(t, Placed{Winding: wound(t, f, w, 5000)}, Placed{Winding: wound(t, air, w, 3000), Z: -12 * mm, Reversed: true})
		c, err := chain.Correction(source, 2)
		if err != nil {
			t.Fatal(err)
		}
		residuals := map[int]float64{}
		for _, extra := range []int{-1, 0, 1} {
			again := inSeries(t, Placed{Winding: wound(t, f, w, 5000)}, Placed{Winding: wound(t, air, w, c.Turns+extra), Z: -12 * mm, Reversed: true})
			level, err := again.Residual(source)
			if err != nil {
				t.Fatal(err)
			}
			residuals[extra] = float64(level)
		}
		close(t, "residual after the correction, wound anew", float64(c.Residual), residuals[0], 1e-6)
		if residuals[0] > residuals[1] || residuals[0] > residuals[-1] || c.Change != c.Turns-3000 || residuals[0] > -70 {
			t.Errorf("%v: %v, residuals %v", source, c, residuals)
		}
		if _, err := inSeries(t, Placed{Winding: wound(t, f, w, 5000)}, Placed{Winding: wound(t, air, w, 3000), Z: -12 * mm}).Correction(source, 2); err == nil {
			t.Error("a winding that aids was said to cancel")
		}
	}
}

// Random pairs of unlike coils, near and far from random sources: the correction is applied by winding anew, and neither a turn more
// nor one less leaves less.
func TestCorrectionOfRandomPairs(t *testing.T) {
	random := rand.New(rand.NewSource(41))
	for range 15 {
		one := wound(t, randomFormer(random), gauge(t, 42), 500+random.Intn(4000))
		two := wound(t, randomFormer(random), gauge(t, 40), 200+random.Intn(2000))
		var source HumSource = UniformField{FluxDensity: 1e-7, Angle: units.Angle(1.2 * random.Float64())}
		if random.Intn(2) == 0 {
			source = MainsWire{Current: 2, Distance: units.Length(0.15 + random.Float64()), Bearing: units.Angle(6 * random.Float64()), Elevation: units.Angle(0.5 * random.Float64())}
		}
		first, second := Placed{Winding: one}, Placed{Winding: two, Z: -30 * mm, Y: 8 * mm, Tilt: units.Angle(0.4 * random.Float64())}
		pair := inSeries(t, first, second)
		if f := must(pair.fluxes(source)); f[0]*f[1] > 0 {
			second.Reversed = true
			pair = inSeries(t, first, second)
		}
		c := must(pair.Correction(source, 2))
		left := func(turns int) float64 {
			second.Winding = must(two.With(turns))
			return induced(t, inSeries(t, first, second), source)
		}
		best := left(c.Turns)
		if best > left(c.Turns+1) || c.Turns > 1 && best > left(c.Turns-1) {
			t.Errorf("%v, %v: %g V, one more %g V, one less %g V", source, c, best, left(c.Turns+1), left(c.Turns-1))
		}
		alone := induced(t, inSeries(t, first), source)
		if c.Residual > -119 {
			book.Note(t, "residual in parts of a turn", best/alone*float64(c.Turns))
			if best/alone*float64(c.Turns) > 1 { // half a turn, the outermost of which enclose up to twice the mean area
				t.Errorf("%v: %v leaves more than half of its outermost turn", source, c)
			}
		}
	}
}

// TestSearchFrom holds a search from a guess against one from below, wherever the guess lies.
func TestSearchFrom(t *testing.T) {
	for _, least := range []int{1, 2, 3, 57, 4999, mostTurns} {
		enough := func(n int) bool { return n >= least }
		for _, guess := range []int{-5, 0, 1, 2, 3, 40, 57, 58, 5000, mostTurns, 2 * mostTurns} {
			if got := searchFrom(guess, enough); got != least || got != search(enough) {
				t.Errorf("from %d: got %d, want %d", guess, got, least)
			}
		}
	}
	if got := searchFrom(7, func(int) bool { return false }); got <= mostTurns {
		t.Errorf("where nothing is enough: got %d, want more than %d", got, mostTurns)
	}
}
