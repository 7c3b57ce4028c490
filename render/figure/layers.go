package figure

// This file draws what stands between the axes: the lines across, the curves, their names at
// the ends and their notes.

import (
	"math"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"lode/render/internal/chart"
)

type panelLayers struct {
	*drawing
	panel chart.Panel
	plot  *plot.Plot
	c     draw.Canvas
	field chart.Field
}

// Plot draws the panel's layers from back to front.
func (l *panelLayers) Plot(c draw.Canvas, p *plot.Plot) {
	l.c, l.plot = c, p
	l.field = chart.Field{Frame: chart.Box{
		Left: float64(c.Min.X), Top: l.down(c.Max.Y), Right: float64(c.Max.X), Bottom: l.down(c.Min.Y),
	}}
	l.grid()
	for _, s := range l.panel.Series {
		l.curve(s)
	}
	if !l.key {
		l.ends()
	}
	for _, s := range l.panel.Series {
		l.rings(s)
	}
	for _, s := range l.panel.Series {
		l.notes(s)
	}
	l.places = append(l.places, l.field.Taken...)
}

func (l *panelLayers) down(y vg.Length) float64 { return l.height - float64(y) }

func (l *panelLayers) point(x, y float64) vg.Point {
	return vg.Point{X: l.c.X(l.plot.X.Norm(x)), Y: l.c.Y(l.plot.Y.Norm(y))}
}

func (l *panelLayers) onDrawing(p vg.Point) chart.Point {
	return chart.Point{X: float64(p.X), Y: l.down(p.Y)}
}

func (l *panelLayers) grid() {
	style := draw.LineStyle{Color: ink("grid"), Width: 1}
	for _, t := range l.panel.Y.Ticks(l.yCount()) {
		if y := l.c.Y(l.plot.Y.Norm(t.At)); t.Label != "" && y > l.c.Min.Y+1 {
			l.c.StrokeLine2(style, l.c.Min.X, y, l.c.Max.X, y)
		}
	}
	room := int((l.width - l.endWidth()) / l.xRoom)
	for _, t := range l.panel.X.Ticks(room) {
		if x := l.c.X(l.plot.X.Norm(t.At)); t.Grid {
			l.c.StrokeLine2(style, x, l.c.Min.Y, x, l.c.Max.Y)
		}
	}
}

// curve draws the pieces of a series between its gaps.
func (l *panelLayers) curve(s chart.Series) {
	style := draw.LineStyle{Color: row(s.Row), Width: 2}
	for _, d := range dashes[s.Row%len(dashes)] {
		style.Dashes = append(style.Dashes, vg.Length(d))
	}
	l.c.SetLineStyle(style)
	for _, piece := range l.pieces(s) {
		for _, part := range l.c.ClipLinesXY(piece) {
			l.piece(part)
		}
	}
}

func (l *panelLayers) piece(part []vg.Point) {
	points := make([]chart.Point, len(part))
	for i, p := range part {
		points[i] = l.onDrawing(p)
	}
	points = chart.Thin(points, 0.1)
	var path vg.Path
	for i, p := range points {
		at := vg.Point{X: vg.Length(p.X), Y: vg.Length(l.height - p.Y)}
		if i == 0 {
			path.Move(at)
			continue
		}
		path.Line(at)
	}
	l.c.Stroke(path)
	l.field.Curves = append(l.field.Curves, points)
}

func (l *panelLayers) pieces(s chart.Series) [][]vg.Point {
	var pieces [][]vg.Point
	var piece []vg.Point
	for i := range s.X {
		if y := s.Y[i]; math.IsNaN(y) || math.IsInf(y, 0) || l.panel.Y.Log && y <= 0 || l.panel.X.Log && s.X[i] <= 0 {
			pieces, piece = append(pieces, piece), nil
			continue
		}
		piece = append(piece, l.point(s.X[i], s.Y[i]))
	}
	return append(pieces, piece)
}

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

// notes writes the name of each marked point beside it where there is room, tied to its
// point when it had to move away.
func (l *panelLayers) notes(s chart.Series) {
	for _, n := range l.seen(s) {
		line := n.Name
		if line != "" {
			line += " "
		}
		line += l.panel.X.Value(n.X)
		at := l.onDrawing(l.point(n.X, n.Y))
		place, ok := l.field.Label(at, chart.TextWidth(line, l.size), l.size)
		if !ok {
			continue
		}
		l.write(line, row(s.Row), at, place)
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
	style, x := l.letters(colour, 0), place.Left
	if place.Right <= at.X {
		style.XAlign, x = text.XRight, place.Right
	}
	style.Handler.Draw(l.canvas, line, style, vg.Point{X: vg.Length(x), Y: vg.Length(l.height - place.Top - l.size)})
}
