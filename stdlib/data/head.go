package data

import (
	"strconv"
	"strings"

	"lode/units"
)

// This file reads the head of a data file: names and units.

// head is what a cell of the head says.
type head struct {
	name, unit string
	kind       units.Kind
}

func (p *parser) head(record []string, places []place) error {
	if len(record) > mostColumns {
		return p.fault(places[0], "the file has too many columns: got %d, want at most %d", len(record), mostColumns)
	}
	p.heads = make([]head, 0, len(record))
	seen := map[string]bool{}
	for i, cell := range record {
		h, ok := readHead(strings.TrimSpace(cell))
		switch {
		case !ok:
			return p.fault(places[i], "head: unknown unit in brackets: got %q, want a unit such as Hz, kΩ or mV", cell)
		case isNumber(h.name):
			return p.fault(places[i], "head: this is a number: got %q, want names with units in the first row, such as frequency Hz", cell)
		case h.name == "":
			return p.fault(places[i], "head: a column without a name: want one such as frequency Hz")
		case seen[h.name]:
			return p.fault(places[i], "head: two columns are called %q: want a name for each", h.name)
		}
		seen[h.name] = true
		p.heads = append(p.heads, h)
	}
	return nil
}

// readHead tells the name from the unit, which stands in brackets, behind a slash, or as
// the last word. It reports false where something in brackets is no unit.
func readHead(cell string) (head, bool) {
	for _, brackets := range []string{"()", "[]"} {
		open := strings.LastIndexByte(cell, brackets[0])
		if open >= 0 && strings.HasSuffix(cell, brackets[1:]) {
			unit := strings.TrimSpace(cell[open+1 : len(cell)-1])
			if isNumber(unit) {
				break
			}
			kind, ok := kindOf(unit)
			return named(cell[:open], unit, kind), ok
		}
	}
	for _, before := range []string{" ", "/"} {
		if i := strings.LastIndex(cell, before); i >= 0 {
			unit := strings.TrimSpace(cell[i+1:])
			if kind, ok := kindOf(unit); ok {
				return named(strings.TrimRight(cell[:i], " /,"), unit, kind), true
			}
		}
	}
	if kind, ok := kindOf(cell); ok {
		return named("", cell, kind), true
	}
	return head{name: cell, kind: units.Number()}, true
}

// named makes a head; a column that has only a unit is called by its kind.
func named(name, unit string, kind units.Kind) head {
	name = strings.TrimSpace(name)
	if name == "" {
		name = kind.Name
	}
	return head{name, unit, kind}
}

// percent is a unit of plain numbers.
const percent = "%"

func isNumber(text string) bool {
	_, err := strconv.ParseFloat(text, 64)
	return err == nil
}

// kindOf returns the kind of quantity that a unit measures.
func kindOf(unit string) (units.Kind, bool) {
	switch unit {
	case "°C", "degC", "K":
		return units.KindNamed("Temperature")
	case "dBV", "dBu":
		return units.KindNamed("VoltageLevel")
	case percent:
		return units.Number(), true
	}
	for _, u := range units.Units() {
		for _, s := range u.Spellings() {
			if s == unit {
				return units.KindNamed(u.Type)
			}
		}
	}
	if unit == "" || isNumber(unit) {
		return units.Kind{}, false
	}
	p, err := units.Parse("1 " + unit)
	return p.Kind(), err == nil
}
