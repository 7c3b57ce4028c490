package figure

// This file marks the named points of curves and finds places for their names.

import (
	"math"
	"strings"

	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"lode/render/internal/chart"
)

// seen are the notes that lie on the panel.
func (l *panelLayers) seen(s chart.Series) []chart.Note {
	var notes []chart.Note
	for _, n := range s.Notes {
		if !math.IsNaN(n.X+n.Y) && l.panel.X.Holds(n.X) && l.panel.Y.Holds(n.Y) {
			notes = append(notes, n)
		}
	}
	return notes
}

// rings marks the named points. Labels keep clear of them.
func (l *panelLayers) rings(s chart.Series) {
	const radius = 3.5
	for _, n := range l.seen(s) {
		if s.Filled {
			l.rule(n, s.Row)
			continue
		}
		at := l.point(n.X, n.Y)
		var ring vg.Path
		ring.Move(vg.Point{X: at.X + radius, Y: at.Y})
		ring.Arc(at, radius, 0, 2*math.Pi)
		ring.Close()
		l.c.SetColor(ink("paper"))
		l.c.Fill(ring)
		l.c.SetLineStyle(draw.LineStyle{Color: row(s.Row), Width: 1.5})
		l.c.Stroke(ring)
		p := l.onDrawing(at)
		l.field.Rings = append(l.field.Rings, chart.Box{Left: p.X - 5, Top: p.Y - 5, Right: p.X + 5, Bottom: p.Y + 5})
	}
}

// rule draws a line up through an area at a named value.
func (l *panelLayers) rule(n chart.Note, series int) {
	x := l.c.X(l.plot.X.Norm(n.X))
	l.c.StrokeLine2(draw.LineStyle{Color: row(series + 1), Width: 1.5, Dashes: []vg.Length{4, 3}}, x, l.c.Min.Y, x, l.c.Max.Y)
	at := chart.Point{X: float64(x), Y: l.field.Frame.Top}
	l.field.Rings = append(l.field.Rings, chart.Box{Left: at.X - 2, Top: at.Y, Right: at.X + 2, Bottom: l.field.Frame.Bottom})
}

// note writes the name of one marked point beside it where there is room, tied to its point
// when it had to move away. The first of every curve come before the second ones.
func (l *panelLayers) note(s chart.Series, rank int) {
	notes := l.seen(s)
	if rank >= len(notes) {
		return
	}
	n := notes[rank]
	line := strings.TrimSpace(n.Name + " " + l.panel.X.Value(n.X))
	at, class := l.onDrawing(l.point(n.X, n.Y)), row(s.Row)
	if s.Filled {
		at.Y, class = l.field.Frame.Top+l.size, row(s.Row+1)
	}
	place, ok := l.field.Label(at, chart.TextWidth(line, l.size), l.size)
	if !ok {
		return
	}
	l.write(line, class, at, place)
	if !s.Filled {
		l.noteTie(at, place, s.Row)
	}
}

// noteTie joins a point to a label that is not next to it.
func (l *panelLayers) noteTie(at chart.Point, place chart.Box, series int) {
	to := place.Nearest(at)
	long := math.Hypot(to.X-at.X, to.Y-at.Y)
	if long < 16 {
		return
	}
	from := chart.Point{X: at.X + 5*(to.X-at.X)/long, Y: at.Y + 5*(to.Y-at.Y)/long}
	l.c.SetLineStyle(draw.LineStyle{Color: row(series), Width: 1})
	var path vg.Path
	path.Move(vg.Point{X: vg.Length(from.X), Y: vg.Length(l.height - from.Y)})
	path.Line(vg.Point{X: vg.Length(to.X), Y: vg.Length(l.height - to.Y)})
	l.c.Stroke(path)
}

// write sets a line in its place: against the right edge when it stands left of the point
// it belongs to, for the reader's font may be narrower than the place.
func (l *panelLayers) write(line string, colour ink, at chart.Point, place chart.Box) {
	style, x := l.letters(colour+" halo", 0), place.Left
	if place.Right <= at.X {
		style.XAlign, x = text.XRight, place.Right
	}
	style.Handler.Draw(l.canvas, line, style, vg.Point{X: vg.Length(x), Y: vg.Length(l.height - place.Top - l.size)})
}
