package wire

import (
	"math"
	"strings"
	"testing"

	"lode/stdlib/wire/internal/tables"
	"lode/units"
	"lode/units/frame"
)

func TestNamesAndTexts(t *testing.T) {
	w := must(AWG(42))(t)
	for got, want := range map[string]string{
		w.String():                "AWG 42, single build: bare 0.0635 mm, overall 0.07112 mm, 5.444 Ω/m at 20 °C",
		must(w.Heavy())(t).Name(): "AWG 42, heavy build",
		must(must(w.Heavy())(t).Single())(t).Name():                         "AWG 42, single build",
		w.Uncoated().Name():                                                 "AWG 42, bare",
		must(AWG(42.5))(t).Name():                                           "AWG 42.5, single build",
		must(Metric(63 * units.Micrometre))(t).Name():                       "0.063 mm, grade 1",
		must(must(Metric(63 * units.Micrometre))(t).Of("silver"))(t).Name(): "0.063 mm, grade 1, silver",
		must(Measured(62e-6, 70e-6))(t).Name():                              "wire of 0.062 mm, as measured",
		must(Measured(62e-6, 62e-6))(t).Name():                              "wire of 0.062 mm, bare",
		must(w.Stretched(0.02))(t).Name():                                   "AWG 42 stretched by 2 %, single build",
		Wire{}.Name():                                                       "no wire",
		Wire{}.String():                                                     "no wire",
		w.BareLimits().String():                                             "0.0635 mm (0.06096 mm to 0.06604 mm)",
		must(SWG(46))(t).OverallLimits().String():                           "0.07046 mm (0.06696 mm to 0.07396 mm, estimate)",
		w.BreakingLoad().String():                                           "633.4 mN to 870.9 mN (64.6 to 88.8 gram-force)",
		Matches{}.String():                                                  "no candidates",
	} {
		if got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
	far := must(Identify(Measurement{Bare: 0.0602e-3, Resistance: 170, Length: 30, System: "SWG"}))(t).String()
	if !strings.HasPrefix(far, "SWG 46 (fits, ") {
		t.Errorf("between: %q", far)
	}
	far = must(Identify(Measurement{Bare: 6.1e-3, System: "SWG"}))(t).String()
	if !strings.HasPrefix(far, "no gauge fits bare 6.1 mm; the nearest is SWG 4 (does not fit, ") {
		t.Errorf("in a gap: %q", far)
	}
	near := must(Identify(Measurement{Overall: 71e-6, Resistance: 170, Length: 30, System: "AWG"}))(t).String()
	if !strings.HasPrefix(near, "AWG 42, single build (fits, ") || !strings.Contains(near, "also possible: AWG 42.5") {
		t.Errorf("near: %q", near)
	}
}

// Every frame has columns of one length, numbers or texts, and the title a table needs.
func TestFrames(t *testing.T) {
	w := must(AWG(42))(t)
	for rows, sources := range map[int][]frame.Source{
		1:                       {w, Wire{}},
		2:                       {List(w, w.Uncoated()), must(w.Stretch(0.4))(t)},
		3:                       {must(Identify(Measurement{Bare: 6.1e-3, System: "SWG"}))(t)},
		len(tables.Materials()): {Materials()},
		50:                      {must(Table("SWG"))(t)},
	} {
		for _, source := range sources {
			f := source.Frame()
			if f.Title == "" || f.Rows() != rows {
				t.Errorf("%q has %d rows, want %d", f.Title, f.Rows(), rows)
			}
			for _, c := range f.Columns {
				if c.Name == "" || c.Len() != rows || (c.Texts != nil) == (c.Values != nil) {
					t.Errorf("%q: column %q is uneven", f.Title, c.Name)
				}
			}
		}
	}
	bare, ok := w.Frame().Named("Bare")
	if !ok || bare.Kind.Type != "Length" || bare.Values[0] != w.Bare().SI() {
		t.Errorf("bare column: %+v", bare)
	}
}

// The title of a table names its standard; sizes without a build leave a gap.
func TestTable(t *testing.T) {
	f := must(Table("awg"))(t)
	heavy, ok := f.Named("Overall, heavy build")
	if !ok || !math.IsNaN(heavy.Values[0]) || !strings.Contains(f.Title, "NEMA MW 1000") {
		t.Errorf("%q: %v", f.Title, heavy)
	}
	for _, system := range Systems() {
		if source := must(TableSource(system))(t); !strings.Contains(source, "not seen") || must(Table(system))(t).Title == "" {
			t.Errorf("%s: source %q", system, source)
		}
	}
	if _, err := TableSource("none"); err == nil {
		t.Error("no error for a table there is not")
	}
	if last := len(heavy.Values) - 1; heavy.Values[last] != must(must(AWG(46))(t).Heavy())(t).Overall().SI() {
		t.Errorf("last heavy %g", heavy.Values[last])
	}
}

func TestWireIsComparable(t *testing.T) {
	a, b := must(AWG(42))(t), must(Sized(" awg ", 42))(t)
	if a != b || map[Wire]int{a: 1}[b] != 1 {
		t.Errorf("%v and %v differ", a, b)
	}
	if own := must(a.MadeOf(a.Metal()))(t); own != a {
		t.Errorf("same metal, other wire: %v", own)
	}
}

// The list of figures says what the methods do; a metal without strength leaves those rows out.
func TestFigures(t *testing.T) {
	w := must(AWG(42))(t)
	f := must(w.Figures(units.Celsius(75)))(t)
	rows := map[string]string{}
	for i, name := range f.Columns[0].Texts {
		rows[name] = f.Columns[1].Texts[i]
	}
	// 5.444 Ω/m by the printed data sheet (1659 Ω per 1000 ft), times 1.21615 at 75 °C (IEC 60028); 25.4 mm over 2.8 mil
	for name, want := range map[string]string{"Resistance at 75 °C": "6.621 Ω/m (", "Resistance at 20 °C": "5.444 Ω/m (5.033 Ω/m to 5.907 Ω/m)",
		"Turns per centimetre, side by side": "140.6", "Over the enamel": "0.07112 mm (0.06604 mm to 0.0762 mm)", "Winding tension": "109.1 mN to 174.6 mN"} {
		if !strings.HasPrefix(rows[name], want) {
			t.Errorf("%s: got %q, want %q", name, rows[name], want)
		}
	}
	weak := must(w.MadeOf(Material{Name: "bronze", Resistivity: 110e-9, Density: 8800}))(t)
	if got := must(weak.Figures())(t).Rows(); got != f.Rows()-3 {
		t.Errorf("%d rows without strength", got)
	}
	if _, err := w.Figures(units.Celsius(900)); err == nil || !strings.Contains(err.Error(), "temperature: out of range: got 900 °C") {
		t.Errorf("900 °C: %v", err)
	}
	if _, err := (Wire{}).Figures(); err == nil {
		t.Error("no wire has figures")
	}
}
