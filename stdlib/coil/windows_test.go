package coil

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"lode/stdlib/wire"
	"lode/units"
)

// This file holds whole windings against the tables of windows drawn at random, whose values were found by a method
// of its own: testdata/reference/inductance_windows.py.

// windowRow is one row of such a table.
type windowRow map[string]string

func windowRows(t *testing.T, name string) (rows []windowRow) {
	t.Helper()
	text, err := os.ReadFile("../../testdata/reference/" + name)
	if err != nil {
		t.Fatal(err)
	}
	lines, err := csv.NewReader(strings.NewReader(string(text))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range lines[1:] {
		row := windowRow{}
		for i, head := range lines[0] {
			row[head] = line[i]
		}
		rows = append(rows, row)
	}
	return rows
}

func (r windowRow) number(t *testing.T, column string) float64 {
	t.Helper()
	value, err := strconv.ParseFloat(r[column], 64)
	if err != nil {
		t.Fatalf("column %s: %v", column, err)
	}
	return value
}

// wind fills the row's window with some 0.65 of wire: the packing is chosen for the build.
func (r windowRow) wind(t *testing.T, prefix string, w wire.Wire) Winding {
	t.Helper()
	length := func(name string) units.Length { return units.Length(r.number(t, prefix+name+"_m")) }
	h, c, d := length("height"), length("build"), float64(w.Overall())
	area, section := math.Pi/4*d*d, float64(h)*float64(c)
	turns := math.Round(0.65 * section / area)
	f := Rectangle{CoreLength: length("core_length"), CoreWidth: length("core_width"), CornerRadius: length("corner_radius"), Height: h}
	wound := wound(t, f, w, int(turns), Style{Packing: turns * area / section})
	close(t, "build", float64(wound.Build()), float64(c), 1e-9)
	return wound
}

// rosa is what round wires have more than an even filling: the square around a wire has the mean distance 0.44705 of its
// side, the wire 0.3894 of its diameter, and the neighbours give 0.018 more (E. B. Rosa, F. W. Grover, Bull. Bureau of
// Standards 8, 1912; the last from memory).
func rosa(c Winding) float64 {
	n := float64(c.Turns())
	side := math.Sqrt(float64(c.Build()) * float64(c.Shape().Height) / n)
	return 2e-7 * float64(c.WireLength()) * (math.Log(0.44705*side/(0.3894*float64(c.Wire().Bare()))) + 0.018)
}

// Windows of thousands of turns, in which the round wires matter little: the package counts the turns in whole rows,
// so that the room of each is no square and Rosa's figure is up to a sixth off.
func TestInductanceOfRandomWindows(t *testing.T) {
	w, worst, some := gauge(t, 46), 0.0, 0
	for _, row := range windowRows(t, "inductance_windows_self.csv") {
		c := row.wind(t, "", w)
		n := float64(c.Turns())
		want := n*n*row.number(t, "inductance_H") + rosa(c)
		if rosa(c) > 5e-5*want {
			continue
		}
		got := float64(c.Inductance())
		close(t, "inductance", got, want, 1e-5+rosa(c)/want/6+row.number(t, "relative_error"))
		worst, some = max(worst, math.Abs(got/want-1)), some+1
	}
	if some < 12 {
		t.Errorf("%d windows of thousands of turns, want 12", some)
	}
	t.Logf("%d windings, at most %.2g off", some, worst)
}

// Stacked windings, windings around each other and beside each other, in series: a fourth of the rows.
func TestMutualOfRandomWindows(t *testing.T) {
	w, worst, some := gauge(t, 43), 0.0, 0
	for i, row := range windowRows(t, "inductance_windows_pair.csv") {
		if i%4 != 2 || row["turn_x"] != "0" || row["turn_z"] != "0" {
			continue
		}
		a, b := row.wind(t, "a_", w), row.wind(t, "b_", w)
		shift := func(axis string) units.Length { return units.Length(row.number(t, "shift_"+axis)) }
		chain, err := InSeries(Placed{Winding: a}, Placed{Winding: b, X: shift("x"), Y: shift("y"), Z: shift("z")})
		if err != nil {
			t.Errorf("%s: %v", row["case_id"], err)
			continue
		}
		got, want := float64(must(chain.Mutual(1, 2))), float64(a.Turns()*b.Turns())*row.number(t, "mutual_H")
		close(t, "mutual inductance", got, want, 1e-5+row.number(t, "relative_error"))
		worst, some = max(worst, math.Abs(got/want-1)), some+1
	}
	if some < 10 {
		t.Errorf("%d pairs, want 10", some)
	}
	t.Logf("%d pairs, at most %.2g off", some, worst)
}
