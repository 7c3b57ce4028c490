package induct

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"
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

func closeTo(t testing.TB, what string, got, want, relative float64) {
	t.Helper()
	if !(math.Abs(got-want) <= relative*math.Abs(want)) {
		t.Errorf("%s: got %.10g, want %.10g, off by %.2g, allowed %.2g", what, got, want, got/want-1, relative)
	}
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
