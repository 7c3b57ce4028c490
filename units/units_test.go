package units

import (
	"math"
	"testing"
)

func TestText(t *testing.T) {
	for _, c := range []struct {
		q    Quantity
		want string
	}{
		{Resistance(6123.4), "6.123 kΩ"}, {Resistance(999.96), "1 kΩ"}, {Resistance(0), "0 Ω"}, {Length(63.5e-6), "0.0635 mm"},
		{Length(0.071), "71 mm"}, {Length(1234.5), "1234 m"}, {Length(4e-6), "4 µm"}, {Capacitance(22e-9), "22 nF"}, {Level(-12.0412), "-12.04 dB"},
		{Celsius(20), "20 °C"}, {Mass(0.0123), "12.3 g"}, {Frequency(7312), "7.312 kHz"}, {Area(5e-6), "5 mm²"}, {Angle(math.Pi / 2), "90°"},
		{Resistance(math.NaN()), "undefined Ω"}, {Resistance(math.Inf(1)), "+∞ Ω"}, {Capacitance(-3e-12), "-3 pF"}, {VoltageNoise(4e-9), "4 nV/√Hz"},
		{Product{3, Dim(4, 1, -3, -2)}, "3 Ω·m²"}, {Product{3, Dim(0, 0, 2)}, "3 s²"}, {Product{5, Dim(2, 0, -2)}, "5 J/kg"},
	} {
		if got := c.q.String(); got != c.want {
			t.Errorf("%T(%g): got %q, want %q", c.q, c.q.SI(), got, c.want)
		}
	}
}

func TestParse(t *testing.T) {
	for text, want := range map[string]Product{
		"4.7 kΩ": {4700, Dim(2, 1, -3, -2)}, "22nF": {22e-9, Dim(-2, -1, 4, 2)}, "0.063 mm": {0.063e-3, Dim(1)}, "75 pF/m": {75e-12, Dim(-3, -1, 4, 2)},
		"10 mm²": {1e-5, Dim(2)}, "20 °C": {293.15, Dim(0, 0, 0, 0, 1)}, "-3e-2 V": {-0.03, Dim(2, 1, -3, -1)}, "1/4": {},
	} {
		got, err := Parse(text)
		if want == (Product{}) {
			if err == nil {
				t.Errorf("%q: got %v, want an error", text, got)
			}
			continue
		}
		if err != nil || got.Dim != want.Dim || math.Abs(got.Value/want.Value-1) > 1e-12 {
			t.Errorf("%q: got %v %v, want %v", text, got, err, want)
		}
	}
	// The examples of IEC 60062 (from memory).
	for code, want := range map[string]float64{"R15": 0.15, "1R5": 1.5, "15R0": 15, "4k7": 4700, "2M2": 2.2e6, "10K0": 1e4} {
		if got, err := ParseResistance(code); err != nil || math.Abs(float64(got)/want-1) > 1e-12 {
			t.Errorf("%s: got %v, %v; want %g", code, got, err, want)
		}
	}
	for code, want := range map[string]float64{"p15": 0.15e-12, "4n7": 4.7e-9, "1µ5": 1.5e-6, "2u2": 2.2e-6} {
		if got, err := ParseCapacitance(code); err != nil || math.Abs(float64(got)/want-1) > 1e-12 {
			t.Errorf("%s: got %v, %v; want %g", code, got, err, want)
		}
	}
	if got, err := ParseLength("4k7"); err == nil {
		t.Errorf("4k7 was read as the length %v", got)
	}
	if _, err := ParseResistance("22 nF"); err == nil {
		t.Error("22 nF was taken for a resistance")
	}
}

func TestShown(t *testing.T) {
	want := map[string]string{"Metre": "m", "Kiloohm": "kΩ", "Second": "s", "Gram": "g", "Inch": "in", "Mil": "mil", "SquareMillimetre": "mm²", "Degree": "°", "RadianPerSecond": "rad/s", "Micrometre": "µm", "Kelvin": "K", "Megaohm": "MΩ", "Picofarad": "pF"}
	for _, u := range Units() {
		if s, ok := want[u.Const]; ok && u.Shown() != s {
			t.Errorf("%s: got %q, want %q", u.Const, u.Shown(), s)
		}
	}
}

// TestVoltageLevels holds the references: 0 dBu is 0.7746 V, one milliwatt in 600 Ω (ITU-R
// V.574), and +4 dBu, the studio's line level, 1.228 V (common practice, no source).
func TestVoltageLevels(t *testing.T) {
	for level, want := range map[VoltageLevel]float64{DBu(0): math.Sqrt(0.6), DBu(4): 1.228, DBV(0): 1, DBV(-10): 0.31623, VoltageLevelOf(0.05): 0.05} {
		if got := float64(level.Voltage()); math.Abs(got/want-1) > 4e-4 {
			t.Errorf("%v is %g V, want %g V", level, got, want)
		}
	}
	for text, want := range map[string]VoltageLevel{"-10 dBV": DBV(-10), "4 dBu": DBu(4), DBu(4).String(): DBV(1.782)} {
		if got, err := ParseVoltageLevel(text); err != nil || math.Abs(float64(got-want)) > 1e-9 {
			t.Errorf("%s: got %v, %v", text, got, err)
		}
	}
	for _, text := range []string{"3 dB", "3", "3 V"} {
		if got, err := ParseVoltageLevel(text); err == nil {
			t.Errorf("%s was read as %v", text, got)
		}
	}
	if got, err := ParseLevel("3 dBV"); err == nil {
		t.Errorf("3 dBV was read as a difference of %v", got)
	}
}

// TestUnitTexts wants products without a kind of their own in units that people know.
func TestUnitTexts(t *testing.T) {
	dim := func(text string) Dimension {
		p, err := Parse("1 " + text)
		if err != nil {
			t.Fatal(err)
		}
		return p.Dim
	}
	for text, want := range map[string]string{
		"Ω·Ω": "Ω²", "Ω·m": "Ω·m", "V·V": "V²", "H·H": "H²", "Ω·Ω·Ω": "Ω³", "T·T": "T²", "H·F": "s²", "m·m/s": "m²·s⁻¹", "A·A": "A²", "F·F": "F²", "N·N": "N²", "1/Ω/Ω": "S²", "Wb·Wb": "Wb²", "C·C": "C²",
	} {
		d := dim(text)
		got := d.UnitText()
		if got != want {
			t.Errorf("%s: got %q, want %q", text, got, want)
		}
		if back := dim(got); back != d {
			t.Errorf("%s: %q is read as %v, want %v", text, got, back, d)
		}
	}
}
