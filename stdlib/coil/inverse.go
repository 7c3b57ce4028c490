package coil

import (
	"fmt"
	"math"

	"lode/stdlib/coil/internal/kernel"
	"lode/stdlib/wire"
	"lode/units"
)

// This file goes from measurements and bobbins back to turns.

// TurnsThatFit returns how many turns a former holds, over the packing that a winding may come
// out with. Without flanges it is how many hold themselves: by friction alone, with a wrap of tape every few layers, and
// bonded as they are wound, with sides that slope.
//
// Source: as Wind, and as Fit.HoldsItself without flanges.
//
// Valid: as Wind; none is a result where the wire is thicker than the room.
//
// Accuracy: 15 % for scatter windings, which the range says; without flanges a guess.
//
// Example: coil.TurnsThatFit(coil.Round{CoreDiameter: 12*mm, Height: 8*mm, FlangeDiameter: 24*mm}, wire.AWG(43))
func TurnsThatFit(former Former, w wire.Wire, style ...Style) (TurnsRange, error) {
	c, err := wind(former, w, 1, style)
	if err != nil {
		return TurnsRange{}, err
	}
	n := c.layout.fit
	if n == 0 {
		return TurnsRange{}, nil
	}
	if math.IsInf(float64(c.shape.Room), 1) {
		return c.standing(), nil
	}
	full, err := wind(former, w, n, style)
	o := full.layout
	return TurnsRange{int(float64(n) * o.build / o.high), n, min(mostTurns, int(float64(n)*o.build/o.low))}, err
}

// standing is how many turns hold themselves without flanges. Sides that slope to the full depth enclose half of the window
// that is as deep.
func (c Winding) standing() TurnsRange {
	within := func(room units.Length) int {
		shape := c.shape
		shape.Room = room
		return c.style.lay(shape, float64(c.wire.Overall()), 1).fit
	}
	r := c.Fit().HoldsItself()
	return TurnsRange{within(r.Low), within(r.Value), max(within(r.Value), within(r.High/2))}
}

// TurnsFromResistance returns how many turns of a wire on a former have a resistance measured at 20 °C,
// over wire within its standard and the build the winding may come out with. There need not be room for them.
//
// Source: IEC 60028 (1925) for copper; wire length from the geometry of the winding.
//
// Valid: a resistance between that of one turn and that of a million; nearest whole turn.
//
// Accuracy: the range is that of the wire's standard; winding tension stretches fine wire, so that the true number tends
// to the low side.
//
// Example: coil.TurnsFromResistance(coil.Racetrack{CoreLength: 71*mm, CoreWidth: 6.5*mm, Height: 10*mm, FlangeWidth: 17*mm}, wire.AWG(42), 6.2*kΩ)
func TurnsFromResistance(former Former, w wire.Wire, measured units.Resistance, style ...Style) (TurnsRange, error) {
	return TurnsFromResistanceAt(former, w, measured, units.Celsius(20), style...)
}

// TurnsFromResistanceAt is TurnsFromResistance for a resistance measured at another temperature.
//
// Source: IEC 60028 (1925) for copper; wire length from the geometry of the winding.
//
// Valid: as TurnsFromResistance, and -60 °C to 250 °C for copper.
//
// Accuracy: as TurnsFromResistance.
//
// Example: coil.TurnsFromResistanceAt(coil.Round{CoreDiameter: 12*mm, Height: 8*mm}, wire.AWG(43), 7*kΩ, units.Celsius(26))
func TurnsFromResistanceAt(former Former, w wire.Wire, measured units.Resistance, at units.Temperature, style ...Style) (TurnsRange, error) {
	one, err := wind(former, w, 1, style)
	if err != nil {
		return TurnsRange{}, err
	}
	limits, err := w.ResistanceLimitsAt(at)
	if err != nil {
		return TurnsRange{}, err
	}
	all, err := wind(former, w, mostTurns, style)
	if err != nil {
		return TurnsRange{}, err
	}
	if low, high := one.within(limits).Low, all.within(limits).Low; !(measured >= low && measured <= high) {
		return TurnsRange{}, refuse("measured resistance: out of range", measured, fmt.Sprintf("%v, of one turn, to %v, of %d", low, high, mostTurns), "")
	}
	ohms := func(turns int) ResistanceRange {
		c, _ := wind(former, w, turns, style) // as good as the first one
		return c.within(limits)
	}
	return turnsOf(measured, ohms), nil
}

// TurnsFromDepth is TurnsFromResistanceAt for a winding whose depth over the core, or over the insulation on it, was measured too: no
// packing has to be assumed.
//
// Source: IEC 60028 (1925) for copper; Steiner's formula (1840) for the mean turn of that depth.
//
// Valid: depths from the thickness of the wire to the room between the flanges, in which the turns have a packing of 0.3 to 0.9; as
// TurnsFromResistanceAt.
//
// Accuracy: the range is that of the wire's standard; 0.2 mm on the depth are about half a per cent, sides that bulge as much
// again, and stretched wire puts the true number on the low side.
//
// Example: coil.TurnsFromDepth(coil.Racetrack{CoreLength: 62*mm, CoreWidth: 6*mm, Height: 11*mm, FlangeWidth: 15*mm}, wire.AWG(42), 6.21*kΩ, 24*degC, 4*mm)
func TurnsFromDepth(former Former, w wire.Wire, measured units.Resistance, at units.Temperature, depth units.Length, style ...Style) (TurnsRange, error) {
	if _, err := TurnsFromResistanceAt(former, w, measured, at, style...); err != nil {
		return TurnsRange{}, err
	}
	c, err := wind(former, w, 1, style)
	if err != nil {
		return TurnsRange{}, err
	}
	if most := min(c.shape.Room, longest); !(depth >= w.Overall() && depth <= most) {
		return TurnsRange{}, refuse("depth: out of range", depth, fmt.Sprintf("%v, the thickness of the wire, to %v", w.Overall(), most), "")
	}
	limits, err := w.ResistanceLimitsAt(at)
	perTurn := kernel.MeanTurnLength(c.shape.corePerimeter(), 0, float64(depth)) / float64(c.style.strands())
	turns := func(perLength units.ResistancePerLength) float64 {
		return float64(measured) / (float64(perLength) * perTurn)
	}
	n := max(1, int(math.Round(turns(limits.Nominal))))
	return TurnsRange{min(n, int(math.Ceil(turns(limits.Max)))), n, max(n, int(turns(limits.Min)))}, err
}

// turnsOf returns the turns whose resistance is nearest to one measured, and the least and most that may have it.
func turnsOf(measured units.Resistance, ohms func(int) ResistanceRange) TurnsRange {
	r := TurnsRange{
		Low:   search(func(n int) bool { return ohms(n).High >= measured }),
		Value: search(func(n int) bool { return ohms(n).Value >= measured }),
		High:  search(func(n int) bool { return ohms(n).Low > measured }) - 1,
	}
	if n := r.Value; n > 1 && measured-ohms(n-1).Value < ohms(n).Value-measured {
		r.Value--
	}
	r.Value = min(r.Value, mostTurns)
	r.Low, r.High = min(r.Low, r.Value), max(r.High, r.Value) // where the limits of the wire leave no whole number
	return r
}

// search returns the least number of turns from 1 on for which enough holds, or more than mostTurns.
func search(enough func(int) bool) int {
	low, high := 0, 1
	for high <= mostTurns && !enough(high) {
		low, high = high, 2*high
	}
	return halved(low, high, enough)
}

// searchFrom is search for what is likely near a guess.
func searchFrom(guess int, enough func(int) bool) int {
	low := max(0, min(guess, mostTurns)-1)
	high, step := low+1, 1
	if low > 0 && enough(low) {
		for high = low; ; step *= 2 {
			if low = max(0, high-step); low == 0 || !enough(low) {
				return halved(low, high, enough)
			}
			high = low
		}
	}
	for ; high <= mostTurns && !enough(high); step *= 2 {
		low, high = high, high+step
	}
	return halved(low, high, enough)
}

// halved returns the least number for which enough holds, above low and at most high.
func halved(low, high int, enough func(int) bool) int {
	for high-low > 1 {
		if middle := (low + high) / 2; enough(middle) {
			high = middle
		} else {
			low = middle
		}
	}
	return high
}

// DepthAt returns how deep the winding is after its first turns, as the bench sees it grow.
//
// Source: as Wind.
//
// Valid: from one turn to all.
//
// Accuracy: as BuildRange says, about 15 % for scatter windings.
//
// Example: c.DepthAt(3000)
func (c Winding) DepthAt(turns int) (LengthRange, error) {
	part, err := wind(c.former, c.wire, turns, []Style{c.style})
	if err == nil && turns > c.turns {
		err = refuse("turns: more than the winding has", turns, "at most "+units.Digits(float64(c.turns), 7), "")
	}
	return part.BuildRange(), err
}
