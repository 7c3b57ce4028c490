package coil

import (
	"math"
	"strings"
	"testing"

	"lode/stdlib/coil/internal/kernel"
	"lode/units"
)

// Witnesses of windings that are turned in plan: a core whose sides are exchanged, the whole bench turned about z, reciprocity.

func TestTurnedByRightAngle(t *testing.T) {
	w := gauge(t, 38)
	core := Rectangle{CoreLength: 30 * mm, CoreWidth: 8 * mm, CornerRadius: 2 * mm, Height: 6 * mm}
	exchanged := Rectangle{CoreLength: 8 * mm, CoreWidth: 30 * mm, CornerRadius: 2 * mm, Height: 6 * mm}
	a, b, swapped := wound(t, core, w, 800), wound(t, core, w, 600), wound(t, exchanged, w, 600)
	for _, p := range []Placed{{X: 2 * mm, Y: -3 * mm, Z: 9 * mm}, {X: 45 * mm}, {X: 40 * mm, Z: 5 * mm}} {
		turned, plain := p, p
		turned.Winding, turned.Turn, plain.Winding = b, 90*units.Degree, swapped
		close(t, "mutual", mutual(Placed{Winding: a}, turned), mutual(Placed{Winding: a}, plain), 1e-6)
		field := must(MainsWire{Current: 1, Distance: 0.3, Bearing: 20 * units.Degree}.Field())
		close(t, "hum", turned.linked(field), plain.linked(field), 1e-9)
	}
}

// turnAll turns a winding with its place about z.
func turnAll(p Placed, angle units.Angle) Placed {
	at := turnedLeft(p.position(), float64(angle))
	p.X, p.Y, p.Turn = units.Length(at[0]), units.Length(at[1]), p.Turn+angle
	return p
}

func TestTurnedTogether(t *testing.T) {
	w := gauge(t, 38)
	a := Placed{Winding: wound(t, Racetrack{CoreLength: 30 * mm, CoreWidth: 8 * mm, Height: 6 * mm}, w, 800), Tilt: 20 * units.Degree, Turn: 10 * units.Degree}
	b := Placed{Winding: wound(t, Rectangle{CoreLength: 20 * mm, CoreWidth: 12 * mm, Height: 5 * mm}, w, 500), X: 8 * mm, Y: 30 * mm, Z: 4 * mm, Tilt: -50 * units.Degree, Turn: 70 * units.Degree}
	as := mutual(a, b)
	close(t, "turned together", mutual(turnAll(a, 0.7), turnAll(b, 0.7)), as, 1e-9)
	close(t, "the other way", mutual(b, a), as, 1e-4)
	v := kernel.Vector{0.1, -0.2, 0.3}
	back := b.turned(b.turned(v, 1), -1).Plus(-1, v)
	if back.Dot(back) > 1e-30 {
		t.Errorf("there and back: off by %v", back)
	}
}

func TestTurnedWindingsOverlap(t *testing.T) {
	c := wound(t, Rectangle{CoreLength: 30 * mm, CoreWidth: 8 * mm, Height: 6 * mm}, gauge(t, 38), 800)
	frame := wound(t, Rectangle{CoreLength: 60 * mm, CoreWidth: 60 * mm, Height: 6 * mm}, gauge(t, 38), 50)
	for _, p := range []struct {
		Placed
		overlaps bool
	}{
		{Placed{Winding: c, Y: 15 * mm, Turn: 90 * units.Degree}, true}, {Placed{Winding: c, Y: 25 * mm, Turn: 90 * units.Degree}, false},
		{Placed{Winding: c, Z: 8 * mm, Turn: 30 * units.Degree}, false}, {Placed{Winding: c, Z: 5 * mm, Turn: 30 * units.Degree}, true},
		{Placed{Winding: c, Z: 8 * mm, Tilt: 30 * units.Degree}, true}, {Placed{Winding: c, Z: 14 * mm, Tilt: 30 * units.Degree}, false},
		{Placed{Winding: frame, Turn: 20 * units.Degree}, false}, {Placed{Winding: c, Turn: 360 * units.Degree}, true},
	} {
		_, err := InSeries(Placed{Winding: c}, p.Placed)
		if got := err != nil && strings.Contains(err.Error(), "overlap"); got != p.overlaps {
			t.Errorf("Y %v, Z %v, Tilt %v, Turn %v: overlap %v, %v", p.Y, p.Z, p.Tilt, p.Turn, got, err)
		}
	}
	if _, err := InSeries(Placed{Winding: c}, Placed{Winding: c, Turn: units.Angle(math.NaN())}); err == nil {
		t.Error("no angle: no error")
	}
}
