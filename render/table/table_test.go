package table

import (
	"math"
	"strings"
	"testing"

	"lode/units"
	"lode/units/frame"
)

func TestTable(t *testing.T) {
	for _, c := range []struct {
		name string
		rows []Line
		want string
	}{
		{"common unit", []Line{Row("as found", 8000, units.Resistance(6123.4)), Row("rewound", 12500, units.Resistance(950)), Row("two", 1, units.Resistance(12000))}, `
what      turns  value kΩ
as found   8000     6.123
rewound   12500     0.950
two           1    12.00`},
		{"trimmed", []Line{Row("a", 1, units.Length(0.5e-3)), Row("b", 2, units.Length(12e-3))}, `
what  turns  value mm
a         1       0.5
b         2      12.0`},
		{"own units", []Line{Row("a", 1, units.Resistance(4.7)), Row("b", 2, units.Resistance(1e6)), Row("c", 3, nil)}, `
what  turns   value
a         1  4.7 Ω 
b         2  1   MΩ
c         3`},
		{"mixed", []Line{Row("a", 1.5, "open"), Row("b", nil, units.Resistance(5)), Row("c", -2, true)}, `
what  turns  value
a       1.5  open
b            5 Ω
c      −2.0  yes`},
		{"temperature and angle", []Line{Row("a", 0.0001234, units.Celsius(20.5)), Row("b", 0.1, units.Celsius(-5))}, `
what      turns  value °C
a     0.0001234      20.5
b     0.1000         −5.0`},
		{"wide letters", []Line{Row("線輪", 1, 2), Row("a", 10, 20)}, `
what  turns  value
線輪      1      2
a        10     20`},
	} {
		table, err := Of(Head("what", "turns", "value"), c.rows...)
		if err != nil {
			t.Fatal(err)
		}
		got := strings.ReplaceAll(table.String(), "\u00a0", " ")
		if trimLines(got) != trimLines(c.want[1:]) {
			t.Errorf("%s:\n%s\nwant\n%s", c.name, got, c.want[1:])
		}
	}
}

func trimLines(s string) string {
	lines := strings.Split(s, "\n")
	for i := range lines {
		lines[i] = strings.TrimRight(lines[i], " ")
	}
	return strings.Join(lines, "\n")
}

func TestTransposed(t *testing.T) {
	table, err := Of(Head("variant", "turns", "resistance", "inductance"),
		Row("as found", 8000, units.Resistance(6123.4), units.Inductance(3.2)), Row("rewound", 9000, units.Resistance(7010), nil))
	if err != nil {
		t.Fatal(err)
	}
	want := `
variant     as found  rewound
turns           8000     9000
resistance     6.123    7.010  kΩ
inductance       3.2           H`
	if got := table.Transposed().String(); trimLines(got) != trimLines(want[1:]) {
		t.Errorf("got\n%s\nwant\n%s", got, want[1:])
	}
}

func TestOfRefuses(t *testing.T) {
	for name, c := range map[string][]Line{
		"row 1: got 1 cells, want 2": {Head("a", "b"), Row(1)},
		"no head":                    {Row("a", "b"), Row(1, 2)},
		"second head":                {Head("a"), Head("b")},
	} {
		if _, err := Of(c[0], c[1:]...); err == nil || !strings.Contains(err.Error(), name) {
			t.Errorf("%s: got %v", name, err)
		}
	}
	if _, err := From(nil); err == nil {
		t.Error("nil was shown as a table")
	}
}

// Four significant digits survive the way through a common unit.
func TestDigitsSurvive(t *testing.T) {
	k, _ := units.KindNamed("Capacitance")
	values := []float64{470e-12, 22e-9, 47.13e-9, 1.2345e-6, math.NaN(), 0}
	g := Layout(frame.Frame{Columns: []frame.Column{frame.Of("c", k, values)}})
	for i, v := range values[:4] {
		p, err := units.Parse(strings.Replace(g.Rows[i][0].Text(), "−", "-", 1) + " " + g.Heads[0].Unit)
		if err != nil || math.Abs(p.Value/v-1) > 5e-4 {
			t.Errorf("%g came out as %s %s", v, g.Rows[i][0].Text(), g.Heads[0].Unit)
		}
	}
	if g.Rows[4][0].Text() != "" || g.Rows[5][0].Whole != "0" {
		t.Errorf("gap and zero: got %+v, %+v", g.Rows[4][0], g.Rows[5][0])
	}
}

// TestZerosTakeTheUnitBeside wants no unit of its own for a column of nothing.
func TestZerosTakeTheUnitBeside(t *testing.T) {
	length := units.Length(0).Kind()
	g := Layout(frame.Frame{Columns: []frame.Column{
		frame.Of("x", length, []float64{0, 0}), frame.Of("z", length, []float64{0, -0.014}), frame.Of("R", units.Resistance(0).Kind(), []float64{0, 0}),
	}})
	for c, want := range []string{"mm", "mm", "Ω"} {
		if got := g.Heads[c].Unit; got != want || g.Rows[0][c].Text() != "0" {
			t.Errorf("column %d: got %q and %q, want %q and 0", c, got, g.Rows[0][c].Text(), want)
		}
	}
}
