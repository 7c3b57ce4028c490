package figure

import (
	"fmt"
	"math"
	"strings"

	"lode/render/internal/chart"
	"lode/units"
	"lode/units/frame"
)

// depth is how many decibels below the highest level are shown unless asked for.
const depth = 80

// Response draws frequency responses, one curve each, as level over frequency. A curve is
// anything with a column of frequency and a column of level; its title names it and its
// marks are annotated.
//
// Example: figure.Response(short.Named("3 m").Sweep(20*Hz, 20*kHz), long.Named("10 m").Sweep(20*Hz, 20*kHz)).Titled("Two cables")
func Response(curves ...frame.Source) (Figure, error) {
	frames, err := collect("figure.Response", curves)
	if err != nil {
		return Figure{}, err
	}
	p := chart.Panel{X: axisOf("Frequency", "Frequency", true), Y: axisOf("Level", "Level", false)}
	for i, f := range frames {
		s, err := series("figure.Response", f, i, "Frequency", "Level")
		if err != nil {
			return Figure{}, err
		}
		p.Series = append(p.Series, s)
	}
	alone(&p, frames)
	p.FitX()
	p.FitY(depth)
	title := "Frequency response"
	if len(frames) == 1 && frames[0].Title != "" {
		title += ", " + frames[0].Title
	}
	return Figure{title: title, what: "Level over frequency", frames: frames, panels: []chart.Panel{p}}, nil
}

// Impedance draws the size of impedances over frequency, and their phase under it where all
// curves have one. A curve is anything with a column of frequency and one of resistance.
//
// Example: figure.Impedance(n.ImpedanceSweep("out", 20*Hz, 20*kHz))
func Impedance(curves ...frame.Source) (Figure, error) {
	frames, err := collect("figure.Impedance", curves)
	if err != nil {
		return Figure{}, err
	}
	p := chart.Panel{X: axisOf("Frequency", "Frequency", true), Y: axisOf("Impedance", "Resistance", true)}
	for i, f := range frames {
		s, err := series("figure.Impedance", f, i, "Frequency", "Resistance")
		if err != nil {
			return Figure{}, err
		}
		if !above(finite(s.Y), 0) {
			return Figure{}, fmt.Errorf("figure.Impedance: %s: got an impedance of zero or below, want all above zero", named(f, i))
		}
		p.Series = append(p.Series, s)
	}
	alone(&p, frames)
	p.FitX()
	p.FitY(depth)
	f := Figure{title: "Impedance", what: "Impedance over frequency", frames: frames, panels: []chart.Panel{p}}
	if withPhase, err := f.WithPhase(); err == nil {
		f = withPhase
	}
	return f, nil
}

// WithPhase returns the figure with the phase of its curves in a panel below.
func (f Figure) WithPhase() (Figure, error) {
	p := chart.Panel{X: axisOf("Frequency", "Frequency", true), Y: axisOf("Phase", "Angle", false)}
	for i, data := range f.frames {
		s, err := series("WithPhase", data, i, "Frequency", "Angle")
		if err != nil {
			return Figure{}, err
		}
		s.X, s.Y = unjoined(s.X, s.Y)
		p.Series = append(p.Series, s)
	}
	alone(&p, f.frames)
	p.X.Min, p.X.Max = f.panels[0].X.Min, f.panels[0].X.Max
	p.FitY(depth)
	f.panels = append(f.Panels(), p)
	return f, nil
}

// unjoined puts a gap where a phase jumps by more than half a turn.
func unjoined(x, y []float64) ([]float64, []float64) {
	var xs, ys []float64
	for i := range y {
		if i > 0 && math.Abs(y[i]-y[i-1]) > math.Pi {
			xs, ys = append(xs, x[i]), append(ys, math.NaN())
		}
		xs, ys = append(xs, x[i]), append(ys, y[i])
	}
	return xs, ys
}

func collect(subject string, curves []frame.Source) ([]frame.Frame, error) {
	if len(curves) == 0 {
		return nil, fmt.Errorf("%s: nothing to draw: got no curve, want one or more", subject)
	}
	frames := make([]frame.Frame, len(curves))
	for i, c := range curves {
		if c == nil {
			return nil, fmt.Errorf("%s: curve %d is missing: got nil, want a curve", subject, i+1)
		}
		frames[i] = c.Frame()
	}
	return frames, nil
}

func axisOf(name, kind string, log bool) chart.Axis {
	k, _ := units.KindNamed(kind)
	return chart.Axis{Name: name, Kind: k, Log: log}
}

// series takes the columns of two kinds out of a frame.
func series(subject string, f frame.Frame, row int, xKind, yKind string) (chart.Series, error) {
	x, okX := f.OfKind(xKind)
	y, okY := f.OfKind(yKind)
	if !okX || !okY {
		return chart.Series{}, fmt.Errorf("%s: %s: a column is missing: got %s, want a %s and a %s", subject, named(f, row), columns(f),
			kindName(xKind), kindName(yKind))
	}
	s := chart.Series{Label: label(f, row), Row: row, X: x.Values, Y: y.Values}
	for _, m := range f.Marks {
		if m.Of == "" || m.Of == y.Name {
			s.Notes = append(s.Notes, chart.Note{Name: m.Name, X: m.X, Y: m.Y})
		}
	}
	return s, check(subject, named(f, row), s, xKind == "Frequency")
}

// check refuses curves that cannot be drawn.
func check(subject, name string, s chart.Series, log bool) error {
	drawn := 0
	for i := range min(len(s.X), len(s.Y)) {
		if log && !(s.X[i] > 0) || math.IsNaN(s.X[i]) || math.IsInf(s.X[i], 0) {
			return fmt.Errorf("%s: %s: row %d cannot be drawn: got %v, want a finite value%s", subject, name, i+1, s.X[i], positive(log))
		}
		if !math.IsNaN(s.Y[i]) && !math.IsInf(s.Y[i], 0) {
			drawn++
		}
	}
	if drawn == 0 || len(s.X) != len(s.Y) {
		return fmt.Errorf("%s: %s: nothing to draw: got %d finite values in %d rows, want one or more", subject, name, drawn, len(s.X))
	}
	return nil
}

func named(f frame.Frame, row int) string {
	return fmt.Sprintf("curve %d (%q)", row+1, f.Title)
}

func label(f frame.Frame, row int) string {
	if f.Title == "" {
		return fmt.Sprintf("curve %d", row+1)
	}
	return f.Title
}

// alone calls the only curve of a panel by what it shows, if it has no name: then it needs no label.
func alone(p *chart.Panel, frames []frame.Frame) {
	if len(p.Series) == 1 && frames[0].Title == "" {
		p.Series[0].Label = p.Y.Name
	}
}

func columns(f frame.Frame) string {
	var all []string
	for _, c := range f.Columns {
		all = append(all, c.Name)
	}
	if len(all) == 0 {
		return "no columns"
	}
	return "columns " + strings.Join(all, ", ")
}

func kindName(kind string) string {
	k, _ := units.KindNamed(kind)
	return "column of " + k.Name
}
