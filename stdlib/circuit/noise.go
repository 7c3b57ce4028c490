package circuit

import (
	"fmt"
	"math"

	"lode/stdlib/circuit/internal/kernel"
	"lode/stdlib/pace"
	"lode/units"
)

// This file computes the noise at an output: where it comes from, its density and its sum.

// Temperature sets the temperature of all resistive parts; without it that is 20 °C.
func (n Network) Temperature(t units.Temperature) Network {
	if problem := aboveZero("temperature", t.SI(), "K"); problem != nil && n.err == nil {
		n.err = fmt.Errorf("%s: %w", called("network", n.title), problem)
	}
	n.temperature = t
	return n
}

// NoiseVoltage adds a noise voltage of a flat density in series between two nodes, such as an
// amplifier's input noise voltage in front of its input. For signals it is a wire.
func (n Network) NoiseVoltage(name, from, to string, density units.VoltageNoise) Network {
	return n.with(part{name: name, kind: noiseVoltage, from: from, to: to, value: density.SI()}, atLeastZero("noise voltage", density.SI(), "V/√Hz"))
}

// NoiseCurrent adds a noise current of a flat density between two nodes, such as an amplifier's
// input noise current.
func (n Network) NoiseCurrent(name, from, to string, density units.CurrentNoise) Network {
	return n.with(part{name: name, kind: noiseCurrent, from: from, to: to, value: density.SI()}, atLeastZero("noise current", density.SI(), "A/√Hz"))
}

// Noise is the noise at an output from a low to a high frequency.
type Noise struct {
	label     string
	points    []float64 // Hz
	densities []float64 // V/√Hz
	density   func(hertz float64) (float64, bool)
	names     []string
	flat      []float64 // V² by name
	weighted  []float64
}

// Noise returns the noise of a node against ground between two frequencies: thermal noise of every
// resistive part, and the noise voltages and currents that were added.
//
// Source: Johnson, Physical Review 32, 97 (1928), and Nyquist, Physical Review 32, 110 (1928): 4kTR.
//
// Valid: thermal noise and flat densities; excess noise of carbon tracks and hum are not in it.
//
// Accuracy: integrals to 1e-5 for the part values given.
func (n Network) Noise(node string, low, high units.Frequency) (Noise, error) {
	if err := checkRange(low, high); err != nil {
		return Noise{}, fmt.Errorf("%s: %w", called("network", n.title), err)
	}
	p, err := n.plan()
	if err != nil {
		return Noise{}, err
	}
	output, err := p.output(node, Ground)
	if err != nil {
		return Noise{}, err
	}
	names, inputs := p.noises()
	return p.listen(kernel.NewNoise(p.system, output, inputs, low.Angular().SI(), high.Angular().SI()), names, low.SI(), high.SI())
}

// listen samples and integrates.
func (p *plan) listen(k *kernel.Noise, names []string, low, high float64) (Noise, error) {
	shares := make([]float64, len(names))
	at := func(hertz float64) (float64, bool) { return k.At(2*math.Pi*hertz, shares) }
	out := Noise{label: p.network.title, names: names, density: at, flat: make([]float64, len(names)), weighted: make([]float64, len(names))}
	points, values := sample(noiseCurve{at}, low, high)
	out.points = points
	for i, v := range values {
		if math.IsNaN(real(v)) {
			return Noise{}, p.network.undetermined(units.Frequency(points[i]))
		}
		out.densities = append(out.densities, real(v))
	}
	for i := range pace.Of(len(points) - 1) {
		out.integrate(points[i], points[i+1], shares)
	}
	return out, nil
}

// noiseCurve shows a density to the sampler.
type noiseCurve struct{ at func(float64) (float64, bool) }

func (c noiseCurve) At(omega float64) complex128 {
	power, ok := c.at(omega / (2 * math.Pi))
	if !ok {
		return complex(math.NaN(), 0)
	}
	return complex(math.Sqrt(power), 0)
}

// gauss is the three-point Gauss-Legendre rule on -1 to 1.
var gauss = [...]struct{ x, w float64 }{{-math.Sqrt(0.6), 5.0 / 9}, {0, 8.0 / 9}, {math.Sqrt(0.6), 5.0 / 9}}

// integrate adds the contributions between a and b, over the logarithm of frequency.
func (n *Noise) integrate(a, b float64, shares []float64) {
	half := math.Log(b/a) / 2
	for _, g := range gauss {
		f := math.Sqrt(a*b) * math.Exp(half*g.x)
		n.density(f)
		weight := aWeight(f)
		for i, s := range shares {
			n.flat[i] += g.w * half * f * s
			n.weighted[i] += g.w * half * f * s * weight * weight
		}
	}
}

// usualTemperature is that of all resistive parts where none is stated: 20 °C.
const usualTemperature = 293.15

// noises lists the noise sources of the network.
func (p *plan) noises() (names []string, inputs []kernel.NoiseInput) {
	t := p.network.temperature.SI()
	if t == 0 {
		t = usualTemperature
	}
	for _, q := range p.network.parts {
		if input, noisy := p.noise(q, 4*kernel.Boltzmann*t); noisy {
			names, inputs = append(names, q.name), append(inputs, input)
		}
	}
	return names, inputs
}

// noise returns the noise source in part q, thermal being 4kT.
func (p *plan) noise(q part, thermal float64) (kernel.NoiseInput, bool) {
	row := kernel.Pair{P: p.branch[q.name], Q: kernel.Ground}
	flat := func(at kernel.Pair, power float64) (kernel.NoiseInput, bool) {
		return kernel.NoiseInput{At: at, Power: func(float64) float64 { return power }}, power > 0
	}
	switch {
	case q.kind == resistor && q.branch():
		return flat(row, thermal*q.value)
	case q.kind == resistor && q.value > 0:
		return flat(p.at(q), thermal/q.value*kernel.Scale*kernel.Scale)
	case q.kind == noiseVoltage:
		return flat(row, q.value*q.value)
	case q.kind == noiseCurrent:
		return flat(p.at(q), q.value*q.value*kernel.Scale*kernel.Scale)
	case q.law != nil:
		return kernel.NoiseInput{At: row, Power: func(omega float64) float64 {
			return thermal * (q.series + math.Max(0, real(q.law(units.AngularFrequency(omega).Frequency()))))
		}}, true
	case q.kind == coil:
		return flat(row, thermal*q.series)
	}
	return kernel.NoiseInput{}, false
}
