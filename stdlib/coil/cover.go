package coil

import (
	"fmt"
	"math"

	"lode/units"
	"lode/units/frame"
)

// Cover is the inside of a cover, a rounded rectangle in plan view, that the winding sits in the middle of.
type Cover struct {
	Length       units.Length // inside, up to 2 m
	Width        units.Length // inside, up to 2 m
	CornerRadius units.Length // inside, in plan view, up to half the shorter side; zero: sharp
	Height       units.Length // inside, over the winding, up to 2 m
}

// Clearance is the space between a winding, with what is wrapped around it, and the cover around it.
type Clearance struct {
	Ends    units.Length // along the length, on each side
	Sides   units.Length // along the width, on each side
	Corners units.Length // nearest distance around the corners
	Above   units.Length // of the inside height over the winding's
	Flange  units.Length // nearest distance of the flange; infinite without flanges
	Worst   units.Length // nearest distance of the winding at the largest build it may come out with
}

// Inside returns the space between the winding at its usual build and a cover.
//
// Source: geometry of parallel curves.
//
// Valid: cover and winding in line, the cover in the middle; a convex core counts as the rounded rectangle of equal
// perimeter and area, and has to be about as long and wide.
//
// Accuracy: that of the build; Worst is for its high end.
//
// Example: c.Inside(coil.Cover{Length: 88*mm, Width: 20*mm, CornerRadius: 9*mm, Height: 14*mm})
func (c Winding) Inside(cover Cover) (Clearance, error) {
	for _, x := range []struct {
		name  string
		value units.Length
	}{{"Length", cover.Length}, {"Width", cover.Width}, {"Height", cover.Height}} {
		if err := span("cover "+x.name, x.value); err != nil {
			return Clearance{}, err
		}
	}
	if most := min(cover.Length, cover.Width) / 2; !(cover.CornerRadius >= 0 && cover.CornerRadius <= most) {
		return Clearance{}, refuse("cover CornerRadius: out of range", cover.CornerRadius, "0 to half the shorter side, "+most.String(), "")
	}
	o := Clearance{Above: cover.Height - c.shape.Height, Flange: units.Length(math.Inf(1))}
	o.Ends, o.Sides, o.Corners = cover.around(c.shape, c.Build()+c.style.Over)
	e, s, k := cover.around(c.shape, c.BuildRange().High+c.style.Over)
	o.Worst = min(e, s, k)
	if !math.IsInf(float64(c.shape.Room), 1) {
		e, s, k = cover.around(c.shape, c.shape.Room+c.style.Over)
		o.Flange = min(e, s, k)
	}
	return o, nil
}

// FitWithin tells how the winding lies where there is no more than a given room over the core, as beside a neighbour, whatever the
// flanges allow. Insulation and wrap take their part of it.
//
// Source: as Wind.
//
// Valid: rooms up to 2 m, deeper than the insulation.
//
// Accuracy: that of the build, about 15 % for scatter windings.
//
// Example: c.FitWithin(4*mm)
func (c Winding) FitWithin(room units.Length) (Fit, error) {
	if err := span("room", room); err != nil {
		return Fit{}, err
	}
	if c.turns == 0 {
		return Fit{}, refuse("winding: none", c, "a winding made by coil.Wind", "")
	}
	shape := c.shape
	if room -= c.style.Under + c.style.Over; room <= 0 {
		return Fit{}, refuse("room: taken by the insulation", room+c.style.Under+c.style.Over, "more than its "+(c.style.Under+c.style.Over).String(), "")
	}
	shape.Room = min(room, shape.Room)
	narrow := c
	narrow.shape, narrow.layout = shape, c.style.lay(shape, float64(c.wire.Overall()), c.turns)
	return narrow.Fit(), nil
}

// around returns the distances between the parallel curve at a depth over a shape and the cover.
func (v Cover) around(s Shape, depth units.Length) (ends, sides, corners units.Length) {
	ends, sides = (v.Length-s.Length)/2-depth, (v.Width-s.Width)/2-depth
	// how far the winding's corner centre lies beyond that of the cover
	beyondX := float64(s.Length/2 - s.CornerRadius - v.Length/2 + v.CornerRadius)
	beyondY := float64(s.Width/2 - s.CornerRadius - v.Width/2 + v.CornerRadius)
	corners = min(ends, sides)
	if beyondX > 0 && beyondY > 0 {
		corners = v.CornerRadius - s.CornerRadius - depth - units.Length(math.Hypot(beyondX, beyondY))
	}
	return ends, sides, corners
}

// Verdict says in words whether the winding goes into the cover.
func (c Clearance) Verdict() string {
	switch nearest := min(c.Ends, c.Sides, c.Corners); {
	case c.Above < 0:
		return "does not fit: the winding is higher than the cover"
	case c.Flange < 0:
		return "does not fit: the flange is larger than the cover"
	case nearest < 0:
		return "does not fit at the usual build"
	case c.Worst < 0:
		return "tight: fits at the usual build, not at the largest"
	}
	return "fits"
}

// Leaves reports whether all around the winding, at the largest build it may come out with, and around its flanges there is at least
// a clearance; above it there has to be that much, too.
//
// Source: as Winding.Inside.
//
// Accuracy: as Winding.Inside.
//
// Example: c.Inside(coil.Cover{Length: 88*mm, Width: 20*mm, CornerRadius: 9*mm, Height: 14*mm}).Leaves(0.5*mm)
func (c Clearance) Leaves(clearance units.Length) bool {
	return min(c.Worst, c.Flange, c.Above) >= clearance
}

// String gives the verdict and the distance that decides.
func (c Clearance) String() string {
	return fmt.Sprintf("%s: %v at the nearest, %v above", c.Verdict(), min(c.Ends, c.Sides, c.Corners), c.Above)
}

// Frame lays the clearances out as a table.
func (c Clearance) Frame() frame.Frame {
	return list("Clearance in the cover", "Ends", c.Ends, "Sides", c.Sides, "Corners", c.Corners, "Above", c.Above,
		"Flange", open(c.Flange), "At the largest build", c.Worst, "Verdict", c.Verdict())
}
