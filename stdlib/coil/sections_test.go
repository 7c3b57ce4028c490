package coil

import (
	"math"
	"strings"
	"testing"

	"lode/units"
)

// A winding cut in two halves without a gap is the winding itself; the way back to the sum of its parts is Steiner's and
// Neumann's, not the window's.
func TestStackedHalvesAreTheWhole(t *testing.T) {
	w := gauge(t, 42)
	whole := wound(t, Round{CoreDiameter: 12 * mm, Height: 8 * mm}, w, 6000)
	half := wound(t, Round{CoreDiameter: 12 * mm, Height: 4 * mm}, w, 3000)
	stack := must(Stacked(0, half, half))
	close(t, "inductance", float64(stack.Inductance()), float64(whole.Inductance()), 2e-4)
	close(t, "resistance", float64(stack.Resistance()), float64(whole.Resistance()), 1e-9)
}

// Sections with thin walls come near the undivided bobbin in inductance, and their capacitance falls as sections rise: each
// has a share of the voltage.
func TestInSections(t *testing.T) {
	w := gauge(t, 42)
	f := Round{CoreDiameter: 12 * mm, Height: 9 * mm, FlangeDiameter: 30 * mm}
	whole := wound(t, f, w, 7000)
	thin := must(InSections(f, w, 7000, 3, 0.01*mm))
	close(t, "thin walls", float64(thin.Inductance()), float64(whole.Inductance()), 0.01)
	turns := 0
	for i := range thin.Coils() {
		turns += must(thin.Coil(i + 1)).Turns()
	}
	if turns != 7000 {
		t.Errorf("%d turns in all", turns)
	}
	if c := thin.Capacitance(); c >= whole.Capacitance()/2 {
		t.Errorf("capacitance %v of three sections, %v undivided", c, whole.Capacitance())
	}
	for want, err := range map[string]error{
		"sections: out of range: got 1, want 2 to 20":                                            second(InSections(f, w, 7000, 1, mm)),
		"turns: out of range: got 2":                                                             second(InSections(f, w, 2, 3, mm)),
		"wall: out of range: got 5 mm, want more than 0 and less than 4.5 mm, the height over 2": second(InSections(f, w, 7000, 3, 5*mm)),
		"section 1 of 3: winding: ":                                                              second(InSections(f, w, 70000, 3, mm)),
		"gap: out of range":                                                                      second(Stacked(units.Length(math.NaN()), whole)),
		"chain: number of windings: got 0":                                                       second(Stacked(mm)),
	} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("got %v, want %q", err, want)
		}
	}
}

func second(_ Chain, err error) error { return err }

// Without flanges the verdict says whether the wire holds itself.
func TestHoldsItself(t *testing.T) {
	f := Round{CoreDiameter: 30 * mm, Height: 4 * mm}
	for turns, want := range map[int]string{50: "holds itself", 110: "holds itself with a wrap of tape", 400: "needs bonded wire or a form", 2000: "does not hold itself"} {
		fit := must(Fits(f, gauge(t, 36), turns))
		if !strings.Contains(fit.Verdict(), want) {
			t.Errorf("%d turns, build %v: %q, want %q", turns, fit.Build, fit.Verdict(), want)
		}
		if r := fit.HoldsItself(); !(r.Low < r.Value && r.Value < r.High && math.Abs(float64(r.High)-0.004*math.Sqrt(3)/2) < 1e-12) {
			t.Errorf("%v", r)
		}
	}
}
