package figure

import (
	"lode/render/internal/chart"
	"lode/units/frame"
)

// fewRows is how many rows of a curve are listed.
const fewRows = 25

// Numbers returns tables of what the figure shows, for readers who want the values: curves at
// some of their points, bars in full. Maps and outlines have none.
func (f Figure) Numbers() []frame.Frame {
	var tables []frame.Frame
	for _, p := range f.panels {
		switch {
		case p.Map != nil || p.Equal:
		case len(p.Bars) > 0:
			tables = append(tables, barNumbers(p))
		default:
			tables = append(tables, curveNumbers(p)...)
		}
	}
	return tables
}

func barNumbers(p chart.Panel) frame.Frame {
	names, values := frame.Column{Name: " "}, frame.Column{Name: lower(p.X.Name), Kind: p.X.Kind}
	for _, b := range p.Bars {
		names.Texts, values.Values = append(names.Texts, b.Label), append(values.Values, b.Value)
	}
	return frame.Frame{Title: p.X.Name, Columns: []frame.Column{names, values}}
}

// curveNumbers sets curves over the same places side by side, others in tables of their own.
func curveNumbers(p chart.Panel) []frame.Frame {
	var tables []frame.Frame
	for _, s := range p.Series {
		if s.Filled {
			tables = append(tables, countNumbers(p, s))
			continue
		}
		column := frame.Column{Name: s.Label, Kind: p.Y.Kind, Values: some(s.Y)}
		if n := len(tables); n > 0 && same(p.Series[0].X, s.X) {
			tables[0].Columns = append(tables[0].Columns, column)
			continue
		}
		x := frame.Column{Name: lower(p.X.Name), Kind: p.X.Kind, Values: some(s.X)}
		tables = append(tables, frame.Frame{Title: p.Y.Name, Columns: []frame.Column{x, column}})
	}
	return tables
}

// countNumbers lists the columns of a spread: where each begins and ends, and its count.
func countNumbers(p chart.Panel, s chart.Series) frame.Frame {
	from, to := frame.Column{Name: "from", Kind: p.X.Kind}, frame.Column{Name: "to", Kind: p.X.Kind}
	count := frame.Column{Name: "count", Kind: p.Y.Kind}
	for i := 1; i+1 < len(s.X); i += 2 {
		from.Values, to.Values = append(from.Values, s.X[i]), append(to.Values, s.X[i+1])
		count.Values = append(count.Values, s.Y[i])
	}
	return frame.Frame{Title: p.X.Name, Columns: []frame.Column{from, to, count}}
}

// some keeps evenly spread values with both ends.
func some(values []float64) []float64 {
	if len(values) <= fewRows {
		return values
	}
	kept := make([]float64, fewRows)
	for i := range kept {
		kept[i] = values[i*(len(values)-1)/(fewRows-1)]
	}
	return kept
}

func same(a, b []float64) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}
