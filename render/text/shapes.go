package text

import (
	"math"
	"strings"

	"lode/render/internal/chart"
	"lode/render/table"
)

// bars writes one line for each bar: its name, its length in eighths of a column, its value.
func (s Style) bars(p chart.Panel) string {
	name, value, most := 0, 0, 0.0
	for _, b := range p.Bars {
		name = max(name, table.Width(cutTo(clean(b.Label), s.width()/3)))
		value = max(value, table.Width(p.X.Value(b.Value)))
		most = max(most, math.Abs(b.Value))
	}
	room := max(s.width()-name-value-3, 4)
	lines := []string{s.in(quiet, clean(p.X.Title()))}
	for _, b := range p.Bars {
		label := cutTo(clean(b.Label), s.width()/3)
		label = strings.Repeat(" ", name-table.Width(label)) + label
		code := colour(0)
		if b.Value < 0 {
			code = colour(1)
		}
		lines = append(lines, label+" "+s.in(code, block(math.Abs(b.Value)/most*float64(room)))+" "+clean(p.X.Value(b.Value)))
	}
	return strings.Join(lines, "\n")
}

// block draws a bar of so many columns.
func block(length float64) string {
	if math.IsNaN(length) {
		return ""
	}
	eighths := int(math.Round(8 * length))
	bar := strings.Repeat("█", eighths/8)
	if eighths%8 > 0 {
		bar += string([]rune("▏▎▍▌▋▊▉")[eighths%8-1])
	}
	return bar
}

// shades writes a map as steps of grey, the highest the darkest, with what each step means.
func (s Style) shades(p chart.Panel) string {
	rows := 12
	if p.Equal {
		p.Square(float64(s.width()-10), float64(rows)*2)
	}
	labels, margin := rowLabels(p.Y, rows)
	columns := s.width() - margin - 4
	lines := []string{s.in(quiet, clean(p.Y.Title()))}
	for r := range rows {
		y := p.Y.Min + (1-(float64(r)+0.5)/float64(rows))*(p.Y.Max-p.Y.Min)
		var b strings.Builder
		for c := range columns {
			b.WriteRune(s.shade(p.Map, p.X.Min+(float64(c)+0.5)/float64(columns)*(p.X.Max-p.X.Min), y))
		}
		label := strings.Repeat(" ", margin-table.Width(labels[r])) + labels[r]
		lines = append(lines, strings.TrimRight(label+s.in(quiet, "│")+b.String(), " "))
	}
	lines = append(lines, s.under(p.X, margin, columns)...)
	return strings.Join(append(lines, s.steps(p.Map)), "\n")
}

var greys = []rune(" ░▒▓█")

func (s Style) shade(m *chart.Map, x, y float64) rune {
	v, ok := m.At(x, y)
	if !ok {
		return ' '
	}
	return greys[min(int(v*float64(len(greys))), len(greys)-1)]
}

func (s Style) steps(m *chart.Map) string {
	text := clean(m.Scale.Name) + ":"
	for i, g := range greys[1:] {
		from := m.Scale.Min + float64(i+1)/float64(len(greys))*(m.Scale.Max-m.Scale.Min)
		text += " " + string(g) + " from " + clean(m.Scale.Value(from))
	}
	return strings.Join(wrap(text, s.width()), "\n")
}
