package coil

import (
	"fmt"
	"math"
	"strings"

	"lode/units"
	"lode/units/frame"
)

// Sheet is the page for the bench: what to wind, how, and what to measure afterwards.
type Sheet struct {
	winding Winding
	order   Order
	limits  ResistanceRange
}

// BuildSheet returns the page for the bench. Without an order it is for a clockwise winding, north to the
// strings, start to ground, at 20 °C.
//
// Source: IEC 60028 (1925) and the limits of the wire's own standard for the resistance to pass; common practice,
// no source, for traverse, waste and the packing of scatter windings.
//
// Accuracy: a winding outside the limits of resistance has another number of turns, another wire, stretched wire, or
// shorted turns.
//
// Caution: fine wire cuts; winders pull in hair, sleeves and gloves; solder burns and its fumes harm: wear eye
// protection, draw off the fumes, wash hands after handling lead solder.
//
// Example: c.BuildSheet(coil.Order{Direction: coil.Counterclockwise, Polarity: coil.South, Temperature: units.Celsius(23)})
func (c Winding) BuildSheet(order ...Order) (Sheet, error) {
	if c.turns == 0 {
		return Sheet{}, refuse("winding: none", c, "a winding made by coil.Wind", "")
	}
	if len(order) > 1 {
		return Sheet{}, refuse("order: more than one", len(order), "one order at most", "")
	}
	var o Order
	if len(order) == 1 {
		o = order[0]
	}
	o, err := o.filled(c)
	if err != nil {
		return Sheet{}, err
	}
	perLength, err := c.wire.ResistanceLimitsAt(o.Temperature)
	if err != nil {
		return Sheet{}, err
	}
	return Sheet{winding: c, order: o, limits: ResistanceRange{
		Low:   c.resisting(perLength.Min) * c.shorter(c.layout.low),
		Value: c.resisting(perLength.Nominal),
		High:  c.resisting(perLength.Max) * c.shorter(c.layout.high),
	}}, nil
}

// Resistance returns the resistance to expect at the shop's temperature, with the limits to pass.
func (s Sheet) Resistance() ResistanceRange { return s.limits }

// Pass reports whether a resistance measured at the shop's temperature is within the limits.
//
// Example: sheet.Pass(5.31*kΩ)
func (s Sheet) Pass(measured units.Resistance) bool {
	return measured >= s.limits.Low && measured <= s.limits.High
}

// WireToBuy returns the length of wire with the allowance for leads and broken starts.
func (s Sheet) WireToBuy() units.Length {
	return s.winding.WireLength() * units.Length(1+s.order.Waste)
}

// TurnsPerPass returns how many turns one way of the traverse lays.
func (s Sheet) TurnsPerPass() int {
	return max(1, int(math.Round(float64(s.winding.shape.Height/s.order.Traverse))))
}

// Passes returns how many ways of the traverse there are.
func (s Sheet) Passes() int {
	return (s.winding.turns + s.TurnsPerPass() - 1) / s.TurnsPerPass()
}

// Cautions lists what to mind on the bench.
func (s Sheet) Cautions() []string {
	list := []string{
		"Wear eye protection: fine wire whips when it breaks. Keep hair, sleeves and gloves away from the winder.",
		"Solder burns and its fumes harm: draw them off, and wash hands after lead solder.",
		"Strip enamel only with ventilation.",
	}
	if s.winding.potted.Name != "" {
		list = append(list, "Hot wax and resin: water bath and no open flame for wax, gloves and ventilation for resin.")
	}
	switch fit := s.winding.Fit(); {
	case fit.Room < fit.Build.High:
		list = append(list, "The fit is tight: watch the build from half the turns on.")
	case math.IsInf(float64(fit.Room), 1):
		list = append(list, "No flanges: hold the sides of the winding with tape or formers.")
	}
	return list
}

// Frame lays the sheet out as a table.
func (s Sheet) Frame() frame.Frame {
	c, o := s.winding, s.order
	return list("Build sheet: "+c.former.String(),
		"Wire", c.wire.Name(), "Strands", c.style.strands(), "Turns", c.turns, "Lay", c.style.Lay,
		"Direction, seen from the strings", o.Direction, "Pole to the strings", o.Polarity,
		"Start to", o.Start, "Finish to", o.Finish, "Finish, as a string comes nearer", o.phase(),
		"Traverse per turn", o.Traverse, "Turns per pass", s.TurnsPerPass(), "Passes", s.Passes(),
		"Turns per layer", c.TurnsPerLayer(), "Layers", c.Layers(), "Expected build", c.BuildRange(), "Room", open(c.shape.Room),
		"Tension", c.wire.WindingTension(),
		fmt.Sprintf("Resistance at %v", o.Temperature), s.limits.Value, "Pass from", s.limits.Low, "Pass to", s.limits.High,
		"Wire length", c.WireLength(), "Wire to buy", s.WireToBuy(), "Mass of wire to buy", c.Mass()*units.Mass(1+o.Waste),
		"Potting", potting(c.potted.Name), "Cautions", strings.Join(s.Cautions(), " "))
}

func potting(name string) string {
	if name == "" {
		return "none"
	}
	return name
}

// String sums the sheet up in one line.
func (s Sheet) String() string {
	return fmt.Sprintf("%d turns of %s, %v, pole %v, pass at %v to %v at %v", s.winding.turns, s.winding.wire.Name(),
		s.order.Direction, s.order.Polarity, s.limits.Low, s.limits.High, s.order.Temperature)
}
