package coil

import (
	"fmt"
	"math"

	"lode/stdlib/coil/internal/kernel"
	"lode/units"
)

// HumSource is an alternating magnetic field that windings pick up.
type HumSource interface {
	// Field checks the figures and returns the field.
	Field() (HumField, error)
	// String names the source.
	String() string
}

// HumField is the field of a HumSource in the coordinates of the windings: x along the core's length, y
// along its width, z up to the strings.
type HumField struct {
	potential func(kernel.Vector) kernel.Vector
	line      *endless // that it comes from; none where it is the same everywhere
	strength  float64  // flux density at the origin, in tesla
}

// An endless line goes through a point along a unit vector.
type endless struct{ point, along kernel.Vector }

// UniformField is a field that is the same everywhere around the windings, as of a large
// transformer some metres away.
type UniformField struct {
	FluxDensity units.FluxDensity // rms
	Angle       units.Angle       // between the field and the z axis; zero: straight through the coils
	Bearing     units.Angle       // of a slanted field, from the long axis of the core
}

// MainsWire is an endless straight wire that carries a current. Its zero angles put it level
// with the coil, beyond its end and across its long axis, so that its field goes straight
// through the turns.
type MainsWire struct {
	Current   units.Current // rms
	Distance  units.Length  // from the origin to the nearest point of the wire
	Bearing   units.Angle   // of that point, from the long axis of the core
	Elevation units.Angle   // of that point over the plane of the coil
	Twist     units.Angle   // of the wire about the line to that point; zero: level; 90°: at right angles to that
}

// Field checks the figures and returns the field.
func (u UniformField) Field() (HumField, error) {
	if !(u.FluxDensity > 0 && u.FluxDensity <= 10) {
		return HumField{}, refuse("uniform field FluxDensity: out of range", u.FluxDensity, "more than 0 and at most 10 T", "")
	}
	if err := angles("uniform field", u.Angle, u.Bearing); err != nil {
		return HumField{}, err
	}
	sin, cos := math.Sincos(float64(u.Angle))
	bearing := kernel.Vector{math.Cos(float64(u.Bearing)), math.Sin(float64(u.Bearing)), 0}
	B := kernel.Vector{0, 0, float64(u.FluxDensity) * cos}.Plus(float64(u.FluxDensity)*sin, bearing)
	return HumField{strength: float64(u.FluxDensity), potential: func(r kernel.Vector) kernel.Vector { return kernel.UniformPotential(B, r) }}, nil
}

// Field checks the figures and returns the field.
func (m MainsWire) Field() (HumField, error) {
	if !(m.Current > 0 && m.Current <= 1e5) {
		return HumField{}, refuse("mains wire Current: out of range", m.Current, "more than 0 and at most 100 kA", "")
	}
	if !(m.Distance > 0 && m.Distance <= 1000) {
		return HumField{}, refuse("mains wire Distance: out of range", m.Distance, "more than 0 and at most 1 km", "")
	}
	if err := angles("mains wire", m.Bearing, m.Elevation, m.Twist); err != nil {
		return HumField{}, err
	}
	sinB, cosB := math.Sincos(float64(m.Bearing))
	sinE, cosE := math.Sincos(float64(m.Elevation))
	sinT, cosT := math.Sincos(float64(m.Twist))
	towards := kernel.Vector{cosE * cosB, cosE * sinB, sinE}
	level := kernel.Vector{-sinB, cosB, 0}
	along := kernel.Vector{}.Plus(cosT, level).Plus(sinT, towards.Cross(level))
	point := kernel.Vector{}.Plus(float64(m.Distance), towards)
	strength := kernel.Mu0 * float64(m.Current) / (2 * math.Pi * float64(m.Distance))
	return HumField{line: &endless{point, along}, strength: strength, potential: func(r kernel.Vector) kernel.Vector {
		return kernel.WirePotential(float64(m.Current), point, along, r)
	}}, nil
}

func angles(subject string, list ...units.Angle) error {
	for _, a := range list {
		if !(math.Abs(float64(a)) <= 2*math.Pi*(1+1e-9)) {
			return refuse(subject+" angle: out of range", a, "-360° to 360°", "write the unit, such as 30*deg")
		}
	}
	return nil
}

// String names the source.
func (u UniformField) String() string {
	return fmt.Sprintf("uniform field of %v at %v to the axis", u.FluxDensity, u.Angle)
}

// String names the source.
func (m MainsWire) String() string {
	text := fmt.Sprintf("wire with %v at %v, bearing %v", m.Current, m.Distance, m.Bearing)
	if m.Elevation != 0 {
		text += fmt.Sprintf(", elevation %v", m.Elevation)
	}
	if m.Twist != 0 {
		text += fmt.Sprintf(", twist %v", m.Twist)
	}
	return text
}
