package figure

// This file draws maps: a step of shade for each level, a line at each, and a legend.

import (
	"fmt"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"lode/render/internal/chart"
)

const swatch = 16

func (d *drawing) legendWidth(m *chart.Map) float64 {
	widest := chart.TextWidth(m.Scale.Title(), d.size)
	for _, v := range m.Levels() {
		widest = max(widest, swatch+8+chart.TextWidth(m.Scale.Label(v), d.size))
	}
	return widest + 14
}

// shades covers the region above each level once more, so that shade deepens with the value.
func (l *panelLayers) shades() {
	for _, level := range l.panel.Map.Levels() {
		var area, lines vg.Path
		for _, loop := range l.panel.Map.Regions(level) {
			area, lines = l.region(loop, area, lines)
		}
		l.canvas.flush()
		l.c.SetColor(row(0) + " shade")
		l.c.Fill(area)
		l.c.SetLineStyle(draw.LineStyle{Color: row(0), Width: 0.8})
		l.c.Stroke(lines)
	}
}

// region adds a loop to the area, and to the lines what of it does not run along the rim.
func (l *panelLayers) region(loop []chart.Point, area, lines vg.Path) (vg.Path, vg.Path) {
	corners := make([]chart.Point, 0, len(loop)+1)
	for _, p := range append(loop, loop[0]) {
		corners = append(corners, l.onDrawing(l.point(p.X, p.Y)))
	}
	frame := l.rim()
	drawing := false
	for i, p := range chart.Thin(corners, 0.2) {
		at := vg.Point{X: vg.Length(p.X), Y: vg.Length(l.height - p.Y)}
		if i == 0 {
			area.Move(at)
			lines.Move(at)
			continue
		}
		area.Line(at)
		before := area[len(area)-2].Pos
		if alongRim(frame, before, at) {
			drawing = false
			continue
		}
		if !drawing {
			lines.Move(before)
		}
		lines.Line(at)
		drawing = true
	}
	area.Close()
	return area, lines
}

func (l *panelLayers) rim() vg.Rectangle {
	m := l.panel.Map
	return vg.Rectangle{Min: l.point(m.X[0], m.Y[0]), Max: l.point(m.X[len(m.X)-1], m.Y[len(m.Y)-1])}
}

func alongRim(r vg.Rectangle, a, b vg.Point) bool {
	near := func(x, y, side vg.Length) bool { return x > side-0.5 && x < side+0.5 && y > side-0.5 && y < side+0.5 }
	return near(a.X, b.X, r.Min.X) || near(a.X, b.X, r.Max.X) || near(a.Y, b.Y, r.Min.Y) || near(a.Y, b.Y, r.Max.Y)
}

// legend draws the steps of shade one above the other with the level between them.
func (l *panelLayers) legend() {
	levels := l.panel.Map.Levels()
	left, top := l.field.Frame.Right+14, l.field.Frame.Top+1.6*l.size
	step := min(1.7*l.size, (l.field.Frame.Bottom-top)/float64(len(levels)+1))
	l.text(l.panel.Map.Scale.Title(), "quiet", chart.Point{X: left, Y: l.field.Frame.Top - 0.2*l.size})
	bottom := top + step*float64(len(levels)+1)
	l.canvas.raw(fmt.Sprintf("<rect class=\"line quiet\" stroke-width=\"0.8\" x=\"%s\" y=\"%s\" width=\"%d\" height=\"%s\"/>\n",
		number(left), number(top), swatch, number(bottom-top)))
	for i, v := range levels {
		y := bottom - step*float64(i+1)
		l.canvas.flush()
		l.c.FillPolygon(row(0)+" shade", l.corners(chart.Box{Left: left, Top: top, Right: left + swatch, Bottom: y}))
		l.text(l.panel.Map.Scale.Label(v), "ink", chart.Point{X: left + swatch + 8, Y: y - 0.5*l.size})
	}
}

func (l *panelLayers) corners(b chart.Box) []vg.Point {
	at := func(x, y float64) vg.Point { return vg.Point{X: vg.Length(x), Y: vg.Length(l.height - y)} }
	return []vg.Point{at(b.Left, b.Top), at(b.Right, b.Top), at(b.Right, b.Bottom), at(b.Left, b.Bottom)}
}
