package load

import (
	"errors"
	"fmt"
	"math"

	"lode/stdlib/pace"
	"lode/units"
	"lode/units/frame"
)

// This file compares chains by level, bandwidth and noise.

// Chain is what one of several compared chains does between 20 Hz and 20 kHz.
type Chain struct {
	Name          string
	Level         units.Level     // at 1 kHz, over the source's EMF
	Low           units.Frequency // lower -3 dB point, 0 where there is none above 1 Hz
	High          units.Frequency // upper -3 dB point, 0 where there is none below 1 MHz
	Noise         units.Voltage   // at the output, A-weighted, RMS
	SignalToNoise units.Level     // of the EMF given at 1 kHz over the A-weighted noise
}

// Chains is a table of compared chains.
type Chains []Chain

// Compare works out level, bandwidth and noise of chains, each under its name, for a coil's EMF (RMS).
//
// Source: see circuit.Network's Sweep and Noise.
//
// Valid: coils that see the same strings; noise is that of the parts and of what InputNoise or a buffer brought in, not hum.
//
// Example: load.Compare(5*mV, short.Named("3 m"), long.Named("10 m"))
func Compare(emf units.Voltage, lines ...Line) (Chains, error) {
	if !(emf > 0) || math.IsInf(emf.SI(), 1) {
		return nil, fmt.Errorf("EMF: not possible: got %v, want more than 0 V", emf)
	}
	if len(lines) == 0 {
		return nil, errors.New("chains: none: want at least one")
	}
	var all Chains
	for i := range pace.Of(len(lines)) {
		l := lines[i]
		c, err := l.weigh(emf)
		if c.Name == "" {
			c.Name = fmt.Sprintf("chain %d", i+1)
		}
		if err != nil {
			return nil, fmt.Errorf("%s: %w", c.Name, err)
		}
		all = append(all, c)
	}
	return all, nil
}

func (l Line) weigh(emf units.Voltage) (Chain, error) {
	c := Chain{Name: l.label}
	r, err := l.Sweep(units.Hertz, units.Megahertz)
	if err != nil {
		return c, err
	}
	if c.Level, err = r.LevelAt(units.Kilohertz); err != nil {
		return c, err
	}
	c.Low, _ = r.LowCutoff() // none is no fault
	c.High, _ = r.Cutoff()
	n, err := l.Noise(20*units.Hertz, 20*units.Kilohertz)
	if err != nil {
		return c, err
	}
	c.Noise = n.Weighted()
	c.SignalToNoise = n.WeightedSignalToNoise(units.Voltage(emf.SI() * c.Level.Ratio()))
	return c, nil
}

// Loudest returns the chain with the highest level at 1 kHz.
func (c Chains) Loudest() (Chain, error) {
	return c.best(func(x Chain) float64 { return x.Level.SI() })
}

// Widest returns the chain with the most octaves between its -3 dB points, of those that 20 Hz to 20 kHz has
// room for.
func (c Chains) Widest() (Chain, error) {
	return c.best(func(x Chain) float64 {
		high := x.High.SI()
		if high == 0 {
			high = 1e6
		}
		return math.Log(math.Min(high, 20e3) / math.Max(x.Low.SI(), 20))
	})
}

// Quietest returns the chain with the highest signal-to-noise ratio.
func (c Chains) Quietest() (Chain, error) {
	return c.best(func(x Chain) float64 { return x.SignalToNoise.SI() })
}

func (c Chains) best(score func(Chain) float64) (Chain, error) {
	if len(c) == 0 {
		return Chain{}, errors.New("chains: none: want at least one")
	}
	best := c[0]
	for _, x := range c {
		if score(x) > score(best) {
			best = x
		}
	}
	return best, nil
}

// String writes the chain in one line.
func (c Chain) String() string {
	band := ""
	if c.Low > 0 {
		band += fmt.Sprintf(", from %v", c.Low)
	}
	if c.High > 0 {
		band += fmt.Sprintf(", up to %v", c.High)
	}
	return fmt.Sprintf("%s: %v at 1 kHz%s, signal to noise %v", c.Name, c.Level, band, c.SignalToNoise)
}

// Frame returns the table in columns.
func (c Chains) Frame() frame.Frame {
	names := make([]string, len(c))
	var columns [5][]float64
	for i, x := range c {
		names[i] = x.Name
		for j, v := range [...]float64{x.Level.SI(), present(x.Low), present(x.High), x.Noise.SI(), x.SignalToNoise.SI()} {
			columns[j] = append(columns[j], v)
		}
	}
	hertz, level := units.Frequency(0).Kind(), units.Level(0).Kind()
	return frame.Frame{Title: "Chains compared", Columns: []frame.Column{
		{Name: "Chain", Texts: names}, frame.Of("Level at 1 kHz", level, columns[0]), frame.Of("Low -3 dB", hertz, columns[1]), frame.Of("High -3 dB", hertz, columns[2]),
		frame.Of("Noise, A-weighted", units.Voltage(0).Kind(), columns[3]), frame.Of("Signal to noise", level, columns[4]),
	}}
}

// present returns f in Hz, NaN where there is none.
func present(f units.Frequency) float64 {
	if f == 0 {
		return math.NaN()
	}
	return f.SI()
}
