package figure

// This file decides how much room everything takes: panels, margins, and with them how many
// labels an axis has.

import (
	"math"

	"lode/render/internal/chart"
)

// heights returns the height of each panel with its titles, and of the whole figure.
func (d *drawing) heights(top float64) ([]float64, float64) {
	heights := make([]float64, len(d.panels))
	for i, p := range d.panels {
		heights[i] = d.panelHeight(p) + d.headroom(i)
		if i == len(d.panels)-1 {
			heights[i] += 3.6 * d.size
		}
		heights[i] = math.Ceil(heights[i])
		top += heights[i]
	}
	return heights, math.Ceil(top)
}

// headroom is the height above a panel: for its title, and clear of the panel above.
func (d *drawing) headroom(i int) float64 {
	switch {
	case d.panels[i].Y.Title() == "":
		return d.size
	case i == 0:
		return 2.1 * d.size
	}
	return 3 * d.size
}

// yMargin is the width of the widest vertical label of any panel.
func (d *drawing) yMargin() float64 {
	widest := 0.0
	for _, p := range d.panels {
		for _, t := range d.yTicks(p) {
			widest = max(widest, chart.TextWidth(t.Label, d.size))
		}
	}
	return widest
}

// yTicks are the vertical axis's divisions, or the names of bars.
func (d *drawing) yTicks(p chart.Panel) []chart.Tick {
	if len(p.Bars) > 0 {
		return d.barNames(p)
	}
	return p.Y.Ticks(int(d.panelHeight(p) / d.yRoom))
}

// panelHeight is the height between the axes.
func (d *drawing) panelHeight(p chart.Panel) float64 {
	switch {
	case len(p.Bars) > 0:
		return float64(len(p.Bars)) * 2 * d.size
	case p.Equal:
		shape := (p.Y.Max - p.Y.Min) / (p.X.Max - p.X.Min)
		return min(max(shape*(d.width-d.rightMargin(p)-3*d.size), 0.5*d.form.panel), 1.3*d.width, 1.5*d.form.panel)
	case len(d.panels) > 1:
		return 0.72 * d.form.panel
	}
	return d.form.panel
}

// rightMargin is the room beside a panel, for what is named there.
func (d *drawing) rightMargin(p chart.Panel) float64 {
	switch {
	case len(p.Bars) > 0:
		return d.barValueWidth(p) + 8
	case p.Map != nil:
		return d.legendWidth(p.Map)
	case p.Equal:
		return chart.TextWidth(p.Y.Value(p.Y.Max-p.Y.Min), d.size) + 24
	}
	return max(d.endWidth()+endGap, 1.6*d.size)
}

// xTicks are the horizontal axis's divisions in the room that is left.
func (d *drawing) xTicks(p chart.Panel, margin float64) []chart.Tick {
	return p.X.Ticks(int((d.width - margin - d.rightMargin(p)) / d.xRoom))
}
