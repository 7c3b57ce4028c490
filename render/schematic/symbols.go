package schematic

import "lode/units/ladder"

// This file holds the symbols of parts with two ends, after IEC 60617.

// half is half the length of a symbol with its leads, thick half its widest.
const (
	half  = 24
	thick = 9
)

// turtle places the points of a symbol: along its wire from its middle, and to the side.
type turtle struct {
	pen  *pen
	x, y float64
	down bool
}

func (t turtle) at(along, side float64) (float64, float64) {
	if t.down {
		return t.x + side, t.y + along
	}
	return t.x + along, t.y - side
}

// polygon draws straight lines through pairs of along and side.
func (t turtle) polygon(pairs ...float64) {
	for i := 0; i+1 < len(pairs); i += 2 {
		verb := "L"
		if i == 0 {
			verb = "M"
		}
		x, y := t.at(pairs[i], pairs[i+1])
		path(&t.pen.lines, verb, x, y)
	}
}

// lead draws the wires from the ends of the symbol to its body.
func (t turtle) lead(reach float64) {
	for _, sign := range [...]float64{-1, 1} {
		x1, y1 := t.at(sign*half, 0)
		x2, y2 := t.at(sign*reach, 0)
		t.pen.wire(x1, y1, x2, y2)
	}
}

func (t turtle) body(reach, side float64) {
	if t.down {
		t.pen.body(t.x-side, t.y-reach, t.x+side, t.y+reach)
		return
	}
	t.pen.body(t.x-reach, t.y-side, t.x+reach, t.y+side)
}

func (t turtle) circle(radius float64) {
	path(&t.pen.lines, "M", t.x-radius, t.y, "a", radius, radius, " 0 1 0 ", 2*radius, " 0a", radius, radius, " 0 1 0 ", -2*radius, " 0z")
}

// draw draws one part with its middle at x, y.
func (t turtle) draw(s ladder.Symbol) {
	switch s {
	case ladder.Capacitor:
		t.plates()
	case ladder.Inductor:
		t.bows()
	case ladder.VoltageSource, ladder.CurrentSource:
		t.source(s)
	case ladder.Closed, ladder.Open:
		t.contact(s == ladder.Open)
	default:
		t.box(s == ladder.Variable)
	}
}

// box is a resistor or another impedance; an arrow across it says that it can be changed.
func (t turtle) box(variable bool) {
	t.lead(15)
	t.body(15, 5.5)
	t.polygon(-15, -5.5, 15, -5.5, 15, 5.5, -15, 5.5, -15, -5.5)
	if variable {
		t.polygon(12, -thick, -12, thick)
		t.tip(-12, thick, 0.8, -0.6)
	}
}

// tip is the head of an arrow that points against the direction given.
func (t turtle) tip(along, side, dx, dy float64) {
	for i, turn := range [...]float64{0.35, -0.35} {
		x, y := t.at(along+7*(dx-turn*dy), side+7*(dy+turn*dx))
		if i == 0 {
			x0, y0 := t.at(along, side)
			path(&t.pen.areas, "M", x0, y0)
		}
		path(&t.pen.areas, "L", x, y)
	}
	path(&t.pen.areas, "z")
}

func (t turtle) plates() {
	t.lead(2.5)
	t.body(2.5, thick)
	t.polygon(-2.5, -thick, -2.5, thick)
	t.polygon(2.5, -thick, 2.5, thick)
}

// bows are the half circles of a winding, to the side of positive numbers.
func (t turtle) bows() {
	t.lead(16)
	t.body(16, 5)
	x, y := t.at(-16, 0)
	path(&t.pen.lines, "M", x, y)
	for i := range 4 {
		x, y = t.at(-8+8*float64(i), 0)
		path(&t.pen.lines, "A4 4 0 0 1 ", x, y)
	}
}

// source is a circle, with the wire going through for a voltage and a bar across for a current.
func (t turtle) source(s ladder.Symbol) {
	t.lead(thick)
	t.body(thick, thick)
	t.circle(thick)
	if s == ladder.VoltageSource {
		t.polygon(-thick, 0, thick, 0)
		return
	}
	t.polygon(0, -thick, 0, thick)
}

// contact is a switch with its two contacts.
func (t turtle) contact(open bool) {
	const ring = 2.2
	t.lead(11 + ring)
	t.body(11+ring, thick)
	for _, along := range [...]float64{-11, 11} {
		x, y := t.at(along, 0)
		turtle{pen: t.pen, x: x, y: y}.circle(ring)
	}
	if open {
		t.polygon(9, 1, -9, thick)
		return
	}
	t.polygon(11, ring, -11, ring)
}
