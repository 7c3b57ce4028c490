package wire

import (
	"lode/units"
)

// This file turns lengths into resistance, mass and turns, and back.

const longest = 1000 * units.Kilometre

// Resistance returns the nominal resistance of a length of this wire at 20 °C.
//
// Source: IEC 60028 (1925), as ResistancePerLength.
//
// Valid: 0 to 1000 km.
//
// Accuracy: nominal; see ResistanceLimits.
//
// Example: wire.AWG(42).Resistance(1000 * metre)
func (w Wire) Resistance(length units.Length) (units.Resistance, error) {
	if err := w.checkWith("length", length, 0*units.Metre, longest); err != nil {
		return 0, err
	}
	return units.Resistance(float64(w.ResistancePerLength()) * float64(length)), nil
}

// Mass returns the mass of a length of this wire with its enamel.
//
// Source: as MassPerLength.
//
// Valid: 0 to 1000 km.
//
// Accuracy: 1 % for the nominal diameters.
//
// Example: wire.AWG(42).Mass(1000 * metre)
func (w Wire) Mass(length units.Length) (units.Mass, error) {
	if err := w.checkWith("length", length, 0*units.Metre, longest); err != nil {
		return 0, err
	}
	return units.Mass(float64(w.MassPerLength()) * float64(length)), nil
}

// LengthOfMass returns the length of this wire that has a mass: how much is left on a spool of
// known tare.
//
// Source: as MassPerLength.
//
// Valid: 0 to 1000 kg.
//
// Accuracy: nominal; 5 to 10 % for fine wire, from the tolerance of its diameter.
//
// Example: wire.AWG(42).LengthOfMass(250 * gram)
func (w Wire) LengthOfMass(mass units.Mass) (units.Length, error) {
	if err := w.checkWith("mass", mass, 0*units.Kilogram, 1000*units.Kilogram); err != nil {
		return 0, err
	}
	return units.Length(float64(mass) / float64(w.MassPerLength())), nil
}

// LengthOfResistance returns the length of this wire that has a resistance at 20 °C.
//
// Source: IEC 60028 (1925), as ResistancePerLength.
//
// Valid: 0 to 100 MΩ.
//
// Accuracy: nominal; see ResistanceLimits.
//
// Example: wire.AWG(42).LengthOfResistance(6 * kohm)
func (w Wire) LengthOfResistance(resistance units.Resistance) (units.Length, error) {
	if err := w.checkWith("resistance", resistance, 0*units.Ohm, 100*units.Megaohm); err != nil {
		return 0, err
	}
	return units.Length(float64(resistance) / float64(w.ResistancePerLength())), nil
}

// TurnsPerLength returns how many turns lie side by side in one close-wound layer, for the
// nominal diameter over the enamel. Times cm it is turns per centimetre: w.TurnsPerLength() * cm.
//
// Source: the reciprocal of the overall diameter.
//
// Accuracy: the most that is possible with nominal wire; scatter winding reaches less. The coil package counts
// with the fill that winding by hand reaches.
//
// Example: wire.AWG(42).TurnsPerLength()
func (w Wire) TurnsPerLength() units.PerLength { return units.PerLength(1 / w.overall.Nominal) }

// CurrentDensity returns the current per cross-section of the conductor.
//
// Source: the definition, current over area.
//
// Valid: currents up to 1000 A in either direction.
//
// Accuracy: exact for the nominal diameter and direct current. Windings that must not warm up stay below about 3 A/mm²
// (common practice, no source).
//
// Example: wire.AWG(42).CurrentDensity(1 * mA)
func (w Wire) CurrentDensity(current units.Current) (units.CurrentDensity, error) {
	if err := w.checkWith("current", current, -1000*units.Ampere, 1000*units.Ampere); err != nil {
		return 0, err
	}
	return units.CurrentDensity(float64(current) / float64(w.Conductor())), nil
}

func (w Wire) checkWith(name string, got, low, high units.Quantity) error {
	if err := w.check(); err != nil {
		return err
	}
	return within(name, got, low, high)
}
