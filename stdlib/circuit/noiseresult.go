package circuit

import (
	"fmt"
	"math"
	"sort"

	"lode/units"
	"lode/units/frame"
)

// This file reads results from a noise.

// DensityAt returns the noise density at one frequency.
func (n Noise) DensityAt(f units.Frequency) (units.VoltageNoise, error) {
	if err := checkFrequency(f); err != nil || n.density == nil {
		return 0, fmt.Errorf("%s: %w: got %v", called("noise", n.label), ErrRange, f)
	}
	power, ok := n.density(f.SI())
	if !ok {
		return 0, fmt.Errorf("%s: %w at %v", called("noise", n.label), ErrSingular, f)
	}
	return units.VoltageNoise(math.Sqrt(power)), nil
}

// Total returns the noise voltage (RMS) of the whole range.
func (n Noise) Total() units.Voltage { return units.Voltage(math.Sqrt(sum(n.flat))) }

// Weighted returns the noise voltage (RMS) of the whole range, A-weighted.
func (n Noise) Weighted() units.Voltage { return units.Voltage(math.Sqrt(sum(n.weighted))) }

// SignalToNoise returns the level of a signal (RMS) at the output over the noise.
func (n Noise) SignalToNoise(signal units.Voltage) units.Level {
	return units.LevelOf(signal.SI() / n.Total().SI())
}

// WeightedSignalToNoise returns the level of a signal (RMS) at the output over the A-weighted noise.
func (n Noise) WeightedSignalToNoise(signal units.Voltage) units.Level {
	return units.LevelOf(signal.SI() / n.Weighted().SI())
}

// Named returns n under another name.
func (n Noise) Named(label string) Noise {
	n.label = label
	return n
}

// String writes both totals.
func (n Noise) String() string {
	text := fmt.Sprintf("noise %v flat, %v A-weighted", n.Total(), n.Weighted())
	if n.label == "" {
		return text
	}
	return n.label + ": " + text
}

// Frame returns the density over frequency.
func (n Noise) Frame() frame.Frame {
	return frame.Frame{Title: n.label, Columns: []frame.Column{
		frame.Of("Frequency", units.Frequency(0).Kind(), append([]float64(nil), n.points...)),
		frame.Of("Density", units.VoltageNoise(0).Kind(), append([]float64(nil), n.densities...)),
	}}
}

// Contributions returns what each part adds to the noise, the loudest first.
func (n Noise) Contributions() Contributions {
	var all Contributions
	for i, name := range n.names {
		all = append(all, Contribution{name, units.Voltage(math.Sqrt(n.flat[i])), units.Voltage(math.Sqrt(n.weighted[i]))})
	}
	sort.SliceStable(all, func(i, j int) bool { return all[i].Flat > all[j].Flat })
	return all
}

// Contribution is the noise at the output that comes from one part.
type Contribution struct {
	Part     string
	Flat     units.Voltage // RMS
	Weighted units.Voltage // RMS, A-weighted
}

// Contributions is a table of noise by part. Contributions add as squares.
type Contributions []Contribution

// Frame returns the table in columns.
func (c Contributions) Frame() frame.Frame {
	names, flat, weighted := make([]string, len(c)), make([]float64, len(c)), make([]float64, len(c))
	for i, one := range c {
		names[i], flat[i], weighted[i] = one.Part, one.Flat.SI(), one.Weighted.SI()
	}
	return frame.Frame{Title: "Noise by part", Columns: []frame.Column{
		{Name: "Part", Texts: names}, frame.Of("Flat", units.Voltage(0).Kind(), flat), frame.Of("A-weighted", units.Voltage(0).Kind(), weighted),
	}}
}

func sum(values []float64) float64 {
	total := 0.0
	for _, v := range values {
		total += v
	}
	return total
}
