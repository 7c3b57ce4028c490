package text

import (
	"math"
	"strings"

	"lode/render/internal/chart"
	"lode/render/table"
)

// Chart is a drawing of curves; figure.Figure is one.
type Chart interface {
	Title() string
	Panels() []chart.Panel
}

// Chart draws curves in braille dots, two by four in each character, between labelled axes.
// Curves are told apart by letter at the end and in the key, by dash, and by colour where
// there is any.
func (s Style) Chart(c Chart) string {
	var parts []string
	if c.Title() != "" {
		parts = append(parts, s.in(strong, clean(c.Title())))
	}
	for _, p := range c.Panels() {
		switch {
		case len(p.Bars) > 0:
			parts = append(parts, s.bars(p))
		case p.Map != nil:
			parts = append(parts, s.shades(p))
		case len(p.Series) > 0:
			parts = append(parts, s.panel(p))
		}
	}
	return strings.Join(parts, "\n")
}

func (s Style) panel(p chart.Panel) string {
	rows := 12
	if s.width() < 50 {
		rows = 8
	}
	if p.Equal {
		rows *= 2
		p.Square(float64(s.width()-10)*2, float64(rows)*4)
	}
	labels, margin := rowLabels(p.Y, rows)
	d := newDots(s.width()-margin-4, rows)
	for i, series := range p.Series {
		d.curve(p, series, i)
	}
	if plain(p) {
		clear(d.ends)
	}
	lines := []string{s.in(quiet, clean(p.Y.Title()))}
	for r := range rows {
		label := strings.Repeat(" ", margin-table.Width(labels[r])) + labels[r]
		edge := "│"
		if labels[r] != "" {
			edge = "┤"
		}
		lines = append(lines, strings.TrimRight(label+s.in(quiet, edge)+s.dotRow(d, r), " "))
	}
	lines = append(lines, s.under(p.X, margin, d.columns)...)
	return strings.Join(append(lines, s.key(p)...), "\n")
}

// rowLabels puts each label of the vertical axis in the row nearest to it.
func rowLabels(a chart.Axis, rows int) (labels []string, margin int) {
	labels = make([]string, rows)
	for _, t := range a.Ticks(max(2, rows/2)) {
		r := int(math.Round((1 - a.At(t.At)) * float64(rows-1)))
		if t.Label != "" && r >= 0 && r < rows && labels[r] == "" {
			labels[r] = clean(t.Label)
			margin = max(margin, table.Width(labels[r]))
		}
	}
	return labels, margin
}

// under writes the horizontal axis: a rule with a notch at each label, the labels, the title.
func (s Style) under(a chart.Axis, margin, columns int) []string {
	rule := []rune(strings.Repeat("─", columns))
	line := []rune(strings.Repeat(" ", margin+columns+4))
	free := 0
	for _, t := range a.Ticks(max(2, columns/9)) {
		if t.Label == "" {
			continue
		}
		at := int(math.Round(a.At(t.At) * float64(columns-1)))
		label := []rune(clean(t.Label))
		left := min(max(margin+1+at-len(label)/2, 0), len(line)-len(label))
		if left < free {
			continue
		}
		rule[at] = '┬'
		copy(line[left:], label)
		free = left + len(label) + 1
	}
	pad := strings.Repeat(" ", margin)
	title := clean(a.Title())
	right := strings.Repeat(" ", max(0, margin+1+columns-table.Width(title)))
	return []string{pad + s.in(quiet, "└"+string(rule)), strings.TrimRight(string(line), " "), s.in(quiet, right+title)}
}

// key names the curves and their marked points.
func (s Style) key(p chart.Panel) []string {
	var lines []string
	if plain(p) {
		return nil
	}
	for i, series := range p.Series {
		text := clean(series.Label)
		var notes []string
		for _, n := range series.Notes {
			notes = append(notes, clean(n.Name+" "+p.X.Value(n.X)))
		}
		switch {
		case len(notes) > 0 && len(p.Series) == 1 && series.Label == p.Y.Name:
			text = strings.Join(notes, ", ")
		case len(notes) > 0:
			text += ": " + strings.Join(notes, ", ")
		}
		for k, l := range wrap(text, s.width()-4) {
			letter := " "
			if k == 0 {
				letter = s.in(colour(i), letterOf(i))
			}
			lines = append(lines, letter+"  "+l)
		}
	}
	return lines
}

// plain reports whether a panel holds one curve that the axis names already.
func plain(p chart.Panel) bool {
	return len(p.Series) == 1 && p.Series[0].Label == p.Y.Name && len(p.Series[0].Notes) == 0
}

func letterOf(i int) string { return string(rune('a' + i%26)) }

// colour returns the escape code of a series: six of the terminal's own colours.
func colour(i int) string { return []string{"36", "33", "35", "32", "34", "31"}[i%6] }
