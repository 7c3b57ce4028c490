package coil

import (
	"math"

	"lode/stdlib/coil/internal/kernel"
	"lode/units"
)

// thickest is the largest wire radius in skin depths that the series for losses are good for, and packed the one up to which wires do
// not screen each other: there Ferreira and Dowell differ by 8 %, at three skin depths by a factor of two.
const thickest, packed = 8, 1

// ResistanceAC returns the series resistance at a frequency and 20 °C: that for direct current
// with skin effect and proximity effect. Capacitance and iron are left out.
//
// Source: J. A. Ferreira, IEEE Transactions on Power Electronics 9 (1994) 127-131, for a round wire; the field at
// the wires is that of the winding itself by Biot and Savart's law. Compared with P. L. Dowell (1966) for a long winding.
//
// Valid: wire radius up to one skin depth (0.66 mm for copper at 10 kHz), beyond which packed wires screen each other; frequencies up
// to a third of the winding's own resonance, where its capacitance raises what is seen at its ends by a quarter. Up to 400 laid
// turns, and 1600 in few layers, are taken as they lie; all others as spread evenly over the window, which wants five layers or more of
// five turns or more. Strands wound side by side are taken to share the current evenly.
//
// Accuracy: 2 % of what is added to the DC resistance for turns as they lie, 5 % for those spread evenly, up to half a skin depth; 10 % up
// to one. Beyond it comes out too large, at three twice as large. Metal and magnets near the winding add far more than all this.
//
// Example: c.ResistanceAC(10*kHz)
func (c Winding) ResistanceAC(frequency units.Frequency) (units.Resistance, error) {
	if !(frequency >= 0) || math.IsInf(float64(frequency), 1) {
		return 0, refuse("frequency: out of range", frequency, "0 or more", "")
	}
	if c.turns == 0 {
		return 0, refuse("winding: none", c, "a winding made by coil.Wind", "")
	}
	if frequency == 0 {
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

// Q returns the quality of the winding as an inductor at a frequency: reactance over resistance, without iron, capacitance and
// what is connected.
//
// Source: Q = 2πf·L/R, with R of ResistanceAC.
//
// Valid: as ResistanceAC.
//
// Accuracy: that of the resistance, mostly that of the wire.
//
// Example: c.Q(5*kHz)
func (c Winding) Q(frequency units.Frequency) (float64, error) {
	r, err := c.ResistanceAC(frequency)
	if err != nil {
		return 0, err
	}
	return 2 * math.Pi * float64(frequency) * float64(c.Inductance()) / float64(r), nil
}

// mostLines is up to how many laid turns are taken one by one for the field at the wires, of few layers four times as many.
const mostLines = 400

// ownSquare is the mean over the wire of B² for one ampere-turn, found once for each winding.
func (c Winding) ownSquare() float64 {
	if c.found == nil {
		return c.findSquare()
	}
	c.found.ownField.Do(func() { c.found.square = c.findSquare() })
	return c.found.square
}

func (c Winding) findSquare() float64 {
	w, pitch := c.window(), c.layout.pitch
	if c.asLines() {
		var turns []kernel.Turn
		for _, t := range c.places() {
			turns = append(turns, kernel.Turn(t))
		}
		return w.OwnSquareOf(turns)
	}
	if c.style.Lay != Scatter {
		w.Height = min(w.Height, float64(c.layout.perLayer)*pitch+c.style.shift(pitch))
	}
	return w.OwnSquare()
}

// asLines reports whether the field at the wires is that of single turns, as it has to be where there are few layers or few
// turns in each.
func (c Winding) asLines() bool {
	few := min(c.TurnsPerLayer(), c.Layers()) < thin
	return c.laid() && (c.turns <= mostLines || few && c.turns <= 4*mostLines)
}
