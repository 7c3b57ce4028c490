package load

import (
	"fmt"
	"math"

	"lode/stdlib/circuit"
	"lode/units"
)

// This file holds potentiometers and the two controls made with them.

// Pot is a potentiometer with its taper and its position. Make one with Linear or Logarithmic; as
// made it is fully up.
type Pot struct {
	total units.Resistance
	half  float64 // share of the resistance at half rotation
	down  float64 // rotation back from fully up
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
	if p.half == 0.5 || x == 0 || x == 1 {
		return x
	}
	b := math.Pow(1/p.half-1, 2)
	return math.Expm1(x*math.Log(b)) / (b - 1)
}

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
	return nil
}

// Volume adds a volume control with a linear potentiometer, the signal on its upper end and what
// follows on its wiper: fully up, or at a position from 0 to 1.
//
// Example: load.From(c).Volume(500*kΩ, 0.7)
func (l Line) Volume(total units.Resistance, position ...float64) Line {
	p, err := placed("volume", Linear(total), position)
	return l.check(err).VolumeWith(p)
}

// VolumeWith adds a volume control with any potentiometer.
//
// Example: load.From(c).VolumeWith(load.Logarithmic(500*kΩ).At(0.7))
func (l Line) VolumeWith(p Pot) Line {
	l = l.check(p.problem("volume"))
	wiper := fmt.Sprintf("wiper %d", l.parts+1)
	top := l.node
	l = l.add("volume "+p.String(), func(n circuit.Network, name string) circuit.Network {
		lower := units.Resistance(p.total.SI() * p.Share())
		return n.Resistor(name+" upper", top, wiper, p.total-lower).Resistor(name+" lower", wiper, circuit.Ground, lower)
	})
	l.node = wiper
	return l
}

// Tone adds a tone control: a linear potentiometer as a variable resistor, with a capacitor to
// ground; fully up (bright), or at a position from 0 to 1.
//
// Example: load.From(c).Tone(500*kΩ, 22*nF, 0.3)
func (l Line) Tone(total units.Resistance, c units.Capacitance, position ...float64) Line {
	p, err := placed("tone", Linear(total), position)
	return l.check(err).ToneWith(p, c)
}

// ToneWith adds a tone control with any potentiometer.
func (l Line) ToneWith(p Pot, c units.Capacitance) Line {
	l = l.check(p.problem("tone"))
	between := fmt.Sprintf("tone %d", l.parts+1)
	return l.add(fmt.Sprintf("tone %v with %v", p, c), func(n circuit.Network, name string) circuit.Network {
		r := units.Resistance(p.total.SI() * p.Share())
		return n.Resistor(name, l.node, between, r).Capacitor(name+" capacitor", between, circuit.Ground, c)
	})
}

// placed turns a potentiometer to the one position given, if any.
func placed(what string, p Pot, position []float64) (Pot, error) {
	switch len(position) {
	case 0:
		return p, nil
	case 1:
		return p.At(position[0]), nil
	}
	return p, fmt.Errorf("%s: too many positions: got %d, want none or one", what, len(position))
}
