package figure

// This file draws parts to scale with the overall size beside them.

import (
	"math"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"lode/render/internal/chart"
)

func (l *panelLayers) outlines() {
	low, high := chart.Point{X: math.Inf(1), Y: math.Inf(1)}, chart.Point{X: math.Inf(-1), Y: math.Inf(-1)}
	for _, s := range l.panel.Series {
		l.fill(s)
		l.c.SetLineStyle(lineStyle(s))
		for _, piece := range l.pieces(s) {
			l.piece(piece)
		}
		low.X, high.X = chart.Range(s.X, low.X, high.X, nil)
		low.Y, high.Y = chart.Range(s.Y, low.Y, high.Y, nil)
	}
	l.dimensions(low, high)
}

// dimensions draws the overall width above and the overall height to the right.
func (l *panelLayers) dimensions(low, high chart.Point) {
	const away = 12
	a, b := l.onDrawing(l.point(low.X, high.Y)), l.onDrawing(l.point(high.X, low.Y))
	l.measure(chart.Point{X: a.X, Y: a.Y - away}, chart.Point{X: b.X, Y: a.Y - away})
	l.measure(chart.Point{X: b.X + away, Y: a.Y}, chart.Point{X: b.X + away, Y: b.Y})
	across, up := l.panel.X.Value(high.X-low.X), l.panel.Y.Value(high.Y-low.Y)
	l.text(across, "ink", chart.Point{X: (a.X+b.X)/2 - chart.TextWidth(across, l.size)/2, Y: a.Y - away - 1.3*l.size})
	l.text(up, "ink", chart.Point{X: b.X + away + 7, Y: (a.Y+b.Y)/2 - l.size/2})
}

// measure draws a dimension line with a short bar at each end.
func (l *panelLayers) measure(a, b chart.Point) {
	long := math.Hypot(b.X-a.X, b.Y-a.Y)
	dx, dy := 4*(b.Y-a.Y)/long, 4*(b.X-a.X)/long
	at := func(x, y float64) vg.Point { return vg.Point{X: vg.Length(x), Y: vg.Length(l.height - y)} }
	l.c.StrokeLines(draw.LineStyle{Color: ink("quiet"), Width: 1},
		[]vg.Point{at(a.X, a.Y), at(b.X, b.Y)},
		[]vg.Point{at(a.X-dx, a.Y-dy), at(a.X+dx, a.Y+dy)}, []vg.Point{at(b.X-dx, b.Y-dy), at(b.X+dx, b.Y+dy)})
}
