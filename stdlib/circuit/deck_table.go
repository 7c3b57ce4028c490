package circuit

import (
	"fmt"
	"math"
	"strings"

	"lode/stdlib/circuit/internal/kernel"
	"lode/units"
)

// This file writes what a deck has no single line for: parts given by a function of frequency,
// as tables, and noise sources, as a resistor whose noise an amplifier copies.

// tablePoints is how many points a decade has in a table. Between them the simulator draws
// straight lines; what that leaves of a function that goes with the square of frequency is 3e-5.
const tablePoints = 200

// quietOhms is the resistor that noise is copied from.
const quietOhms = 1e4

// law writes a part given by a function of frequency as a resistance and an inductance in
// series, both tables over frequency: "hertz" is that of an analysis of the response. (In an
// analysis of noise ngspice 39 does not know it.)
func (d *deck) law(law func(units.Frequency) units.Impedance, a, b string) error {
	d.line(fmt.Sprintf("* a function of frequency, as tables of %d points per decade: for the response, not for noise", tablePoints))
	inner := d.free(fmt.Sprintf("x%dt", d.count))
	var resistance, inductance []float64
	points := d.tableFrequencies()
	for _, f := range points {
		z := complex128(law(units.Frequency(f)))
		if math.IsNaN(real(z)+imag(z)) || math.IsInf(real(z)+imag(z), 0) {
			return fmt.Errorf("function: %w: got %v at %v, want a finite impedance", ErrValue, z, units.Frequency(f))
		}
		resistance, inductance = append(resistance, max(real(z), 1e-9)), append(inductance, imag(z)/(2*math.Pi*f))
	}
	d.element("Rt", a, inner, "r='"+table(points, resistance)+"'")
	d.element("Lt", inner, b, "l='"+table(points, inductance)+"'")
	return nil
}

// tableFrequencies reach a little beyond the sweep, where a simulator rounds its ends.
func (d *deck) tableFrequencies() []float64 {
	low, high := d.low/1.01, d.high*1.01
	n := int(math.Ceil(tablePoints*math.Log10(high/low))) + 1
	list := make([]float64, n)
	for i := range list {
		list[i] = low * math.Pow(high/low, float64(i)/float64(n-1))
	}
	return list
}

// table writes values over frequency, four points a line.
func table(points, values []float64) string {
	var text strings.Builder
	for i, f := range points {
		if i%4 == 0 {
			text.WriteString("\n+ ")
		}
		fmt.Fprintf(&text, ", %.9e, %.9e", f, values[i])
	}
	return "pwl(hertz" + text.String() + ")"
}

// noise writes a noise source: the voltage of a resistor that nothing else touches, brought to
// the stated density at the temperature of the network.
func (d *deck) noise(q part, a, b string) {
	t := d.plan.network.temperature.SI()
	if t == 0 {
		t = usualTemperature
	}
	quiet := d.free(fmt.Sprintf("x%dn", d.count))
	d.element("Rn", quiet, "0", value(quietOhms))
	letter := "E"
	if q.kind == noiseCurrent {
		letter = "G"
	}
	d.element(letter, a, b, quiet, "0", value(q.value/math.Sqrt(4*kernel.Boltzmann*t*quietOhms)))
}
