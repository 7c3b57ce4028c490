package induct

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/mathext"
)

// This file holds the witnesses: other methods for the same quantities, none of which shares
// a formula with the package.
//
//	loops       two coaxial circles, Maxwell's elliptic integrals
//	bessel      a thick circular coil is checked by the table made with Bessel functions
//	solenoid    Lorenz's current sheet, elliptic integrals
//	filamentSum     any two windings in space, sums of dl·dl'/R over points of filaments
//	biotSavart  any winding and a point, sums over points of filaments
//	slices      any windings with parallel axes, an average over directions of integrals in one dimension: tables
//
//	what                        against
//	Self, circle                table (Bessel), solenoid, Nagaoka, Wheeler, Brooks
//	Self, other shapes          tables (sums over filaments, slices), splitting into parts, filamentSum of the parts
//	Coaxial, circles            loops
//	Coaxial, other shapes       table (slices), filamentSum, reciprocity, splitting
//	Pair                        table (slices, sums over filaments), Coaxial, filamentSum, flux of Field through the other coil
//	Potential, Field            table (axis), biotSavart, curl, far dipole
//	DiscreteSelf                loop formulas, Self with RoundWire, Coaxial of the turns
//	Outline                     Section of the same shape

// loops is Maxwell's mutual inductance of two coaxial circles (Treatise, 1873, art. 701).
func loops(a, b, z float64) float64 {
	m := 4 * a * b / ((a+b)*(a+b) + z*z)
	k := math.Sqrt(m)
	return Mu0 * math.Sqrt(a*b) * ((2/k-k)*mathext.CompleteK(m) - 2/k*mathext.CompleteE(m))
}

// solenoid is Lorenz's inductance of a circular current sheet of one turn (1879; Rosa and
// Grover 1912, formula 72).
func solenoid(radius, length float64) float64 {
	b := length / (2 * radius)
	m := 1 / (1 + b*b)
	k := math.Sqrt(m)
	nagaoka := 4 / (3 * math.Pi * b) * (((2*m-1)*mathext.CompleteE(m)+(1-m)*mathext.CompleteK(m))/(k*k*k) - 1)
	return Mu0 * math.Pi * radius * radius / length * nagaoka
}

// circles averages loops over two windows with n Gauss points in each of the four directions.
func circles(a, b Section, z float64, n int) float64 {
	x, w := make([]float64, n), make([]float64, n)
	quad.Legendre{}.FixedLocations(x, w, -0.5, 0.5)
	sum := 0.0
	for i := range n {
		for j := range n {
			for k := range n {
				for l := range n {
					ra := a.CornerRadius + (0.5+x[i])*a.Build
					rb := b.CornerRadius + (0.5+x[j])*b.Build
					sum += w[i] * w[j] * w[k] * w[l] * loops(ra, rb, z+x[k]*a.Height+x[l]*b.Height)
				}
			}
		}
	}
	return sum
}

// An element is a short piece of filament: its middle and its vector.
type element struct{ at, dl [3]float64 }

// filaments cuts a winding into n by n filaments of m elements each, every
// element with the share of its filament as weight. The elements are equal in
// normal angle or in length, so that each side and corner has its own midpoint rule.
func filaments(s Section, n, m int, place Placement) []element {
	x, w := make([]float64, n), make([]float64, n)
	quad.Legendre{}.FixedLocations(x, w, 0, 1)
	a, b := s.straights()
	list := []element{}
	for i := range n {
		for j := range n {
			radius, z := s.CornerRadius+x[i]*s.Build, (x[j]-0.5)*s.Height
			for _, e := range outlineElements(a, b, radius, z, m) {
				e.at, e.dl = place.point(e.at), place.vector(e.dl)
				for c := range 3 {
					e.dl[c] *= w[i] * w[j]
				}
				list = append(list, e)
			}
		}
	}
	return list
}

// outlineElements walks a rounded rectangle: per quarter, a corner about (±a/2, ±b/2) and the side
// after it, with Gauss points on each.
func outlineElements(a, b, radius, z float64, m int) []element {
	x, w := make([]float64, m), make([]float64, m)
	quad.Legendre{}.FixedLocations(x, w, 0, 1)
	list := []element{}
	for quarter := range 4 {
		angle := float64(quarter) * math.Pi / 2
		cx, cy := a/2*[4]float64{1, -1, -1, 1}[quarter], b/2*[4]float64{1, 1, -1, -1}[quarter]
		side := [2]float64{a, b}[quarter%2]
		dx, dy := math.Cos(angle+math.Pi), math.Sin(angle+math.Pi)
		for i := range m {
			s, c := math.Sincos(angle + x[i]*math.Pi/2)
			l := w[i] * radius * math.Pi / 2
			list = append(list,
				element{[3]float64{cx + radius*c, cy + radius*s, z}, [3]float64{-s * l, c * l, 0}},
				element{[3]float64{cx + radius*dy + x[i]*side*dx, cy - radius*dx + x[i]*side*dy, z}, [3]float64{dx * side * w[i], dy * side * w[i], 0}})
		}
	}
	return list
}

// filamentSum is F. E. Neumann's double integral (1845) over elements that do not touch.
func filamentSum(p, q []element) float64 {
	sum := 0.0
	for _, a := range p {
		for _, b := range q {
			x, y, z := a.at[0]-b.at[0], a.at[1]-b.at[1], a.at[2]-b.at[2]
			sum += (a.dl[0]*b.dl[0] + a.dl[1]*b.dl[1] + a.dl[2]*b.dl[2]) / math.Sqrt(x*x+y*y+z*z)
		}
	}
	return Mu0 / (4 * math.Pi) * sum
}

func closed(list []element) (length float64, gap [3]float64) {
	for _, e := range list {
		length += math.Sqrt(e.dl[0]*e.dl[0] + e.dl[1]*e.dl[1] + e.dl[2]*e.dl[2])
		for c := range 3 {
			gap[c] += e.dl[c]
		}
	}
	return length, gap
}

// The witness itself is checked: its curve closes, has the length of the turn and the area.
func TestWitnessOutline(t *testing.T) {
	s := Section{0.07, 0.012, 0.003, 0.01, 0.004}
	a, b := s.straights()
	list := outlineElements(a, b, s.CornerRadius+0.001, 0, 12)
	length, gap := closed(list)
	closeTo(t, "length", length, s.TurnLength(0.001), 1e-12)
	if math.Abs(gap[0])+math.Abs(gap[1]) > 1e-15 {
		t.Errorf("the curve does not close: %v", gap)
	}
	area := 0.0
	for _, e := range list {
		area += (e.at[0]*e.dl[1] - e.at[1]*e.dl[0]) / 2
	}
	closeTo(t, "area", area, s.TurnArea(0.001), 1e-12)
}

// TestSelfOfThinSolenoids holds windings a millionth of their radius thick against
// Lorenz's current sheet in their middle.
func TestSelfOfThinSolenoids(t *testing.T) {
	const radius = 0.01
	for _, length := range []float64{0.002, 0.005, 0.01, 0.02, 0.05} {
		build := radius * 1e-6
		got, _ := SelfTo(Circle(radius-build/2, length, build), 1, 1e-7)
		closeTo(t, "thin solenoid", got, solenoid(radius, length), 5e-6)
	}
}
