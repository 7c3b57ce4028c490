package figure

import (
	"fmt"
	"math"
	"strings"
	"unicode"
	"unicode/utf8"

	"lode/render/internal/chart"
)

// Description says in words what the figure shows: axes and their ranges, and for every
// curve its extremes, its ends and its marks. Readers who cannot see the drawing get this.
func (f Figure) Description() string {
	if len(f.panels) == 0 {
		return "An empty figure."
	}
	first := f.panels[0].X
	if p := f.panels[0]; len(p.Bars) > 0 || p.Map != nil {
		return f.what + ". " + describeShape(p)
	}
	text := []string{fmt.Sprintf("%s, from %s to %s.", f.what, first.Value(first.Min), first.Value(first.Max))}
	for _, p := range f.panels {
		for _, s := range p.Series {
			switch {
			case p.Equal:
				text = append(text, describePart(p, s))
			case s.Filled:
				text = append(text, describeSpread(p, s))
			default:
				text = append(text, describe(p, s, len(f.panels) > 1))
			}
		}
	}
	return strings.Join(text, " ")
}

// describeShape reads out bars, or the lowest and the highest place of a map.
func describeShape(p chart.Panel) string {
	if p.Map == nil {
		parts := make([]string, len(p.Bars))
		for i, b := range p.Bars {
			parts[i] = b.Label + " " + p.X.Value(b.Value)
		}
		return strings.Join(parts, ", ") + "."
	}
	m := p.Map
	low, high := [2]int{-1}, [2]int{-1}
	for j, row := range m.Values {
		for i, v := range row {
			if !math.IsNaN(v) && (low[0] < 0 || v < m.Values[low[1]][low[0]]) {
				low = [2]int{i, j}
			}
			if !math.IsNaN(v) && (high[0] < 0 || v > m.Values[high[1]][high[0]]) {
				high = [2]int{i, j}
			}
		}
	}
	at := func(c [2]int) string {
		return fmt.Sprintf("%s at %s %s and %s %s", m.Scale.Value(m.Values[c[1]][c[0]]), lower(p.X.Name), p.X.Value(m.X[c[0]]), lower(p.Y.Name), p.Y.Value(m.Y[c[1]]))
	}
	return "Lowest " + at(low) + ", highest " + at(high) + "."
}

func describePart(p chart.Panel, s chart.Series) string {
	left, right := chart.Range(s.X, math.Inf(1), math.Inf(-1), nil)
	low, high := chart.Range(s.Y, math.Inf(1), math.Inf(-1), nil)
	return fmt.Sprintf("%s: %s wide and %s high, from %s %s and %s %s.", s.Label, p.X.Value(right-left), p.Y.Value(high-low),
		lower(p.X.Name), p.X.Value(left), lower(p.Y.Name), p.Y.Value(low))
}

func describeSpread(p chart.Panel, s chart.Series) string {
	high := 0
	for i, y := range s.Y {
		if y > s.Y[high] {
			high = i
		}
	}
	parts := []string{fmt.Sprintf("most, %s, from %s to %s", p.Y.Value(s.Y[high]), p.X.Value(s.X[high]), p.X.Value(s.X[high+1]))}
	for _, n := range s.Notes {
		parts = append(parts, n.Name+" at "+p.X.Value(n.X))
	}
	return s.Label + ": " + strings.Join(parts, ", ") + "."
}

// describe tells a curve's ends, extremes and marks.
func describe(p chart.Panel, s chart.Series, naming bool) string {
	first, last, low, high := -1, -1, -1, -1
	for i, y := range s.Y {
		if math.IsNaN(y) || math.IsInf(y, 0) || !p.X.Holds(s.X[i]) {
			continue
		}
		if first < 0 {
			first, low, high = i, i, i
		}
		last = i
		if y < s.Y[low] {
			low = i
		}
		if y > s.Y[high] {
			high = i
		}
	}
	name := s.Label
	if naming {
		name += " (" + lower(p.Y.Name) + ")"
	}
	if first < 0 {
		return name + ": nothing in this range."
	}
	at := func(i int) string { return p.Y.Value(s.Y[i]) + " at " + p.X.Value(s.X[i]) }
	parts := []string{"from " + at(first), "to " + at(last)}
	if high != first && high != last {
		parts = append(parts, "highest "+at(high))
	}
	if low != first && low != last {
		parts = append(parts, "lowest "+at(low))
	}
	for _, n := range s.Notes {
		parts = append(parts, n.Name+" "+p.Y.Value(n.Y)+" at "+p.X.Value(n.X))
	}
	return name + ": " + strings.Join(parts, ", ") + "."
}

func panelNames(panels []chart.Panel) string {
	var names []string
	for i, p := range panels {
		if i == 0 {
			names = append(names, p.Y.Name)
			continue
		}
		names = append(names, lower(p.Y.Name))
	}
	if len(names) == 1 {
		return names[0]
	}
	return strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1]
}

// capital begins name with a capital unless it is a symbol of one letter.
func capital(name string) string {
	r, size := utf8.DecodeRuneInString(name)
	if size == len(name) {
		return name
	}
	return string(unicode.ToUpper(r)) + name[size:]
}

// lower undoes capital, leaving abbreviations alone.
func lower(name string) string {
	r, size := utf8.DecodeRuneInString(name)
	if size == len(name) || strings.ToUpper(name) == name {
		return name
	}
	return string(unicode.ToLower(r)) + name[size:]
}
