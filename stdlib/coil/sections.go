package coil

import (
	"fmt"

	"lode/stdlib/wire"
	"lode/units"
)

// InSections winds turns on a former that walls divide into sections of equal height, in equal shares from the top down, and joins
// the sections in series. What is left over of the turns goes to the first ones.
//
// Source: as Wind and InSeries.
//
// Valid: 2 to 20 sections; all wound the same way.
//
// Accuracy: as Wind; capacitance across the walls is left out.
//
// Example: coil.InSections(coil.Round{CoreDiameter: 12*mm, Height: 15*mm, FlangeDiameter: 24*mm}, wire.AWG(43), 9000, 3, 1*mm)
func InSections(former Former, w wire.Wire, turns, sections int, wall units.Length, style ...Style) (Chain, error) {
	if sections < 2 || sections > 20 {
		return Chain{}, refuse("sections: out of range", sections, "2 to 20", "")
	}
	if turns < sections {
		return Chain{}, refuse("turns: out of range", turns, fmt.Sprintf("one for each section, %d or more", sections), "")
	}
	whole, err := wind(former, w, turns, style)
	if err != nil {
		return Chain{}, err
	}
	walls := units.Length(sections-1) * wall
	if !(wall > 0 && walls < whole.shape.Height) {
		return Chain{}, refuse("wall: out of range", wall, fmt.Sprintf("more than 0 and less than %v, the height over %d", whole.shape.Height/units.Length(sections-1), sections-1), "")
	}
	height := (whole.shape.Height - walls) / units.Length(sections)
	section, known := raised(former, height)
	if !known {
		return Chain{}, refuse("former: cannot be divided", former, "a coil.Racetrack, Rectangle, Round or Convex", "")
	}
	var parts []Winding
	for i := range sections {
		share := turns / sections
		if i < turns%sections {
			share++
		}
		part, err := Wind(section, w, share, style...)
		if err != nil {
			return Chain{}, fmt.Errorf("section %d of %d: %w", i+1, sections, err)
		}
		parts = append(parts, part)
	}
	return Stacked(wall, parts...)
}

// Stacked puts windings on top of each other in line, the first one uppermost and in the middle of things, with a gap between each
// two, and joins them in series so that they aid each other. A pair that cancels hum is made with InSeries, one of the two Reversed.
//
// Source: as InSeries.
//
// Valid: gaps from 0 to 2 m, up to 100 windings.
//
// Accuracy: as InSeries.
//
// Example: coil.Stacked(2*mm, c, c)
func Stacked(gap units.Length, windings ...Winding) (Chain, error) {
	if !(gap >= 0 && gap <= longest) {
		return Chain{}, refuse("gap: out of range", gap, "0 to "+longest.String(), "write the unit, such as 2*mm")
	}
	var placed []Placed
	z := units.Length(0)
	for i, c := range windings {
		if i > 0 {
			z -= windings[i-1].shape.Height/2 + gap + c.shape.Height/2
		}
		placed = append(placed, Placed{Winding: c, Z: z})
	}
	return InSeries(placed...)
}
