package coil

import (
	"fmt"
	"slices"

	"lode/units"
)

// Sheets are the pages for the bench of windings in series.
type Sheets struct {
	sheets []Sheet
	order  Order
}

// BuildSheet returns the page for the bench of all windings of the chain, side by side. They are all wound in the direction
// of the order, and those that are Reversed are turned round by their leads, so that the page says which lead goes to
// which. Start and Finish of the order are the ends of the chain.
//
// Source: as Winding.BuildSheet.
//
// Valid: windings on bobbins of their own or in sections of one. The parts of a tapped winding and strands in series are one
// winding, with Taps in its own order.
//
// Accuracy: as Winding.BuildSheet.
//
// Caution: fine wire cuts; winders pull in hair, sleeves and gloves; solder burns and its fumes harm: wear eye
// protection, draw off the fumes, wash hands after handling lead solder.
//
// Example: pair.BuildSheet(coil.Order{Temperature: 17*degC})
func (c Chain) BuildSheet(order ...Order) (Sheets, error) {
	if len(c.coils) == 0 {
		return Sheets{}, refuse("chain: no windings", c, "windings joined by coil.InSeries, Stacked or InSections", "")
	}
	if len(order) > 1 {
		return Sheets{}, refuse("order: more than one", len(order), "one order at most", "")
	}
	o := Order{}
	if len(order) == 1 {
		o = order[0]
	}
	if len(o.Taps) > 0 {
		return Sheets{}, refuse("order Taps: not for windings in series", len(o.Taps), "none", "BuildSheet of one winding takes taps")
	}
	o = o.withLeads()
	all := Sheets{}
	for i, p := range c.coils {
		if p.Winding.layout.cut {
			return Sheets{}, refuse("chain: parts of one winding", c, "windings of their own", "BuildSheet of the winding itself takes strands, and Taps in its order")
		}
		mine := o
		mine.Start, mine.Finish = c.leads(i, o)
		sheet, err := p.Winding.BuildSheet(mine)
		if err != nil {
			return Sheets{}, fmt.Errorf("winding %d of the chain: %w", i+1, err)
		}
		all.sheets = append(all.sheets, sheet)
	}
	all.order = all.sheets[0].order
	return all, nil
}

// leads says where start and finish of a winding go.
func (c Chain) leads(i int, o Order) (start, finish string) {
	in, out := o.Start, o.Finish
	if i > 0 {
		in = c.coils[i-1].end(Finish) + fmt.Sprintf(" of winding %d", i)
	}
	if i < len(c.coils)-1 {
		out = c.coils[i+1].end(Start) + fmt.Sprintf(" of winding %d", i+2)
	}
	if c.coils[i].Reversed {
		return out, in
	}
	return in, out
}

// end names the lead at which the chain goes into a winding, for Start, or comes out of it.
func (p Placed) end(way Lead) string {
	if p.Reversed {
		way = map[Lead]Lead{Start: Finish, Finish: Start}[way]
	}
	return way.String()
}

// Sheet returns the page of one of the windings, counted from 1.
//
// Example: pair.BuildSheet().Sheet(2)
func (s Sheets) Sheet(number int) (Sheet, error) {
	if number < 1 || number > len(s.sheets) {
		return Sheet{}, refuse("winding number: out of range", number, fmt.Sprintf("1 to %d", len(s.sheets)), "")
	}
	return s.sheets[number-1], nil
}

// Resistance returns the resistance of all windings to expect at the shop's temperature, with the limits to pass.
func (s Sheets) Resistance() ResistanceRange {
	var sum ResistanceRange
	for _, sheet := range s.sheets {
		sum = sum.plus(sheet.limits)
	}
	return sum
}

// Pass reports whether a resistance of the whole chain, measured at the shop's temperature, is within the limits.
//
// Example: pair.BuildSheet().Pass(10.6*kΩ)
func (s Sheets) Pass(measured units.Resistance) bool {
	return s.Resistance().holds(measured)
}

// WireToBuy returns the length of wire for all windings, with the allowance for leads and broken starts.
func (s Sheets) WireToBuy() units.Length {
	sum := units.Length(0)
	for _, sheet := range s.sheets {
		sum += sheet.WireToBuy()
	}
	return sum
}

// Cautions lists what to mind on the bench, for all windings.
func (s Sheets) Cautions() []string {
	var list []string
	for _, sheet := range s.sheets {
		for _, caution := range sheet.Cautions() {
			if !slices.Contains(list, caution) {
				list = append(list, caution)
			}
		}
	}
	return list
}

// String sums the sheets up in one line.
func (s Sheets) String() string {
	r := s.Resistance()
	return fmt.Sprintf("%d windings in series, pass at %v to %v at %v", len(s.sheets), r.Low, r.High, s.order.Temperature)
}
