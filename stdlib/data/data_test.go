package data

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"lode/units"
)

func TestHeads(t *testing.T) {
	for _, c := range []struct{ cell, name, unit, kind string }{
		{"frequency Hz", "frequency", "Hz", "Frequency"},
		{"frequency (kHz)", "frequency", "kHz", "Frequency"},
		{"frequency[Hz]", "frequency", "Hz", "Frequency"},
		{"frequency / Hz", "frequency", "Hz", "Frequency"},
		{"frequency/Hz", "frequency", "Hz", "Frequency"},
		{"frequency, Hz", "frequency", "Hz", "Frequency"},
		{"level dB", "level", "dB", "Level"},
		{"phase °", "phase", "°", "Angle"},
		{"phase (deg)", "phase", "deg", "Angle"},
		{"room °C", "room", "°C", "Temperature"},
		{"cold resistance kΩ", "cold resistance", "kΩ", "Resistance"},
		{"cable (pF/m)", "cable", "pF/m", "CapacitancePerLength"},
		{"area mm²", "area", "mm²", "Area"},
		{"tolerance %", "tolerance", "%", ""},
		{"Hz", "frequency", "Hz", "Frequency"},
		{"note", "note", "", ""},
		{"coil 2", "coil 2", "", ""},
		{"coil (2)", "coil (2)", "", ""},
		{"north and south", "north and south", "", ""},
	} {
		h, ok := readHead(c.cell)
		if !ok || h.name != c.name || h.unit != c.unit || h.kind.Type != c.kind {
			t.Errorf("%q: got %q in %q of kind %q (%t), want %q in %q of kind %q", c.cell, h.name, h.unit, h.kind.Type, ok, c.name, c.unit, c.kind)
		}
	}
	if _, ok := readHead("level (loud)"); ok {
		t.Error("a bracket that holds no unit is taken for one")
	}
}

func TestValues(t *testing.T) {
	for _, separator := range []string{",", ";", "\t"} {
		text := strings.ReplaceAll("\ufeff# bench, second day\r\n\r\nfrequency kHz|level dB|room °C|turns|note\r\n0.0824|−3.1|20.5|5000|open\r\n1.5e1|+0.25|21|6000|\r\n", "|", separator)
		s, err := Parse("a.csv", text)
		if err != nil {
			t.Fatalf("%q: %v", separator, err)
		}
		f, err1 := s.Frequencies("frequency")
		l, err2 := s.Levels("level")
		r, err3 := s.Temperatures("room")
		n, err4 := s.Numbers("turns")
		x, err5 := s.Texts("note")
		for _, err := range []error{err1, err2, err3, err4, err5} {
			if err != nil {
				t.Fatal(err)
			}
		}
		got := fmt.Sprintf("%.10g %.10g %.10g %.10g %.10g %.10g %g %g %q", float64(f[0]), float64(f[1]), float64(l[0]), float64(l[1]), r[0].Degrees(), r[1].Degrees(), n[0], n[1], x)
		if want := `82.4 15000 -3.1 0.25 20.5 21 5000 6000 ["open" ""]`; got != want {
			t.Errorf("%q: got %s, want %s", separator, got, want)
		}
	}
}

// TestFaults holds one message for each thing that can be wrong with a file.
func TestFaults(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"", "a.csv: the file is empty"},
		{"# only a remark\n", "a.csv: the file is empty"},
		{"f Hz,l dB\n1,2\n3,x\n", `a.csv:3:3: l: this is no number: got "x"`},
		{"f Hz;l dB\n1;2,5\n", `a.csv:2:3: l: decimal comma: got "2,5"`},
		{"f Hz;n\n1;2,5\n", `a.csv:2:3: n: decimal comma: got "2,5"`},
		{"f Hz,l dB\n1,2\n\n3\n", "a.csv:4:1: the row has another number of cells than the head: got 1, want 2"},
		{"f Hz,l dB\n1,2,3\n", "got 3, want 2"},
		{"f Hz,f mm\n", `a.csv:1:6: head: two columns are called "f"`},
		{"f Hz,\n", "a.csv:1:6: head: a column without a name"},
		{"f (Herz)\n", "a.csv:1:1: head: unknown unit in brackets"},
		{"1.5,2\n", "a.csv:1:1: head: this is a number"},
		{"f Hz,note\n1,\"open\n", "a.csv:2:9: the quotation marks do not fit together"},
		{"f Hz,note\n1,o\"pen\n", "a.csv:2:4: the quotation marks do not fit together"},
		{"f Hz\n1\nµ\xb5\n", "a.csv:3:1: the line is not UTF-8"},
		{"\xff\xfef\x00", "UTF-16"},
		{"f Hz\n\x00\n", "the file is no text"},
		{"f Hz\nNaN\n", "a finite decimal number"},
		{"f Hz\nInf\n", "a finite decimal number"},
		{"f Hz\n1e999\n", "a finite decimal number"},
		{"f Hz\n0x1p4\n", "a finite decimal number"},
		{"f Hz\n4 kHz\n", "the unit stands in the head"},
		{strings.Repeat("a,", 64) + "b\n", "too many columns: got 65"},
		{"f Hz\n" + strings.Repeat("1\n", mostRows+1), "a.csv:100002:1: the file has too many rows"},
	} {
		_, err := Parse("a.csv", c.text)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%.40q: got %v, want %s", c.text, err, c.want)
		}
	}
}

func TestColumns(t *testing.T) {
	s, err := Parse("a.csv", "f Hz,l dB,n,x\n1,2,,a\n3,4,5,b\n")
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]string{
		"g": `there is no such column: got "g", want one of f, l, n, x`, "l": "got level difference in dB, want frequency in Hz", "x": "got texts",
	} {
		if _, err := s.Frequencies(name); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: got %v, want %s", name, err, want)
		}
	}
	if _, err := s.Numbers("n"); err == nil || !strings.Contains(err.Error(), "row 1 has no value") {
		t.Errorf("a gap: got %v", err)
	}
	filled := s.Filled()
	if n, err := filled.Numbers("n"); err != nil || len(n) != 1 || n[0] != 5 || filled.Rows() != 1 || filled.Frame().Columns[3].Texts[0] != "b" {
		t.Errorf("filled: got %v, %v", n, err)
	}
	if f, _ := s.Frequencies("f"); f != nil {
		f[0] = 99
	}
	if f, _ := s.Frequencies("f"); f[0] != 1 {
		t.Error("a list that was handed out changes the sheet")
	}
	if got, want := s.String(), "a.csv: 2 rows of f in Hz, l in dB, n, x"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	if f := s.Frame(); f.Title != "a.csv" || f.Rows() != 2 || f.Columns[0].Kind.Type != "Frequency" {
		t.Errorf("frame: got %+v", f)
	}
}

// TestRoundTrip writes random quantities in random units and reads them back.
func TestRoundTrip(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 5))
	for range 200 {
		unit := units.Units()[random.IntN(len(units.Units()))]
		value := (random.Float64() - 0.5) * math.Pow(10, float64(random.IntN(13)-6))
		s, err := Parse("a.csv", fmt.Sprintf("x (%s)\n%.17g\n", unit.Symbols()[0], value))
		if err != nil {
			t.Fatalf("%s: %v", unit.Const, err)
		}
		c := s.Frame().Columns[0]
		if c.Kind.Type != unit.Type || math.Abs(c.Values[0]-value*unit.Factor) > 1e-15*math.Abs(value*unit.Factor) {
			t.Errorf("%s: got %v of kind %s, want %v of kind %s", unit.Const, c.Values[0], c.Kind.Type, value*unit.Factor, unit.Type)
		}
	}
}

// FuzzParse looks for a text that makes the reader fail instead of refuse.
func FuzzParse(f *testing.F) {
	f.Add("f Hz,l dB\n1,2\n")
	f.Add("a;b\n\"1\";2,5\n# x\n")
	f.Add("\ufefff\t(Hz)\n1\t2")
	f.Fuzz(func(t *testing.T, text string) {
		s, err := Parse("a.csv", text)
		if err != nil {
			if !strings.HasPrefix(err.Error(), "a.csv:") {
				t.Errorf("a message without its place: %v", err)
			}
			return
		}
		for _, c := range s.Frame().Columns {
			if c.Len() != s.Rows() {
				t.Errorf("column %q has %d rows, want %d", c.Name, c.Len(), s.Rows())
			}
		}
		_ = s.Filled().String()
	})
}
