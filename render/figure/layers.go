package figure

// This file draws what stands between the axes: the lines across and the curves.

import (
	"fmt"
	"math"

	"gonum.org/v1/plot"
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
	across, up := l.panel.X.Max-l.panel.X.Min, l.panel.Y.Max-l.panel.Y.Min
	l.scales = [2]float64{float64(c.Max.X-c.Min.X) / across, float64(c.Max.Y-c.Min.Y) / up}
	switch {
	case len(l.panel.Bars) > 0:
		l.grid(true, false)
		l.bars()
	case l.panel.Map != nil:
		l.shades()
		l.legend()
	case l.panel.Equal:
		l.outlines()
	default:
		l.grid(true, true)
		l.curves()
	}
	l.places = append(l.places, l.field.Taken...)
}

func (l *panelLayers) curves() {
	l.openField()
	for _, s := range l.panel.Series {
		l.canvas.name = s.Label
		l.curve(s)
		l.canvas.name = ""
	}
	l.canvas.raw("</g>\n")
	if !l.key {
		l.ends()
	}
	for _, s := range l.panel.Series {
		l.rings(s)
	}
	most := 0
	for _, s := range l.panel.Series {
		most = max(most, len(l.seen(s)))
	}
	for rank := range most {
		for _, s := range l.panel.Series {
			l.note(s, rank)
		}
	}
}

// openField begins a group that says where the panel stands and what its axes are, for a
// page that reads values off the curves.
func (l *panelLayers) openField() {
	f := l.field.Frame
	l.canvas.raw(fmt.Sprintf("<g class=\"field\" data-box=\"%s %s %s %s\" data-x=\"%s\" data-y=\"%s\">\n",
		number(f.Left), number(f.Top), number(f.Right), number(f.Bottom), escape(l.panel.X.Data()), escape(l.panel.Y.Data())))
}

func (l *panelLayers) down(y vg.Length) float64 { return l.height - float64(y) }

func (l *panelLayers) point(x, y float64) vg.Point {
	return vg.Point{X: l.c.X(l.plot.X.Norm(x)), Y: l.c.Y(l.plot.Y.Norm(y))}
}

func (l *panelLayers) onDrawing(p vg.Point) chart.Point {
	return chart.Point{X: float64(p.X), Y: l.down(p.Y)}
}

// grid draws the lines across: up at x, over at y.
func (l *panelLayers) grid(up, over bool) {
	style := draw.LineStyle{Color: ink("grid"), Width: 1}
	for _, t := range l.yTicks(l.panel) {
		if y := l.c.Y(l.plot.Y.Norm(t.At)); over && t.Label != "" && y > l.c.Min.Y+1 {
			l.c.StrokeLine2(style, l.c.Min.X, y, l.c.Max.X, y)
		}
	}
	for _, t := range l.xTicks(l.panel, 0) {
		if x := l.c.X(l.plot.X.Norm(t.At)); up && t.Grid {
			l.c.StrokeLine2(style, x, l.c.Min.Y, x, l.c.Max.Y)
		}
	}
}

// lineStyle is how a series is drawn: areas by a thinner solid line.
func lineStyle(s chart.Series) draw.LineStyle {
	style := draw.LineStyle{Color: row(s.Row), Width: 2}
	if s.Filled {
		style.Width = 1.5
		return style
	}
	for _, d := range dashes[s.Row%len(dashes)] {
		style.Dashes = append(style.Dashes, vg.Length(d))
	}
	return style
}

// curve draws the pieces of a series between its gaps.
func (l *panelLayers) curve(s chart.Series) {
	if s.Filled {
		l.fill(s)
	}
	l.c.SetLineStyle(lineStyle(s))
	for _, piece := range l.pieces(s) {
		for _, part := range l.c.ClipLinesXY(piece) {
			l.piece(part)
		}
	}
}

// fill tints the inside of a series that returns to where it began, at the axis or anywhere.
func (l *panelLayers) fill(s chart.Series) {
	for _, piece := range l.pieces(s) {
		if corners := l.c.ClipPolygonXY(piece); len(corners) > 2 {
			l.c.FillPolygon(row(s.Row)+" tint", corners)
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
