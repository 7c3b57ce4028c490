package coil

import (
	"math"
	"slices"

	"lode/stdlib/coil/internal/induct"
	"lode/units"
)

// This file draws convex cores of many corners with fewer, so that their inductance is found in good time.

// mostCorners is the number of corners with which a convex core is integrated.
const mostCorners = 40

// simplifiedOff is what an inductance is then off, as a share of it: a smooth outline by a third of that.
const simplifiedOff = 2e-4

// mostLooked is the number of corners up to which each is looked at.
const mostLooked = 2000

// freeOutline is the core and the window as the integrals take them: with at most so many corners, about the middle of its area.
func (c Winding) freeOutline() induct.Outline {
	s := c.section()
	o := induct.Outline{Offset: c.shape.over, Height: s.Height, Build: s.Build}
	hull := simplified(c.shape.hull, mostCorners)
	middle := centroid(hull)
	for _, p := range hull {
		o.Points = append(o.Points, [2]float64{float64(p.X - middle.X), float64(p.Y - middle.Y)})
	}
	return o
}

// isFree reports whether the whole winding goes around a core of free outline.
func (c Winding) isFree() bool { return len(c.shape.hull) > 0 && len(c.layout.blocks) == 0 }

// anyOutline is the core and the window of any winding.
func (c Winding) anyOutline() induct.Outline {
	if c.isFree() {
		return c.freeOutline()
	}
	s := c.section()
	x, y := s.CoreLength/2-s.CornerRadius, s.CoreWidth/2-s.CornerRadius
	return induct.Outline{Points: [][2]float64{{-x, -y}, {x, -y}, {x, y}, {-x, y}}, Offset: s.CornerRadius, Height: s.Height, Build: s.Build}
}

// centroid is the middle of the area in a hull.
func centroid(hull []Point) (middle Point) {
	total := areaOf(hull)
	for i, b := range hull {
		a, c := hull[0], hull[(i+1)%len(hull)]
		share := units.Length(turns(a, b, c) / 2 / total / 3)
		middle.X += share * (a.X + b.X + c.X)
		middle.Y += share * (a.Y + b.Y + c.Y)
	}
	return middle
}

// simplified leaves out those of many corners that stand out least, and scales the rest to the area of all.
func simplified(hull []Point, most int) []Point {
	if len(hull) <= most {
		return hull
	}
	kept := slices.Clone(hull)
	for len(kept) > mostLooked {
		kept = everySecond(kept)
	}
	for len(kept) > most {
		i := flattest(kept)
		kept = slices.Delete(kept, i, i+1)
	}
	by := units.Length(math.Sqrt(areaOf(hull) / areaOf(kept)))
	for i, p := range kept {
		kept[i] = Point{by * p.X, by * p.Y}
	}
	return kept
}

func everySecond(hull []Point) (kept []Point) {
	for i := 0; i < len(hull); i += 2 {
		kept = append(kept, hull[i])
	}
	return kept
}

// flattest is the corner whose triangle with its neighbours is the smallest.
func flattest(hull []Point) (flat int) {
	least, n := math.Inf(1), len(hull)
	for i := range hull {
		if twice := turns(hull[(i+n-1)%n], hull[i], hull[(i+1)%n]); twice < least {
			least, flat = twice, i
		}
	}
	return flat
}
