// Package transformer models audio transformers: step-up transformers of low-impedance coils, input
// and output transformers.
//
// A Model is the equivalent circuit. It comes from what is printed on the case, from a
// few measurements on the bench, or from turns on a core:
//
//	t := transformer.Nameplate{Primary: 150*ohm, Secondary: 15*kΩ, LowCorner: 20*Hz, HighCorner: 30*kHz}.Model()
//	t := transformer.Bench{PrimaryOpen: 0.8*H, PrimaryShorted: 2*mH, VoltageRatio: 9.9}.Model()
//	t := transformer.Windings{Primary: 300, Secondary: 3000, InductanceFactor: 2*µH, Coupling: 0.998}.Model()
//
// It answers for itself between a source and a load, and goes into a chain:
//
//	t.LowCorner(150*ohm, 50*kΩ)
//	load.From(c).Through(t).Volume(500*kΩ).Input(1*MΩ)
package transformer

import (
	"fmt"
	"math"

	"lode/stdlib/circuit"
	"lode/stdlib/transformer/internal/kernel"
	"lode/units"
)

// This file holds the model and its answers; sources.go makes models, taps.go compares them.

// Model is the equivalent circuit of a transformer. What is zero is left out, but for the ratio.
type Model struct {
	Ratio                float64           // secondary over primary turns
	PrimaryInductance    units.Inductance  // magnetising inductance across the primary in H, 0 for an infinite one
	Leakage              units.Inductance  // in series, seen from the primary, in H
	PrimaryResistance    units.Resistance  // of the winding in Ω
	SecondaryResistance  units.Resistance  // of the winding in Ω
	CoreLoss             units.Resistance  // across the primary in Ω, 0 for no loss
	PrimaryCapacitance   units.Capacitance // across the primary in F
	SecondaryCapacitance units.Capacitance // across the secondary in F
}

// check returns the first thing that cannot be.
func (m Model) check() error {
	if !(m.Ratio > 0) || math.IsInf(m.Ratio, 1) {
		return fmt.Errorf("transformer ratio: not possible: got %s, want more than 0", units.Digits(m.Ratio, 4))
	}
	for _, c := range []struct {
		what  string
		value units.Quantity
	}{
		{"primary inductance", m.PrimaryInductance}, {"leakage", m.Leakage}, {"primary resistance", m.PrimaryResistance}, {"secondary resistance", m.SecondaryResistance},
		{"core loss resistance", m.CoreLoss}, {"primary capacitance", m.PrimaryCapacitance}, {"secondary capacitance", m.SecondaryCapacitance},
	} {
		if err := notNegative(c.what, c.value); err != nil {
			return err
		}
	}
	return nil
}

func notNegative(what string, q units.Quantity) error {
	if q.SI() >= 0 && !math.IsInf(q.SI(), 1) {
		return nil
	}
	return fmt.Errorf("transformer %s: not possible: got %v, want 0 %s or more", what, q, q.Kind().Symbol)
}

func positive(what string, q units.Quantity) error {
	if q.SI() > 0 && !math.IsInf(q.SI(), 1) {
		return nil
	}
	return fmt.Errorf("transformer %s: not possible: got %v, want more than 0 %s", what, q, q.Kind().Symbol)
}

// String writes ratio and primary inductance.
func (m Model) String() string {
	text := "1 to " + units.Digits(m.Ratio, 4)
	if m.PrimaryInductance > 0 {
		text += fmt.Sprintf(", %v", m.PrimaryInductance)
	}
	return text
}

// Reversed returns the model used the other way round, secondary as primary. The leakage and the
// magnetising inductance change sides, which leaves the behaviour nearly unchanged while the leakage is small.
func (m Model) Reversed() Model {
	squared := m.Ratio * m.Ratio
	return Model{
		Ratio: 1 / m.Ratio, PrimaryInductance: units.Inductance(m.PrimaryInductance.SI() * squared), Leakage: units.Inductance(m.Leakage.SI() * squared),
		PrimaryResistance: m.SecondaryResistance, SecondaryResistance: m.PrimaryResistance, CoreLoss: units.Resistance(m.CoreLoss.SI() * squared),
		PrimaryCapacitance: m.SecondaryCapacitance, SecondaryCapacitance: m.PrimaryCapacitance,
	}
}

// Into adds the model to a network between two nodes, both against ground. Chains use it through
// load.Line's Through.
func (m Model) Into(n circuit.Network, name, in, out string) circuit.Network {
	if err := m.check(); err != nil {
		return n.Refuse(name, err)
	}
	of := func(what string) string { return name + " " + what }
	n = n.Resistor(of("primary resistance"), in, of("leak"), m.PrimaryResistance)
	core := of("leak")
	if m.Leakage > 0 {
		core = of("core")
		n = n.Inductor(of("leakage"), of("leak"), core, m.Leakage)
	}
	if m.PrimaryInductance > 0 {
		n = n.Inductor(of("primary inductance"), core, circuit.Ground, m.PrimaryInductance)
	}
	if m.CoreLoss > 0 {
		n = n.Resistor(of("core loss"), core, circuit.Ground, m.CoreLoss)
	}
	n = n.Transformer(name, core, circuit.Ground, of("secondary"), circuit.Ground, m.Ratio).
		Resistor(of("secondary resistance"), of("secondary"), out, m.SecondaryResistance)
	return across(across(n, of("primary capacitance"), in, m.PrimaryCapacitance), of("secondary capacitance"), out, m.SecondaryCapacitance)
}

func across(n circuit.Network, name, node string, c units.Capacitance) circuit.Network {
	if c == 0 {
		return n
	}
	return n.Capacitor(name, node, circuit.Ground, c)
}

// Sweep returns the load's voltage relative to the source's EMF, with all parts of the model.
//
// Source: nodal analysis of the equivalent circuit, see circuit.Network's Sweep.
//
// Valid: small signals; the core's inductance and loss are taken as constant over level and frequency.
func (m Model) Sweep(source, load units.Resistance, low, high units.Frequency) (circuit.Response, error) {
	n := circuit.New("").VoltageSource("source", "EMF", circuit.Ground, units.Volt).Resistor("source resistance", "EMF", "in", source)
	return m.Into(n, "transformer", "in", "out").Resistor("load", "out", circuit.Ground, load).Sweep("out", low, high)
}

// values checks everything a formula needs.
func (m Model) values(source, load units.Resistance) (kernel.Values, error) {
	for _, err := range []error{m.check(), notNegative("source resistance", source), positive("load resistance", load)} {
		if err != nil {
			return kernel.Values{}, err
		}
	}
	return kernel.Values{Rs: source.SI(), Rp: m.PrimaryResistance.SI(), R2: m.SecondaryResistance.SI(), RL: load.SI(), N: m.Ratio,
		Lm: m.PrimaryInductance.SI(), Leak: m.Leakage.SI()}, nil
}

// LowCorner returns the lower -3 dB frequency between a source and a load, from the primary
// inductance.
//
// Source: textbook two-corner model, such as Flanagan, Handbook of Transformer Design and
// Applications, 2nd ed., 1993.
//
// Valid: leakage and capacitances, which Sweep includes, are neglected: leakage up to a tenth of the primary inductance,
// and a resonance of that with the capacitances from three times the corner on.
func (m Model) LowCorner(source, load units.Resistance) (units.Frequency, error) {
	v, err := m.values(source, load)
	if err == nil {
		err = positive("primary inductance", m.PrimaryInductance)
	}
	return units.Frequency(kernel.Low(v)), err
}

// HighCorner returns the upper -3 dB frequency between a source and a load, from the leakage.
//
// Source: textbook two-corner model, such as Flanagan, Handbook of Transformer Design and
// Applications, 2nd ed., 1993.
//
// Valid: capacitances, which Sweep includes, are neglected: their resonance with the leakage from three times the corner
// on. With step-up ratios above about 5 they often decide.
func (m Model) HighCorner(source, load units.Resistance) (units.Frequency, error) {
	v, err := m.values(source, load)
	if err == nil {
		err = positive("leakage", m.Leakage)
	}
	return units.Frequency(kernel.High(v)), err
}

// Gain returns the load's voltage relative to the source's EMF between the corners.
func (m Model) Gain(source, load units.Resistance) (units.Level, error) {
	v, err := m.values(source, load)
	return units.LevelOf(kernel.Gain(v)), err
}

// InsertionLoss returns what the windings' resistances cost between the corners: how much higher
// the load's voltage would be without them.
func (m Model) InsertionLoss(source, load units.Resistance) (units.Level, error) {
	v, err := m.values(source, load)
	return units.LevelOf(kernel.Loss(v)), err
}

// ToPrimary returns an impedance at the secondary as the primary shows it: divided by the ratio
// squared.
func (m Model) ToPrimary(z units.Impedance) units.Impedance {
	return z / units.Impedance(complex(m.Ratio*m.Ratio, 0))
}

// ToSecondary returns an impedance at the primary as the secondary shows it: times the ratio
// squared.
func (m Model) ToSecondary(z units.Impedance) units.Impedance {
	return z * units.Impedance(complex(m.Ratio*m.Ratio, 0))
}
