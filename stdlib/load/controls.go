package load

import (
	"fmt"

	"lode/stdlib/circuit"
	"lode/units"
	"lode/units/ladder"
)

// This file holds the controls made with potentiometers.

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
func (l Line) VolumeWith(p Pot) Line { return l.VolumeWired(VolumeWiring{Pot: p}) }

// VolumeWiring is a volume control with what is wired to it.
type VolumeWiring struct {
	Pot Pot

	// Independent exchanges upper end and wiper: the signal comes in at the wiper, so that one
	// of several controls in parallel turned down does not silence the others.
	Independent bool

	Bypass         units.Capacitance // treble bypass from the upper end to the wiper in F, 0 for none
	BypassParallel units.Resistance  // resistor across the bypass in Ω, 0 for none
	BypassSeries   units.Resistance  // resistor in series with the bypass in Ω, 0 for none
}

// VolumeWired adds a volume control with a treble bypass or with independent wiring.
//
// Example: load.From(c).VolumeWired(load.VolumeWiring{Pot: load.Logarithmic(500*kΩ).At(0.5), Bypass: 1*nF, BypassParallel: 150*kΩ})
func (l Line) VolumeWired(v VolumeWiring) Line {
	l = l.check(v.Pot.problem("volume"), notNegative("treble bypass", v.Bypass),
		notNegative("resistor across the treble bypass", v.BypassParallel), notNegative("resistor in series with the treble bypass", v.BypassSeries))
	name := l.single("volume")
	in, out := l.node, name+" out"
	l = l.add("volume", v.words(), func(n circuit.Network, name string) circuit.Network {
		low := out
		if v.Independent {
			low = in
		}
		n = n.Resistor(name+" upper", in, out, v.Pot.upper()).Resistor(name+" lower", low, circuit.Ground, v.Pot.lower())
		return v.bypass(n, name, in, out)
	}).draw(v.step(name))
	l.node = out
	return l
}

func (v VolumeWiring) words() string {
	words := "volume " + v.Pot.String()
	if v.Independent {
		words += " wired independently"
	}
	if v.Bypass > 0 {
		words += fmt.Sprintf(" with treble bypass %v", v.Bypass)
	}
	return words
}

func (v VolumeWiring) bypass(n circuit.Network, name, in, out string) circuit.Network {
	if v.Bypass == 0 {
		return n
	}
	n = n.Resistor(name+" bypass series", in, name+" bypass", v.BypassSeries).Capacitor(name+" bypass", name+" bypass", out, v.Bypass)
	if v.BypassParallel > 0 {
		n = n.Resistor(name+" bypass parallel", name+" bypass", out, v.BypassParallel)
	}
	return n
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
	return l.ToneWired(ToneWiring{Pot: p, Capacitance: c})
}

// ToneWiring is a tone control with what is wired to it, from the signal to ground.
type ToneWiring struct {
	Pot         Pot
	Capacitance units.Capacitance // in F

	// NoLoad is a potentiometer whose track is cut at its upper end: fully up it is off.
	NoLoad bool

	Choke           units.Inductance // inductor in series with the capacitor, which makes a notch, in H; 0 for none
	ChokeResistance units.Resistance // DC resistance of the inductor in Ω
}

// ToneWired adds a tone control with an inductor or a no-load potentiometer.
//
// Example: load.From(c).ToneWired(load.ToneWiring{Pot: load.Linear(100*kΩ).At(0), Capacitance: 10*nF, Choke: 1.5*H, ChokeResistance: 80*ohm})
func (l Line) ToneWired(t ToneWiring) Line {
	l = l.check(t.Pot.problem("tone"), notNegative("choke", t.Choke), notNegative("choke resistance", t.ChokeResistance))
	words := fmt.Sprintf("tone %v with %v", t.Pot, t.Capacitance)
	if t.Choke > 0 {
		words += fmt.Sprintf(" and %v", t.Choke)
	}
	step := t.step(l.single("tone"))
	if t.off() {
		step.Branch = ladder.Series(append([]ladder.Branch{ladder.Part(ladder.Open, "", "off")}, step.Branch.Parts()...)...)
	}
	return l.add("tone", words, func(n circuit.Network, name string) circuit.Network {
		if t.off() {
			return n
		}
		foot := circuit.Ground
		if t.Choke > 0 {
			foot = name + " choke"
			n = n.Coil(name+" choke", foot, circuit.Ground, circuit.Coil{Resistance: t.ChokeResistance, Inductance: t.Choke})
		}
		return n.Resistor(name, l.node, name, t.Pot.lower()).Capacitor(name+" capacitor", name, foot, t.Capacitance)
	}).draw(step)
}

// off reports whether the track is left at its cut.
func (t ToneWiring) off() bool { return t.NoLoad && t.Pot.down == 0 }

// BassCut adds a bass cut: a capacitor in series with the signal and a potentiometer across it as
// a variable resistor; fully up the capacitor is bridged and the bass full.
//
// Example: load.From(c).BassCut(load.LogarithmicAt(1*MΩ, 0.9).At(0.2), 1*nF).Input(1*MΩ)
func (l Line) BassCut(p Pot, c units.Capacitance) Line {
	l = l.check(p.problem("bass cut"))
	name := l.single("bass cut")
	in, out := l.node, name+" out"
	l = l.add("bass cut", fmt.Sprintf("bass cut %v with %v", p, c), func(n circuit.Network, name string) circuit.Network {
		return n.Resistor(name, in, out, p.upper()).Capacitor(name+" capacitor", in, out, c)
	}).draw(ladder.Step{Way: ladder.Along, Branch: ladder.Parallel(ladder.Part(ladder.Capacitor, name, c.String()), ladder.Part(ladder.Variable, "", p.String()))})
	l.node = out
	return l
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
