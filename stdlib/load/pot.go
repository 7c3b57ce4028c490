package load

import (
	"fmt"
	"math"
	"slices"
	"sort"

	"lode/units"
)

// This file holds potentiometers and their tapers.

// Pot is a potentiometer with its taper and its position. Make one with Linear or Logarithmic; as
// made it is fully up.
type Pot struct {
	total units.Resistance
	half  float64 // share of the resistance at half rotation
	down  float64 // rotation back from fully up

	positions, shares []float64 // a measured taper
}

// Linear returns a potentiometer whose resistance follows its rotation, fully up.
func Linear(total units.Resistance) Pot { return Pot{total: total, half: 0.5} }

// Logarithmic returns a potentiometer with a logarithmic (audio) taper, fully up: a tenth of its
// resistance at half rotation, which is common practice, no source; makers differ from 0.1 to
// 0.2, see LogarithmicAt.
func Logarithmic(total units.Resistance) Pot { return Pot{total: total, half: 0.1} }

// LogarithmicAt returns a potentiometer with a logarithmic taper that has the given share of its
// resistance at half rotation, fully up.
//
// Example: load.LogarithmicAt(500*kΩ, 0.15).At(0.7)
func LogarithmicAt(total units.Resistance, half float64) Pot { return Pot{total: total, half: half} }

// Measured returns a potentiometer with a measured taper, fully up: rising positions from 0 to 1
// and the share of the resistance below the wiper at each. Between them the taper is straight.
//
// Example: load.Measured(500*kΩ, []float64{0, 0.25, 0.5, 0.75, 1}, []float64{0, 0.04, 0.12, 0.5, 1})
func Measured(total units.Resistance, positions, shares []float64) Pot {
	return Pot{total: total, half: 0.5, positions: slices.Clone(positions), shares: slices.Clone(shares)}
}

// At returns the potentiometer turned to a position from 0 (down) to 1 (fully up).
func (p Pot) At(position float64) Pot {
	p.down = 1 - position
	return p
}

// Total returns the resistance of the whole track.
func (p Pot) Total() units.Resistance { return p.total }

// Share returns the part of the track below the wiper, from 0 to 1.
//
// Source: a logarithmic taper is taken as (bˣ - 1)/(b - 1) with b = (1/h - 1)², which passes
// through the share h at half rotation; made of two carbon compositions a real track follows it roughly.
func (p Pot) Share() float64 {
	x := 1 - p.down
	if len(p.positions) > 0 {
		return between(p.positions, p.shares, x)
	}
	if p.half == 0.5 || x == 0 || x == 1 {
		return x
	}
	b := math.Pow(1/p.half-1, 2)
	return math.Expm1(x*math.Log(b)) / (b - 1)
}

// between interpolates straight.
func between(xs, ys []float64, x float64) float64 {
	i := min(max(sort.SearchFloat64s(xs, x), 1), len(xs)-1)
	return ys[i-1] + (ys[i]-ys[i-1])*(x-xs[i-1])/(xs[i]-xs[i-1])
}

// upper and lower return the resistances above and below the wiper.
func (p Pot) upper() units.Resistance { return p.total - p.lower() }

func (p Pot) lower() units.Resistance { return units.Resistance(p.total.SI() * p.Share()) }

// String writes resistance and position.
func (p Pot) String() string {
	if p.down == 0 {
		return p.total.String()
	}
	return fmt.Sprintf("%v at %s", p.total, units.Digits(1-p.down, 3))
}

func (p Pot) problem(what string) error {
	switch {
	case !(p.total > 0) || math.IsInf(p.total.SI(), 1):
		return fmt.Errorf("%s potentiometer: not possible: got %v, want more than 0 Ω", what, p.total)
	case !(p.half > 0 && p.half < 1):
		return fmt.Errorf("%s potentiometer: share at half rotation: got %s, want more than 0 and less than 1", what, units.Digits(p.half, 4))
	case !(p.down >= 0 && p.down <= 1):
		return fmt.Errorf("%s potentiometer: position: got %s, want 0 (down) to 1 (fully up)", what, units.Digits(1-p.down, 4))
	}
	return p.taperProblem(what)
}

func (p Pot) taperProblem(what string) error {
	last := len(p.positions) - 1
	if last < 0 && len(p.shares) == 0 {
		return nil
	}
	if last < 1 || len(p.shares) != last+1 {
		return fmt.Errorf("%s potentiometer: measured taper: got %d positions and %d shares, want as many of both and at least 2", what, last+1, len(p.shares))
	}
	if p.positions[0] != 0 || p.positions[last] != 1 {
		return fmt.Errorf("%s potentiometer: measured taper: got positions from %g to %g, want 0 to 1", what, p.positions[0], p.positions[last])
	}
	for i := range p.positions {
		if i > 0 && !(p.positions[i] > p.positions[i-1] && p.shares[i] >= p.shares[i-1]) || !(p.shares[i] >= 0 && p.shares[i] <= 1) {
			return fmt.Errorf("%s potentiometer: measured taper: got position %g, share %g as number %d, want both rising from 0 to 1", what, p.positions[i], p.shares[i], i+1)
		}
	}
	return nil
}
