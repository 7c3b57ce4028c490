package figure

import (
	"fmt"

	"lode/render/internal/chart"
	"lode/units/frame"
)

// Lines draws the columns of each frame as curves over its first column. Curves of one kind
// of quantity share a panel; other kinds get panels of their own under it.
//
// Example: figure.Lines(study.Over(func(d units.Length) units.Area { return π*d*d/4 }, 1*mm, 10*mm, 10))
func Lines(sources ...frame.Source) (Figure, error) {
	frames, err := collect("figure.Lines", sources)
	if err != nil {
		return Figure{}, err
	}
	var f Figure
	row := 0
	for i, data := range frames {
		if err := f.addColumns(data, i, len(frames) == 1, &row); err != nil {
			return Figure{}, err
		}
	}
	share(f.panels)
	first := f.panels[0]
	f.title, f.what = panelNames(f.panels)+" over "+lower(first.X.Name), panelNames(f.panels)+" over "+lower(first.X.Name)
	f.frames = frames
	if len(frames) == 1 && frames[0].Title != "" {
		f.title = frames[0].Title
	}
	return f, nil
}

func (f *Figure) addColumns(data frame.Frame, index int, single bool, row *int) error {
	numeric := numericColumns(data)
	if len(numeric) < 2 {
		return fmt.Errorf("figure.Lines: %s: a column is missing: got %s, want two or more columns of numbers", named(data, index), columns(data))
	}
	x := numeric[0]
	log := x.Kind.Type == "Frequency" && above(x.Values, 0)
	for _, y := range numeric[1:] {
		s := chart.Series{Label: columnLabel(data, y, len(numeric), single), Row: *row, X: x.Values, Y: y.Values}
		for _, m := range data.Marks {
			if m.Of == y.Name || m.Of == "" && len(numeric) == 2 {
				s.Notes = append(s.Notes, chart.Note{Name: m.Name, X: m.X, Y: m.Y})
			}
		}
		if err := check("figure.Lines", named(data, index), s, log); err != nil {
			return err
		}
		*row++
		p, err := f.panelFor(x, y, log)
		if err != nil {
			return err
		}
		p.Series = append(p.Series, s)
	}
	return nil
}

// panelFor finds the panel of y's kind, or adds one.
func (f *Figure) panelFor(x, y frame.Column, log bool) (*chart.Panel, error) {
	for i := range f.panels {
		if have := f.panels[i].X.Kind; have.Type != x.Kind.Type || have.Dim != x.Kind.Dim {
			return nil, fmt.Errorf("figure.Lines: curves do not share a horizontal axis: got %s and %s, want one kind", have.Name, x.Kind.Name)
		}
		if k := f.panels[i].Y.Kind; k.Type == y.Kind.Type && k.Dim == y.Kind.Dim {
			if f.panels[i].Y.Name != capital(y.Name) {
				f.panels[i].Y.Name = capital(y.Kind.Name)
			}
			return &f.panels[i], nil
		}
	}
	f.panels = append(f.panels, chart.Panel{
		X: chart.Axis{Name: capital(x.Name), Kind: x.Kind, Log: log},
		Y: chart.Axis{Name: capital(y.Name), Kind: y.Kind},
	})
	return &f.panels[len(f.panels)-1], nil
}

// share gives panels above one another the same horizontal axis.
func share(panels []chart.Panel) {
	all := chart.Panel{X: panels[0].X}
	for _, p := range panels {
		all.Series = append(all.Series, p.Series...)
		all.X.Log = all.X.Log && p.X.Log
	}
	all.FitX()
	for i := range panels {
		panels[i].X = all.X
		panels[i].FitY(depth)
	}
}

// Logarithmic returns the figure with a logarithmic horizontal axis.
func (f Figure) Logarithmic() (Figure, error) {
	f.panels = f.Panels()
	for i := range f.panels {
		p := &f.panels[i]
		for _, s := range p.Series {
			if !above(s.X, 0) {
				return Figure{}, fmt.Errorf("Logarithmic: %s: got a value of %s that is zero or below, want all above zero", s.Label, lower(p.X.Name))
			}
		}
		p.X.Log = true
	}
	share(f.panels)
	return f, nil
}

func numericColumns(f frame.Frame) []frame.Column {
	var numeric []frame.Column
	for _, c := range f.Columns {
		if c.Texts == nil && c.Len() > 0 {
			numeric = append(numeric, c)
		}
	}
	return numeric
}

func columnLabel(f frame.Frame, c frame.Column, columns int, single bool) string {
	switch {
	case single:
		return c.Name
	case columns == 2 && f.Title != "":
		return f.Title
	case f.Title != "":
		return f.Title + ", " + c.Name
	}
	return c.Name
}

func above(values []float64, limit float64) bool {
	for _, v := range values {
		if !(v > limit) {
			return false
		}
	}
	return true
}
