package induct

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"gonum.org/v1/gonum/mathext"

	"lode/stdlib/internal/evidence"
)

// table reads a reference table: a map from column name to text for each row.
func table(t testing.TB, name string) []map[string]string {
	t.Helper()
	file, err := os.Open("../../../../testdata/reference/" + name + ".csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	list := make([]map[string]string, 0, len(rows)-1)
	for _, row := range rows[1:] {
		entry := map[string]string{}
		for i, head := range rows[0] {
			entry[head] = row[i]
		}
		list = append(list, entry)
	}
	if len(list) == 0 {
		t.Fatalf("%s: no rows", name)
	}
	return list
}

func number(t testing.TB, row map[string]string, column string) float64 {
	t.Helper()
	value, err := strconv.ParseFloat(row[column], 64)
	if err != nil {
		t.Fatalf("column %s: %v", column, err)
	}
	return value
}

// book keeps what tests compared; DEVELOPERS.md tells how to print it.
var book evidence.Book

func closeTo(t testing.TB, what string, got, want, relative float64) {
	t.Helper()
	if !(math.Abs(got-want) <= relative*math.Abs(want)) {
		t.Errorf("%s: got %.10g, want %.10g, off by %.2g, allowed %.2g", what, got, want, got/want-1, relative)
	}
	if strings.ContainsAny(what, "0123456789{") { // the name of a case
		what = ""
	}
	book.Note(t, what, math.Abs(got-want)/math.Abs(want))
}

// The table holds sheets from Lyle 1914, an exact Bessel integral for thick coils, the Brooks
// coil, and two large coils whose printed figure is Lyle's series (trap: the series is
// 0.04 % high for the flat coil, hence the table's own tolerance).
func TestSelfOfCircularCoils(t *testing.T) {
	for _, row := range table(t, "inductance_circular_cases") {
		mean, build := number(t, row, "mean_radius_m"), number(t, row, "radial_build_m")
		s := Circle(mean-build/2, number(t, row, "axial_length_m"), build)
		got, _ := Self(s, number(t, row, "turns"))
		closeTo(t, row["case_id"], got, number(t, row, "inductance_H"), number(t, row, "relative_tolerance"))
	}
}

// The table was made by a Neumann double sum over filaments; its own error is 2e-5.
func TestSelfOfRacetracks(t *testing.T) {
	for _, row := range table(t, "inductance_racetrack_numeric") {
		mean, build := number(t, row, "mean_end_radius_m"), number(t, row, "radial_build_m")
		r := mean - build/2
		s := Section{number(t, row, "straight_length_m") + 2*r, 2 * r, r, number(t, row, "axial_height_m"), build}
		got, _ := Self(s, number(t, row, "turns"))
		closeTo(t, row["case_id"], got, number(t, row, "inductance_H"), number(t, row, "relative_tolerance"))
	}
}

// The table's printed column is Grover 1946, table 36, which has errors of a few units
// in the last place; the computed column is Lorenz's closed form.
func TestSheetAgainstNagaokaTable(t *testing.T) {
	const radius = 0.01
	for _, row := range table(t, "inductance_nagaoka_table") {
		ratio := number(t, row, "length_over_diameter")
		if ratio == 0 {
			continue
		}
		length := 2 * radius * ratio
		l, _ := SelfTo(Circle(radius, length, 0), 1, 1e-7)
		factor := l * length / (Mu0 * math.Pi * radius * radius)
		closeTo(t, "computed, l/D "+row["length_over_diameter"], factor, number(t, row, "nagaoka_K_computed"), 3e-7)
		closeTo(t, "printed, l/D "+row["length_over_diameter"], factor, number(t, row, "nagaoka_K_printed"), 2e-4)
	}
}

func TestSheetAgainstNagaokaLong(t *testing.T) {
	for _, row := range table(t, "inductance_nagaoka_long") {
		ratio := number(t, row, "length_over_diameter")
		l, _ := Self(Circle(0.5, ratio, 0), 1)
		closeTo(t, "l/D "+row["length_over_diameter"], l*ratio/(Mu0*math.Pi/4), number(t, row, "nagaoka_K"), 1e-5)
	}
}

// Wheeler 1928. The exact column is a Bessel integral; the formula itself must be
// off by the error the table states.
func TestSelfAgainstWheelerTables(t *testing.T) {
	for _, row := range table(t, "inductance_wheeler_multilayer") {
		mean, build := number(t, row, "mean_radius_m"), number(t, row, "radial_build_m")
		height, turns := number(t, row, "axial_length_m"), number(t, row, "turns")
		got, _ := Self(Circle(mean-build/2, height, build), turns)
		closeTo(t, "multilayer", got, number(t, row, "exact_H"), 2e-5)
		wheeler := 0.8e-6 / 0.0254 * turns * turns * mean * mean / (6*mean + 9*height + 10*build)
		closeTo(t, "Wheeler's formula", wheeler/got, 1+number(t, row, "wheeler_error_percent")/100, 2e-5)
	}
	for _, row := range table(t, "inductance_wheeler_single_layer") {
		got, _ := Self(Circle(number(t, row, "radius_m"), number(t, row, "length_m"), 0), number(t, row, "turns"))
		closeTo(t, "single layer", got, number(t, row, "lorenz_exact_H"), 1e-5)
	}
}

// Maxwell's loops, as coils of no section.
func TestCoaxialLoops(t *testing.T) {
	for _, row := range table(t, "inductance_mutual_coaxial_loops") {
		a, b, z := number(t, row, "radius_a_m"), number(t, row, "radius_b_m"), number(t, row, "axial_distance_m")
		got, _ := CoaxialTo(Circle(a, 0, 0), Circle(b, 0, 0), 1, 1, z, 1e-7)
		closeTo(t, row["radius_a_m"]+" "+row["radius_b_m"]+" "+row["axial_distance_m"], got, number(t, row, "mutual_H"), 1e-6)
	}
}

// The witness's elliptic integrals.
func TestEllipticIntegrals(t *testing.T) {
	for _, row := range table(t, "elliptic_integrals") {
		m := number(t, row, "parameter_m")
		closeTo(t, "K", mathext.CompleteK(m), number(t, row, "K"), 1e-12)
		closeTo(t, "E", mathext.CompleteE(m), number(t, row, "E"), 1e-12)
	}
}

// Lyle 1914, table I, prints five to six figures.
func TestRectangleMeanDistance(t *testing.T) {
	for _, row := range table(t, "inductance_rectangle_gmd") {
		ratio := number(t, row, "b_over_c")
		got := RectangleMeanDistance(ratio, 1) / (1 + ratio)
		closeTo(t, "printed", got, number(t, row, "gmd_over_b_plus_c_printed"), 1e-5)
		closeTo(t, "computed", got, number(t, row, "gmd_over_b_plus_c_computed"), 1e-7)
	}
}

// The formulas of the two tables are those of thin wire: they leave out terms of the order of
// (wire radius / loop radius)² for the circle and wire radius / side for the rectangle.
func TestSingleTurns(t *testing.T) {
	one := []Turn{{}}
	for _, row := range table(t, "inductance_circular_loop") {
		r, wire := number(t, row, "loop_radius_m"), number(t, row, "wire_radius_m")
		even, _ := DiscreteSelf(Circle(r, 0, 0), one, Wire{Radius: wire})
		skin, _ := DiscreteSelf(Circle(r, 0, 0), one, Wire{Radius: wire, SurfaceCurrent: true})
		thin := wire / r * wire / r
		closeTo(t, "circle, even", even, number(t, row, "inductance_uniform_current_H"), thin)
		closeTo(t, "circle, surface", skin, number(t, row, "inductance_surface_current_H"), thin)
	}
	for _, row := range table(t, "inductance_rectangular_loop") {
		a, b, wire := number(t, row, "side_a_m"), number(t, row, "side_b_m"), number(t, row, "wire_radius_m")
		core := Section{CoreLength: a, CoreWidth: b}
		even, _ := DiscreteSelf(core, one, Wire{Radius: wire})
		skin, _ := DiscreteSelf(core, one, Wire{Radius: wire, SurfaceCurrent: true})
		closeTo(t, "rectangle, even", even, number(t, row, "inductance_dc_H"), wire/min(a, b)/2)
		closeTo(t, "rectangle, surface", skin, number(t, row, "inductance_no_internal_H"), wire/min(a, b)/2)
	}
}
