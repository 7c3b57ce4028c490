package coil

import (
	"fmt"
	"math"
	"sync"

	"lode/stdlib/wire"
	"lode/units"
)

// Winding is turns of wire on a former. Wind makes one.
type Winding struct {
	former Former
	shape  Shape
	wire   wire.Wire
	turns  int
	style  Style
	layout layout
	potted Compound
	proven units.Capacitance // from a measured resonance, or 0
	doubt  units.Capacitance // of that
	found  *found            // what takes long to compute, once it was asked for
}

// found keeps what depends on the turns, the wire and the former alone, for all copies of a winding.
type found struct {
	inductance, ownField sync.Once
	henry, square        float64
}

// Turns returns the number of turns.
func (c Winding) Turns() int { return c.turns }

// Wire returns the wire.
func (c Winding) Wire() wire.Wire { return c.wire }

// Shape returns the core and window that the winding lies on.
func (c Winding) Shape() Shape { return c.shape }

// Style returns how the winding is wound.
func (c Winding) Style() Style { return c.style }

// WireLength returns the length of wire in the winding, all strands together, without leads
// and waste.
//
// Source: Steiner's formula for parallel curves (1840): a turn at depth t over a convex core
// is 2πt longer than its outline. Summed over layers or averaged over the window.
//
// Accuracy: exact for turns that follow the core; straight sides that bulge add up to 2 %.
func (c Winding) WireLength() units.Length { return c.MeanTurn() * units.Length(c.layout.wires) }

// WireToOrder returns the length of wire to order for the winding, all strands together, with an allowance for leads and broken
// starts as a share of it, such as 0.05.
//
// Source: as WireLength; 0.05 to 0.1 is common practice, no source.
//
// Valid: allowances from 0 to 1.
//
// Accuracy: as WireLength.
//
// Example: c.WireToOrder(0.05)
func (c Winding) WireToOrder(allowance float64) (units.Length, error) {
	if !(allowance >= 0 && allowance <= 1) {
		return 0, refuse("allowance: out of range", allowance, "0 to 1, the share of wire on top, such as 0.05 for 5 %", "")
	}
	return c.WireLength() * units.Length(1+allowance), nil
}

// MeanTurn returns the mean length of a turn.
//
// Source: Steiner's formula for parallel curves (1840), averaged over the turns.
//
// Accuracy: exact for turns that follow the core; straight sides that bulge add up to 2 %.
func (c Winding) MeanTurn() units.Length { return units.Length(c.layout.meanTurn) }

// Area returns the mean area that a turn encloses.
//
// Source: Steiner's formula for parallel curves (1840), averaged over the turns.
//
// Accuracy: exact for turns that follow the core.
func (c Winding) Area() units.Area { return units.Area(c.layout.meanArea) }

// Resistance returns the DC resistance at 20 °C, of all strands in parallel.
//
// Source: IEC 60028 (1925) for copper; wire length from the geometry of the winding.
//
// Accuracy: nominal wire; wire within its standard moves it by 2 to 10 %, the finer the more. Winding
// tension stretches fine wire and adds up to a few per cent.
func (c Winding) Resistance() units.Resistance {
	return c.resisting(c.wire.ResistancePerLength())
}

// resisting returns the resistance of the strands in parallel.
func (c Winding) resisting(perLength units.ResistancePerLength) units.Resistance {
	strands := float64(c.style.strands())
	return units.Resistance(float64(c.WireLength()) * float64(perLength) / (strands * strands))
}

// ResistanceAt returns the DC resistance at a temperature.
//
// Source: IEC 60028 (1925) for copper; wire length from the geometry of the winding.
//
// Valid: -60 °C to 250 °C for copper.
//
// Accuracy: as Resistance.
//
// Example: c.ResistanceAt(35*degC)
func (c Winding) ResistanceAt(temperature units.Temperature) (units.Resistance, error) {
	perLength, err := c.wire.ResistancePerLengthAt(temperature)
	return c.resisting(perLength), err
}

// ResistanceRange returns the DC resistance at 20 °C with the range over wire within its
// standard and over the build that the winding may come out with.
//
// Source: IEC 60028 (1925) for copper; the limits of the wire's own standard.
//
// Accuracy: winding tension adds up to a few per cent more.
func (c Winding) ResistanceRange() ResistanceRange { return c.within(c.wire.ResistanceLimits()) }

// ResistanceRangeAt is ResistanceRange at another temperature.
//
// Source: IEC 60028 (1925) for copper; the limits of the wire's own standard.
//
// Valid: -60 °C to 250 °C for copper.
//
// Accuracy: winding tension adds up to a few per cent more.
//
// Example: c.ResistanceRangeAt(17*degC)
func (c Winding) ResistanceRangeAt(temperature units.Temperature) (ResistanceRange, error) {
	limits, err := c.wire.ResistanceLimitsAt(temperature)
	return c.within(limits), err
}

// within returns the resistance of the winding for wire within limits.
func (c Winding) within(limits wire.Resistances) ResistanceRange {
	return ResistanceRange{c.resisting(limits.Min) * c.shorter(c.layout.low), c.resisting(limits.Nominal), c.resisting(limits.Max) * c.shorter(c.layout.high)}
}

// shorter returns the factor on the mean turn when the winding comes out with another build.
func (c Winding) shorter(build float64) units.Resistance {
	return units.Resistance(1 + math.Pi*(build-c.layout.build)/c.layout.meanTurn)
}

// Mass returns the mass of the wire with its enamel.
//
// Source: IEC 60028 (1925) for the density of copper.
//
// Accuracy: 1 % for nominal wire.
func (c Winding) Mass() units.Mass {
	return units.Mass(float64(c.WireLength()) * float64(c.wire.MassPerLength()))
}

// Build returns the depth of the winding over the core, or over the insulation on it.
//
// Source: common practice, no source, for the packing of scatter windings; see Wind.
//
// Accuracy: about 15 % for scatter windings; BuildRange gives the range.
func (c Winding) Build() units.Length { return units.Length(c.layout.build) }

// BuildRange returns the depth of the winding with the range that it may come out in.
//
// Source: common practice, no source: packing of 0.55 to 0.75 for scatter windings, or within a tenth of what a style says; laid
// ones up to 1.1, orthocyclic ones up to 1.03 times their layers.
//
// Accuracy: a range of practice, not of statistics.
func (c Winding) BuildRange() LengthRange {
	o := c.layout
	return LengthRange{units.Length(o.low), units.Length(o.build), units.Length(o.high)}
}

// TurnsPerLayer returns how many turns lie side by side. For a scatter winding it is how many
// would, with its wires put in order.
func (c Winding) TurnsPerLayer() int { return max(1, c.layout.perLayer/c.style.strands()) }

// Layers returns how many layers are begun. For a scatter winding it is how many there
// would be, with its wires put in order.
func (c Winding) Layers() int { return c.layout.layers }

// Pitch returns the distance from wire to wire along a layer.
func (c Winding) Pitch() units.Length { return units.Length(c.layout.pitch) }

// Fit tells how the winding lies on its former.
func (c Winding) Fit() Fit {
	return Fit{Turns: c.turns, Build: c.BuildRange(), Room: c.shape.Room, TurnsPerLayer: c.TurnsPerLayer(), Layers: c.Layers(),
		TurnsThatFit: c.layout.fit, wire: c.wire, style: c.style, height: c.shape.Height}
}

// LevelAgainst returns how much louder this winding is than another one in the same place
// under the same string and magnets, before any loading: the ratio of the turns.
//
// Source: Faraday's law: the voltages of windings that share a flux are as their turns.
//
// Valid: the same core and height, each within a tenth, the same magnets, string and place; far below the resonance.
//
// Accuracy: about 0.3 dB, as a deeper winding holds its outer turns in a weaker field.
//
// Example: c.LevelAgainst(c.With(5000))
func (c Winding) LevelAgainst(other Winding) units.Level {
	return units.LevelOf(float64(c.turns) / float64(other.turns))
}

// String names the winding with its main values.
func (c Winding) String() string {
	if c.turns == 0 {
		return "no winding"
	}
	turns := "turns"
	if c.turns == 1 {
		turns = "turn"
	}
	return fmt.Sprintf("%d %s of %s, %v, %v, on a %v", c.turns, turns, c.wire.Name(), c.style.Lay, c.Resistance(), c.former)
}
