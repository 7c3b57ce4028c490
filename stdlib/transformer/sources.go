package transformer

import (
	"fmt"
	"math"

	"lode/stdlib/transformer/internal/kernel"
	"lode/units"
)

// This file makes models from a nameplate, from measurements and from windings on a core.

// Nameplate is what is printed on a transformer or its data sheet. What is zero is not stated.
type Nameplate struct {
	Primary             units.Resistance // rated impedance in Ω
	Secondary           units.Resistance // rated impedance in Ω
	LowCorner           units.Frequency  // lower -3 dB frequency between the rated impedances in Hz
	HighCorner          units.Frequency  // upper -3 dB frequency between the rated impedances in Hz
	PrimaryResistance   units.Resistance // of the winding in Ω
	SecondaryResistance units.Resistance // of the winding in Ω
}

// Model returns the circuit that the nameplate implies.
//
// Source: ratio √(Z2/Z1); the corners of the textbook two-corner model solved for its inductances.
//
// Accuracy: a nameplate rounds. Measurements, see Bench, say more.
//
// Example: transformer.Nameplate{Primary: 150*ohm, Secondary: 15*kΩ, LowCorner: 20*Hz, HighCorner: 30*kHz}.Model()
func (p Nameplate) Model() (Model, error) {
	if err := first(positive("primary impedance", p.Primary), positive("secondary impedance", p.Secondary),
		notNegative("low corner", p.LowCorner), notNegative("high corner", p.HighCorner)); err != nil {
		return Model{}, err
	}
	m := Model{Ratio: math.Sqrt(p.Secondary.SI() / p.Primary.SI()), PrimaryResistance: p.PrimaryResistance, SecondaryResistance: p.SecondaryResistance}
	// A corner is inversely proportional to its inductance: that at 1 H tells the one wanted.
	v := kernel.Values{Rs: p.Primary.SI(), RL: p.Secondary.SI(), Rp: p.PrimaryResistance.SI(), R2: p.SecondaryResistance.SI(), N: m.Ratio, Lm: 1, Leak: 1}
	if p.LowCorner > 0 {
		m.PrimaryInductance = units.Inductance(kernel.Low(v) / p.LowCorner.SI())
	}
	if p.HighCorner > 0 {
		m.Leakage = units.Inductance(kernel.High(v) / p.HighCorner.SI())
	}
	return m, m.check()
}

// Bench is what can be measured with an inductance meter, an ohmmeter and a generator.
type Bench struct {
	PrimaryOpen         units.Inductance // of the primary, secondary open, in H
	PrimaryShorted      units.Inductance // of the primary, secondary shorted, in H
	VoltageRatio        float64          // open secondary voltage over primary voltage
	PrimaryResistance   units.Resistance // of the winding in Ω
	SecondaryResistance units.Resistance // of the winding in Ω
	SecondaryResonance  units.Frequency  // where the secondary, primary open, is in resonance with its own capacitance, in Hz; 0 if not measured
}

// Model returns the circuit that the measurements mean.
//
// Source: coupled windings as leakage, magnetising inductance and ideal transformer, exactly:
// Hurley and Wölfle, Transformers and Inductors for Power Electronics, 2013, section 4.2.
//
// Valid: inductances measured at a frequency and level like those of use, since the core's permeability depends on both.
//
// Example: transformer.Bench{PrimaryOpen: 0.8*H, PrimaryShorted: 2*mH, VoltageRatio: 9.9}.Model()
func (b Bench) Model() (Model, error) {
	if err := first(positive("open primary inductance", b.PrimaryOpen), notNegative("shorted primary inductance", b.PrimaryShorted),
		notNegative("secondary resonance", b.SecondaryResonance)); err != nil {
		return Model{}, err
	}
	if b.PrimaryShorted >= b.PrimaryOpen {
		return Model{}, fmt.Errorf("transformer shorted primary inductance: not possible: got %v, want less than the open one, %v", b.PrimaryShorted, b.PrimaryOpen)
	}
	if !(b.VoltageRatio > 0) || math.IsInf(b.VoltageRatio, 1) {
		return Model{}, fmt.Errorf("transformer voltage ratio: not possible: got %s, want more than 0", units.Digits(b.VoltageRatio, 4))
	}
	_, leak, magnetising, ratio := kernel.Bench(b.PrimaryOpen.SI(), b.PrimaryShorted.SI(), b.VoltageRatio)
	m := Model{Ratio: ratio, PrimaryInductance: units.Inductance(magnetising), Leakage: units.Inductance(leak),
		PrimaryResistance: b.PrimaryResistance, SecondaryResistance: b.SecondaryResistance}
	if b.SecondaryResonance > 0 {
		omega := b.SecondaryResonance.Angular().SI()
		m.SecondaryCapacitance = units.Capacitance(1 / (omega * omega * magnetising * ratio * ratio))
	}
	return m, m.check()
}

// Coupling returns the coupling factor of the windings.
func (b Bench) Coupling() (float64, error) {
	_, err := b.Model()
	k, _, _, _ := kernel.Bench(b.PrimaryOpen.SI(), b.PrimaryShorted.SI(), b.VoltageRatio)
	return k, err
}

// Windings is a transformer by its turns on a core.
type Windings struct {
	Primary             float64          // turns
	Secondary           float64          // turns
	InductanceFactor    units.Inductance // inductance per turn squared of the core (A_L) in H
	Coupling            float64          // coupling factor, 0 for a perfect one
	PrimaryResistance   units.Resistance // of the winding in Ω
	SecondaryResistance units.Resistance // of the winding in Ω
}

// Model returns the circuit of the windings: inductance with the turns squared.
//
// Source: L = A_L·N² by the definition of the inductance factor, IEC 60205.
//
// Example: transformer.Windings{Primary: 300, Secondary: 3000, InductanceFactor: 2*µH, Coupling: 0.998}.Model()
func (w Windings) Model() (Model, error) {
	for _, turns := range []float64{w.Primary, w.Secondary} {
		if !(turns > 0) || math.IsInf(turns, 1) {
			return Model{}, fmt.Errorf("transformer turns: not possible: got %s, want more than 0", units.Digits(turns, 4))
		}
	}
	k := w.Coupling
	if k == 0 {
		k = 1
	}
	if !(k > 0 && k <= 1) {
		return Model{}, fmt.Errorf("transformer coupling: not possible: got %s, want more than 0 and at most 1", units.Digits(k, 6))
	}
	if err := positive("inductance factor", w.InductanceFactor); err != nil {
		return Model{}, err
	}
	open := w.InductanceFactor.SI() * w.Primary * w.Primary
	b := Bench{PrimaryOpen: units.Inductance(open), PrimaryShorted: units.Inductance(open * (1 - k*k)), VoltageRatio: k * w.Secondary / w.Primary,
		PrimaryResistance: w.PrimaryResistance, SecondaryResistance: w.SecondaryResistance}
	return b.Model()
}

// FluxDensity returns the peak flux density in the core for a sine voltage (RMS) across a winding: above
// what the core material bears, the transformer distorts, first at the lowest frequency.
//
// Source: Faraday's law, B = V/(√2·π·f·N·A).
//
// Example: transformer.FluxDensity(1*V, 50*Hz, 500, 100*mm2)
func FluxDensity(v units.Voltage, f units.Frequency, turns float64, area units.Area) (units.FluxDensity, error) {
	if err := first(notNegative("voltage", v), positive("frequency", f), positive("core area", area)); err != nil {
		return 0, err
	}
	if !(turns > 0) || math.IsInf(turns, 1) {
		return 0, fmt.Errorf("transformer turns: not possible: got %s, want more than 0", units.Digits(turns, 4))
	}
	return units.FluxDensity(kernel.Flux(v.SI(), f.SI(), turns, area.SI())), nil
}

func first(problems ...error) error {
	for _, p := range problems {
		if p != nil {
			return p
		}
	}
	return nil
}
