package coil

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"

	"lode/stdlib/coil/internal/kernel"
)

// This file solves fields between conductors by boundary elements, as a witness for what stands around a winding: surfaces in
// flat panels with a charge each, so that the middle of every panel comes to its voltage. Nothing is assumed of field
// lines, edges count, and space is open. Edges of plates are graded, as charge crowds there.
//
// Source: R. F. Harrington, Field Computation by Moment Methods, 1968, for the method; D. R. Wilton et al., IEEE
// Transactions on Antennas and Propagation 32 (1984) 276-281, for the potential of a panel.

// panel is a flat quadrilateral of a conductor.
type panel struct {
	corner   [4]kernel.Vector
	volt     float64
	grounded bool
}

func (p panel) middle() (m kernel.Vector) {
	for _, c := range p.corner {
		m = m.Plus(0.25, c)
	}
	return m
}

// moved shifts a panel along an axis.
func (p panel) moved(axis int, by float64) panel {
	for i := range p.corner {
		p.corner[i][axis] += by
	}
	return p
}

func length(v kernel.Vector) float64 { return math.Sqrt(v.Dot(v)) }

// normal has the length of the panel's area.
func (p panel) normal() kernel.Vector {
	c := p.corner
	return kernel.Vector{}.Plus(0.5, c[2].Plus(-1, c[0]).Cross(c[3].Plus(-1, c[1])))
}

// potential is the integral of 1/R over the panel.
func (p panel) potential(r kernel.Vector) float64 {
	n := p.normal()
	area := length(n)
	m := p.middle()
	far := length(r.Plus(-1, m))
	if far > 8*max(length(p.corner[0].Plus(-1, m)), length(p.corner[1].Plus(-1, m))) {
		return area / far
	}
	n = kernel.Vector{}.Plus(1/area, n)
	d := math.Abs(n.Dot(r.Plus(-1, m)))
	sum := 0.0
	for i, from := range p.corner {
		a, b := from.Plus(-1, r), p.corner[(i+1)%4].Plus(-1, r)
		along := b.Plus(-1, a)
		if length(along) < 1e-12 {
			continue
		}
		along = kernel.Vector{}.Plus(1/length(along), along)
		out := a.Dot(along.Cross(n))
		la, lb, ra, rb := a.Dot(along), b.Dot(along), length(a), length(b)
		if math.Abs(out) < 1e-12 {
			continue
		}
		log := math.Log((rb + lb) / (ra + la))
		if la+lb < 0 {
			log = math.Log((ra - la) / (rb - lb))
		}
		base := out*out + d*d
		sum += out*log - d*(math.Atan(out*lb/(base+d*rb))-math.Atan(out*la/(base+d*ra)))
	}
	return sum
}

// mirrors are planes through the origin: +1 for the same voltage behind it, -1 for the opposite, 0 for none.
type mirrors [3]float64

// field is the panels with their influence on each other, decomposed.
type field struct {
	panels []panel
	images float64
	lu     mat.LU
}

func solved(panels []panel, m mirrors) *field {
	f, n := &field{panels: panels, images: 1}, len(panels)
	for _, s := range m {
		if s != 0 {
			f.images *= 2
		}
	}
	a := mat.NewDense(n, n, nil)
	for i, p := range panels {
		at := p.middle()
		for j, from := range panels {
			sum := 0.0
			for image := range 8 {
				r, sign := at, 1.0
				for axis := range 3 {
					if image>>axis&1 == 1 {
						r[axis], sign = -r[axis], sign*m[axis]
					}
				}
				if sign != 0 {
					sum += sign * from.potential(r)
				}
			}
			a.Set(i, j, sum/(4*math.Pi*kernel.VacuumPermittivity))
		}
	}
	f.lu.Factorize(a)
	return f
}

// effective is the sum of charge times voltage, with a voltage for each panel: twice the energy, inside and outside of closed surfaces.
func (f *field) effective(volt func(panel) float64) float64 {
	b, q := mat.NewVecDense(len(f.panels), nil), mat.NewVecDense(len(f.panels), nil)
	for i, p := range f.panels {
		b.SetVec(i, volt(p))
	}
	if err := f.lu.SolveVecTo(q, false, b); err != nil {
		panic(err)
	}
	sum := 0.0
	for i, p := range f.panels {
		sum += q.AtVec(i) * length(p.normal()) * b.AtVec(i) * f.images
	}
	return sum
}

func plain(p panel) float64 { return p.volt }

func effective(panels []panel, m mirrors) float64 { return solved(panels, m).effective(plain) }

// graded returns n+1 places from 0 to 1, close at both ends.
func graded(n int) []float64 {
	list := make([]float64, n+1)
	for i := range list {
		list[i] = (1 - math.Cos(math.Pi*float64(i)/float64(n))) / 2
	}
	return list
}

// round walks along parts of the outline of a rounded rectangle, in steps along each half side and in each corner, through as many
// quadrants.
func round(o kernel.Outline, quadrants, steps int) (points []kernel.Vector) {
	a, b := o.Length/2-o.Radius, o.Width/2-o.Radius
	for q := range quadrants {
		var part []kernel.Vector
		for i := range steps {
			if b > 1e-9 {
				part = append(part, kernel.Vector{a + o.Radius, b * float64(i) / float64(steps)})
			}
		}
		for i := range steps {
			if o.Radius > 1e-9 {
				sin, cos := math.Sincos(math.Pi / 2 * float64(i) / float64(steps))
				part = append(part, kernel.Vector{a + o.Radius*cos, b + o.Radius*sin})
			}
		}
		for i := range steps + 1 {
			if a > 1e-9 || i == 0 {
				part = append(part, kernel.Vector{a * (1 - float64(i)/float64(steps)), b + o.Radius})
			}
		}
		for i := range part {
			k := i
			if q%2 == 1 {
				k = len(part) - 1 - i
			}
			sx, sy := [4]float64{1, -1, -1, 1}[q], [4]float64{1, 1, -1, -1}[q]
			p := kernel.Vector{sx * part[k][0], sy * part[k][1]}
			if len(points) == 0 || length(points[len(points)-1].Plus(-1, p)) > 1e-9 {
				points = append(points, p)
			}
		}
	}
	return points
}

// strip joins two walks, at heights that may differ, by panels of a voltage that depends on how far it is from the first
// to the second.
func strip(first, second []kernel.Vector, z1, z2 float64, n int, volt func(x float64) float64) (list []panel) {
	at := func(i int, x float64) kernel.Vector {
		p := kernel.Vector{}.Plus(1-x, first[i]).Plus(x, second[i])
		p[2] = z1 + x*(z2-z1)
		return p
	}
	g := graded(n)
	for k := range n {
		for i := range len(first) - 1 {
			list = append(list, panel{corner: [4]kernel.Vector{at(i, g[k]), at(i+1, g[k]), at(i+1, g[k+1]), at(i, g[k+1])}, volt: volt((g[k] + g[k+1]) / 2)})
		}
	}
	return list
}

func TestPanels(t *testing.T) {
	// a square plate of 1 m: 40.81 pF, T. J. Higgins, D. K. Reitan, AIEE Transactions 70 (1951) 926-933, and many since
	edge := round(kernel.Outline{Length: 1, Width: 1}, 1, 6)
	var middle []kernel.Vector
	for range edge {
		middle = append(middle, kernel.Vector{})
	}
	one := func(float64) float64 { return 1 }
	close(t, "square plate", effective(strip(edge, middle, 0, 0, 10, one), mirrors{1, 1, 0}), 40.81e-12, 0.01)
	// a sphere of 1 m, as rings
	ball := round(kernel.Outline{Length: 2, Width: 2, Radius: 1}, 1, 8)
	var list []panel
	for i := range 8 {
		ring := func(φ float64) (ring []kernel.Vector, z float64) {
			for _, p := range ball {
				ring = append(ring, kernel.Vector{}.Plus(math.Cos(φ), p))
			}
			return ring, math.Sin(φ)
		}
		a, z1 := ring(math.Pi / 2 * float64(i) / 8)
		b, z2 := ring(math.Pi / 2 * float64(i+1) / 8)
		list = append(list, strip(a, b, z1, z2, 1, one)...)
	}
	close(t, "sphere", effective(list, mirrors{1, 1, 1}), 4*math.Pi*kernel.VacuumPermittivity, 0.01)
}
