package coil

import (
	"math"

	"lode/stdlib/coil/internal/kernel"
	"lode/units"
)

// thickest is the largest wire radius in skin depths that the series for losses are good for.
const thickest = 8

// ResistanceAC returns the series resistance at a frequency and 20 °C: that for direct current
// with skin effect and proximity effect. Capacitance and iron are left out.
//
// Source: J. A. Ferreira, IEEE Transactions on Power Electronics 9 (1994) 127-131, for a round wire; the field at
// the wires is that of the winding itself by Biot and Savart's law. Compared with P. L. Dowell (1966) for a long winding.
//
// Valid: wire radius up to 8 skin depths; frequencies up to a third of the winding's own resonance, where its capacitance
// raises what is seen at its ends by a quarter; five layers or more of five turns or more, since the field is that of an
// evenly filled window: what is added to one layer comes out twice as large as it is.
//
// Accuracy: 5 % of what is added to the DC resistance. Metal and magnets near the winding
// add far more than this.
//
// Example: c.ResistanceAC(10*kHz)
func (c Winding) ResistanceAC(frequency units.Frequency) (units.Resistance, error) {
	if !(frequency >= 0) || math.IsInf(float64(frequency), 1) {
		return 0, refuse("frequency: out of range", frequency, "0 or more", "")
	}
	if frequency == 0 || c.turns == 0 {
		return c.Resistance(), nil
	}
	resistivity, d := float64(c.wire.Metal().Resistivity), float64(c.wire.Bare())
	depth := kernel.SkinDepth(resistivity, float64(frequency))
	if d/2 > thickest*depth {
		most := units.Frequency(float64(frequency) * sq(thickest*depth/(d/2)))
		return 0, refuse("frequency: too high for this wire", frequency, "at most "+most.String(), "")
	}
	square := c.ownSquare() * sq(float64(c.turns))
	skin := kernel.SkinFactor(d, depth) * float64(c.Resistance())
	// The field is that of 1 A; each wire of length l turns l times this power into heat.
	proximity := kernel.ProximityLoss(d, depth, resistivity, math.Sqrt(square)) * float64(c.WireLength())
	return units.Resistance(skin + proximity), nil
}

// ownSquare is the mean over the wire of B² for one ampere-turn, found once for each winding.
func (c Winding) ownSquare() float64 {
	if c.found == nil {
		return c.window().OwnSquare()
	}
	c.found.ownField.Do(func() { c.found.square = c.window().OwnSquare() })
	return c.found.square
}
