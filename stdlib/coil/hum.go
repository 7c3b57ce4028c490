package coil

import (
	"fmt"
	"math"

	"lode/units"
	"lode/units/frame"
)

// Hum returns the voltage (rms) that a source induces in the winding, its middle at the origin.
//
// Source: Faraday's law, 2πf·N·Φ; the flux of the source through every turn, by the integral of its vector potential.
//
// Valid: sources outside the coil and its core, a wire 1 mm and more away; no iron, no shield.
//
// Accuracy: 0.1 % for the geometry given; poles and plates of iron gather more flux.
//
// Caution: never work near bare mains conductors; measure hum with insulated, earthed gear only, and leave the mains to
// licensed electricians.
//
// Example: c.Hum(coil.MainsWire{Current: 2*A, Distance: 0.6*metre}, 50*Hz)
func (c Winding) Hum(source HumSource, frequency units.Frequency) (units.Voltage, error) {
	return Chain{coils: []Placed{{Winding: c}}}.Hum(source, frequency)
}

// Hum returns the voltage (rms) that a source induces in all windings together.
//
// Source: as Winding.Hum.
//
// Accuracy: 0.1 % of the hum of one winding.
//
// Example: pair.Hum(coil.UniformField{FluxDensity: 0.1*µT}, 50*Hz)
func (c Chain) Hum(source HumSource, frequency units.Frequency) (units.Voltage, error) {
	fluxes, err := c.fluxes(source)
	if err != nil {
		return 0, err
	}
	return voltage(fluxes, frequency)
}

// voltage returns what fluxes that alternate with a frequency induce together.
func voltage(fluxes []float64, frequency units.Frequency) (units.Voltage, error) {
	if !(frequency > 0 && frequency <= 1e6) {
		return 0, refuse("frequency: out of range", frequency, "more than 0 and at most 1 MHz", "")
	}
	sum, all := added(fluxes)
	if math.Abs(sum) < 1e-9*all { // nothing is left but rounding
		sum = 0
	}
	return units.Voltage(2 * math.Pi * float64(frequency) * math.Abs(sum)), nil
}

// fluxes returns the signed flux linked with each winding.
func (c Chain) fluxes(source HumSource) ([]float64, error) {
	if source == nil {
		return nil, refuse("hum source: none", "nothing", "coil.UniformField{...} or coil.MainsWire{...}", "")
	}
	field, err := source.Field()
	if err != nil {
		return nil, err
	}
	if len(c.coils) == 0 {
		return nil, refuse("chain: none", c, "windings joined by coil.InSeries", "")
	}
	var fluxes []float64
	for i, p := range c.coils {
		if p.Winding.turns == 0 {
			return nil, refuse(fmt.Sprintf("winding %d: none", i+1), p.Winding, "a winding made by coil.Wind", "")
		}
		if gap := units.Length(p.gap(field)); gap < nearestSource {
			return nil, refuse(fmt.Sprintf("hum source: goes through winding %d or too near", i+1), gap, fmt.Sprintf("at least %v between them", nearestSource), "Distance counts from the origin, which is the middle of a single winding")
		}
		flux, most := p.linked(field), float64(p.Winding.turns)*float64(p.Winding.Area())*field.strength
		if math.Abs(flux) < 1e-9*most { // the field runs along the turns; what is left is rounding
			flux = 0
		}
		fluxes = append(fluxes, flux)
	}
	return fluxes, nil
}

// nearestSource is what the insulation of a wire leaves between it and a winding at the least.
const nearestSource = units.Millimetre

// Residual returns how much of the hum is left: the hum of the chain against that of the same windings
// if all of them added up.
//
// Source: as Winding.Hum.
//
// Accuracy: 0.5 % of the hum of one winding, so that residuals down to about -45 dB are sure; beyond that the
// bench decides. -120 dB stands for windings that cancel in full on paper.
//
// Example: pair.Residual(coil.MainsWire{Current: 2*A, Distance: 0.6*metre})
func (c Chain) Residual(source HumSource) (units.Level, error) {
	fluxes, err := c.fluxes(source)
	if err != nil {
		return 0, err
	}
	return residual(fluxes)
}

func residual(fluxes []float64) (units.Level, error) {
	sum, all := added(fluxes)
	if all == 0 {
		return 0, refuse("hum source: no flux through any winding", "a field along the turns", "one that slants through them", "")
	}
	return max(units.LevelOf(sum/all), nothingLeft), nil
}

// added returns the sum of fluxes, and what it is if none cancels another.
func added(fluxes []float64) (sum, all float64) {
	for _, flux := range fluxes {
		sum, all = sum+flux, all+math.Abs(flux)
	}
	return sum, all
}

// nothingLeft stands for hum that cancels in full on paper.
const nothingLeft units.Level = -120

// HumTable lays out what several sources induce in the chain: the voltage and the residual of each, which is left open for a source
// that no winding hears.
//
// Source: as Winding.Hum.
//
// Example: pair.HumTable(50*Hz, coil.UniformField{FluxDensity: 0.1*µT}, coil.MainsWire{Current: 2*A, Distance: 0.6*metre})
func (c Chain) HumTable(frequency units.Frequency, sources ...HumSource) (frame.Frame, error) {
	var names, voltages, residuals []any
	for _, source := range sources {
		fluxes, err := c.fluxes(source)
		if err != nil {
			return frame.Frame{}, err
		}
		hum, err := voltage(fluxes, frequency)
		if err != nil {
			return frame.Frame{}, err
		}
		var left any
		if level, err := residual(fluxes); err == nil {
			left = level
		}
		names, voltages, residuals = append(names, source.String()), append(voltages, hum), append(residuals, left)
	}
	return frame.Frame{Title: "Hum at " + frequency.String(), Columns: []frame.Column{
		frame.Collect("Source", names), frame.Collect("Hum (rms)", voltages), frame.Collect("Residual", residuals)}}, nil
}
