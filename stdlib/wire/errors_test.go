package wire

import (
	"math"
	"strings"
	"testing"

	"lode/units"
)

// Every call a notebook can get wrong, with what its error must say: the argument, its value,
// what is valid.
func TestErrorsStandAlone(t *testing.T) {
	w := must(AWG(42))(t)
	value := func(_ any, err error) error { return err }
	silver := must(MaterialNamed("silver"))(t)
	silver.Density = -1
	own := must(Measured(60e-6, 70e-6))(t)
	for _, row := range []struct {
		err  error
		says []string
	}{
		{value(AWG(47)), []string{"AWG gauge", "got AWG 47", "AWG 18 to AWG 46", "hint: the nearest is AWG 46"}},
		{value(AWG(42.2)), []string{"got AWG 42.2", "hint: it lies between AWG 42 and AWG 42.5;"}},
		{value(AWG(-3)), []string{"got AWG -3"}},
		{value(SWG(46.5)), []string{"SWG gauge", "SWG 1 to SWG 50"}},
		{value(Metric(0.064 * units.Millimetre)), []string{"conductor diameter", "0.064 mm", "0.01 mm to 1 mm", "hint: it lies between 0.063 mm and 0.067 mm; wire.Measured(0.064*mm, 0.074*mm) has the enamel of the next larger size"}},
		{value(Sized("BWG", 20)), []string{"system", `got "BWG"`, "AWG, metric, SWG"}},
		{value(Table("")), []string{"system", `got ""`}},
		{value(AWGDiameter(99)), []string{"AWG gauge", "got 99", "-3 (called 0000) to 56"}},
		{value(Measured(0, 1e-4)), []string{"bare diameter", "1 µm"}},
		{value(Measured(1e-4, 0.5e-4)), []string{"overall diameter", "0.05 mm", "0.1 mm to 20 mm"}},
		{value(MaterialNamed("unobtainium")), []string{"material name", `got "unobtainium"`, "copper", "silver"}},
		{value(w.Of("")), []string{"material name", `got ""`}},
		{value(w.MadeOf(silver)), []string{"Density", "-1 kg/m³"}},
		{value(w.MadeOf(Material{})), []string{"no name"}},
		{value(w.ResistancePerLengthAt(20)), []string{"temperature", "-253.1 °C", "-60 °C to 250 °C"}},
		{value(w.ResistanceLimitsAt(units.Celsius(900))), []string{"temperature", "900 °C"}},
		{value(must(AWG(20))(t).Heavy()), []string{"enamel build", "got AWG 20", "AWG 24 to AWG 46"}},
		{value(w.Grade(4)), []string{"enamel grade: out of range: got 4, want 1 to 3"}},
		{value(w.Grade(3)), []string{"enamel build: not in the table: got AWG 42, want one of the builds of AWG, single build or heavy build"}},
		{value(must(Metric(0.8 * units.Millimetre))(t).Grade(3)), []string{"got 0.8 mm, want 0.01 mm to 0.5 mm"}},
		{value(own.Heavy()), []string{"enamel build", "0.06 mm"}},
		{value(w.Stretch(1)), []string{"tension", "1 N", "633.4 mN", "hint: beyond that the wire may break"}},
		{value(w.Stretched(2)), []string{"elongation", "got 2", "0 to 0.3"}},
		{value(w.Resistance(-1)), []string{"length", "-1 m", "0 m to"}},
		{value(w.Mass(2e6)), []string{"length"}},
		{value(w.LengthOfMass(-1)), []string{"mass", "-1 kg"}},
		{value(w.LengthOfResistance(1e12)), []string{"resistance", "100 MΩ"}},
		{value(w.CurrentDensity(2000)), []string{"current", "2 kA", "1 kA"}},
		{value(FromBare(0)), []string{"Bare diameter", "got 0"}},
		{value(FromOverall(-1)), []string{"Overall diameter"}},
		{value(FromResistance(0, 1)), []string{"Resistance"}},
		{value(FromResistance(100, 0)), []string{"Length of the piece"}},
		{value(FromBare(12 * units.Millimetre)), []string{"Bare diameter: outside the tables: got 12 mm, want 9.535 µm to 7.696 mm", "wire.Measured"}},
		{value(FromOverall(6 * units.Micrometre)), []string{"Overall diameter: outside the tables: got 6 µm"}},
		{value(FromResistance(1000, 1)), []string{"Resistance per length at 20 °C: outside the tables: got 1 kΩ/m"}},
		{value(Identify(Measurement{Bare: 1.2e-3, System: "AWG"})), []string{"outside the tables: got 1.2 mm, want 0.03835 mm to 1.034 mm", "an empty System"}},
		{value(w.Stretch(-1)), []string{"tension: out of range: got -1 N"}},
		{value(Identify(Measurement{})), []string{"measurement", "at least one of"}},
		{value(Identify(Measurement{Bare: 1e-4, Overall: 5e-5})), []string{"Overall diameter"}},
		{value(Identify(Measurement{Bare: 1e-4, System: "XYZ"})), []string{"system"}},
		{value(Identify(Measurement{Bare: 1e-4, Metal: "wood"})), []string{"material name"}},
		{value(Identify(Measurement{Bare: 1e-4, ResistanceError: 2})), []string{"ResistanceError", "0 to 1"}},
		{value(Measurement{Overall: 1e-4}.Wire()), []string{"conductor not known"}},
		{value(Wire{}.Resistance(1)), []string{"wire: not set"}},
		{value(Wire{}.Stretch(0)), []string{"wire: not set"}},
		{value(Wire{}.Stretched(0.1)), []string{"wire: not set"}},
		{value(Wire{}.Of("silver")), []string{"wire: not set"}},
		{value(Wire{}.Heavy()), []string{"wire: not set"}},
		{value(Wire{}.ResistancePerLengthAt(units.Celsius(20))), []string{"wire: not set"}},
	} {
		if row.err == nil {
			t.Errorf("no error, want one that says %q", row.says)
			continue
		}
		for _, part := range row.says {
			if !strings.Contains(row.err.Error(), part) {
				t.Errorf("%q does not say %q", row.err, part)
			}
		}
	}
}

// No number that is none gets through, alone or in place of a good one.
func TestNoNumberIsRefused(t *testing.T) {
	w := must(AWG(42))(t)
	value := func(_ any, err error) error { return err }
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1} {
		for name, err := range map[string]error{
			"AWG": value(AWG(x)), "SWG": value(SWG(x)), "Metric": value(Metric(units.Length(x))),
			"Sized": value(Sized("AWG", x)), "Measured bare": value(Measured(units.Length(x), 1e-4)),
			"Measured overall": value(Measured(1e-4, units.Length(x))),
			"At":               value(w.ResistancePerLengthAt(units.Temperature(x))),
			"LimitsAt":         value(w.ResistanceLimitsAt(units.Temperature(x))),
			"Stretch":          value(w.Stretch(units.Force(x))), "Stretched": value(w.Stretched(x)),
			"Resistance": value(w.Resistance(units.Length(x))), "Mass": value(w.Mass(units.Length(x))),
			"LengthOfMass":       value(w.LengthOfMass(units.Mass(x))),
			"LengthOfResistance": value(w.LengthOfResistance(units.Resistance(x))),
			"FromBare":           value(FromBare(units.Length(x))), "FromOverall": value(FromOverall(units.Length(x))),
			"FromResistance": value(FromResistance(units.Resistance(x), 1)),
			"Length":         value(FromResistance(1, units.Length(x))),
			"Temperature":    value(Identify(Measurement{Resistance: 1, Length: 1, Temperature: units.Temperature(x)})),
			"DiameterError":  value(Identify(Measurement{Bare: 1e-4, DiameterError: units.Length(x)})),
			"ResistanceErr":  value(Identify(Measurement{Bare: 1e-4, ResistanceError: x})),
		} {
			if err == nil {
				t.Errorf("%s(%g) is not refused", name, x)
			}
		}
		if !finite(x) {
			if _, err := w.CurrentDensity(units.Current(x)); err == nil {
				t.Errorf("CurrentDensity(%g) is not refused", x)
			}
			if _, err := AWGDiameter(x); err == nil {
				t.Errorf("AWGDiameter(%g) is not refused", x)
			}
		}
	}
}
