package figure

// This file draws bars with their names to the left and their values at the ends.

import (
	"math"

	"gonum.org/v1/plot/vg"

	"lode/render/internal/chart"
)

// barNames puts each bar's name at its middle, the first bar on top.
func (d *drawing) barNames(p chart.Panel) []chart.Tick {
	var ticks []chart.Tick
	for i, b := range p.Bars {
		name := " "
		if lines := chart.Wrap(b.Label, d.size, 0.34*d.width, 1); len(lines) > 0 {
			name = lines[0]
		}
		ticks = append(ticks, chart.Tick{At: float64(len(p.Bars)-i) - 0.5, Label: name})
	}
	return ticks
}

func (d *drawing) barValueWidth(p chart.Panel) float64 {
	widest := 0.0
	for _, b := range p.Bars {
		widest = max(widest, chart.TextWidth(p.X.Value(b.Value), d.size))
	}
	return widest
}

func (l *panelLayers) bars() {
	for i, b := range l.panel.Bars {
		middle := float64(len(l.panel.Bars)-i) - 0.5
		from, to := l.point(0, middle+0.32), l.point(b.Value, middle-0.32)
		class := row(0)
		if b.Value < 0 {
			class = row(1)
		}
		l.c.FillPolygon(class, []vg.Point{from, {X: to.X, Y: from.Y}, to, {X: from.X, Y: to.Y}})
		l.barValue(b, l.onDrawing(vg.Point{X: to.X, Y: (from.Y + to.Y) / 2}), class)
	}
}

// barValue writes the value beyond the end of its bar; that of a negative one stands on the
// other side of zero, where there is room for certain.
func (l *panelLayers) barValue(b chart.Bar, end chart.Point, class ink) {
	text := l.panel.X.Value(b.Value)
	left := math.Max(end.X, float64(l.c.X(l.plot.X.Norm(0)))) + 6
	l.text(text, class+" halo", chart.Point{X: left, Y: end.Y - 0.5*l.size})
}
