package coil

import (
	"fmt"
	"math"

	"lode/units"
)

// Correction is the change of one winding that cancels hum best.
type Correction struct {
	Winding  int         // number of the winding in the chain
	Change   int         // turns to add, or to leave out where negative
	Turns    int         // that the winding then has
	Residual units.Level // left then
	Fit      Fit         // of the changed winding
}

// Correction returns how many turns to add to one winding, counted from 1, so that the hum of the chain from a
// source is least. Added turns make it deeper, which is taken into account.
//
// Source: as Winding.Hum.
//
// Accuracy: half a turn for the geometry given; see Residual.
//
// Example: pair.Correction(coil.UniformField{FluxDensity: 0.1*µT}, 2)
func (c Chain) Correction(source HumSource, number int) (Correction, error) {
	if err := c.has(number); err != nil {
		return Correction{}, err
	}
	fluxes, err := c.fluxes(source)
	if err != nil {
		return Correction{}, err
	}
	field, err := source.Field()
	if err != nil {
		return Correction{}, err
	}
	p, own := c.coils[number-1], fluxes[number-1]
	sum, _ := added(fluxes)
	if (sum-own)*own >= 0 {
		return Correction{}, refuse(fmt.Sprintf("winding %d: cannot cancel the others", number), "hum of the same sense or none", "hum against theirs", "set Reversed of coil.Placed")
	}
	turns := p.cancelling(sum-own, own, field)
	fluxes[number-1] = p.linkedBy(turns, field)
	left, err := residual(fluxes)
	if err != nil {
		return Correction{}, err
	}
	fit, err := Fits(p.Winding.former, p.Winding.wire, turns, p.Winding.style)
	return Correction{number, turns - p.Winding.turns, turns, left, fit}, err
}

// cancelling returns the turns whose flux comes nearest to cancelling the rest, from what the winding links as it is.
func (p Placed) cancelling(rest, own float64, field HumField) int {
	guess := func(n int, flux float64) int { return int(math.Min(float64(n)*math.Abs(rest/flux), mostTurns)) }
	near := guess(p.Winding.turns, own) // hum grows nearly as the turns do
	near = guess(near, p.linkedBy(max(near, 1), field))
	turns := searchFrom(near, func(n int) bool { return math.Abs(p.linkedBy(n, field)) >= math.Abs(rest) })
	if turns > 1 && math.Abs(rest+p.linkedBy(turns-1, field)) < math.Abs(rest+p.linkedBy(turns, field)) {
		turns--
	}
	return turns
}

// linkedBy is what the winding links with another number of turns.
func (p Placed) linkedBy(turns int, field HumField) float64 {
	p.Winding.found = nil
	p.Winding.turns, p.Winding.layout = turns, p.Winding.style.lay(p.Winding.shape, float64(p.Winding.wire.Overall()), turns)
	return p.linked(field)
}

// String tells the change and what it leaves.
func (c Correction) String() string {
	return fmt.Sprintf("winding %d: %+d turns, to %d; leaves %v; %s", c.Winding, c.Change, c.Turns, c.Residual, c.Fit.Verdict())
}
