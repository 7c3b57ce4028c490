package circuit

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"

	"lode/units"
)

// This file writes a network as a SPICE deck: the input of the general circuit simulators that
// descend from Nagel, SPICE2, University of California, Berkeley, ERL-M520 (1975).

// Deck returns the network as a SPICE deck that sweeps the given node. Comments tell which part
// each line stands for. A part given by a function of frequency is written as a table of resistance and
// inductance over frequency, for simulators that know one (ngspice does), and noise sources as the noise of a resistor.
//
// Accuracy: of the parts, as written, to the last digit; of a function of frequency 3e-5 between the points of its table.
func (n Network) Deck(node string, low, high units.Frequency) (string, error) {
	if err := checkRange(low, high); err != nil {
		return "", fmt.Errorf("%s: %w", called("network", n.title), err)
	}
	p, err := n.plan()
	if err != nil {
		return "", err
	}
	if _, err := p.output(node, Ground); err != nil {
		return "", err
	}
	d := deck{plan: p, low: low.SI(), high: high.SI(), nodes: map[string]string{p.joined.root(Ground): "0"}, taken: map[string]bool{"0": true}, names: map[string]string{}}
	d.line("* " + singleLine(n.title))
	for _, name := range n.Nodes() {
		d.node(name)
	}
	for _, q := range n.parts {
		if err := d.part(q); err != nil {
			return "", fmt.Errorf("%v: %w", q, err)
		}
	}
	for i, c := range n.couplings {
		d.line(fmt.Sprintf("K%d %s %s %s", i+1, d.names[c.first], d.names[c.second], value(c.k)))
	}
	d.temperature()
	d.line(fmt.Sprintf(".ac dec 50 %s %s", value(low.SI()), value(high.SI())))
	d.line(fmt.Sprintf(".print ac vdb(%s) vp(%[1]s)", d.node(node)))
	d.line(".end")
	return d.text.String(), nil
}

// temperature sets that of the noise, where there is a stated one or noise that depends on it.
func (d *deck) temperature() {
	switch t := d.plan.network.temperature; {
	case t > 0:
		d.line(".temp " + value(t.Degrees()))
	case d.noisy:
		d.line(".temp " + value(units.Temperature(usualTemperature).Degrees()))
	}
}

type deck struct {
	plan  *plan
	low   float64 // of the sweep, in Hz
	high  float64
	noisy bool // has noise sources
	text  strings.Builder
	nodes map[string]string // by root
	taken map[string]bool
	names map[string]string // what a part is called in the deck
	count int
}

func (d *deck) line(text string) { d.text.WriteString(text + "\n") }

// node returns the deck's name of a node: its own in small letters and digits, made single.
func (d *deck) node(name string) string {
	root := d.plan.joined.root(name)
	if known, ok := d.nodes[root]; ok {
		return known
	}
	plain := strings.Map(func(r rune) rune {
		if r < 128 && (unicode.IsLetter(r) || unicode.IsDigit(r)) {
			return unicode.ToLower(r)
		}
		return '_'
	}, root)
	d.nodes[root] = d.free(plain)
	return d.nodes[root]
}

// free returns a node name like the one wanted that is not taken, and takes it. "gnd" and names that
// begin with a digit mean something else in a deck.
func (d *deck) free(plain string) string {
	if plain == "gnd" || plain[0] >= '0' && plain[0] <= '9' {
		plain = "n" + plain
	}
	made := plain
	for i := 2; d.taken[made]; i++ {
		made = plain + "_" + strconv.Itoa(i)
	}
	d.taken[made] = true
	return made
}

// element writes one line and returns the name it gave.
func (d *deck) element(letter string, fields ...string) string {
	name := letter + strconv.Itoa(d.count)
	d.line(name + " " + strings.Join(fields, " "))
	return name
}

// part writes the lines of one part below its name.
func (d *deck) part(q part) error {
	if q.kind == resistor && q.value == 0 {
		return nil
	}
	d.count++
	d.line("* " + singleLine(q.name))
	a, b := d.node(q.from), d.node(q.to)
	switch q.kind {
	case resistor:
		d.element("R", a, b, value(q.value))
	case capacitor:
		d.element("C", a, b, value(q.value))
	case inductor:
		d.names[q.name] = d.element("L", a, b, value(q.value))
	case voltageSource:
		d.names[q.name] = d.element("V", a, b, source(q.source))
	case currentSource:
		d.element("I", a, b, source(q.source))
	default:
		return d.further(q, a, b)
	}
	return nil
}

func (d *deck) further(q part, a, b string) error {
	switch {
	case q.kind == noiseVoltage || q.kind == noiseCurrent:
		d.noisy = true
		d.noise(q, a, b)
	case q.kind == impedance:
		return d.law(q.law, a, b)
	case q.kind == coil:
		return d.coil(q, a, b)
	case q.kind == transformer:
		d.transformer(q, a, b)
	case q.kind == voltageAmplifier:
		d.element("E", a, b, d.node(q.plus), d.node(q.minus), value(q.value))
	case q.kind == transconductance:
		d.element("G", a, b, d.node(q.plus), d.node(q.minus), value(q.value))
	case q.kind == currentAmplifier:
		d.element("F", a, b, d.meter(q.through), value(q.value))
	case q.kind == transresistance:
		d.element("H", a, b, d.meter(q.through), value(q.value))
	}
	return nil
}

// coil writes an EMF, a resistance and an inductance in series and a capacitance across.
func (d *deck) coil(q part, a, b string) error {
	last := d.free(fmt.Sprintf("x%da", d.count))
	d.element("V", a, last, source(q.source))
	if q.series > 0 {
		next := d.free(fmt.Sprintf("x%db", d.count))
		d.element("R", last, next, value(q.series))
		last = next
	}
	end := b
	if q.law != nil {
		end = d.free(fmt.Sprintf("x%dc", d.count))
	}
	d.names[q.name] = d.element("L", last, end, value(q.value))
	if q.across > 0 {
		d.element("C", a, b, value(q.across))
	}
	if q.law != nil {
		return d.law(q.law, end, b)
	}
	return nil
}

// transformer writes an ideal transformer as a voltage source and its current's mirror.
func (d *deck) transformer(q part, a, b string) {
	inner := d.free(fmt.Sprintf("x%d", d.count))
	d.names[q.name] = d.element("V", a, inner, "0")
	d.element("E", inner, b, d.node(q.plus), d.node(q.minus), value(q.value))
	d.element("F", d.node(q.plus), d.node(q.minus), d.names[q.name], value(-q.value))
}

// meter returns the voltage source whose current is that of a coil or voltage source.
func (d *deck) meter(name string) string {
	p, _ := d.plan.network.find(name)
	if p.kind == coil {
		return "V" + strings.TrimPrefix(d.names[name], "L")
	}
	return d.names[name]
}

func source(v float64) string {
	if v < 0 {
		return "AC " + value(-v) + " 180"
	}
	return "AC " + value(v)
}

func value(v float64) string {
	if math.Abs(v) >= 1e-3 && math.Abs(v) < 1e9 {
		return strconv.FormatFloat(v, 'f', -1, 64)
	}
	return strconv.FormatFloat(v, 'e', -1, 64)
}

func singleLine(s string) string { return strings.Join(strings.Fields(s), " ") }
