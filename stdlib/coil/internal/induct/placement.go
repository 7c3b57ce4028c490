package induct

import "math"

// A Placement is where the second coil of a pair lies in the coordinates of the first, whose
// centre is the origin, whose x axis runs along CoreLength and whose z axis is that of the
// winding. The coil is first turned by the angle |Turn| (radians) about the direction of
// Turn, right-handed, then shifted. The zero value puts both coils in one place.
type Placement struct {
	Shift [3]float64 // metres
	Turn  [3]float64 // rotation vector, radians
}

// vector turns a vector from the second coil's coordinates to the first's: O. Rodrigues 1840.
func (p Placement) vector(v [3]float64) [3]float64 { return turned(p.Turn, v) }

// Axis is the axis of the second coil in the coordinates of the first.
func (p Placement) Axis() [3]float64 { return p.vector([3]float64{0, 0, 1}) }

// point takes a point from the second coil's coordinates to the first's.
func (p Placement) point(v [3]float64) [3]float64 {
	v = p.vector(v)
	return [3]float64{v[0] + p.Shift[0], v[1] + p.Shift[1], v[2] + p.Shift[2]}
}

// AreaTurns is the flux linkage of a winding with a uniform field, per tesla, as a vector in the
// coordinates in which it is placed: turns times mean area, along the axis.
func AreaTurns(s Section, turns float64, place Placement) [3]float64 {
	return place.vector([3]float64{0, 0, turns * s.MeanTurnArea()})
}

// inverse is where the first coil lies in the coordinates of the second.
func (p Placement) inverse() Placement {
	back := [3]float64{-p.Turn[0], -p.Turn[1], -p.Turn[2]}
	return Placement{turned(back, [3]float64{-p.Shift[0], -p.Shift[1], -p.Shift[2]}), back}
}

func turned(by, v [3]float64) [3]float64 {
	angle := math.Sqrt(dot(by, by))
	if angle == 0 {
		return v
	}
	n := [3]float64{by[0] / angle, by[1] / angle, by[2] / angle}
	sin, cos := math.Sincos(angle)
	c, along := cross(n, v), dot(n, v)*(1-cos)
	for i := range 3 {
		v[i] = v[i]*cos + c[i]*sin + n[i]*along
	}
	return v
}

func dot(a, b [3]float64) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }

func cross(a, b [3]float64) [3]float64 {
	return [3]float64{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}
