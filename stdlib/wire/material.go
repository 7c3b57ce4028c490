package wire

import (
	"strconv"
	"strings"

	"lode/stdlib/wire/internal/tables"
	"lode/units"
	"lode/units/frame"
)

// Material is what a conductor is made of: soft (annealed) metal at 20 °C. Take one from
// MaterialNamed, or from Materials to see them all.
type Material struct {
	// Name, such as "copper".
	Name string
	// Resistivity at 20 °C.
	Resistivity units.Resistivity
	// Coefficient of the resistance with temperature, per kelvin, at 20 °C and for constant mass.
	Coefficient units.TemperatureCoefficient
	// Density at 20 °C.
	Density units.Density
	// Weakest is the low end of the tensile strength of soft wire.
	Weakest units.Pressure
	// Strongest is the high end of the tensile strength of soft wire.
	Strongest units.Pressure
	// Modulus of elasticity.
	Modulus units.Pressure
	// WindingStress is the highest stress that winding tension should bring.
	WindingStress units.Pressure
	// Hardening is the exponent n of the flow curve, stress = K·strainⁿ, used for the stretch.
	Hardening float64
	// Coldest temperature for which the coefficient holds; zero: -60 °C.
	Coldest units.Temperature
	// Hottest temperature for which the coefficient holds; zero: 250 °C.
	Hottest units.Temperature
	// Source of the figures.
	Source string
}

// MaterialNamed returns a conductor material by its name, such as "copper", "aluminium",
// "silver" or "constantan". The first word of a name is enough, "aluminum" is another spelling, and case does not
// matter.
//
// Source: each material names its own in its field Source.
//
// Example: wire.MaterialNamed("silver")
func MaterialNamed(name string) (Material, error) {
	wanted := strings.ToLower(strings.TrimSpace(name))
	if wanted == "aluminum" {
		wanted = "aluminium"
	}
	var names []string
	for _, row := range tables.Materials() {
		full := strings.ToLower(row.Name)
		first, rest, _ := strings.Cut(full, " ")
		if wanted != "" && (wanted == full || wanted == first || wanted == rest) {
			return materialFrom(row), nil
		}
		names = append(names, row.Name)
	}
	return Material{}, refuse("material name: unknown material", strconv.Quote(name), "one of "+strings.Join(names, ", "), "MadeOf takes a metal with figures of your own")
}

// Materials lists every conductor material with its figures.
//
// Source: each row names its own.
//
// Example: wire.Materials()
func Materials() frame.Frame {
	rows := tables.Materials()
	names, sources := make([]string, len(rows)), make([]string, len(rows))
	ρ, α, density := make([]float64, len(rows)), make([]float64, len(rows)), make([]float64, len(rows))
	weak, strong := make([]float64, len(rows)), make([]float64, len(rows))
	for i, row := range rows {
		names[i], sources[i] = row.Name, row.Source
		ρ[i], α[i], density[i] = row.Resistivity, row.Coefficient, row.Density
		weak[i], strong[i] = row.WeakestStrength, row.StrongestStrength
	}
	return frame.Frame{Title: "Conductor materials, soft, at 20 °C", Columns: []frame.Column{
		{Name: "Material", Texts: names},
		frame.Of("Resistivity", units.Resistivity(0).Kind(), ρ),
		frame.Of("Temperature coefficient", units.TemperatureCoefficient(0).Kind(), α),
		frame.Of("Density", units.Density(0).Kind(), density),
		frame.Of("Weakest", units.Pressure(0).Kind(), weak),
		frame.Of("Strongest", units.Pressure(0).Kind(), strong),
		{Name: "Source", Texts: sources},
	}}
}

// String names the material and its resistivity.
func (m Material) String() string { return m.Name + ", " + m.Resistivity.String() + " at 20 °C" }

// filled gives a metal without a range of temperatures that of copper.
func (m Material) filled() Material {
	if m.Coldest == 0 {
		m.Coldest = copper().Coldest
	}
	if m.Hottest == 0 {
		m.Hottest = copper().Hottest
	}
	return m
}

// check refuses figures that no metal has.
func (m Material) check() error {
	if m.Name == "" {
		return refuse("material: no name", strconv.Quote(m.Name), "the name of a metal", "")
	}
	for _, figure := range []struct {
		name           string
		got, low, high units.Quantity
	}{
		{"Resistivity", m.Resistivity, units.Resistivity(1e-9), units.Resistivity(1e-5)},
		{"Coefficient", m.Coefficient, units.TemperatureCoefficient(-0.01), units.TemperatureCoefficient(0.01)},
		{"Density", m.Density, units.Density(500), units.Density(25000)},
		{"Coldest temperature", m.Coldest, units.Temperature(1), units.Celsius(20)},
		{"Hottest temperature", m.Hottest, units.Celsius(20), units.Celsius(3000)},
		{"Weakest strength", m.Weakest, units.Pressure(0), 10 * units.Gigapascal},
		{"Strongest strength", m.Strongest, m.Weakest, 10 * units.Gigapascal},
		{"Modulus", m.Modulus, units.Pressure(0), 2000 * units.Gigapascal},
		{"WindingStress", m.WindingStress, units.Pressure(0), 10 * units.Gigapascal},
	} {
		if err := within(figure.name, figure.got, figure.low, figure.high); err != nil {
			return err
		}
	}
	if !(m.Hardening >= 0 && m.Hardening < 1) {
		return refuse("Hardening: out of range", units.Digits(m.Hardening, 6), "0 to below 1", "")
	}
	return nil
}

func materialFrom(row tables.Material) Material {
	return Material{
		Name: row.Name, Resistivity: units.Resistivity(row.Resistivity),
		Coefficient: units.TemperatureCoefficient(row.Coefficient), Density: units.Density(row.Density),
		Weakest: units.Pressure(row.WeakestStrength), Strongest: units.Pressure(row.StrongestStrength),
		Modulus: units.Pressure(row.Modulus), WindingStress: units.Pressure(row.WindingStress),
		Hardening: row.Hardening, Coldest: units.Celsius(row.Coldest), Hottest: units.Celsius(row.Hottest), Source: row.Source,
	}
}

func copper() Material { return materialFrom(tables.Materials()[0]) }
