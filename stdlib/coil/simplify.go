package coil

import (
	"math"
	"slices"

	"lode/stdlib/coil/internal/induct"
)

// This file draws convex cores of many corners with fewer, so that their inductance is found in good time.

// mostCorners is the number of corners with which a convex core is integrated.
const mostCorners = 40

// simplifiedOff is what an inductance is then off, as a share of it: a smooth outline by a third of that.
const simplifiedOff = 2e-4

// mostLooked is the number of corners up to which each is looked at.
const mostLooked = 2000

// freeOutline is the core and the window as the integrals take them: with at most so many corners.
func (c Winding) freeOutline() induct.Outline {
	s := c.section()
	return induct.Outline{Points: simplified(c.shape.hull, mostCorners), Offset: c.shape.over, Height: s.Height, Build: s.Build}
}

// isFree reports whether the whole winding goes around a core of free outline.
func (c Winding) isFree() bool { return len(c.shape.hull) > 0 && len(c.layout.blocks) == 0 }

// anyOutline is the core and the window of any winding, about the middle of what the core fills.
func (c Winding) anyOutline() induct.Outline {
	o := c.freeOutline()
	if !c.isFree() {
		s := c.section()
		x, y := s.CoreLength/2-s.CornerRadius, s.CoreWidth/2-s.CornerRadius
		o.Points, o.Offset = [][2]float64{{-x, -y}, {x, -y}, {x, y}, {-x, y}}, s.CornerRadius
		return o
	}
	middle := centroid(o.Points)
	o.Points = slices.Clone(o.Points)
	for i, p := range o.Points {
		o.Points[i] = [2]float64{p[0] - middle[0], p[1] - middle[1]}
	}
	return o
}

// centroid is the middle of the area in a hull.
func centroid(hull [][2]float64) (middle [2]float64) {
	total := polygonArea(hull)
	for i := range hull[2:] {
		a, b, c := hull[0], hull[i+1], hull[i+2]
		share := triangle(a, b, c) / total / 3
		middle[0] += share * (a[0] + b[0] + c[0])
		middle[1] += share * (a[1] + b[1] + c[1])
	}
	return middle
}

// simplified leaves out those of many corners that stand out least, and scales the rest to the area of all.
func simplified(hull [][2]float64, most int) [][2]float64 {
	if len(hull) <= most {
		return hull
	}
	kept := append([][2]float64(nil), hull...)
	for len(kept) > mostLooked {
		kept = everySecond(kept)
	}
	for len(kept) > most {
		i := flattest(kept)
		kept = append(kept[:i], kept[i+1:]...)
	}
	return scaled(kept, math.Sqrt(polygonArea(hull)/polygonArea(kept)))
}

func everySecond(hull [][2]float64) (kept [][2]float64) {
	for i := 0; i < len(hull); i += 2 {
		kept = append(kept, hull[i])
	}
	return kept
}

// flattest is the corner whose triangle with its neighbours is the smallest.
func flattest(hull [][2]float64) (flat int) {
	least, n := math.Inf(1), len(hull)
	for i := range hull {
		if area := triangle(hull[(i+n-1)%n], hull[i], hull[(i+1)%n]); area < least {
			least, flat = area, i
		}
	}
	return flat
}

func triangle(a, b, c [2]float64) float64 {
	return ((b[0]-a[0])*(c[1]-a[1]) - (b[1]-a[1])*(c[0]-a[0])) / 2
}

func polygonArea(hull [][2]float64) (area float64) {
	for i := range hull[2:] {
		area += triangle(hull[0], hull[i+1], hull[i+2])
	}
	return area
}

// scaled moves corners away from the mean of all.
func scaled(hull [][2]float64, by float64) [][2]float64 {
	var middle [2]float64
	for _, p := range hull {
		middle[0] += p[0] / float64(len(hull))
		middle[1] += p[1] / float64(len(hull))
	}
	for i, p := range hull {
		hull[i] = [2]float64{middle[0] + by*(p[0]-middle[0]), middle[1] + by*(p[1]-middle[1])}
	}
	return hull
}
