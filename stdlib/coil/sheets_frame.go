package coil

import (
	"fmt"
	"slices"
	"strings"

	"lode/units"
	"lode/units/frame"
)

// This file lays the pages for the bench of several windings out in one table.

// Frame lays the sheets out as a table with a column for each winding, or for several alike, and one for all together.
func (s Sheets) Frame() frame.Frame {
	if len(s.sheets) == 0 {
		return list("Build sheet")
	}
	names := s.names()
	columns := []frame.Column{{Name: "Quantity", Texts: append(names, "Cautions")}}
	for from := 0; from < len(s.sheets); {
		to := s.alike(from)
		columns = append(columns, texts(numbered(from, to), names, s.shared(from, to)))
		from = to
	}
	all := texts("All", names, s.together())
	all.Texts[len(names)] = strings.Join(s.briefly(), "; ")
	if len(columns) == 2 {
		all.Texts[len(names)] = strings.Join(s.Cautions(), " ")
	}
	columns = append(columns, all)
	return frame.Frame{Title: fmt.Sprintf("%s: %d windings in series", s.order.head(), len(s.sheets)), Columns: columns}
}

// alike returns where the windings end that are like the one they begin with, but for their leads.
func (s Sheets) alike(from int) int {
	to := from + 1
	for to < len(s.sheets) && slices.Equal(s.unled(from), s.unled(to)) {
		to++
	}
	return to
}

// unled are the lines of a sheet without its leads, in words.
func (s Sheets) unled(i int) []string {
	var words []string
	for _, l := range s.bobbin(i) {
		if !isLead(l) {
			words = append(words, l.name, fmt.Sprint(l.value))
		}
	}
	return words
}

// bobbin are the lines of a sheet and the bobbin that it is for.
func (s Sheets) bobbin(i int) []line {
	return append([]line{{"Bobbin", s.sheets[i].winding.former}}, s.sheets[i].lines()...)
}

func isLead(l line) bool { return l.name == "Start to" || l.name == "Finish to" }

// shared are the lines of windings that are alike; their leads say whose they are.
func (s Sheets) shared(from, to int) []line {
	lines := s.bobbin(from)
	for i, l := range lines {
		if !isLead(l) || to == from+1 {
			continue
		}
		var whose []string
		for k := from; k < to; k++ {
			whose = append(whose, fmt.Sprintf("%d: %v", k+1, s.bobbin(k)[i].value))
		}
		lines[i].value = strings.Join(whose, "; ")
	}
	return lines
}

// numbered names a column for windings.
func numbered(from, to int) string {
	switch to - from {
	case 1:
		return fmt.Sprintf("Winding %d", from+1)
	case 2:
		return fmt.Sprintf("Windings %d and %d, each", from+1, to)
	}
	return fmt.Sprintf("Windings %d to %d, each", from+1, to)
}

// briefly gives the first words of each caution, for a narrow column.
func (s Sheets) briefly() []string {
	var list []string
	for _, caution := range s.Cautions() {
		end := strings.IndexAny(caution, ":.")
		list = append(list, caution[:end])
	}
	return list
}

// names are those of the lines that any of the sheets has, in their order.
func (s Sheets) names() []string {
	var names []string
	for i := range s.sheets {
		at := -1
		for _, l := range s.bobbin(i) {
			if k := slices.Index(names, l.name); k >= 0 {
				at = k
				continue
			}
			at++
			names = slices.Insert(names, at, l.name)
		}
	}
	return names
}

// together are the lines that count for all windings.
func (s Sheets) together() []line {
	r, length, mass := s.Resistance(), units.Length(0), units.Mass(0)
	turns := 0
	for _, sheet := range s.sheets {
		turns, length, mass = turns+sheet.winding.turns, length+sheet.winding.WireLength(), mass+sheet.massToBuy()
	}
	return []line{{"Turns", turns}, {fmt.Sprintf("Resistance at %v", s.order.Temperature), r.Value}, {"Pass from", r.Low}, {"Pass to", r.High},
		{"Wire length", length}, {"Wire to buy", s.WireToBuy()}, {"Mass of wire to buy", mass}}
}

// texts is a column with the lines beside their names, and room for one more.
func texts(name string, names []string, lines []line) frame.Column {
	column := frame.Column{Name: name, Texts: make([]string, len(names)+1)}
	for _, l := range lines {
		column.Texts[slices.Index(names, l.name)] = fmt.Sprint(l.value)
	}
	return column
}
