package coil

import (
	"math"
	"strings"
	"testing"

	"lode/units"
)

// Insulation on the core is a larger core, and what is wrapped around takes room: windings on bobbins that are made that way
// from the start are the witnesses.
func TestInsulationIsALargerCore(t *testing.T) {
	u, o := 0.3*mm, 0.2*mm
	for _, style := range []Style{{}, {Lay: Layered, Tape: 0.05 * mm}, {Lay: Orthocyclic}} {
		with := style
		with.Under, with.Over = u, o
		for _, pair := range [][2]Former{
			{Round{CoreDiameter: 12 * mm, Height: 8 * mm, FlangeDiameter: 24 * mm}, Round{CoreDiameter: 12*mm + 2*u, Height: 8 * mm, FlangeDiameter: 24*mm - 2*o}},
			{Racetrack{CoreLength: 50 * mm, CoreWidth: 6 * mm, Height: 8 * mm, FlangeWidth: 18 * mm}, Racetrack{CoreLength: 50*mm + 2*u, CoreWidth: 6*mm + 2*u, Height: 8 * mm, FlangeWidth: 18*mm - 2*o}},
			{Rectangle{CoreLength: 50 * mm, CoreWidth: 6 * mm, Height: 8 * mm}, Rectangle{CoreLength: 50*mm + 2*u, CoreWidth: 6*mm + 2*u, CornerRadius: u, Height: 8 * mm}},
		} {
			a, b := wound(t, pair[0], gauge(t, 42), 2500, with), wound(t, pair[1], gauge(t, 42), 2500, style)
			close(t, "resistance", float64(a.Resistance()), float64(b.Resistance()), 1e-12)
			close(t, "inductance", float64(a.Inductance()), float64(b.Inductance()), 1e-9)
			if got, want := a.Fit(), b.Fit(); got.TurnsThatFit != want.TurnsThatFit || math.Abs(float64(got.Room-want.Room)) > 1e-12 {
				t.Errorf("%v: %v, %d, want %v, %d", pair[0], got, got.TurnsThatFit, want, want.TurnsThatFit)
			}
			if got, want := must(a.FitWithin(4*mm)).Room, must(b.FitWithin(4*mm-u-o)).Room; math.Abs(float64(got-want)) > 1e-12 {
				t.Errorf("within 4 mm: %v, want %v", got, want)
			}
		}
	}
}

// A convex core with insulation keeps its turns: lengths and areas by Steiner's formula for its own corners.
func TestInsulatedConvexCore(t *testing.T) {
	c := wound(t, Convex{Corners: []Point{{0, 0}, {60 * mm, 0}, {55 * mm, 8 * mm}, {5 * mm, 8 * mm}}, Height: 9 * mm}, gauge(t, 42), 3000, Style{Under: 0.5 * mm})
	perimeter := 0.110 + 2*math.Hypot(0.005, 0.008)
	from, to := 0.0005, 0.0005+float64(c.Build())
	close(t, "mean turn", float64(c.MeanTurn()), perimeter+math.Pi*(from+to), 1e-9)
	area := 0.055*0.008 + perimeter*(from+to)/2 + math.Pi*(from*from+from*to+to*to)/3
	close(t, "mean area", float64(c.Area()), area, 1e-9)

	box := wound(t, Convex{Corners: []Point{{0, 0}, {30 * mm, 0}, {30 * mm, 8 * mm}, {0, 8 * mm}}, Height: 9 * mm}, gauge(t, 42), 3000, Style{Under: 0.5 * mm})
	rounded := wound(t, Rectangle{CoreLength: 31 * mm, CoreWidth: 9 * mm, CornerRadius: 0.5 * mm, Height: 9 * mm}, gauge(t, 42), 3000)
	close(t, "inductance", float64(box.Inductance()), float64(rounded.Inductance()), 1e-5)
}

// The cover has less space over a wrap, and what fills the cover does not fill the wrap.
func TestWrapInACover(t *testing.T) {
	f := Round{CoreDiameter: 12 * mm, Height: 8 * mm, FlangeDiameter: 26 * mm}
	cover := Cover{Length: 30 * mm, Width: 30 * mm, CornerRadius: 15 * mm, Height: 12 * mm}
	plain, wrapped := wound(t, f, gauge(t, 42), 6000), wound(t, f, gauge(t, 42), 6000, Style{Over: 0.25 * mm})
	a, b := must(plain.Inside(cover)), must(wrapped.Inside(cover))
	for name, pair := range map[string][2]units.Length{"sides": {a.Sides, b.Sides}, "worst": {a.Worst, b.Worst}} {
		close(t, name, float64(pair[0]-pair[1]), 0.25e-3, 1e-9)
	}
	close(t, "flange", float64(b.Flange), 2e-3, 1e-9)
	r := 0.006 + float64(plain.Build())
	ring := math.Pi * (sq(r+0.25e-3) - r*r) * 0.008
	close(t, "volume", float64(must(plain.CastingVolume(cover))-must(wrapped.CastingVolume(cover))), ring, 1e-9)
}

func TestStyleInWords(t *testing.T) {
	style := Style{Lay: Layered, Strands: 2, Tape: 0.05 * mm, Under: 0.1 * mm, Over: 0.2 * mm}
	if got, want := style.String(), "layered, 2 strands, tape of 0.05 mm, insulation on the core of 0.1 mm, wrap of 0.2 mm"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	if got := (Style{}).String(); got != "scatter" {
		t.Errorf("got %q", got)
	}
}

func TestInsulationRefused(t *testing.T) {
	f := Round{CoreDiameter: 12 * mm, Height: 8 * mm, FlangeDiameter: 14 * mm}
	for want, style := range map[string]Style{
		"style Under: out of range: got -1 mm, want 0 to 5 mm":                                     {Under: -mm},
		"style Over: out of range: got 6 mm":                                                       {Over: 6 * mm},
		"style Under: out of range: got undefined m":                                               {Under: units.Length(math.NaN())},
		"style Under and Over: no room left for wire: got 1.2 mm, want less than the room of 1 mm": {Under: 0.6 * mm, Over: 0.6 * mm},
	} {
		if _, err := Wind(f, gauge(t, 42), 10, style); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("got %v, want %q", err, want)
		}
	}
	c := wound(t, f, gauge(t, 42), 10, Style{Over: 0.5 * mm})
	if _, err := c.FitWithin(0.4 * mm); err == nil || !strings.Contains(err.Error(), "room: taken by the insulation: got 0.4 mm, want more than its 0.5 mm") {
		t.Errorf("%v", err)
	}
}

// Insulation on a round core written as corners leaves it as round as it counts.
func TestInsulatedConvexCoreInACover(t *testing.T) {
	c := wound(t, Convex{Corners: ring(720, 0.01, 0.01), Height: 9 * mm}, gauge(t, 42), 3000, Style{Under: 4 * mm})
	if list := c.insideLeft(Cover{}); len(list) > 0 {
		t.Errorf("got %q, want nothing", list)
	}
}
