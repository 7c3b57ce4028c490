package induct

import (
	"math"
	"testing"
)

// biotSavart is the flux density of elements: J.-B. Biot and F. Savart 1820.
func biotSavart(list []element, at [3]float64) (b [3]float64) {
	for _, e := range list {
		r := [3]float64{at[0] - e.at[0], at[1] - e.at[1], at[2] - e.at[2]}
		d := cross(e.dl, r)
		r3 := math.Pow(dot(r, r), 1.5)
		for c := range 3 {
			b[c] += Mu0 / (4 * math.Pi) * d[c] / r3
		}
	}
	return b
}

func TestFieldOnAxis(t *testing.T) {
	for _, row := range table(t, "fields_coil_on_axis") {
		length := 0.0
		if row["length_m"] != "" {
			length = number(t, row, "length_m")
		}
		s := Circle(number(t, row, "radius_m"), length, 0)
		z := number(t, row, "z_m")
		b := Field(s, number(t, row, "turns"), [3]float64{0, 0, z})
		closeTo(t, row["geometry"]+" "+row["z_m"], b[2]*number(t, row, "current_A"), number(t, row, "B_T"), 1e-7)
		if math.Abs(b[0])+math.Abs(b[1]) > 1e-9*math.Abs(b[2]) {
			t.Errorf("the field on the axis leans: %v", b)
		}
	}
}

func vectorsClose(t *testing.T, what string, got, want [3]float64, relative float64) {
	t.Helper()
	gap := [3]float64{got[0] - want[0], got[1] - want[1], got[2] - want[2]}
	off := math.Sqrt(dot(gap, gap) / dot(want, want))
	book.Note(t, what, off)
	if !(off <= relative) {
		t.Errorf("%s: got %v, want %v, off by %.2g, allowed %.2g", what, got, want, off, relative)
	}
}

var fieldPoints = [][3]float64{
	{0, 0, 0.001}, {0.01, 0.002, 0}, {0.05, 0.01, 0.004}, {-0.03, 0.02, -0.009}, {0.002, -0.016, 0.013}, {0.2, 0.3, -0.1},
}

func TestFieldAgainstBiotSavart(t *testing.T) {
	for _, s := range []Section{{0.07, 0.012, 0.002, 0.01, 0.004}, {0.07, 0.012, 0.006, 0.01, 0.004}, {0.03, 0.015, 0, 0.008, 0.001}} {
		list := filaments(s, 8, 60, Placement{})
		for _, at := range fieldPoints {
			vectorsClose(t, "field", Field(s, 1, at), biotSavart(list, at), 1e-6)
		}
	}
}

// B is the curl of A: central differences, good to about 1e-6 here.
func TestFieldIsCurlOfPotential(t *testing.T) {
	s := Section{0.07, 0.012, 0.002, 0.01, 0.004}
	const step = 1e-5
	for _, at := range fieldPoints {
		var slope [3][3]float64 // slope[i][j] = ∂A_j/∂x_i
		for i := range 3 {
			up, down := at, at
			up[i] += step
			down[i] -= step
			a, b := Potential(s, 100, up), Potential(s, 100, down)
			for j := range 3 {
				slope[i][j] = (a[j] - b[j]) / (2 * step)
			}
		}
		curl := [3]float64{slope[1][2] - slope[2][1], slope[2][0] - slope[0][2], slope[0][1] - slope[1][0]}
		vectorsClose(t, "curl", curl, Field(s, 100, at), 1e-5)
	}
}

// Far away a coil is a dipole of the moment turns × mean area.
func TestFieldFarAwayIsDipole(t *testing.T) {
	s := Section{0.07, 0.012, 0.002, 0.01, 0.004}
	at := [3]float64{3, 4, 12}
	m := 1000 * s.MeanTurnArea()
	r := 13.0
	want := [3]float64{}
	for c := range 3 {
		want[c] = Mu0 / (4 * math.Pi) * 3 * at[c] * m * at[2] / math.Pow(r, 5)
	}
	want[2] -= Mu0 / (4 * math.Pi) * m / math.Pow(r, 3)
	vectorsClose(t, "dipole", Field(s, 1000, at), want, 1e-4)
}
