// Package piezo models piezoelectric elements as sources: under a saddle, on a soundboard, in a
// contact microphone.
//
//	disc := piezo.Disc{Material: piezo.SoftPZT(), Diameter: 20*mm, Thickness: 0.2*mm}.Element()
//	disc.Capacitance
//	disc.LowCorner(1*MΩ, 5*metre*load.CableCapacitance)
//	load.FromSource(disc).Cable(5*metre).Input(10*MΩ)
//
// An element gives a charge for a force. Seen from outside it is a voltage behind a
// capacitance, so that cable lowers the level and a low input resistance takes the bass.
package piezo

import (
	"fmt"
	"math"

	"lode/stdlib/circuit"
	"lode/stdlib/piezo/internal/kernel"
	"lode/units"
)

// This file holds materials, shapes and the element; amplifier.go the charge amplifier.

// Material is a piezoelectric material poled across its thickness.
type Material struct {
	Name            string
	ChargePerNewton units.Charge  // charge coefficient d33 in C for a force of 1 N along the poling
	Permittivity    float64       // relative, along the poling, at constant stress
	Density         units.Density // in kg/m³
}

// SoftPZT returns lead zirconate titanate of the soft type 5A, the usual one for sensors.
//
// Source: Erturk and Inman, Piezoelectric Energy Harvesting, Wiley 2011, table E.1.
//
// Accuracy: makers' figures for the type differ by 10 %, and age takes a few percent.
//
// Caution: The ceramic contains lead: do not sand, break or heat it more than soldering needs, solder
// quickly, and wash hands after handling.
func SoftPZT() Material {
	return Material{Name: "PZT 5A", ChargePerNewton: 374e-12, Permittivity: 1700, Density: 7750}
}

// VerySoftPZT returns lead zirconate titanate of the soft type 5H: more charge, more capacitance, more
// drift with temperature.
//
// Source: Erturk and Inman, Piezoelectric Energy Harvesting, Wiley 2011, table E.1.
//
// Accuracy: makers' figures for the type differ by 10 %, and age takes a few percent.
//
// Caution: The ceramic contains lead: do not sand, break or heat it more than soldering needs, solder
// quickly, and wash hands after handling.
func VerySoftPZT() Material {
	return Material{Name: "PZT 5H", ChargePerNewton: 593e-12, Permittivity: 3400, Density: 7500}
}

// Disc is a round plate with electrodes on both faces, pressed across its thickness.
type Disc struct {
	Material  Material
	Diameter  units.Length // of the electrodes in m
	Thickness units.Length // of the ceramic in m
}

// Element returns the disc as a source.
//
// Source: IEEE Std 176-1987, Standard on Piezoelectricity: C = ε0·ε·A/t, Q = d33·F.
//
// Valid: pressed evenly and free to spread, below a tenth of its own resonance; a disc bent on a brass plate gives more.
//
// Example: piezo.Disc{Material: piezo.SoftPZT(), Diameter: 20*mm, Thickness: 0.2*mm}.Element()
func (d Disc) Element() (Element, error) {
	if err := positive("disc diameter", d.Diameter); err != nil {
		return Element{}, err
	}
	return d.Material.plate(math.Pi/4*d.Diameter.SI()*d.Diameter.SI(), d.Thickness)
}

// Strip is a rectangular plate with electrodes on both faces, pressed across its thickness.
type Strip struct {
	Material  Material
	Length    units.Length // in m
	Width     units.Length // in m
	Thickness units.Length // in m
}

// Element returns the strip as a source.
//
// Source: IEEE Std 176-1987, Standard on Piezoelectricity: C = ε0·ε·A/t, Q = d33·F.
func (s Strip) Element() (Element, error) {
	for _, err := range []error{positive("strip length", s.Length), positive("strip width", s.Width)} {
		if err != nil {
			return Element{}, err
		}
	}
	return s.Material.plate(s.Length.SI()*s.Width.SI(), s.Thickness)
}

func (m Material) plate(area float64, thickness units.Length) (Element, error) {
	if err := positive("thickness", thickness); err != nil {
		return Element{}, err
	}
	if !(m.Permittivity > 0) || math.IsInf(m.Permittivity, 1) {
		return Element{}, fmt.Errorf("piezo material permittivity: not possible: got %s, want more than 0", units.Digits(m.Permittivity, 4))
	}
	e := Element{Capacitance: units.Capacitance(kernel.Capacitance(m.Permittivity, area, thickness.SI())), ChargePerNewton: m.ChargePerNewton}
	return e, e.check()
}

// Element is a piezoelectric source, from a shape or measured.
type Element struct {
	Capacitance     units.Capacitance // in F
	ChargePerNewton units.Charge      // in C for 1 N
	Leakage         units.Resistance  // across the element in Ω, 0 for none
	LossTangent     float64           // dielectric loss, which makes noise, 0 for none
}

func (e Element) check() error {
	if err := positive("capacitance", e.Capacitance); err != nil {
		return err
	}
	if err := positive("charge for 1 N", e.ChargePerNewton); err != nil {
		return err
	}
	if !(e.Leakage >= 0) || math.IsInf(e.Leakage.SI(), 1) {
		return fmt.Errorf("piezo leakage: not possible: got %v, want 0 Ω or more", e.Leakage)
	}
	if !(e.LossTangent >= 0 && e.LossTangent < 1) {
		return fmt.Errorf("piezo loss tangent: not possible: got %s, want 0 to 1", units.Digits(e.LossTangent, 4))
	}
	return nil
}

func positive(what string, q units.Quantity) error {
	if q.SI() > 0 && !math.IsInf(q.SI(), 1) {
		return nil
	}
	return fmt.Errorf("piezo %s: not possible: got %v, want more than 0 %s", what, q, q.Kind().Symbol)
}

// String writes capacitance and charge.
func (e Element) String() string {
	return fmt.Sprintf("piezo %v, %v for 1 N", e.Capacitance, e.ChargePerNewton)
}

// VoltagePerNewton returns the voltage that 1 N makes with nothing connected.
func (e Element) VoltagePerNewton() units.Voltage {
	return units.Voltage(e.ChargePerNewton.SI() / e.Capacitance.SI())
}

// LowCorner returns the frequency below which an input resistance takes the bass (-3 dB), with the
// capacitance of the cable.
//
// Example: disc.LowCorner(1*MΩ, 5*metre*load.CableCapacitance)
func (e Element) LowCorner(input units.Resistance, cable units.Capacitance) (units.Frequency, error) {
	if err := e.with(input, cable); err != nil {
		return 0, err
	}
	ohm := input.SI()
	if e.Leakage > 0 {
		ohm = 1 / (1/ohm + 1/e.Leakage.SI())
	}
	return units.Frequency(kernel.Corner(ohm, (e.Capacitance + cable).SI())), nil
}

func (e Element) with(input units.Resistance, cable units.Capacitance) error {
	if err := e.check(); err != nil {
		return err
	}
	if !(cable >= 0) || math.IsInf(cable.SI(), 1) {
		return fmt.Errorf("cable capacitance: not possible: got %v, want 0 F or more", cable)
	}
	return positive("input resistance", input)
}

// CableLoss returns what the cable's capacitance takes from the level above the corner.
func (e Element) CableLoss(cable units.Capacitance) (units.Level, error) {
	if err := e.with(units.Ohm, cable); err != nil {
		return 0, err
	}
	return units.LevelOf((e.Capacitance + cable).SI() / e.Capacitance.SI()), nil
}

// Start puts the element into a network between a node and ground, with the open voltage of 1 V. Chains
// use it through load.FromSource; their levels are relative to the open voltage.
func (e Element) Start(n circuit.Network, node string) circuit.Network {
	if err := e.check(); err != nil {
		return n.Refuse("piezo", err)
	}
	n = n.VoltageSource("piezo", "piezo inside", circuit.Ground, units.Volt)
	if e.LossTangent > 0 {
		n = n.Impedance("piezo capacitance", "piezo inside", node, e.lossy)
	} else {
		n = n.Capacitor("piezo capacitance", "piezo inside", node, e.Capacitance)
	}
	if e.Leakage > 0 {
		n = n.Resistor("piezo leakage", node, circuit.Ground, e.Leakage)
	}
	return n
}

// lossy is the impedance of a capacitance with a loss tangent: 1/(jωC·(1 - j·tanδ)).
func (e Element) lossy(f units.Frequency) units.Impedance {
	return units.Impedance(1 / (complex(e.LossTangent, 1) * complex(f.Angular().SI()*e.Capacitance.SI(), 0)))
}
