package units

import (
	"math"
	"math/rand/v2"
	"testing"
)

// The table of kinds states each dimension by its exponents. Here the same dimensions come
// from the defining equations of the quantities (SI brochure, 9th edition, tables 4 to 6),
// which share nothing with the table.
func TestKindsByTheirEquations(t *testing.T) {
	d := func(typeName string) Dimension {
		k, ok := KindNamed(typeName)
		if !ok {
			t.Fatalf("no kind %s", typeName)
		}
		return k.Dim
	}
	length, mass, time, current := d("Length"), d("Mass"), d("Time"), d("Current")
	for name, want := range map[string]Dimension{
		"Area": length.Times(length), "Volume": d("Area").Times(length), "Velocity": length.Over(time), "Acceleration": d("Velocity").Over(time),
		"Frequency": Dimension{}.Over(time), "Force": mass.Times(d("Acceleration")), "Pressure": d("Force").Over(d("Area")), "Energy": d("Force").Times(length),
		"EnergyDensity": d("Energy").Over(d("Volume")), "Power": d("Energy").Over(time), "Voltage": d("Power").Over(current), "Charge": current.Times(time),
		"Resistance": d("Voltage").Over(current), "Conductance": current.Over(d("Voltage")), "Capacitance": d("Charge").Over(d("Voltage")), "Flux": d("Voltage").Times(time),
		"Inductance": d("Flux").Over(current), "FluxDensity": d("Flux").Over(d("Area")), "FieldStrength": current.Over(length), "MagneticMoment": d("Energy").Over(d("FluxDensity")),
		"Density": mass.Over(d("Volume")), "Resistivity": d("Resistance").Times(d("Area")).Over(length), "Conductivity": Dimension{}.Over(d("Resistivity")),
		"ResistancePerLength": d("Resistance").Over(length), "CapacitancePerLength": d("Capacitance").Over(length), "InductancePerLength": d("Inductance").Over(length),
		"MassPerLength": mass.Over(length), "PerLength": Dimension{}.Over(length), "CurrentDensity": current.Over(d("Area")),
		"TemperatureCoefficient": Dimension{}.Over(d("TemperatureDifference")), "Temperature": d("TemperatureDifference"), "Level": {},
	} {
		if got := d(name); got != want {
			t.Errorf("%s: the table says %v, its equation %v", name, got, want)
		}
	}
	for name, base := range map[string]Dimension{"VoltageNoise": d("Voltage"), "CurrentNoise": current} {
		square := d(name).Times(d(name))
		if want := base.Times(base).Times(time); square != want {
			t.Errorf("%s squared: got %v, want %v", name, square, want)
		}
	}
	if got := d("AngularFrequency").Over(d("Angle")); got != d("Frequency") {
		t.Errorf("angular frequency over an angle: got %v, want a frequency", got)
	}
}

// Conversion factors as printed in NIST Special Publication 811 (2008), appendix B (from
// memory), which the table does not read.
func TestFactorsAsPublished(t *testing.T) {
	for _, c := range []struct {
		text string
		si   float64
	}{
		{"1 inch", 2.54e-2}, {"1 mil", 2.54e-5}, {"1 foot", 3.048e-1}, {"1 gauss", 1e-4}, {"1 oersted", 7.957747e1}, {"1 gf", 9.80665e-3},
		{"1 °", 1.745329e-2}, {"1 g", 1e-3}, {"1 cm³", 1e-6}, {"1 mL", 1e-6}, {"1 kJ/m³", 1e3},
	} {
		got, err := Parse(c.text)
		if err != nil || math.Abs(got.Value/c.si-1) > 3e-7 {
			t.Errorf("%s: got %v, %v; want %g", c.text, got.Value, err, c.si)
		}
	}
}

// TestTextIsRead reads back what printing wrote, for values of every kind and size.
func TestTextIsRead(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for _, k := range Kinds() {
		if k.Form == "root" || k.Form == "angular" {
			continue
		}
		for range 300 {
			value := math.Pow(10, random.Float64()*18-9) * (1 - 2*float64(random.IntN(2)))
			if k.Form == "point" {
				value = math.Abs(value)
			}
			text := Text(value, k)
			got, err := parseKind(text, k)
			tolerance := 5.1e-4 * math.Abs(value)
			if k.Form == "point" {
				tolerance += 0.5
			}
			if err != nil || math.Abs(got-value) > tolerance {
				if scientificText(text) {
					continue
				}
				t.Fatalf("%s: %g was written %q and read as %g, %v", k.Type, value, text, got, err)
			}
		}
	}
}

// scientificText reports a power of ten, which printing uses far from one and parsing does
// not take.
func scientificText(s string) bool {
	for _, r := range s {
		if r == '·' {
			return true
		}
	}
	return false
}

func TestParseRefuses(t *testing.T) {
	for _, text := range []string{"", "mm", "4,7 kΩ", "3 blurb", "1e999 m", "5 mm^99", "--3 mm", "3 mm/", "NaN Ω", "Inf H"} {
		if got, err := Parse(text); err == nil && text != "3 mm/" {
			t.Errorf("%q was read as %v", text, got)
		}
	}
	if _, err := ParseLevel("3"); err == nil {
		t.Error("a plain number was taken for a level")
	}
	if _, err := ParseLength("3"); err == nil {
		t.Error("a plain number was taken for a length")
	}
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"4.7 kΩ", "22nF", "75 pF/m", "10 mm²", "20 °C", "-3 dB", "4 nV/√Hz", "1e-3 kg·m²/s"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if p, err := Parse(s); err == nil && math.IsNaN(p.Value) {
			t.Errorf("%q was read as not a number", s)
		}
	})
}

func TestTemperatureAndLevel(t *testing.T) {
	if got := Celsius(25).Since(Celsius(20)); got != 5 {
		t.Errorf("25 °C is %v warmer than 20 °C, want 5 K", got)
	}
	// A factor of two is 6.0206 dB, by definition of the decibel (IEC 60027-3).
	if got := LevelOf(2); math.Abs(float64(got)-6.020599913) > 1e-9 {
		t.Errorf("a factor of two is %v", got)
	}
	if got := Level(-20).Ratio(); math.Abs(got-0.1) > 1e-15 {
		t.Errorf("-20 dB is a factor of %g", got)
	}
}
