package figure

// This file builds the figures that are not curves over an axis: bars, spreads, maps and
// outlines.

import (
	"fmt"
	"math"
	"sort"

	"lode/render/internal/chart"
	"lode/units"
	"lode/units/frame"
)

// mostBars is how many bars are drawn; smaller contributions are added up in one more.
const mostBars = 14

// Bars draws named values as bars, the largest first: what contributes how much. The names
// come from the source's first column of texts, the values from its first of numbers.
//
// Example: figure.Bars(line.Noise(20*Hz, 20*kHz).Contributions())
func Bars(source frame.Source) (Figure, error) {
	frames, err := collect("figure.Bars", []frame.Source{source})
	if err != nil {
		return Figure{}, err
	}
	f := frames[0]
	names, okNames := firstTexts(f)
	numeric := numericColumns(f)
	if !okNames || len(numeric) == 0 || names.Len() == 0 {
		return Figure{}, fmt.Errorf("figure.Bars: a column is missing: got %s, want one of texts and one of numbers", columns(f))
	}
	p := chart.Panel{X: chart.Axis{Name: capital(numeric[0].Name), Kind: numeric[0].Kind}}
	for i, v := range numeric[0].Values {
		if math.IsNaN(v) || math.IsInf(v, 0) || i >= names.Len() {
			return Figure{}, fmt.Errorf("figure.Bars: row %d cannot be drawn: got %v, want a name and a finite value", i+1, v)
		}
		p.Bars = append(p.Bars, chart.Bar{Label: names.Texts[i], Value: v})
	}
	p.Bars = largest(p.Bars)
	p.FitBars()
	title := f.Title
	if title == "" {
		title = capital(numeric[0].Name) + " by " + lower(names.Name)
	}
	return Figure{title: title, what: capital(numeric[0].Name) + " by " + lower(names.Name), frames: frames, panels: []chart.Panel{p}}, nil
}

func firstTexts(f frame.Frame) (frame.Column, bool) {
	for _, c := range f.Columns {
		if c.Texts != nil {
			return c, true
		}
	}
	return frame.Column{}, false
}

// largest sorts bars by size and adds up those that there is no room for.
func largest(bars []chart.Bar) []chart.Bar {
	sort.SliceStable(bars, func(i, j int) bool { return math.Abs(bars[i].Value) > math.Abs(bars[j].Value) })
	if len(bars) <= mostBars+1 {
		return bars
	}
	rest := chart.Bar{Label: fmt.Sprintf("%d others together", len(bars)-mostBars)}
	for _, b := range bars[mostBars:] {
		rest.Value += b.Value
	}
	return append(bars[:mostBars:mostBars], rest)
}

// Histogram draws how often values of a column come up: the source's first column of
// numbers. Marks of that column are drawn as lines across.
//
// Example: figure.Histogram(table.Columns(table.Column("resistance", []units.Resistance{6.1*kΩ, 6.2*kΩ, 6.2*kΩ, 6.4*kΩ})))
func Histogram(source frame.Source) (Figure, error) {
	frames, err := collect("figure.Histogram", []frame.Source{source})
	if err != nil {
		return Figure{}, err
	}
	f := frames[0]
	numeric := numericColumns(f)
	if len(numeric) == 0 {
		return Figure{}, fmt.Errorf("figure.Histogram: a column is missing: got %s, want one of numbers", columns(f))
	}
	c := numeric[0]
	values := finite(c.Values)
	if len(values) < 2 {
		return Figure{}, fmt.Errorf("figure.Histogram: column %s: too few values: got %d, want two or more", c.Name, len(values))
	}
	p := chart.Panel{X: chart.Axis{Name: capital(c.Name), Kind: c.Kind}, Y: chart.Axis{Name: fmt.Sprintf("Count of %d", len(values)), Kind: units.Number()}}
	s := chart.Steps(p.X, values)
	s.Label = c.Name
	for _, m := range f.Marks {
		if m.Of == "" || m.Of == c.Name {
			s.Notes = append(s.Notes, chart.Note{Name: m.Name, X: m.X})
		}
	}
	p.Series = []chart.Series{s}
	p.FitX()
	p.FitY(depth)
	title := f.Title
	if title == "" {
		title = "Spread of " + lower(c.Name)
	}
	return Figure{title: title, what: "How often values of " + lower(c.Name) + " come up", frames: frames, panels: []chart.Panel{p}}, nil
}

func finite(values []float64) []float64 {
	var kept []float64
	for _, v := range values {
		if !math.IsNaN(v) && !math.IsInf(v, 0) {
			kept = append(kept, v)
		}
	}
	return kept
}

// Map draws a quantity over two others as shaded steps with a line at each. The source's
// first three columns of numbers are the two sides and the quantity, one row for each point
// of a full rectangular grid, in any order.
//
// Example: figure.Map(table.Of(table.Head("x", "y", "flux density"), table.Row(0*mm, 0*mm, 1*mT), table.Row(1*mm, 0*mm, 2*mT), table.Row(0*mm, 1*mm, 3*mT), table.Row(1*mm, 1*mm, 5*mT)))
func Map(source frame.Source) (Figure, error) {
	frames, err := collect("figure.Map", []frame.Source{source})
	if err != nil {
		return Figure{}, err
	}
	numeric := numericColumns(frames[0])
	if len(numeric) < 3 {
		return Figure{}, fmt.Errorf("figure.Map: a column is missing: got %s, want three of numbers: two sides and a quantity", columns(frames[0]))
	}
	x, y, v := numeric[0], numeric[1], numeric[2]
	m, err := chart.Gather(x.Values, y.Values, v.Values)
	if err != nil {
		return Figure{}, fmt.Errorf("figure.Map: %s over %s and %s: %w", v.Name, x.Name, y.Name, err)
	}
	m.Name = v.Name
	m.Scale = chart.Axis{Name: capital(v.Name), Kind: v.Kind, Min: m.Scale.Min, Max: m.Scale.Max}
	p := chart.Panel{Map: m, Equal: x.Kind.Type == "Length" && y.Kind.Type == "Length",
		X: chart.Axis{Name: capital(x.Name), Kind: x.Kind, Min: m.X[0], Max: m.X[len(m.X)-1]},
		Y: chart.Axis{Name: capital(y.Name), Kind: y.Kind, Min: m.Y[0], Max: m.Y[len(m.Y)-1]}}
	what := capital(v.Name) + " over " + lower(x.Name) + " and " + lower(y.Name)
	title := frames[0].Title
	if title == "" {
		title = what
	}
	return Figure{title: title, what: what, frames: frames, panels: []chart.Panel{p}}, nil
}

// Outline draws parts to scale, with the overall size. The source has a column of texts that
// names the part and two columns of length; rows that follow each other under one name are
// the corners of that part's outline, and a row without lengths ends it.
//
// Example: figure.Outline(table.Of(table.Head("part", "across", "up"), table.Row("plate", 0*mm, 0*mm), table.Row("plate", 20*mm, 0*mm), table.Row("plate", 20*mm, 3*mm), table.Row("plate", 0*mm, 3*mm)))
func Outline(source frame.Source) (Figure, error) {
	frames, err := collect("figure.Outline", []frame.Source{source})
	if err != nil {
		return Figure{}, err
	}
	names, okNames := firstTexts(frames[0])
	var sides []frame.Column
	for _, c := range numericColumns(frames[0]) {
		if c.Kind.Type == "Length" {
			sides = append(sides, c)
		}
	}
	if !okNames || len(sides) < 2 {
		return Figure{}, fmt.Errorf("figure.Outline: a column is missing: got %s, want one of texts and two of length", columns(frames[0]))
	}
	p := chart.Panel{Equal: true, X: chart.Axis{Name: capital(sides[0].Name), Kind: sides[0].Kind}, Y: chart.Axis{Name: capital(sides[1].Name), Kind: sides[1].Kind}}
	p.Series = parts(names.Texts, sides[0].Values, sides[1].Values)
	for i, s := range p.Series {
		if err := check("figure.Outline", fmt.Sprintf("part %d (%q)", i+1, s.Label), s, false); err != nil {
			return Figure{}, err
		}
	}
	p.FitX()
	p.FitOutline()
	title := frames[0].Title
	if title == "" {
		title = "Drawing to scale"
	}
	return Figure{title: title, what: "Parts drawn to scale", frames: frames, panels: []chart.Panel{p}}, nil
}

// parts cuts the rows into closed outlines: a new one begins with every name and after every
// row without numbers.
func parts(names []string, x, y []float64) []chart.Series {
	var series []chart.Series
	rows := map[string]int{}
	open := false
	for i, name := range names {
		if math.IsNaN(x[i]) || math.IsNaN(y[i]) {
			open = false
			continue
		}
		if !open || name != series[len(series)-1].Label {
			if _, seen := rows[name]; !seen {
				rows[name] = len(rows)
			}
			series, open = append(series, chart.Series{Label: name, Row: rows[name], Filled: true}), true
		}
		s := &series[len(series)-1]
		s.X, s.Y = append(s.X, x[i]), append(s.Y, y[i])
	}
	for i := range series {
		s := &series[i]
		s.X, s.Y = append(s.X, s.X[0]), append(s.Y, s.Y[0])
	}
	return series
}
