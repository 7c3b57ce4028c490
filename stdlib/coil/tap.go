package coil

import (
	"fmt"
	"math"

	"lode/units"
)

// Tapped cuts the winding at numbers of turns counted from the start, and returns its parts in series,
// the innermost first.
//
// Source: geometry: each part is a winding around the part within.
//
// Valid: rising numbers of turns below those of the winding, up to 99 of them.
//
// Accuracy: as the whole winding; the parts of a laid one lie where its layers do, those of a scatter winding share its depth.
// Inductances add up to that of the whole within 0.1 %.
//
// Example: c.Tapped(4000)
func (c Winding) Tapped(at ...int) (Chain, error) {
	if c.turns < 2 {
		return Chain{}, refuse("winding: too few turns for a tap", c, "a winding made by coil.Wind, of 2 turns or more", "")
	}
	var parts []Placed
	from := 0
	for _, to := range append(append([]int(nil), at...), c.turns) {
		if to <= from || to > c.turns {
			return Chain{}, refuse("tap: out of range", to, fmt.Sprintf("rising numbers of turns from 1 to %d", c.turns-1), "")
		}
		part, err := c.part(from, to)
		if err != nil {
			return Chain{}, err
		}
		parts, from = append(parts, Placed{Winding: part}), to
	}
	return InSeries(parts...)
}

// part returns the turns of the winding between two numbers of turns.
func (c Winding) part(from, to int) (Winding, error) {
	depth := func(turns int) float64 { return c.layout.build * float64(turns) / float64(c.turns) }
	grown := c.shape.grown(units.Length(depth(from)))
	style := c.style
	style.Under, style.Over = 0, 0 // the shape has them
	part, err := wind(grown, c.wire, to-from, []Style{style})
	if err != nil {
		return Winding{}, err
	}
	upTo := func(turns int) (length, area float64) {
		if turns == 0 {
			return 0, 0
		}
		o := c.style.lay(c.shape, float64(c.wire.Overall()), turns)
		return o.meanTurn * float64(turns), o.meanArea * float64(turns)
	}
	l1, a1 := upTo(from)
	l2, a2 := upTo(to)
	part.layout.cut, part.layout.build = true, depth(to)-depth(from)
	part.layout.meanTurn, part.layout.meanArea = (l2-l1)/float64(to-from), (a2-a1)/float64(to-from)
	if c.laid() {
		part.layout.blocks = c.blocksBetween(from, to)
	}
	part.potted, part.found = c.potted, &found{}
	return part, nil
}

// grown returns the former that a winding of some depth makes for what is wound over it.
func (s Shape) grown(depth units.Length) Rectangle {
	r := Rectangle{CoreLength: s.Length + 2*depth, CoreWidth: s.Width + 2*depth, CornerRadius: s.CornerRadius + depth, Height: s.Height}
	if room := s.Room - depth; !math.IsInf(float64(room), 1) && room > 0 {
		r.FlangeLength, r.FlangeWidth = r.CoreLength+2*room, r.CoreWidth+2*room
	}
	return r
}
