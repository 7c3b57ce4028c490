package text

import (
	"flag"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"lode/render/internal/chart"
	"lode/render/table"
	"lode/units"
)

var update = flag.Bool("update", false, "write the golden files anew")

type sample struct{ panels []chart.Panel }

func (sample) Title() string           { return "Two invented coils" }
func (s sample) Panels() []chart.Panel { return s.panels }

func sampleChart() sample {
	hertz, _ := units.KindNamed("Frequency")
	level, _ := units.KindNamed("Level")
	p := chart.Panel{X: chart.Axis{Name: "Frequency", Kind: hertz, Log: true}, Y: chart.Axis{Name: "Level", Kind: level}}
	for i, peak := range []float64{3000, 7000} {
		s := chart.Series{Label: []string{"as found", "rewound"}[i], Row: i, Notes: []chart.Note{{Name: "resonance", X: peak, Y: 9}}}
		for k := range 200 {
			f := 20 * math.Pow(1000, float64(k)/199)
			r := f / peak
			s.X, s.Y = append(s.X, f), append(s.Y, -10*math.Log10((1-r*r)*(1-r*r)+r*r/8))
		}
		p.Series = append(p.Series, s)
	}
	p.FitX()
	p.FitY(60)
	return sample{[]chart.Panel{p}}
}

func sampleGrid(t *testing.T) table.Grid {
	got, err := table.Of(table.Head("variant", "turns", "resistance", "inductance", "note"),
		table.Row("as found", 8000, units.Resistance(6123), units.Inductance(3.21), "one end open"),
		table.Row("rewound", 9200, units.Resistance(7310), units.Inductance(4.2), ""))
	if err != nil {
		t.Fatal(err)
	}
	return got.Titled("Variants").Grid()
}

var sampleFault = Fault{File: "bridge.md", Line: 12, Column: 7, Length: 5, What: "sum: quantities of different kinds", Source: "\tx := R + L", Got: "resistance + inductance",
	Want: "two quantities of one kind", Hint: "an inductance becomes a resistance when it is multiplied by an angular frequency, as in the reactance of a coil"}

func TestGolden(t *testing.T) {
	for name, style := range map[string]Style{"wide": {Width: 80}, "narrow": {Width: 40}, "colour": {Width: 64, Colour: true}} {
		parts := []string{
			style.Values(Value{"c.Resistance()", "6.123 kΩ"}, Value{"f0", "7.312 kHz"}, Value{"a long expression that somebody wrote out in full", "3.2 H"}, Value{"c.Fit()", "two\nlines"}),
			style.Changes(Change{"f0", "7.312 kHz", "6.9 kHz"}), style.Table(sampleGrid(t)), style.Chart(sampleChart()), style.Chart(shapes(t)), style.Fault(sampleFault),
		}
		golden(t, name+".txt", strings.Join(parts, "\n\n")+"\n")
	}
}

func golden(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if *update {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil || string(want) != got {
		t.Errorf("%s differs (%v); got\n%s", name, err, got)
	}
}

// shapes are panels of the other kinds: bars, a map, an outline.
func shapes(t *testing.T) sample {
	ohm, _ := units.KindNamed("Resistance")
	length, _ := units.KindNamed("Length")
	flux, _ := units.KindNamed("FluxDensity")
	bars := chart.Panel{X: chart.Axis{Name: "Share", Kind: ohm}, Bars: []chart.Bar{{Label: "copper", Value: 7100}, {Label: "a name that goes on for longer than there is room", Value: -120.4}, {Label: "線", Value: 0}}}
	bars.FitBars()
	var x, y, v []float64
	for i := range 200 {
		x, y = append(x, float64(i%20)*1e-3), append(y, float64(i/20)*1e-3)
		v = append(v, 0.05*math.Exp(-math.Hypot(x[i]-0.008, y[i])/0.006))
	}
	m, err := chart.Gather(x, y, v)
	if err != nil {
		t.Fatal(err)
	}
	m.Scale.Name, m.Scale.Kind = "Flux density", flux
	across, up := chart.Axis{Name: "Across", Kind: length, Max: 0.019}, chart.Axis{Name: "Height", Kind: length, Max: 0.009}
	part := chart.Series{Label: "core", Filled: true, X: []float64{0.002, 0.017, 0.017, 0.002, 0.002}, Y: []float64{0.001, 0.001, 0.008, 0.008, 0.001}}
	return sample{[]chart.Panel{bars, {X: across, Y: up, Map: m}, {X: across, Y: up, Equal: true, Series: []chart.Series{part}}}}
}

// No line is wider than the terminal, whatever its width.
func TestWidths(t *testing.T) {
	for width := 24; width <= 130; width++ {
		s := Style{Width: width}
		for _, part := range []string{s.Table(sampleGrid(t)), s.Chart(sampleChart()), s.Chart(shapes(t)), s.Fault(sampleFault)} {
			for _, l := range strings.Split(part, "\n") {
				if table.Width(l) > width && !strings.Contains(l, "bridge.md") {
					t.Errorf("width %d: %q takes %d columns", width, l, table.Width(l))
				}
			}
		}
	}
}

func TestColourIsAskedFor(t *testing.T) {
	for _, c := range []struct {
		terminal bool
		env      map[string]string
		want     bool
	}{{true, nil, true}, {false, nil, false}, {true, map[string]string{"NO_COLOR": "1"}, false}, {true, map[string]string{"TERM": "dumb"}, false}} {
		s := For(c.terminal, 80, func(k string) string { return c.env[k] })
		written := s.Fault(sampleFault) + s.Chart(sampleChart()) + s.Values(Value{"a", "b"})
		if got := strings.Contains(written, "\x1b["); got != c.want {
			t.Errorf("%+v: escape sequences %v, want %v", c, got, c.want)
		}
	}
}

func TestControlCharactersAreDropped(t *testing.T) {
	evil := "a\x1b[2Jb\u202ec\u009b"
	s := Style{}
	got := s.Values(Value{evil, evil}) + s.Fault(Fault{File: evil, What: evil, Source: evil, Column: 2, Got: evil, Hint: evil})
	for _, bad := range []string{"\x1b", "\u202e", "\u009b"} {
		if strings.Contains(got, bad) {
			t.Errorf("%q came through: %q", bad, got)
		}
	}
}

// The mark stands under the place, behind tabs and wide letters too.
func TestMark(t *testing.T) {
	for _, c := range []struct {
		source string
		column int
		long   int
		want   string
	}{{"R + L", 3, 1, "  ^"}, {"\tR + L", 2, 5, " ^^^^^"}, {"線 + L", 5, 1, "     ^"}, {"x", 9, 3, " ^"}} {
		lines := strings.Split(Style{}.Fault(Fault{File: "f", Line: 1, Column: c.column, Length: c.long, Source: c.source, What: "w"}), "\n")
		if got := lines[3][4:]; got != c.want {
			t.Errorf("%q at %d: got %q, want %q", c.source, c.column, got, c.want)
		}
	}
}

// TestTableFolds wants long texts in the width of the terminal, beside the names of their rows.
func TestTableFolds(t *testing.T) {
	long := "Wear eye protection: fine wire whips when it breaks. Keep hair, sleeves and gloves away from the winder."
	of, err := table.Of(table.Head("Quantity", "Value"), table.Row("Direction, seen from the strings", "clockwise"), table.Row("Cautions", long))
	if err != nil {
		t.Fatal(err)
	}
	got := Style{Width: 70}.Table(of.Grid())
	if strings.Count(got, "Cautions") != 1 || strings.Join(strings.Fields(got), " ") != "Quantity Value "+strings.Repeat("─", 70)+" Direction, seen from the strings clockwise Cautions "+long+" "+strings.Repeat("─", 70) {
		t.Errorf("got\n%s", got)
	}
	for _, line := range strings.Split(got, "\n") {
		if table.Width(line) > 70 {
			t.Errorf("%d columns: %s", table.Width(line), line)
		}
	}
}

// TestPiecesTellRows wants as many columns of names in every piece as it takes to tell the rows apart.
func TestPiecesTellRows(t *testing.T) {
	of, err := table.Of(table.Head("Part", "Quantity", "Resonance", "Height"), table.Row("coil", "resistance", 1.5, 2.5), table.Row("coil", "inductance", 3.5, 4.5))
	if err != nil {
		t.Fatal(err)
	}
	got := Style{Width: 30}.Table(of.Grid())
	for _, name := range []string{"coil  resistance", "coil  inductance"} {
		if strings.Count(got, name) != 2 {
			t.Errorf("got\n%s\nwant %s in both pieces", got, name)
		}
	}
}

// TestOneCurve wants no letter and no key for the only curve where it has no name of its own, and its marked points
// without one.
func TestOneCurve(t *testing.T) {
	p := chart.Panel{X: chart.Axis{Name: "Frequency", Max: 1}, Y: chart.Axis{Name: "Level", Max: 1}, Series: []chart.Series{{Label: "Level", X: []float64{0, 1}, Y: []float64{0, 1}}}}
	if got := (Style{}).Chart(sample{[]chart.Panel{p}}); strings.Contains(got, " a\n") {
		t.Errorf("got a letter without a key:\n%s", got)
	}
	p.Series[0].Notes = []chart.Note{{Name: "resonance", X: 0.5, Y: 0.5}}
	if got := (Style{}).Chart(sample{[]chart.Panel{p}}); !strings.Contains(got, "a  resonance 0.5") || strings.Contains(got, "Level: ") {
		t.Errorf("got\n%s\nwant the marked point alone in the key", got)
	}
}
