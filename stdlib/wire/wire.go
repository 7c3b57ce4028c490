// Package wire knows the wire that coils are wound with: gauge sizes, enamel,
// resistance, mass, strength, and the way back from a measurement to the likely gauge.
//
// Begin with AWG, SWG or Metric for a size out of a table, or with Measured for a wire whose
// diameters were measured. Each gives a Wire: copper with the thin enamel build. Heavy, Grade,
// Single, Uncoated and Of return the same wire with another coat or of another metal:
//
//	w := wire.AWG(42)
//	w.ResistancePerLength()
//	w.Heavy().Overall()
//	wire.Metric(0.063 * mm).Of("silver")
//
// Figures are nominal ones at 20 °C; methods with Limits in their names give the range that
// the standard allows. FromBare, FromOverall, FromResistance and Identify go the other way, from a
// measurement to the gauges that fit it.
package wire

import (
	"lode/stdlib/wire/internal/kernel"
	"lode/stdlib/wire/internal/tables"
	"lode/units"
)

// Wire is a round conductor with or without enamel. It is a plain value: copy it freely. Make
// one with AWG, SWG, Metric, Sized or Measured; the zero Wire is no wire, and its diameters
// are zero.
type Wire struct {
	label    string // "AWG 42", "0.063 mm"
	system   string // the table it is from, empty for a measured wire
	size     float64
	coat     string // "single build", "bare" or, for a measured wire, "as measured"
	bare     tables.Limits
	overall  tables.Limits
	loose    bool // the limits of the conductor are an estimate
	guessed  bool // the enamel is an estimate
	material Material
}

// Name says which wire this is, such as "AWG 42, single build". A metal other than copper is
// named too.
//
// Example: wire.AWG(42).Name()
func (w Wire) Name() string {
	if w.label == "" {
		return "no wire"
	}
	name := w.label + ", " + w.coat
	if w.material.Name != copper().Name {
		name += ", " + w.material.Name
	}
	return name
}

// Coat names the build of the enamel: "single build" or "heavy build" for AWG, "grade 1" to
// "grade 3" for metric sizes, the first two of them for SWG, "bare", or "as measured".
func (w Wire) Coat() string { return w.coat }

// Metal returns what the conductor is made of.
func (w Wire) Metal() Material { return w.material }

// Bare returns the nominal diameter of the conductor without enamel.
//
// Source: the tables behind AWG, SWG and Metric.
//
// Accuracy: nominal; see BareLimits for what the standard allows.
func (w Wire) Bare() units.Length { return units.Length(w.bare.Nominal) }

// Overall returns the nominal diameter over the enamel.
//
// Source: NEMA MW 1000 for AWG and IEC 60317 for metric sizes; for SWG an estimate from the
// metric table.
//
// Accuracy: nominal; see OverallLimits for what the standard allows.
func (w Wire) Overall() units.Length { return units.Length(w.overall.Nominal) }

// Conductor returns the cross-section of the metal, π/4 times the bare diameter squared.
func (w Wire) Conductor() units.Area { return units.Area(kernel.Area(w.bare.Nominal)) }

// ResistancePerLength returns the nominal resistance of a length of this wire at 20 °C.
//
// Source: IEC 60028 (1925): annealed copper has 1/58 Ω·mm²/m at 20 °C. Divided by the cross-section.
//
// Accuracy: nominal; wire within its standard may be 2 to 10 % off, the finer the more, see
// ResistanceLimits.
//
// Example: wire.AWG(42).ResistancePerLength()
func (w Wire) ResistancePerLength() units.ResistancePerLength {
	return units.ResistancePerLength(kernel.ResistancePerLength(float64(w.material.Resistivity), w.bare.Nominal))
}

// ResistancePerLengthAt returns the nominal resistance of a length at another temperature.
//
// Source: IEC 60028 (1925): R = R20·(1 + 0.00393·(T - 20 °C)) for copper at constant mass; other metals with
// their own coefficient.
//
// Valid: the range given by the material, for copper -60 to 250 °C; outside it is an error.
//
// Accuracy: for copper about 0.2 % of R between -20 and 100 °C, with the nominal diameter taken as
// exact.
//
// Example: wire.AWG(42).ResistancePerLengthAt(units.Celsius(35))
func (w Wire) ResistancePerLengthAt(temperature units.Temperature) (units.ResistancePerLength, error) {
	factor, err := w.warmth(temperature)
	return units.ResistancePerLength(float64(w.ResistancePerLength()) * factor), err
}

// check refuses the zero Wire.
func (w Wire) check() error {
	if !(w.bare.Nominal > 0) {
		return refuse("wire: not set", w.Name(), "one from AWG, SWG, Metric, Sized or Measured", "")
	}
	return nil
}

// warmth returns the factor from the resistance at 20 °C to that at a temperature.
func (w Wire) warmth(temperature units.Temperature) (float64, error) {
	if err := w.check(); err != nil {
		return 0, err
	}
	if err := within("temperature", temperature, w.material.Coldest, w.material.Hottest); err != nil {
		return 0, err
	}
	return kernel.TemperatureFactor(float64(w.material.Coefficient), temperature.Degrees()), nil
}

// enamelDensity is that of the polymer films on magnet wire, common practice without a
// source: polyurethane, polyester-imide and polyvinyl formal lie between 1200 and 1450 kg/m³.
const enamelDensity = 1300

// MassPerLength returns the mass of a length of this wire with its enamel.
//
// Source: IEC 60028 (1925) for the density of copper, 8.89 g/cm³. Enamel of 1.3 g/cm³ is common practice, no
// source.
//
// Accuracy: 1 % for the nominal diameters, from the density of the enamel.
func (w Wire) MassPerLength() units.MassPerLength {
	return units.MassPerLength(kernel.MassPerLength(w.bare.Nominal, w.overall.Nominal, float64(w.material.Density), enamelDensity))
}
