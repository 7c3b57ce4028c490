package record

import (
	"math"
	"testing"

	"lode/units"
	"lode/units/frame"
)

func sample(resistance float64, level float64) *Record {
	r := New("test", "go", "source")
	r.Add(0, 4, "r", units.Resistance(resistance), "")
	r.Add(0, 5, "n", 3, "")
	r.Add(1, 9, "t", frame.Frame{Title: "curve", Columns: []frame.Column{frame.Of("level", units.Level(0).Kind(), []float64{0, level, math.NaN()})}}, "")
	r.Add(1, 10, "words", "a", "a")
	return r
}

func TestRoundTrip(t *testing.T) {
	r := sample(1.0/3, -3.0103)
	data, err := r.Encode()
	if err != nil {
		t.Fatal(err)
	}
	back, err := Decode(data)
	if err != nil {
		t.Fatal(err)
	}
	if d := Compare(r, back, 0); len(d) != 0 {
		t.Errorf("a record differs from itself: %v", d)
	}
}

func TestCompare(t *testing.T) {
	base := sample(100, -3)
	for _, c := range []struct {
		name      string
		other     *Record
		tolerance float64
		want      int
	}{
		{"same", sample(100, -3), 0, 0}, {"within", sample(100.0000001, -3), 1e-8, 0}, {"beyond", sample(100.1, -3), 1e-6, 1},
		{"curve", sample(100, -3.5), 1e-6, 1}, {"both", sample(101, -3.5), 1e-6, 2}, {"undefined", sample(math.NaN(), -3), 1e-6, 1},
	} {
		if d := Compare(base, c.other, c.tolerance); len(d) != c.want {
			t.Errorf("%s: got %v, want %d differences", c.name, d, c.want)
		}
	}
	less := sample(100, -3)
	less.Results = less.Results[:2]
	if d := Compare(base, less, 0); len(d) != 2 {
		t.Errorf("missing results: got %v, want 2", d)
	}
	if d := Compare(less, base, 0); len(d) != 2 {
		t.Errorf("new results: got %v, want 2", d)
	}
}

// TestApart wants numbers as they are read elsewhere, and more digits only where it takes them.
func TestApart(t *testing.T) {
	for _, c := range [][5]string{
		{"0.0001556801333", "0.0001600952293", "V", "155.7 µV", "160.1 µV"}, {"7232.533441", "7344.101671", "Ω", "7.233 kΩ", "7.344 kΩ"},
		{"7232.533441", "7232.533442", "Ω", "7232.533441 Ω", "7232.533442 Ω"}, {"7000", "7100", "", "7000", "7100"},
	} {
		if was, is := apart(c[0], c[1], c[2]); was != c[3] || is != c[4] {
			t.Errorf("%v: got %s and %s", c, was, is)
		}
	}
}

func TestDecodeRefuses(t *testing.T) {
	for _, text := range []string{"", "{}", "[1]", `{"Form": 2}`} {
		if _, err := Decode([]byte(text)); err == nil {
			t.Errorf("%q was taken for a record", text)
		}
	}
}

// TestCells wants the largest step of a table named by its column and row, whatever its title.
func TestCells(t *testing.T) {
	columns := func(title string, values ...string) []Column {
		return []Column{{Name: title + " Turns", Values: values[:2]}, {Name: title + " Resistance", Unit: "Ω", Values: values[2:]}}
	}
	before := columns("Windings: AWG 43", "5000", "6000", "1000", "2000")
	for want, after := range map[string][]Column{
		"": columns("Windings: AWG 43", "5000", "6000", "1000", "2000"),
		"2 of 4 values moved, most in Resistance, row 2: 2 kΩ → 1 kΩ": columns("Windings: AWG 40", "5000", "6001", "1000", "1000"),
		"other columns or rows": columns("Windings: AWG 43", "5000", "6000", "1000", "2000", "3000"),
	} {
		if got := Cells(before, after); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}
