package load

import (
	"errors"
	"fmt"
	"strings"

	"lode/stdlib/circuit"
	"lode/units"
	"lode/units/ladder"
)

// This file turns coils wired together into a network.

// FromCoils starts a chain with coils wired together, their cold end grounded. Levels are relative
// to 1 V, the EMF of a coil that is not raised.
func FromCoils(c Coils) Line {
	b := &wiring{network: circuit.New("").Reference(units.Volt), coils: map[string][]string{}}
	b.build(c, "coil hot", circuit.Ground)
	for _, m := range b.mutuals {
		b.couple(m)
	}
	l := Line{node: "coil hot", words: strings.Join(b.words, " + "), names: []string{"coil"}, err: b.err}
	count := 0
	l = l.now(b.network).draw(ladder.Step{Way: ladder.Down, Branch: c.branch(c.count() == 1, &count)})
	l.notes = c.notes()
	return l
}

// wiring turns coils into a network.
type wiring struct {
	network circuit.Network
	coils   map[string][]string // the parts of each coil by its name
	nodes   int
	mutuals []mutual
	words   []string
	err     error
}

func (w *wiring) node() string {
	w.nodes++
	return fmt.Sprintf("between %d", w.nodes)
}

// build wires c between two nodes.
func (w *wiring) build(c Coils, hot, cold string) {
	if c.err == nil && c.how == "" {
		c.err = errors.New("coils: none: want load.One, load.Series or load.Parallel")
	}
	if c.err != nil && w.err == nil {
		w.err = c.err
	}
	w.mutuals = append(w.mutuals, c.mutuals...)
	if c.shorted {
		w.network = w.network.Resistor(fmt.Sprintf("short %d", len(w.words)+1), hot, cold, 0)
	}
	if c.reversed {
		hot, cold = cold, hot
	}
	switch c.how {
	case "one":
		w.coil(c, hot, cold)
	case "parallel":
		for _, m := range c.members {
			w.build(m, hot, cold)
		}
	case "series":
		w.series(c.members, hot, cold)
	}
}

func (w *wiring) series(members []Coils, hot, cold string) {
	for i, m := range members {
		next := cold
		if i+1 < len(members) {
			next = w.node()
		}
		w.build(m, hot, next)
		hot = next
	}
}

// coil adds one coil, of two parts if it has a tap.
func (w *wiring) coil(c Coils, hot, cold string) {
	name := c.name
	if name == "" {
		name = "coil"
		for i := 2; w.coils[name] != nil; i++ {
			name = fmt.Sprintf("coil %d", i)
		}
	}
	if w.coils[name] != nil && w.err == nil {
		w.err = fmt.Errorf("coil %q: two coils have that name, want a name for each", name)
	}
	w.words = append(w.words, fmt.Sprintf("%s %v, %v, %v", name, c.source.Resistance(), c.source.Inductance(), c.source.Capacitance()))
	if c.tap == 1 {
		w.network = w.network.Coil(name, hot, cold, c.part(1, c.source.Capacitance()))
		w.coils[name] = []string{name}
	} else {
		open, upper := w.node(), name+" above the tap"
		w.network = w.network.Coil(name, hot, cold, c.part(c.tap, 0)).Coil(upper, open, hot, c.part(1-c.tap, 0)).Couple(name, upper, 1)
		w.network = across(w.network, name+" capacitance", open, cold, c.source.Capacitance())
		w.coils[name] = []string{name, upper}
	}
	for i, m := range c.metal {
		w.metal(fmt.Sprintf("%s metal %d", name, i+1), name, m, c.source.Inductance())
	}
}

// part is the share of a coil's turns as a part of the network.
func (c Coils) part(share float64, capacitance units.Capacitance) circuit.Coil {
	p := circuit.Coil{Resistance: c.source.Resistance() * units.Resistance(share), Inductance: c.source.Inductance() * units.Inductance(share*share),
		Capacitance: capacitance, EMF: units.Voltage(share * c.emf)}
	if c.further != nil {
		p.Further = func(f units.Frequency) units.Impedance { return c.further(f) * units.Impedance(complex(share, 0)) }
	}
	return p
}

// metal adds a shorted turn. Its inductance may be any, only its corner counts; the coil's is taken.
func (w *wiring) metal(name, coil string, m metal, l units.Inductance) {
	w.network = w.network.Coil(name, name, circuit.Ground, circuit.Coil{Inductance: l, Resistance: units.Resistance(m.corner.Angular().SI() * l.SI())}).
		Resistor(name+" short", name, circuit.Ground, 0)
	for _, part := range w.coils[coil] {
		w.network = w.network.Couple(part, name, m.k)
	}
}

func (w *wiring) couple(m mutual) {
	for _, name := range []string{m.first, m.second} {
		if w.coils[name] == nil && w.err == nil {
			w.err = fmt.Errorf("coupling of %q and %q: there is no coil %q", m.first, m.second, name)
		}
	}
	for _, a := range w.coils[m.first] {
		for _, b := range w.coils[m.second] {
			w.network = w.network.Couple(a, b, m.k)
		}
	}
}
