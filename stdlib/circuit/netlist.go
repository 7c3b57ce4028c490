package circuit

import (
	"fmt"
	"strings"

	"lode/units"
)

// This file writes a network as text for people.

// Netlist returns the parts, one a line: name, kind, nodes and value.
func (n Network) Netlist() (string, error) {
	if n.err != nil {
		return "", n.err
	}
	rows := [][]string{}
	for _, p := range n.parts {
		rows = append(rows, []string{p.name, kindNames[p.kind], p.from + " – " + p.to, p.values()})
	}
	for _, c := range n.couplings {
		rows = append(rows, []string{c.first + " with " + c.second, "coupling", "", "k = " + units.Digits(c.k, 6)})
	}
	return aligned(rows), nil
}

// String writes the netlist, or what is wrong with it.
func (n Network) String() string {
	text, err := n.Netlist()
	if err != nil {
		return err.Error()
	}
	if n.title != "" {
		return n.title + "\n" + text
	}
	return text
}

// values writes what a part is made of.
func (p part) values() string {
	switch p.kind {
	case coil:
		return fmt.Sprintf("%v, %v, %v, EMF %v", units.Resistance(p.series), units.Inductance(p.value), units.Capacitance(p.across), units.Voltage(p.source))
	case voltageSource:
		return units.Voltage(p.source).String()
	case currentSource:
		return units.Current(p.source).String()
	case impedance:
		return "by a function"
	case transformer, voltageAmplifier, transconductance:
		return p.amount() + " times " + p.plus + " – " + p.minus
	case currentAmplifier, transresistance:
		return p.amount() + " times the current of " + p.through
	}
	return p.amount()
}

// amount writes p's value with its unit.
func (p part) amount() string {
	switch p.kind {
	case resistor, transresistance:
		return units.Resistance(p.value).String()
	case capacitor:
		return units.Capacitance(p.value).String()
	case inductor:
		return units.Inductance(p.value).String()
	case transconductance:
		return units.Conductance(p.value).String()
	case noiseVoltage:
		return units.VoltageNoise(p.value).String()
	case noiseCurrent:
		return units.CurrentNoise(p.value).String()
	}
	return units.Digits(p.value, 4)
}

// aligned writes rows with their columns below each other.
func aligned(rows [][]string) string {
	widths := map[int]int{}
	for _, row := range rows {
		for i, cell := range row {
			widths[i] = max(widths[i], len([]rune(cell)))
		}
	}
	var lines []string
	for _, row := range rows {
		line := ""
		for i, cell := range row {
			line += cell + strings.Repeat(" ", widths[i]-len([]rune(cell))+2)
		}
		lines = append(lines, strings.TrimRight(line, " "))
	}
	return strings.Join(lines, "\n")
}
