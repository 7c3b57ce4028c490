package wire

import (
	"lode/stdlib/wire/internal/kernel"
	"lode/stdlib/wire/internal/tables"
	"lode/units"
)

// The diameters that any wire of this package may have.
const (
	thinnest = 1 * units.Micrometre
	thickest = 20 * units.Millimetre
)

// Measured returns copper wire of the diameters that were measured: bare, and over the enamel.
// For bare wire give the same diameter twice. Its limits are its own diameters. Of makes it
// another metal.
//
// Valid: 1 µm to 20 mm, the overall diameter not below the bare one.
//
// Accuracy: that of the measurement; an error of 1 % in the bare diameter is one of 2 % in the resistance.
//
// Example: wire.Measured(0.062*mm, 0.07*mm)
func Measured(bare, overall units.Length) (Wire, error) {
	if err := within("bare diameter", bare, thinnest, thickest); err != nil {
		return Wire{}, err
	}
	if err := within("overall diameter", overall, bare, thickest); err != nil {
		return Wire{}, err
	}
	w := Wire{label: "wire of " + bare.String(), coat: "as measured", material: copper(),
		bare: exactly(bare), overall: exactly(overall)}
	if overall == bare {
		return w.Uncoated(), nil
	}
	return w, nil
}

func exactly(d units.Length) tables.Limits {
	return tables.Limits{Min: float64(d), Nominal: float64(d), Max: float64(d)}
}

// Measurement is what was measured of an unknown wire. Fill in what you know and leave the
// rest; at least one of Bare, Overall and Resistance is needed.
type Measurement struct {
	// Bare diameter, measured on a piece whose enamel was taken off; 1 µm to 20 mm.
	Bare units.Length
	// Overall diameter, measured over the enamel; from the bare one to 20 mm.
	Overall units.Length
	// Resistance of the piece of wire, 1 µΩ to 100 MΩ.
	Resistance units.Resistance
	// Length of the piece whose resistance was measured, 1 mm to 1000 km.
	Length units.Length
	// Temperature of the piece, for copper -60 to 250 °C; zero means 20 °C.
	Temperature units.Temperature
	// Metal of the conductor; empty means copper.
	Metal string
	// System limits the search to one table, such as "AWG"; empty means all.
	System string
	// DiameterError is how far the diameters may be off, up to 20 mm; zero means 1 µm.
	DiameterError units.Length
	// ResistanceError is how far the resistance per length may be off, as a ratio up to 1; zero means 0.01.
	ResistanceError float64
	missing         string // a figure that must not be zero
}

// Wire returns a wire of the diameters measured. Where only one is known: the bare diameter
// follows from the resistance, and a missing overall diameter counts as bare.
//
// Source: IEC 60028 (1925) for the resistivity of copper: d = √(4·ρ·length/(π·R)).
//
// Valid: Bare or Resistance with Length must be given.
//
// Accuracy: half the relative error of the resistance and of the length, if the wire was not stretched.
//
// Example: wire.Measurement{Resistance: 170 * ohm, Length: 30 * metre, Overall: 0.07 * mm}.Wire()
func (m Measurement) Wire() (Wire, error) {
	m, metal, err := m.complete()
	if err != nil {
		return Wire{}, err
	}
	bare := m.Bare
	if bare == 0 {
		if m.Resistance == 0 {
			return Wire{}, refuse("measurement: conductor not known", "neither Bare nor Resistance", "one of them", "")
		}
		bare = units.Length(kernel.DiameterForResistance(float64(metal.Resistivity), m.perLength(metal)))
	}
	overall := m.Overall
	if overall == 0 {
		overall = bare
	}
	w, err := Measured(bare, overall)
	if err != nil {
		return Wire{}, err
	}
	w.material = metal
	return w, nil
}

// perLength returns the resistance per length, brought to 20 °C.
func (m Measurement) perLength(metal Material) float64 {
	return float64(m.Resistance) / float64(m.Length) /
		kernel.TemperatureFactor(float64(metal.Coefficient), m.Temperature.Degrees())
}

// complete checks m and fills in what zero stands for.
func (m Measurement) complete() (Measurement, Material, error) {
	if m.Metal == "" {
		m.Metal = copper().Name
	}
	if m.Temperature == 0 {
		m.Temperature = units.Celsius(20)
	}
	if m.DiameterError == 0 {
		m.DiameterError = 1 * units.Micrometre
	}
	if m.ResistanceError == 0 {
		m.ResistanceError = 0.01
	}
	if m.System != "" {
		if _, err := gaugeNamed(m.System); err != nil {
			return m, Material{}, err
		}
	}
	metal, err := MaterialNamed(m.Metal)
	if err != nil {
		return m, metal, err
	}
	return m, metal, m.check(metal)
}

func (m Measurement) check(metal Material) error {
	if m.missing != "" {
		return refuse(m.missing+": not above zero", "0", "a positive figure", "")
	}
	if m.Bare == 0 && m.Overall == 0 && m.Resistance == 0 {
		return refuse("measurement: empty", "no figure", "at least one of Bare, Overall and Resistance", "")
	}
	for _, figure := range []struct {
		name           string
		got, low, high units.Quantity
		given          bool
	}{
		{"Bare diameter", m.Bare, thinnest, thickest, m.Bare != 0},
		{"Overall diameter", m.Overall, max(thinnest, m.Bare), thickest, m.Overall != 0},
		{"Resistance", m.Resistance, 1 * units.Ohm / 1e6, 100 * units.Megaohm, m.Resistance != 0 || m.Length != 0},
		{"Length of the piece", m.Length, 1 * units.Millimetre, 1000 * units.Kilometre, m.Resistance != 0 || m.Length != 0},
		{"Temperature", m.Temperature, metal.Coldest, metal.Hottest, true},
		{"DiameterError", m.DiameterError, 0 * units.Metre, thickest, true},
	} {
		if !figure.given {
			continue
		}
		if err := within(figure.name, figure.got, figure.low, figure.high); err != nil {
			return err
		}
	}
	if !finite(m.ResistanceError) || m.ResistanceError < 0 || m.ResistanceError > 1 {
		return refuse("ResistanceError: out of range", units.Digits(m.ResistanceError, 6), "a ratio from 0 to 1", "")
	}
	return nil
}
