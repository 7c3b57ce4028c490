package coil

import (
	"math"

	"lode/stdlib/coil/internal/induct"
	"lode/stdlib/coil/internal/kernel"
	"lode/units"
)

// This file holds what every former is to the rest of the package: a convex core whose
// turns follow parallel curves.

// Former is a core that wire can be wound on.
type Former interface {
	// Shape checks the dimensions and returns what the wire sees of them.
	Shape() (Shape, error)
	// String names the former and its main dimensions.
	String() string
}

// Shape is what the wire sees of a former: a rounded rectangle between two flanges.
type Shape struct {
	Length       units.Length // of the core
	Width        units.Length // of the core
	CornerRadius units.Length // of the core, in plan view
	Height       units.Length // between the flanges
	Room         units.Length // depth from the core to the nearest edge of a flange; infinite without flanges
	over         float64      // how far insulation lifts the first layer off the hull
	hull         []Point      // of a core that is no rounded rectangle; the above is then its equal in perimeter and area
}

// Perimeter returns the length of a turn whose centre lies at the given depth over the core.
func (s Shape) Perimeter(depth units.Length) units.Length {
	return units.Length(kernel.TurnLength(s.corePerimeter(), float64(depth)))
}

// Area returns the area that a turn at the given depth encloses.
func (s Shape) Area(depth units.Length) units.Area {
	return units.Area(kernel.TurnArea(s.corePerimeter(), s.coreArea(), float64(depth)))
}

// standing is the room for wire of overall diameter d: that of the flanges, or without them as deep as it stands with a wrap of
// tape.
func (s Shape) standing(d float64) float64 {
	if math.IsInf(float64(s.Room), 1) {
		return math.Max(d, float64(s.Height)/4)
	}
	return float64(s.Room)
}

func (s Shape) corePerimeter() float64 {
	return kernel.RoundedPerimeter(float64(s.Length), float64(s.Width), float64(s.CornerRadius))
}

func (s Shape) coreArea() float64 {
	return kernel.RoundedArea(float64(s.Length), float64(s.Width), float64(s.CornerRadius))
}

// section is the winding window as the inductance integrals take it.
func (s Shape) section(build float64) induct.Section {
	return induct.Section{CoreLength: float64(s.Length), CoreWidth: float64(s.Width),
		CornerRadius: float64(s.CornerRadius), Height: float64(s.Height), Build: build}
}
