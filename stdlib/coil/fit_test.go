package coil

import (
	"math"
	"math/rand"
	"strings"
	"testing"

	"lode/stdlib/wire"
	"lode/units"
)

func TestTurnsThatFitFit(t *testing.T) {
	random := rand.New(rand.NewSource(3))
	for range 100 {
		w := gauge(t, 38+float64(random.Intn(8)))
		room := units.Length(0.3+5*random.Float64()) * mm
		f := Round{CoreDiameter: 10 * mm, Height: units.Length(2+10*random.Float64()) * mm, FlangeDiameter: 10*mm + 2*room}
		for _, style := range []Style{{}, {Lay: Layered}, {Lay: Orthocyclic}, {Packing: 0.7}} {
			fit, err := Fits(f, w, 100, style)
			if err != nil {
				t.Fatal(err)
			}
			if _, err := Wind(f, w, fit.TurnsThatFit, style); err != nil {
				t.Errorf("%v %v: %d turns should fit: %v", f, style, fit.TurnsThatFit, err)
			}
			_, err = Wind(f, w, fit.TurnsThatFit+fit.TurnsPerLayer+1, style)
			if err == nil || !strings.Contains(err.Error(), "do not fit") || !strings.Contains(err.Error(), "\nhint: ") {
				t.Errorf("%v %v: %d turns should not fit: %v", f, style, fit.TurnsThatFit+fit.TurnsPerLayer+1, err)
			}
		}
	}
}

func TestFitTells(t *testing.T) {
	for _, c := range []struct {
		turns int
		want  string
	}{{3000, "fits"}, {8000, "tight"}, {9500, "does not fit at the usual packing"}, {20000, "does not fit"}} {
		fit, err := Fits(steel, gauge(t, 42), c.turns)
		if err != nil {
			t.Fatal(err)
		}
		if !strings.HasPrefix(fit.Verdict(), c.want) {
			t.Errorf("%d turns: got %q, want %q", c.turns, fit, c.want)
		}
		if fit.OK() != (c.turns < 9000) || fit.Frame().Rows() != 8 {
			t.Errorf("%d turns: OK %v, %d rows", c.turns, fit.OK(), fit.Frame().Rows())
		}
	}
	open, err := Fits(Round{CoreDiameter: 5 * mm, Height: 3 * mm}, gauge(t, 42), 50000)
	if err != nil || !open.OK() || strings.Contains(open.String(), "∞") {
		t.Errorf("without flanges: %v, %v", open, err)
	}
	if c := wound(t, steel, gauge(t, 42), 6000); c.Frame().Rows() != 14 {
		t.Errorf("winding: %d rows", c.Frame().Rows())
	}
}

func TestBadInput(t *testing.T) {
	w, nan := gauge(t, 42), units.Length(math.NaN())
	good := Round{CoreDiameter: 10 * mm, Height: 8 * mm, FlangeDiameter: 20 * mm}
	for _, c := range []struct {
		former Former
		wire   wire.Wire
		turns  int
		style  []Style
		want   string
	}{
		{nil, w, 100, nil, "former: none"},
		{good, wire.Wire{}, 100, nil, "wire: none"},
		{good, w.Uncoated(), 100, nil, "short"},
		{good, w, 0, nil, "turns: out of range"},
		{good, w, -5, nil, "turns: out of range"},
		{good, w, 2000000, nil, "turns: out of range"},
		{good, w, 100, []Style{{}, {}}, "style: more than one"},
		{good, w, 100, []Style{{Lay: 7}}, "style Lay"},
		{good, w, 100, []Style{{Packing: 1}}, "style Packing"},
		{good, w, 100, []Style{{Packing: math.NaN()}}, "style Packing"},
		{good, w, 100, []Style{{Lay: Layered, Pitch: 0.01 * mm}}, "style Pitch"},
		{good, w, 100, []Style{{Lay: Layered, Packing: 0.7}}, "style Packing: not for laid turns: got 0.7"},
		{good, w, 100, []Style{{Pitch: 0.1 * mm}}, "style Pitch: not for scatter windings: got 0.1 mm"},
		{Round{}, w, 100, nil, "round CoreDiameter"},
		{Round{CoreDiameter: 10 * mm, Height: nan}, w, 100, nil, "round Height"},
		{Round{CoreDiameter: 10 * mm, Height: 8 * mm, FlangeDiameter: 9 * mm}, w, 100, nil, "round FlangeDiameter"},
		{Round{CoreDiameter: 10, Height: 8 * mm}, w, 100, nil, "write the unit"},
		{Round{CoreDiameter: 10 * mm, Height: 0.05 * mm}, w, 1, nil, "got a wire of 0.07112 mm over the enamel, want at most the height of 0.05 mm"},
		{Racetrack{CoreLength: 5 * mm, CoreWidth: 6 * mm, Height: 8 * mm}, w, 100, nil, "racetrack CoreWidth: too wide"},
		{Racetrack{CoreLength: 50 * mm, CoreWidth: -6 * mm, Height: 8 * mm}, w, 100, nil, "racetrack CoreWidth"},
		{Racetrack{CoreLength: 50 * mm, CoreWidth: 6 * mm, Height: 8 * mm, FlangeWidth: nan}, w, 100, nil, "racetrack FlangeWidth"},
		{Rectangle{CoreLength: 50 * mm, CoreWidth: 6 * mm, CornerRadius: 4 * mm, Height: 8 * mm}, w, 100, nil, "rectangle CornerRadius"},
		{Rectangle{CoreLength: 50 * mm, CoreWidth: 6 * mm, CornerRadius: nan, Height: 8 * mm}, w, 100, nil, "rectangle CornerRadius"},
		{Rectangle{CoreLength: units.Length(math.Inf(1)), CoreWidth: 6 * mm, Height: 8 * mm}, w, 100, nil, "rectangle CoreLength"},
	} {
		_, err := Wind(c.former, c.wire, c.turns, c.style...)
		if err == nil || !strings.Contains(err.Error(), c.want) || !strings.Contains(err.Error(), "got ") {
			t.Errorf("Wind(%v, %v, %d, %v): got %v, want %q", c.former, c.wire, c.turns, c.style, err, c.want)
		}
	}
	if _, err := wound(t, good, w, 100).ResistanceAt(units.Celsius(900)); err == nil {
		t.Error("900 °C was accepted")
	}
}
