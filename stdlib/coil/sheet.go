package coil

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"lode/stdlib/wire"
	"lode/units"
	"lode/units/frame"
)

// Sheet is the page for the bench: what to wind, how, and what to measure afterwards.
type Sheet struct {
	winding Winding
	order   Order
	limits  ResistanceRange
	taps    []ResistanceRange // from the start to each tap
}

// BuildSheet returns the page for the bench. Without an order it is for a clockwise winding, north to the
// strings, start to ground, at 20 °C.
//
// Source: IEC 60028 (1925) and the limits of the wire's own standard for the resistance to pass; common practice,
// no source, for traverse, waste and the packing of scatter windings.
//
// Valid: temperatures of the wire's metal, for copper -60 to 250 °C; one order at most.
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
	limits, err := c.ResistanceRangeAt(o.Temperature)
	if err != nil {
		return Sheet{}, err
	}
	sheet := Sheet{winding: c, order: o, limits: limits}
	for _, turns := range o.Taps {
		tap, err := c.upTo(turns).ResistanceRangeAt(o.Temperature)
		if err != nil {
			return Sheet{}, err
		}
		sheet.taps = append(sheet.taps, tap)
	}
	return sheet, nil
}

// upTo is the winding as it is after its first turns.
func (c Winding) upTo(turns int) Winding {
	c.turns, c.layout, c.found = turns, c.style.lay(c.shape, float64(c.wire.Overall()), turns), &found{}
	return c
}

// Resistance returns the resistance to expect at the shop's temperature, with the limits to pass.
func (s Sheet) Resistance() ResistanceRange { return s.limits }

// Pass reports whether a resistance measured at the shop's temperature is within the limits.
//
// Example: sheet.Pass(5.31*kΩ)
func (s Sheet) Pass(measured units.Resistance) bool {
	return s.limits.holds(measured)
}

// WireToBuy returns the length of wire to order, with the allowance for leads and broken starts.
//
// Source: as Winding.WireLength; the allowance of 5 % unless the order says another is common practice, no source.
//
// Accuracy: straight sides that bulge add up to 2 %.
func (s Sheet) WireToBuy() units.Length {
	return s.winding.WireLength() * units.Length(1+s.order.Waste)
}

// TurnsPerPass returns how many turns one way of the traverse lays, a layer where turns are laid side by side.
func (s Sheet) TurnsPerPass() int {
	if s.winding.style.Lay != Scatter {
		return s.winding.TurnsPerLayer()
	}
	return max(1, int(math.Round(float64(s.winding.shape.Height/s.order.Traverse))))
}

// Passes returns how many ways of the traverse there are.
func (s Sheet) Passes() int {
	if s.winding.style.Lay != Scatter {
		return s.winding.Layers()
	}
	return (s.winding.turns + s.TurnsPerPass() - 1) / s.TurnsPerPass()
}

// Cautions lists what to mind on the bench.
func (s Sheet) Cautions() []string {
	list := []string{
		"Wear eye protection: fine wire whips when it breaks. Keep hair, sleeves and gloves away from the winder.",
		"Solder burns and its fumes harm: draw them off, and wash hands after lead solder.",
		"Strip enamel only with ventilation.",
	}
	if n := s.winding.potted.Name; n != "" && n != "air" {
		list = append(list, "Hot wax and resin: water bath and no open flame for wax, gloves and ventilation for resin.")
	}
	if d := s.winding.wire.BareLimits(); d.Min == d.Max {
		list = append(list, "The limits take the wire's diameter as measured: 1 % on it is 2 % on the resistance.")
	}
	switch fit := s.winding.Fit(); {
	case fit.Room < fit.Build.High:
		list = append(list, "The fit is tight: watch the build from half the turns on.")
	case math.IsInf(float64(fit.Room), 1):
		_, stands, _ := strings.Cut(fit.Verdict(), "no flange: ")
		list = append(list, "Without flanges it "+stands+".")
	}
	return list
}

// Frame lays the sheet out as a table.
func (s Sheet) Frame() frame.Frame {
	var pairs []any
	for _, l := range append(s.lines(), line{"Cautions", strings.Join(s.Cautions(), " ")}) {
		pairs = append(pairs, l.name, l.value)
	}
	return list(s.order.head()+": "+s.winding.former.String(), pairs...)
}

// head is what stands over a sheet.
func (o Order) head() string {
	if o.Name == "" {
		return "Build sheet"
	}
	return "Build sheet, " + o.Name
}

// line is a name on the sheet and what stands beside it.
type line struct {
	name  string
	value any
}

// lines are those of the sheet in the order of the work; what there is nothing of has none.
func (s Sheet) lines() []line {
	return slices.Concat(s.wireLines(), s.leadLines(), s.layLines(), s.meterLines(), s.orderLines())
}

func (s Sheet) wireLines() []line {
	c := s.winding
	lines := []line{{"Wire", c.wire.Name()}, {"Wire, bare and over the enamel", fmt.Sprintf("%v, %v", c.wire.Bare(), c.wire.Overall())}}
	if n := c.style.strands(); n > 1 {
		lines = append(lines, line{"Strands, side by side", n})
	}
	return append(lines, line{"Turns", c.turns}, line{"Lay", c.style.Lay})
}

func (s Sheet) leadLines() []line {
	o := s.order
	lines := []line{{"Direction, seen from the strings", o.Direction}, {"Pole to the strings", o.Polarity}, {"Start to", o.Start}}
	for i, turns := range o.Taps {
		lines = append(lines, line{fmt.Sprintf("Tap %d", i+1), fmt.Sprintf("at %d turns, %v from the start", turns, s.taps[i])})
	}
	return append(lines, line{"Finish to", o.Finish}, line{"Finish, as a string comes nearer", o.phase()})
}

func (s Sheet) layLines() []line {
	c := s.winding
	var lines []line
	if c.style.Under > 0 {
		lines = append(lines, line{"Insulation on the core", c.style.Under})
	}
	lines = append(lines, line{"Traverse per turn", s.order.Traverse}, line{"Turns per pass", s.TurnsPerPass()}, line{"Passes", s.Passes()},
		line{"Turns per layer", c.TurnsPerLayer()}, line{"Layers", c.Layers()})
	if c.style.Tape > 0 {
		lines = append(lines, line{"Tape between layers", c.style.taping()})
	}
	lines = append(lines, line{"Expected build", c.BuildRange()}, line{"Room", open(c.shape.Room)})
	if c.style.Over > 0 {
		lines = append(lines, line{"Wrap over the wire", c.style.Over})
	}
	return append(lines, line{"Tension", tension(c.wire)})
}

// tension is that to wind with, or that nothing is known of it.
func tension(w wire.Wire) any {
	if w.Metal().WindingStress > 0 {
		return w.WindingTension()
	}
	return "not known of " + w.Metal().Name
}

// taping words the tape between layers.
func (s Style) taping() string {
	if s.TapeEvery > 1 {
		return fmt.Sprintf("%v, after every %d layers", s.Tape, s.TapeEvery)
	}
	return fmt.Sprintf("%v, after every layer", s.Tape)
}

func (s Sheet) meterLines() []line {
	return []line{{fmt.Sprintf("Resistance at %v", s.order.Temperature), s.limits.Value}, {"Pass from", s.limits.Low}, {"Pass to", s.limits.High}}
}

func (s Sheet) orderLines() []line {
	c := s.winding
	return []line{{"Wire length", c.WireLength()}, {"Wire to buy", s.WireToBuy()}, {"Mass of wire to buy", s.massToBuy()}, {"Potting", potting(c.potted.Name)}}
}

func (s Sheet) massToBuy() units.Mass { return s.winding.Mass() * units.Mass(1+s.order.Waste) }

func potting(name string) string {
	if name == "" || name == "air" {
		return "none"
	}
	return name
}

// String sums the sheet up in one line.
func (s Sheet) String() string {
	return fmt.Sprintf("%d turns of %s, %v, pole %v, pass at %v to %v at %v", s.winding.turns, s.winding.wire.Name(),
		s.order.Direction, s.order.Polarity, s.limits.Low, s.limits.High, s.order.Temperature)
}
