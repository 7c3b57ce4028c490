package figure

// This file names the curves: at their right ends, or in a key above the panels where there
// is no room beside them.

import (
	"math"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"lode/render/internal/chart"
)

const (
	endGap   = 18 // between the panel and the names
	endLines = 2  // most lines of a name
)

func (d *drawing) lineHeight() float64 { return d.size * 1.25 }

func (d *drawing) endLabel(label string) []string {
	return chart.Wrap(label, d.size, d.width*0.24, endLines)
}

// endWidth is the room that names at the ends take.
func (d *drawing) endWidth() float64 {
	widest := -float64(endGap)
	if d.key {
		return widest
	}
	for _, p := range d.panels {
		for _, s := range toName(p) {
			for _, line := range d.endLabel(s.Label) {
				widest = max(widest, chart.TextWidth(line, d.size))
			}
		}
	}
	return widest
}

// toName returns the curves that need a name: all, unless there is one and the vertical
// axis says what it is.
func toName(p chart.Panel) []chart.Series {
	if len(p.Series) == 1 && (p.Series[0].Filled && !p.Equal || lower(p.Series[0].Label) == lower(p.Y.Name)) {
		return nil
	}
	return p.Series
}

// endsFit reports whether every panel is high enough for the names of its curves.
func (d *drawing) endsFit() bool {
	for _, p := range d.panels {
		if p.Equal {
			return false
		}
		lines := 0
		for _, s := range p.Series {
			lines += len(d.endLabel(s.Label))
		}
		if float64(lines)*d.lineHeight() > 0.7*d.form.panel {
			return false
		}
	}
	return true
}

// ends writes each name beside the last visible point of its curve; names that would collide
// are moved apart and tied to their curves by a thin line.
func (l *panelLayers) ends() {
	var names [][]string
	var rows []int
	var at []chart.Point
	var want, size []float64
	for _, s := range toName(l.panel) {
		p, ok := l.lastVisible(s)
		if !ok {
			continue
		}
		lines := l.endLabel(s.Label)
		names, rows, at = append(names, lines), append(rows, s.Row), append(at, p)
		want, size = append(want, p.Y), append(size, float64(len(lines))*l.lineHeight())
	}
	frame := l.field.Frame
	centres, _ := chart.Stack(want, size, frame.Top-l.size/2, frame.Bottom+l.size/2)
	for i, lines := range names {
		l.tie(at[i], chart.Point{X: frame.Right + endGap - 4, Y: centres[i]}, rows[i])
		for k, line := range lines {
			l.text(line, row(rows[i]), chart.Point{X: frame.Right + endGap, Y: centres[i] - size[i]/2 + float64(k)*l.lineHeight() + l.size*0.12})
		}
	}
}

func (l *panelLayers) lastVisible(s chart.Series) (chart.Point, bool) {
	for _, piece := range backwards(l.pieces(s)) {
		if parts := l.c.ClipLinesXY(piece); len(parts) > 0 {
			part := parts[len(parts)-1]
			return l.onDrawing(part[len(part)-1]), true
		}
	}
	return chart.Point{}, false
}

func backwards(pieces [][]vg.Point) [][]vg.Point {
	turned := make([][]vg.Point, 0, len(pieces))
	for i := len(pieces) - 1; i >= 0; i-- {
		turned = append(turned, pieces[i])
	}
	return turned
}

func (l *panelLayers) tie(from, to chart.Point, series int) {
	if math.Abs(from.Y-to.Y) < 2 && from.X > l.field.Frame.Right-2 {
		return
	}
	l.c.SetLineStyle(draw.LineStyle{Color: row(series), Width: 1})
	var path vg.Path
	path.Move(vg.Point{X: vg.Length(from.X + 2), Y: vg.Length(l.height - from.Y)})
	path.Line(vg.Point{X: vg.Length(to.X - 6), Y: vg.Length(l.height - to.Y)})
	path.Line(vg.Point{X: vg.Length(to.X), Y: vg.Length(l.height - to.Y)})
	l.c.Stroke(path)
}

func (d *drawing) keyRows() []chart.Series {
	var rows []chart.Series
	seen := map[int]bool{}
	for _, p := range d.panels {
		for _, s := range toName(p) {
			if !seen[s.Row] {
				seen[s.Row] = true
				rows = append(rows, s)
			}
		}
	}
	if len(rows) == 1 {
		return nil
	}
	return rows
}

func (d *drawing) keyHeight() float64 { return 3 + float64(len(d.keyRows()))*d.size*1.5 }

// drawKey writes one row for each curve: a piece of its line and its name.
func (d *drawing) drawKey() {
	const sample = 34
	c := draw.NewCanvas(d.canvas, vg.Length(d.width), vg.Length(d.height))
	for i, s := range d.keyRows() {
		top := float64(i) * d.size * 1.5
		y := vg.Length(d.height - top - 3 - d.size*0.6)
		c.StrokeLine2(lineStyle(s), 1, y, sample, y)
		d.text(chart.Wrap(s.Label, d.size, d.width-sample-12, 1)[0], row(s.Row), chart.Point{X: sample + 8, Y: top + 3})
	}
}
