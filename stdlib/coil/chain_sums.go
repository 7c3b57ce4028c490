package coil

import "lode/units"

// This file adds up what windings in series have together.

// Turns returns the turns of all windings.
func (c Chain) Turns() int {
	return overAll(c, func(w Winding) int { return w.turns })
}

// overAll adds up what each winding has.
func overAll[T ~int | ~float64](c Chain, of func(Winding) T) (sum T) {
	for _, p := range c.coils {
		sum += of(p.Winding)
	}
	return sum
}

// Resistance returns the DC resistance of all windings at 20 °C.
//
// Source: as Winding.Resistance.
//
// Accuracy: as Winding.Resistance.
func (c Chain) Resistance() units.Resistance {
	return overAll(c, Winding.Resistance)
}

// ResistanceAt returns the DC resistance of all windings at a temperature.
//
// Source: as Winding.ResistanceAt.
//
// Valid: -60 °C to 250 °C for copper.
//
// Accuracy: as Winding.Resistance.
//
// Example: pair.ResistanceAt(35*degC)
func (c Chain) ResistanceAt(temperature units.Temperature) (units.Resistance, error) {
	r, err := c.ResistanceRangeAt(temperature)
	return r.Value, err
}

// ResistanceRangeAt returns the DC resistance of all windings at a temperature, with the range over wire within its standard and over
// the build that the windings may come out with, all of them at the same end of it.
//
// Source: as Winding.ResistanceRange.
//
// Valid: -60 °C to 250 °C for copper.
//
// Accuracy: winding tension adds up to a few per cent more.
//
// Example: pair.ResistanceRangeAt(17*degC)
func (c Chain) ResistanceRangeAt(temperature units.Temperature) (ResistanceRange, error) {
	var sum ResistanceRange
	for _, p := range c.coils {
		r, err := p.Winding.ResistanceRangeAt(temperature)
		if err != nil {
			return ResistanceRange{}, err
		}
		sum = sum.plus(r)
	}
	return sum, nil
}

// WireLength returns the length of wire in all windings, without leads and waste.
//
// Source: as Winding.WireLength.
func (c Chain) WireLength() units.Length {
	return overAll(c, Winding.WireLength)
}

// Mass returns the mass of the wire in all windings, with its enamel.
//
// Source: as Winding.Mass.
//
// Accuracy: 1 % for nominal wire.
func (c Chain) Mass() units.Mass {
	return overAll(c, Winding.Mass)
}
