package coil

import (
	"fmt"
	"math"

	"lode/stdlib/coil/internal/induct"
	"lode/units"
)

// This file chooses how exactly a winding's inductance has to be found: turn by turn where there are few, as
// full layers and a begun one where it is layered, as an even window where it is scattered.

// Inductance returns the inductance at low frequency without iron, magnets or cover near
// the winding. A winding knows it once it was asked for.
//
// Source: Neumann's integral for turns spread evenly over the window, self terms by the geometric mean
// distance (J. C. Maxwell, Treatise, 1873, §691; F. W. Grover, Inductance Calculations, 1946), and what round insulated
// wires have more than that (E. B. Rosa, F. W. Grover, Bull. Bureau of Standards 8, 1912). Few laid turns are summed one
// by one, and up to 150 round a round core by Maxwell's formula for circles; InductanceMethod tells.
//
// Valid: any number of turns. Poles, magnets and plates raise it, often by half or more.
//
// Accuracy: the integral 0.001 % (rarely 0.002 %), the correction for round wire 0.1 % where turns are few; a scatter winding itself about 3 %, from
// its build; a convex core of more than 40 corners is drawn with 40, which adds some 0.01 %.
func (c Winding) Inductance() units.Inductance {
	if c.found == nil {
		return units.Inductance(c.henry())
	}
	c.found.inductance.Do(func() { c.found.henry = c.henry() })
	return units.Inductance(c.found.henry)
}

// InductanceTo returns the inductance with the integral taken to a relative accuracy between 1e-3 and 1e-7. Laid turns
// are summed one by one up to 150. An accuracy that is not reached is an error that says what was.
//
// Source: as Inductance, with more points until the step from one number of points to the next is below the accuracy.
//
// Valid: as Inductance.
//
// Accuracy: as asked, for the integral, in all but a few in a thousand windings, which miss it by two or three times; the step
// is usually ten times the error. What is not known of the places of the turns stays.
//
// Example: c.InductanceTo(1e-6)
func (c Winding) InductanceTo(relative float64) (units.Inductance, error) {
	if !(relative >= 1e-7 && relative <= 1e-3) {
		return 0, refuse("relative accuracy: out of range", relative, "1e-7 to 1e-3", "")
	}
	if c.turns == 0 {
		return 0, refuse("winding: none", c, "a winding made by coil.Wind", "")
	}
	henry, err := c.henryTo(relative)
	if reached := err / henry; reached > relative {
		return 0, refuse("relative accuracy: out of reach for this winding", units.Digits(relative, 2), "at least "+units.Digits(reached, 2), "")
	}
	return units.Inductance(henry), nil
}

func (c Winding) henryTo(relative float64) (henry, err float64) {
	s, turns := c.section(), float64(c.turns)
	switch {
	case c.single() && c.isRound():
		henry = c.circles()
		return henry, 1e-12 * henry
	case c.laid() && c.turns <= mostSingle:
		return induct.DiscreteSelfTo(s, c.places(), c.conductor(), relative)
	case c.laid() && c.layout.layers > 1:
		return c.inBlocksTo(relative)
	case len(c.layout.blocks) > 0:
		return c.sumOfBlocks(relative)
	case len(c.shape.hull) > 0:
		henry, err = induct.SelfOutlineTo(c.freeOutline(), turns, relative)
		if len(c.shape.hull) > mostCorners {
			err += simplifiedOff * henry
		}
	default:
		henry, err = induct.SelfTo(s, turns, relative)
	}
	return henry + c.roundWire(), err
}

// InductanceMethod tells how Inductance takes the turns.
func (c Winding) InductanceMethod() string {
	switch {
	case len(c.layout.blocks) > 0:
		return "full layers and parts of layers, spread evenly, corrected for round wire"
	case c.turns == 0:
		return "none"
	case c.single():
		return "turn by turn, each a round wire"
	case c.laid() && c.layout.layers > 1:
		return "full layers and the begun one, spread evenly, corrected for round wire"
	case len(c.shape.hull) > mostCorners:
		return fmt.Sprintf("core drawn with %d corners, spread evenly over the window, corrected for round wire", mostCorners)
	}
	return "spread evenly over the window, corrected for round wire"
}

func (c Winding) henry() float64 {
	switch {
	case c.turns == 0:
		return 0
	case c.single() && c.isRound():
		return c.circles()
	case c.single():
		return induct.DiscreteValue(c.section(), c.places(), c.conductor())
	case c.laid() && c.layout.layers > 1:
		return c.inBlocks()
	case len(c.layout.blocks) > 0:
		henry, _ := c.sumOfBlocks(1e-4)
		return henry
	}
	return c.smeared() + c.roundWire()
}

// laid reports whether the place of every turn is known.
func (c Winding) laid() bool {
	return c.style.Lay != Scatter && c.style.strands() == 1 && !c.layout.cut && len(c.shape.hull) == 0
}

// single reports whether few laid turns are summed one by one: pairs of circles are quick, others that differ take some
// three microseconds each.
func (c Winding) single() bool {
	layers := min(c.layout.layers, c.turns)
	return c.laid() && (c.isRound() && (c.turns <= mostSingle || c.cornersCount()) || layers*(layers+1)/2*min(c.turns, c.layout.perLayer) <= fewPairs)
}

// fewPairs is the number of different pairs of turns up to which they are summed.
const fewPairs = 60

// roundWire is what round insulated wires have more than an even filling.
func (c Winding) roundWire() float64 {
	return induct.RoundWire(c.section(), c.rows(), max(1, c.turns/c.rows()), c.conductor())
}

// mostSingle is the number of laid turns up to which they may be summed one by one.
const mostSingle = 150

func (c Winding) conductor() induct.Wire {
	return induct.Wire{Radius: float64(c.wire.Bare()) / 2, InGrooves: c.style.Lay == Orthocyclic}
}

// rows returns how many rows of turns the build holds, for the share of the round wires themselves.
func (c Winding) rows() int {
	return min(c.turns, max(1, int(math.Round(c.layout.build/c.layout.rise))))
}

// smeared takes the window as filled with turns evenly.
func (c Winding) smeared() float64 {
	if len(c.shape.hull) > 0 {
		return induct.SelfOutlineValue(c.freeOutline(), float64(c.turns))
	}
	return induct.SelfValue(c.section(), float64(c.turns))
}

// isRound reports whether every turn is a circle.
func (c Winding) isRound() bool {
	return len(c.shape.hull) == 0 && c.shape.Length == c.shape.Width && 2*c.shape.CornerRadius >= c.shape.Length*(1-1e-12)
}

// circles sums circular turns by Maxwell's formula.
func (c Winding) circles() float64 {
	return induct.CircularRows(float64(c.shape.CornerRadius), c.turnRows(), c.layout.pitch, c.conductor())
}

// turnRows lists the layers of laid wires, to and fro from the lower flange on, orthocyclic ones shifted by half a pitch
// to and fro.
func (c Winding) turnRows() []induct.Row {
	o, rows := c.layout, []induct.Row{}
	lowest := -(float64(o.perLayer-1)*o.pitch + c.style.shift(o.pitch)) / 2
	if o.layers == 1 {
		lowest = -float64(c.turns-1) / 2 * o.pitch
	}
	for layer, left := 0, c.turns; left > 0; layer, left = layer+1, left-o.perLayer {
		row := induct.Row{Depth: float64(c.wire.Overall())/2 + c.style.depth(layer, o.rise), Lowest: lowest + float64(layer%2)*c.style.shift(o.pitch), Turns: min(left, o.perLayer)}
		if layer%2 == 1 { // from the upper end
			row.Lowest += float64(o.perLayer-row.Turns) * o.pitch
		}
		rows = append(rows, row)
	}
	return rows
}

// places lists the middles of laid wires.
func (c Winding) places() []induct.Turn {
	list := make([]induct.Turn, 0, c.turns)
	for _, row := range c.turnRows() {
		for i := range row.Turns {
			list = append(list, induct.Turn{Depth: row.Depth, Z: row.Lowest + float64(i)*c.layout.pitch})
		}
	}
	return list
}

// section is the window that the turns fill, as the integrals take it.
func (c Winding) section() induct.Section {
	s := c.shape.section(c.layout.build)
	s.Height = c.height()
	return s
}

// height is that of the bobbin, or of a single layer of laid turns that does not fill it.
func (c Winding) height() float64 {
	if c.style.Lay != Scatter && c.layout.layers == 1 {
		return min(float64(c.shape.Height), float64(c.layout.wires)*c.layout.pitch)
	}
	return float64(c.shape.Height)
}
