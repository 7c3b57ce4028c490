package induct

import (
	"fmt"
	"math"
	"testing"
)

// sectionOutline writes a section as a free outline.
func sectionOutline(s Section) Outline {
	a, b := s.straights()
	points := [][2]float64{{a / 2, b / 2}, {-a / 2, b / 2}, {a / 2, -b / 2}, {-a / 2, -b / 2}, {0, 0}, {a / 4, b / 2}}
	return Outline{Points: points, Offset: s.CornerRadius, Height: s.Height, Build: s.Build}
}

func TestOutlineOfSection(t *testing.T) {
	for _, s := range []Section{
		{0.07, 0.012, 0.002, 0.01, 0.004}, {0.07, 0.012, 0, 0.01, 0.004}, {0.07, 0.012, 0.006, 0.01, 0.004}, Circle(0.01, 0.01, 0.005),
	} {
		want, _ := Self(s, 100)
		got, _ := SelfOutline(sectionOutline(s), 100)
		closeTo(t, fmt.Sprintf("self %+v", s), got, want, 1e-8)
		want, _ = Coaxial(s, s, 100, 10, 0.013)
		got = ParallelOutlines(sectionOutline(s), sectionOutline(s), 100, 10, 0, [3]float64{0, 0, 0.013})
		closeTo(t, fmt.Sprintf("coaxial %+v", s), got, want, 1e-7)
		other := s
		other.CoreLength += 0.003
		other.CoreWidth += 0.001
		want, _ = Coaxial(s, other, 100, 10, 0.013)
		got = ParallelOutlines(sectionOutline(s), sectionOutline(other), 100, 10, 0, [3]float64{0, 0, 0.013})
		closeTo(t, fmt.Sprintf("coaxial with another %+v", s), got, want, 2e-5)
	}
}

// regular is a regular polygon of the same area as a circle.
func regular(corners int, radius float64) [][2]float64 {
	turn := 2 * math.Pi / float64(corners)
	radius *= math.Sqrt(turn / math.Sin(turn))
	points := make([][2]float64, corners)
	for i := range points {
		v := direction(float64(i) * turn).times(radius)
		points[i] = [2]float64{v.x, v.y}
	}
	return points
}

// A polygon of n corners tends to the circle as 1/n².
func TestOutlineTendsToCircle(t *testing.T) {
	s := Circle(0.01, 0.008, 0.004)
	want, _ := SelfTo(s, 1, 1e-7)
	var off [2]float64
	for i, n := range []int{16, 32} {
		got, _ := SelfOutline(Outline{Points: regular(n, 0.01), Height: s.Height, Build: s.Build}, 1)
		off[i] = got/want - 1
	}
	if math.Abs(off[1]) > 1e-3 || off[0]/off[1] < 3 || off[0]/off[1] > 5.5 {
		t.Errorf("off by %.3g with 16 corners and %.3g with 32", off[0], off[1])
	}
}

// A hexagon turned by an angle is the same coil; so is one with its corners listed backwards, or
// with a hollow that the wire bridges.
func TestOutlineHullAndRotation(t *testing.T) {
	points := [][2]float64{{0.02, 0}, {0.012, 0.013}, {-0.01, 0.012}, {-0.021, 0.001}, {-0.008, -0.012}, {0.011, -0.013}}
	o := Outline{Points: points, Height: 0.008, Build: 0.003}
	want, _ := SelfOutline(o, 1)
	turned := Outline{Points: [][2]float64{{0, 0.003}}, Height: o.Height, Build: o.Build}
	for i := range points {
		p := points[len(points)-1-i]
		sin, cos := math.Sincos(0.7)
		turned.Points = append(turned.Points, [2]float64{p[0]*cos - p[1]*sin, p[0]*sin + p[1]*cos})
	}
	got, _ := SelfOutline(turned, 1)
	closeTo(t, "turned", got, want, 1e-8)
}

// Two triangles make a rectangle: the current along their common side cancels, so that their fluxes add up.
func TestTrianglesMakeARectangle(t *testing.T) {
	other := Outline{Points: [][2]float64{{0, 0}, {0.02, 0.003}, {0.015, 0.012}, {0.004, 0.01}}, Height: 0.003}
	whole := [][2]float64{{0, 0}, {0.03, 0}, {0.03, 0.01}, {0, 0.01}}
	for _, place := range []struct {
		turn  float64
		shift [3]float64
	}{{0, [3]float64{0, 0, 0.006}}, {0.5, [3]float64{0.002, -0.001, 0.005}}, {-1.2, [3]float64{0.04, 0.01, 0.001}}} {
		sum := 0.0
		for _, points := range [][][2]float64{{whole[0], whole[1], whole[2]}, {whole[0], whole[2], whole[3]}} {
			sum += ParallelOutlines(Outline{Points: points, Height: 0.002}, other, 1, 1, place.turn, place.shift)
		}
		closeTo(t, "two triangles", sum, ParallelOutlines(Outline{Points: whole, Height: 0.002}, other, 1, 1, place.turn, place.shift), 1e-5)
	}
}
