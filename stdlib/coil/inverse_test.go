package coil

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"lode/stdlib/wire"
	"lode/units"
)

// Turns one by one, each a circle of its own: the nearest number to a resistance, and the least and most within the wire's
// limits at the usual build.
func TestTurnsAreTheNearest(t *testing.T) {
	w := gauge(t, 24)
	f := Round{CoreDiameter: 20 * mm, Height: 200 * mm} // one layer
	ohm := math.Pi * (0.020 + float64(w.Overall())) / 58e6 / (math.Pi / 4 * sq(float64(w.Bare())))
	for _, turns := range []float64{1, 1.4, 2.45, 2.55, 100.4, 100.6} {
		got := must(TurnsFromResistance(f, w, units.Resistance(turns*ohm), Style{Lay: Layered}))
		if got.Value != int(math.Round(turns)) {
			t.Errorf("%g turns' resistance: %v", turns, got)
		}
		limits := w.BareLimits()
		thin, thick := sq(float64(w.Bare()/limits.Min)), sq(float64(w.Bare()/limits.Max))
		if low := int(math.Ceil(turns / thin / 1.002)); got.Low > max(1, low) || got.High < int(turns/thick) {
			t.Errorf("%g turns' resistance: %v, want %d to %d", turns, got, low, int(turns/thick))
		}
	}
}

// What no number of turns has is refused, with the resistances of one turn and of a million.
func TestResistanceOutOfReach(t *testing.T) {
	f, w := Round{CoreDiameter: 12 * mm, Height: 8 * mm}, gauge(t, 42)
	least := wound(t, f, w, 1).ResistanceRange().Low
	for _, bad := range []units.Resistance{-5, 0, least * 0.99, 1e12, units.Resistance(math.NaN()), units.Resistance(math.Inf(1))} {
		if _, err := TurnsFromResistance(f, w, bad); err == nil || !strings.Contains(err.Error(), "measured resistance: out of range: got ") ||
			!strings.Contains(err.Error(), fmt.Sprintf("want %v, of one turn, to ", least)) {
			t.Errorf("%v: %v", bad, err)
		}
	}
	if got := must(TurnsFromResistance(f, w, least)); got.Value != 1 {
		t.Errorf("%v: %v", least, got)
	}
}

// More turns than the former holds are a result with a warning.
func TestTurnsWithoutRoomAreTold(t *testing.T) {
	f, w := Round{CoreDiameter: 12 * mm, Height: 8 * mm, FlangeDiameter: 24 * mm}, gauge(t, 42)
	told(t, "60 kΩ", turnsFromResistanceLeft(f, w, 60000), "turns found", "that the former holds")
	told(t, "2 kΩ", turnsFromResistanceLeft(f, w, 2000))
	told(t, "no wire", turnsFromResistanceLeft(f, wire.Wire{}, 4000))
}

// Without flanges as many turns fit as hold themselves: the triangle of bonded wire with sides at 60° has the area √3/4 of the
// height squared, the others are rectangles a tenth and a quarter of the height deep.
func TestTurnsThatHoldThemselves(t *testing.T) {
	for _, c := range []struct {
		height units.Length
		gauge  float64
	}{{8 * mm, 36}, {20 * mm, 42}, {12 * mm, 30}} {
		f, w := Round{CoreDiameter: 12 * mm, Height: c.height}, gauge(t, c.gauge)
		one := math.Pi / 4 * sq(float64(w.Overall())) / 0.65
		got, h := must(TurnsThatFit(f, w)), float64(c.height)
		for name, pair := range map[string][2]float64{"loose": {float64(got.Low), h * h / 10}, "taped": {float64(got.Value), h * h / 4}, "bonded": {float64(got.High), h * h * math.Sqrt(3) / 4}} {
			if math.Abs(pair[0]-pair[1]/one) > 1 {
				t.Errorf("%v, %s: %g turns, want %.1f", f, name, pair[0], pair[1]/one)
			}
		}
		if fit := must(Fits(f, w, 10)); fit.TurnsThatFit != got.Value {
			t.Errorf("Fits says %d, want %d", fit.TurnsThatFit, got.Value)
		}
	}
	// one layer always stands
	if got := must(TurnsThatFit(Round{CoreDiameter: 12 * mm, Height: 2 * mm}, gauge(t, 18), Style{Lay: Layered})); got != (TurnsRange{1, 1, 1}) {
		t.Errorf("one thick turn: %v", got)
	}
}

// A heap of bonded wire in grooves has a wire less in each layer: n(n+1)/2 wires over a first layer of n.
func TestHeapOfWires(t *testing.T) {
	w := gauge(t, 36)
	for _, n := range []int{60, 100, 200} {
		f := Round{CoreDiameter: 12 * mm, Height: units.Length(float64(n)+0.5) * w.Overall()}
		got := must(TurnsThatFit(f, w, Style{Lay: Orthocyclic})).High
		close(t, "heap", float64(got), float64(n*(n+1)/2), 0.05)
	}
}

// The limits of resistance are windings of the thickest wire the standard allows, wound dense, and of the thinnest, wound loose.
func TestRangeOfResistance(t *testing.T) {
	w := gauge(t, 42)
	for _, f := range []Former{steel, Round{CoreDiameter: 12 * mm, Height: 8 * mm}} {
		c := wound(t, f, w, 4000)
		with := func(bare units.Length, packing float64) float64 {
			return float64(wound(t, f, must(wire.Measured(bare, w.Overall())), 4000, Style{Packing: packing}).Resistance())
		}
		r := c.ResistanceRange()
		close(t, "low", float64(r.Low), with(w.BareLimits().Max, 0.75), 1e-9)
		close(t, "value", float64(r.Value), with(w.Bare(), 0.65), 1e-9)
		close(t, "high", float64(r.High), with(w.BareLimits().Min, 0.55), 1e-9)
		hot := must(c.ResistanceRangeAt(units.Celsius(75)))
		close(t, "at 75 °C", float64(hot.High/r.High), 1.21615, 1e-9) // IEC 60028
		if sheet := must(c.BuildSheet()); sheet.Resistance() != r {
			t.Errorf("the sheet passes %v, want %v", sheet.Resistance(), r)
		}
	}
	if _, err := wound(t, steel, w, 100).ResistanceRangeAt(units.Celsius(-300)); err == nil || !strings.Contains(err.Error(), "temperature: out of range: got -300 °C") {
		t.Errorf("-300 °C: %v", err)
	}
}

// A winding's own resistance and depth lead back to its turns, whatever its packing; by hand for one of them.
func TestTurnsFromDepth(t *testing.T) {
	w := gauge(t, 42)
	for _, style := range []Style{{}, {Packing: 0.5}, {Packing: 0.85}, {Strands: 3}, {Under: 0.3 * mm}} {
		c := wound(t, steel, w, 2000, style)
		got := must(TurnsFromDepth(steel, w, must(c.ResistanceAt(units.Celsius(31))), units.Celsius(31), c.Build(), style))
		if got.Value != 2000 || got.Low >= 2000 || got.High <= 2000 {
			t.Errorf("%v: %v", style, got)
		}
	}
	// 1111 m of wire (6.21 kΩ over 55.9 Ω for ten metres) on a core 62 by 6 mm, 4 mm deep: a mean turn of 112 + 10π mm
	ten := must(wire.Measurement{Resistance: 55.9, Length: 10, Temperature: units.Celsius(24), Overall: 0.071 * mm}.Wire())
	got := must(TurnsFromDepth(Racetrack{CoreLength: 62 * mm, CoreWidth: 6 * mm, Height: 11 * mm, FlangeWidth: 15 * mm}, ten, 6210, units.Celsius(24), 4*mm))
	if want := int(math.Round(6210 / 5.59 / (0.112 + 0.010*math.Pi))); got != (TurnsRange{want, want, want}) {
		t.Errorf("got %v, want %d", got, want)
	}
	for want, err := range map[string]error{
		"depth: out of range: got 6 mm, want 0.07112 mm, the thickness of the wire, to 5.25 mm": fourth(TurnsFromDepth(steel, w, 5000, units.Celsius(20), 6*mm)),
		"depth: out of range: got undefined m":                                                  fourth(TurnsFromDepth(steel, w, 5000, units.Celsius(20), units.Length(math.NaN()))),
		"measured resistance: out of range":                                                     fourth(TurnsFromDepth(steel, w, -5, units.Celsius(20), 3*mm)),
		"temperature: out of range":                                                             fourth(TurnsFromDepth(steel, w, 5000, units.Celsius(500), 3*mm)),
	} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("got %v, want %q", err, want)
		}
	}
}

func fourth(_ TurnsRange, err error) error { return err }

// Too many turns for the depth are told: 0.0711 mm wire, 5 mm deep and 8 mm high, holds 10 000 turns at most in grooves.
func TestTurnsTooManyForTheDepth(t *testing.T) {
	f, w := Round{CoreDiameter: 12 * mm, Height: 8 * mm, FlangeDiameter: 30 * mm}, gauge(t, 42)
	told(t, "3 kΩ", turnsFromDepthLeft(f, w, 3000, units.Celsius(20), 5*mm), "packing of the turns found", "got 1.02", "0.3 to 0.9")
	told(t, "2 kΩ", turnsFromDepthLeft(f, w, 2000, units.Celsius(20), 5*mm))
	told(t, "0.5 kΩ", turnsFromDepthLeft(f, w, 500, units.Celsius(20), 5*mm), "packing of the turns found", "got 0.1")
	told(t, "no wire", turnsFromDepthLeft(f, wire.Wire{}, 3000, units.Celsius(20), 5*mm))
}
