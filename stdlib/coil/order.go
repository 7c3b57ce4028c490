package coil

import (
	"fmt"

	"lode/units"
)

// Direction is the way the wire runs from the start lead on, seen from the side of the strings.
type Direction int

// The directions of winding.
const (
	Clockwise Direction = iota
	Counterclockwise
)

// String names the direction.
func (d Direction) String() string {
	if d == Counterclockwise {
		return "counterclockwise"
	}
	return "clockwise"
}

// Polarity is the magnetic pole that faces the strings.
type Polarity int

// The polarities.
const (
	North Polarity = iota
	South
)

// String names the pole.
func (p Polarity) String() string {
	if p == South {
		return "south"
	}
	return "north"
}

// Order is what the bench has to know beside the winding. Its zero value is a clockwise winding
// with north to the strings and the start at ground, measured at 20 °C.
type Order struct {
	Name        string            // of the coil, for the head of the sheet; empty: none
	Direction   Direction         // seen from the strings, from the start on
	Polarity    Polarity          // pole that faces the strings
	Start       string            // where the start lead goes; empty: ground
	Finish      string            // where the finish lead goes; empty: output
	Temperature units.Temperature // of the shop, for copper -60 to 250 °C; zero: 20 °C
	Traverse    units.Length      // advance per turn of a scatter winding, up to the height; zero: three times the pitch
	Waste       float64           // share of wire bought on top for leads and broken starts, up to 1; zero: 0.05
	Taps        []int             // turns at which a lead is brought out, rising, below those of the winding; none: no taps
}

// usualTraverse is the advance per turn of a scatter winding in pitches of its wires, and
// usualWaste the wire on top: common practice, no source.
const usualTraverse, usualWaste = 3, 0.05

// filled returns the order with its zero values said, or what is wrong with it.
func (o Order) filled(c Winding) (Order, error) {
	if o.Direction != Clockwise && o.Direction != Counterclockwise {
		return o, refuse("order Direction: unknown", int(o.Direction), "coil.Clockwise or coil.Counterclockwise", "")
	}
	if o.Polarity != North && o.Polarity != South {
		return o, refuse("order Polarity: unknown", int(o.Polarity), "coil.North or coil.South", "")
	}
	o = o.withLeads()
	if o.Temperature == 0 {
		o.Temperature = units.Celsius(20)
	}
	if !(o.Waste == 0 || o.Waste > 0 && o.Waste <= 1) {
		return o, refuse("order Waste: out of range", o.Waste, "0 to 1, the share of wire on top", "")
	}
	if o.Waste == 0 {
		o.Waste = usualWaste
	}
	last := 0
	for _, tap := range o.Taps {
		if tap <= last || tap >= c.turns {
			return o, refuse("order Taps: out of range", tap, fmt.Sprintf("rising numbers of turns from 1 to %d", c.turns-1), "")
		}
		last = tap
	}
	return o.withTraverse(c)
}

// withLeads says where the leads go.
func (o Order) withLeads() Order {
	if o.Start == "" {
		o.Start = "ground"
	}
	if o.Finish == "" {
		o.Finish = "output"
	}
	return o
}

// withTraverse says the advance per turn, which turns that are laid side by side leave no choice of.
func (o Order) withTraverse(c Winding) (Order, error) {
	if c.style.Lay != Scatter {
		if o.Traverse != 0 {
			return o, refuse("order Traverse: turns are laid side by side", o.Traverse, "0", "the Pitch of coil.Style is from wire to wire")
		}
		o.Traverse = units.Length(c.style.strands()) * c.Pitch()
		return o, nil
	}
	if o.Traverse == 0 {
		o.Traverse = min(usualTraverse*units.Length(c.style.strands())*c.Pitch(), c.shape.Height)
	}
	if !(o.Traverse > 0 && o.Traverse <= c.shape.Height) {
		return o, refuse("order Traverse: out of range", o.Traverse, fmt.Sprintf("more than 0 and at most the height of %v", c.shape.Height), "")
	}
	return o, nil
}

// phase says which way the output swings. With the flux Φ upwards through the coil, a clockwise
// winding's finish is at +N·dΦ/dt against its start (Faraday's law), and steel that comes
// nearer strengthens the flux of the pole that faces it.
func (o Order) phase() string {
	if (o.Direction == Clockwise) == (o.Polarity == North) {
		return "positive"
	}
	return "negative"
}
