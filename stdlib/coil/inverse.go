package coil

import (
	"lode/stdlib/wire"
	"lode/units"
)

// This file goes from measurements and bobbins back to turns.

// TurnsThatFit returns how many turns a former holds, over the packing that a winding may come
// out with.
//
// Source: as Wind.
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
	full, err := wind(former, w, n, style)
	o := full.layout
	return TurnsRange{int(float64(n) * o.build / o.high), n, int(float64(n) * o.build / o.low)}, err
}

// TurnsFromResistance returns how many turns of a wire on a former have a resistance measured at 20 °C,
// over wire within its standard and the build the winding may come out with. There need not be room for them.
//
// Source: IEC 60028 (1925) for copper; wire length from the geometry of the winding.
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
// Accuracy: as TurnsFromResistance.
//
// Example: coil.TurnsFromResistanceAt(coil.Round{CoreDiameter: 12*mm, Height: 8*mm}, wire.AWG(43), 7*kΩ, units.Celsius(26))
func TurnsFromResistanceAt(former Former, w wire.Wire, measured units.Resistance, at units.Temperature, style ...Style) (TurnsRange, error) {
	if _, err := wind(former, w, 1, style); err != nil {
		return TurnsRange{}, err
	}
	perLength, err := w.ResistanceLimitsAt(at)
	if err != nil {
		return TurnsRange{}, err
	}
	turns := func(ohms func(Winding) units.Resistance) int {
		return search(func(n int) bool {
			c, err := wind(former, w, n, style)
			return err != nil || ohms(c) >= measured
		})
	}
	r := TurnsRange{
		Low:   turns(func(c Winding) units.Resistance { return c.resisting(perLength.Max) * c.shorter(c.layout.high) }),
		Value: turns(func(c Winding) units.Resistance { return c.resisting(perLength.Nominal) }),
		High:  turns(func(c Winding) units.Resistance { return c.resisting(perLength.Min) * c.shorter(c.layout.low) }),
	}
	if !(measured > 0) || r.High > mostTurns {
		return TurnsRange{}, refuse("measured resistance: out of range", measured, "more than 0 and less than a million turns have", "")
	}
	return r, nil
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
// Example: c.DepthAt(3000)
func (c Winding) DepthAt(turns int) (LengthRange, error) {
	part, err := wind(c.former, c.wire, turns, []Style{c.style})
	if err == nil && turns > c.turns {
		err = refuse("turns: more than the winding has", turns, "at most "+units.Digits(float64(c.turns), 7), "")
	}
	return part.BuildRange(), err
}
