package induct

import "math"

// This file holds the shape of a winding: the core, the window around it, and the
// lengths and areas that follow exactly from the geometry of parallel curves.

// Mu0 is the magnetic constant used throughout, 4π·10⁻⁷ H/m. The measured value
// (CODATA 2022) differs from it by 1.3e-10, far below the accuracy of any coil, and
// the exact figure lets handbook tables be compared digit for digit.
const Mu0 = 4e-7 * math.Pi

// A Section is a winding of uniform current density on a rounded-rectangle core. All
// lengths are in metres. The window is Height (axial) by Build (radial); a turn at depth
// t keeps the straight sides of the core and has the corner radius CornerRadius+t.
// Build 0 is a current sheet, Height 0 a flat spiral; not both may be 0.
type Section struct {
	CoreLength, CoreWidth, CornerRadius float64 // outside of the core
	Height, Build                       float64 // winding window
}

// Circle is the section of a circular coil from its inner radius.
func Circle(innerRadius, height, build float64) Section {
	return Section{2 * innerRadius, 2 * innerRadius, innerRadius, height, build}
}

// straights returns the lengths of the straight sides along the core's length and width.
func (s Section) straights() (along, across float64) {
	return straight(s.CoreLength, s.CornerRadius), straight(s.CoreWidth, s.CornerRadius)
}

// straight removes the rounding residue that a circle or a racetrack written in decimal
// figures would otherwise keep as a side of 1e-18 m.
func straight(side, radius float64) float64 {
	rest := side - 2*radius
	if rest < 1e-12*side {
		return 0
	}
	return rest
}

func (s Section) window() window {
	return window{s.CornerRadius, s.CornerRadius + s.Build}
}

// corePerimeter is the length of a turn of no depth, coreArea what it encloses.
func (s Section) corePerimeter() float64 {
	a, b := s.straights()
	return 2*(a+b) + 2*math.Pi*s.CornerRadius
}

func (s Section) coreArea() float64 {
	a, b := s.straights()
	r := s.CornerRadius
	return a*b + 2*r*(a+b) + math.Pi*r*r
}

// TurnLength and TurnArea are the length of the turn at depth t and the area it
// encloses: Steiner's formulas for the parallel curve of a convex outline
// (J. Steiner 1840, "Über parallele Flächen").
func (s Section) TurnLength(t float64) float64 { return s.corePerimeter() + 2*math.Pi*t }

// TurnArea is the area enclosed by the turn at depth t.
func (s Section) TurnArea(t float64) float64 {
	return s.coreArea() + s.corePerimeter()*t + math.Pi*t*t
}

// MeanTurnLength is the turn length averaged over the build.
func (s Section) MeanTurnLength() float64 { return s.corePerimeter() + math.Pi*s.Build }

// MeanTurnArea is the enclosed area averaged over the build: the flux in a uniform
// axial field of 1 T is MeanTurnArea times the number of turns.
func (s Section) MeanTurnArea() float64 {
	c := s.Build
	return s.coreArea() + s.corePerimeter()*c/2 + math.Pi*c*c/3
}
