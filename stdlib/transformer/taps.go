package transformer

import (
	"errors"
	"fmt"
	"math"

	"lode/stdlib/transformer/internal/kernel"
	"lode/units"
	"lode/units/frame"
)

// This file finds the best tap for a source and a load.

// Tap is a transformer used on one of its taps.
type Tap struct {
	Name  string
	Model Model
}

// TapResult is what one tap does between the source and the load.
type TapResult struct {
	Name         string
	Ratio        float64
	Gain         units.Level      // load voltage over source EMF between the corners
	LowCorner    units.Frequency  // 0 where the model has no primary inductance
	HighCorner   units.Frequency  // 0 where the model has no leakage
	SeenBySource units.Resistance // the loaded primary in Ω
}

// TapResults is a table of taps.
type TapResults []TapResult

// CompareTaps returns what each tap does between a source and a load.
//
// Source: textbook two-corner model, see Model's LowCorner and HighCorner.
//
// Valid: as LowCorner and HighCorner.
//
// Example: transformer.CompareTaps(200*ohm, 47*kΩ, transformer.Tap{"whole primary", step}, transformer.Tap{"half", step.TappedPrimary(0.5)})
func CompareTaps(source, load units.Resistance, taps ...Tap) (TapResults, error) {
	if len(taps) == 0 {
		return nil, errors.New("taps: none: want at least one")
	}
	var all TapResults
	for _, t := range taps {
		v, err := t.Model.values(source, load)
		if err != nil {
			return nil, fmt.Errorf("tap %q: %w", t.Name, err)
		}
		r := TapResult{Name: t.Name, Ratio: t.Model.Ratio, Gain: units.LevelOf(kernel.Gain(v)),
			SeenBySource: units.Resistance(v.Rp + (v.RL+v.R2)/(v.N*v.N))}
		if v.Lm > 0 {
			r.LowCorner = units.Frequency(kernel.Low(v))
		}
		if v.Leak > 0 {
			r.HighCorner = units.Frequency(kernel.High(v))
		}
		all = append(all, r)
	}
	return all, nil
}

// Best returns the tap with the highest voltage at the load.
func (t TapResults) Best() (TapResult, error) {
	if len(t) == 0 {
		return TapResult{}, errors.New("taps: none: want at least one")
	}
	best := t[0]
	for _, r := range t {
		if r.Gain > best.Gain {
			best = r
		}
	}
	return best, nil
}

// BestRatio returns the ratio of turns that gives a load the highest voltage from a source, windings
// of no resistance taken: then the load, seen from the primary, equals the source.
//
// Source: maximum power theorem.
func BestRatio(source, load units.Resistance) (float64, error) {
	err := first(positive("source resistance", source), positive("load resistance", load))
	return kernel.BestRatio(source.SI(), load.SI()), err
}

// Frame returns the table in columns.
func (t TapResults) Frame() frame.Frame {
	names := make([]string, len(t))
	var columns [5][]float64
	for i, r := range t {
		names[i] = r.Name
		for j, v := range [...]float64{r.Ratio, r.Gain.SI(), known(r.LowCorner), known(r.HighCorner), r.SeenBySource.SI()} {
			columns[j] = append(columns[j], v)
		}
	}
	hertz := units.Frequency(0).Kind()
	return frame.Frame{Title: "Taps", Columns: []frame.Column{
		{Name: "Tap", Texts: names}, frame.Of("Ratio", units.Number(), columns[0]), frame.Of("Gain", units.Level(0).Kind(), columns[1]),
		frame.Of("Low corner", hertz, columns[2]), frame.Of("High corner", hertz, columns[3]), frame.Of("Seen by source", units.Resistance(0).Kind(), columns[4]),
	}}
}

// known returns f in Hz, NaN where there is none.
func known(f units.Frequency) float64 {
	if f == 0 {
		return math.NaN()
	}
	return f.SI()
}
