package figure

// This file arranges a figure: a key or labels at the curves' ends, and the panels under one
// another with equal margins, each laid out by gonum/plot.

import (
	"fmt"
	"math"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"lode/render/internal/chart"
)

// form is a size to draw in.
type form struct {
	width, panel float64 // panel is the height of one panel
	size         float64 // of letters
	xRoom, yRoom float64 // least distance between labels
	key          bool    // name the curves above instead of at their ends
}

var (
	wide   = form{width: 720, panel: 290, size: 13, xRoom: 52, yRoom: 40}
	narrow = form{width: 360, panel: 230, size: 12.5, xRoom: 44, yRoom: 38, key: true}
)

// SVG draws the figure for screens and paper. The id must be unique on the page.
func (f Figure) SVG(id string) string { return f.drawing(id, wide).svg() }

// Narrow draws the figure for the width of a telephone.
func (f Figure) Narrow(id string) string { return f.drawing(id, narrow).svg() }

// File returns the figure as an SVG file of its own.
func (f Figure) File() string {
	d := f.drawing("figure", wide)
	d.alone = true
	return d.svg()
}

type drawing struct {
	Figure
	form
	id     string
	alone  bool
	canvas *canvas
	height float64
	places []chart.Box // every text of the figure's inside
}

func (f Figure) drawing(id string, form form) *drawing {
	d := &drawing{Figure: f, form: form, id: id}
	if !d.endsFit() {
		d.key = true
	}
	top := 0.0
	if d.key {
		top = d.keyHeight()
	}
	between, bottom := d.size*2.6, d.size*3.6
	each := d.form.panel + between
	d.height = math.Ceil(top + each*float64(len(f.panels)) + bottom)
	d.canvas = newCanvas(d.width, d.height)
	if d.key {
		d.drawKey()
	}
	margin := d.yMargin()
	for i := range f.panels {
		low, last := top+each*float64(i+1), i == len(f.panels)-1
		if last {
			low = d.height
		}
		d.drawPanel(i, chart.Box{Left: 0, Top: top + each*float64(i), Right: d.width, Bottom: low}, margin, last)
	}
	d.canvas.flush()
	return d
}

func (d *drawing) svg() string {
	title, desc := d.id+"-title", d.id+"-desc"
	head := fmt.Sprintf(`<svg class="figure" id="%s" viewBox="0 0 %s %s" role="img" aria-labelledby="%s %s"`,
		escape(d.id), number(d.width), number(d.height), escape(title), escape(desc))
	style := ""
	if d.alone {
		head += fmt.Sprintf(` xmlns="http://www.w3.org/2000/svg" width="%s" height="%s"`, number(d.width), number(d.height))
		style = "<style>" + Style() + "svg{background:var(--figure-paper)}</style>\n"
	}
	return head + ">\n" + fmt.Sprintf("<title id=\"%s\">%s</title>\n<desc id=\"%s\">%s</desc>\n", escape(title), escape(d.title), escape(desc), escape(d.Description())) +
		style + d.canvas.body.String() + "</svg>"
}

// letters returns a text style.
func (d *drawing) letters(colour ink, least float64) text.Style {
	return text.Style{
		Color: colour, Font: font.Font{Size: vg.Length(d.size)},
		XAlign: text.XLeft, YAlign: text.YBottom, Handler: letters{least: vg.Length(least)},
	}
}

// yMargin is the width of the widest vertical label of any panel.
func (d *drawing) yMargin() float64 {
	widest := 0.0
	for _, p := range d.panels {
		for _, t := range p.Y.Ticks(d.yCount()) {
			widest = max(widest, chart.TextWidth(t.Label, d.size))
		}
	}
	return widest
}

func (d *drawing) yCount() int { return int(d.form.panel / d.yRoom) }

// drawPanel lays a panel out in area.
func (d *drawing) drawPanel(i int, area chart.Box, margin float64, last bool) {
	p := d.panels[i]
	layers := &panelLayers{drawing: d, panel: p}
	pl := d.plot(p, margin, last)
	pl.Add(layers)
	right := 4.0
	if !d.key {
		right = d.endWidth() + endGap
	}
	all := draw.NewCanvas(d.canvas, vg.Length(d.width), vg.Length(d.height))
	c := draw.Crop(all, 0, -vg.Length(right), vg.Length(d.height-area.Bottom), -vg.Length(area.Top+d.size*2.4))
	d.text(p.Y.Title(), "quiet", chart.Point{X: 0, Y: area.Top + d.size*0.8})
	pl.Draw(c)
}

// text writes a line with its upper left corner at p.
func (d *drawing) text(line string, colour ink, p chart.Point) {
	style := d.letters(colour, 0)
	d.places = append(d.places, chart.Box{Left: p.X, Top: p.Y, Right: p.X + chart.TextWidth(line, d.size), Bottom: p.Y + d.size})
	style.Handler.Draw(d.canvas, line, style, vg.Point{X: vg.Length(p.X), Y: vg.Length(d.height - p.Y - d.size)})
}

// plot sets up gonum/plot for a panel: our scales, tickers, letters and colours.
func (d *drawing) plot(p chart.Panel, margin float64, last bool) *plot.Plot {
	pl := plot.New()
	pl.BackgroundColor = nil
	pl.Title.TextStyle = d.letters("ink", 0)
	pl.Legend.TextStyle = d.letters("ink", 0)
	room := int((d.width - margin - d.endWidth()) / d.xRoom)
	d.axis(&pl.X, p.X, room, 0)
	d.axis(&pl.Y, p.Y, d.yCount(), margin)
	pl.X.Tick.Label.XAlign, pl.X.Tick.Label.YAlign = text.XCenter, text.YTop
	pl.Y.Tick.Label.XAlign, pl.Y.Tick.Label.YAlign = text.XRight, text.YCenter
	pl.Y.LineStyle.Width, pl.Y.Tick.LineStyle.Width = 0, 0
	if !last {
		pl.X.Tick.Marker = plot.ConstantTicks(nil)
		return pl
	}
	pl.X.Label.Text = p.X.Title()
	pl.X.Label.Position = draw.PosRight
	pl.X.Label.TextStyle.XAlign, pl.X.Label.TextStyle.YAlign = text.XCenter, text.YBottom
	pl.X.Label.Padding = 7
	return pl
}

func (d *drawing) axis(to *plot.Axis, from chart.Axis, room int, margin float64) {
	to.Min, to.Max = from.Min, from.Max
	to.Scale = scale{from}
	to.Padding = 0
	to.LineStyle = draw.LineStyle{Color: ink("quiet"), Width: 1}
	to.Tick.LineStyle = to.LineStyle
	to.Tick.Length = 7
	to.Tick.Marker = ticker{from, room}
	to.Label.TextStyle, to.Tick.Label = d.letters("quiet", 0), d.letters("ink", margin)
}

type scale struct{ chart.Axis }

func (s scale) Normalize(_, _, x float64) float64 { return s.At(x) }

type ticker struct {
	chart.Axis
	room int
}

func (t ticker) Ticks(_, _ float64) []plot.Tick {
	var ticks []plot.Tick
	for _, tick := range t.Axis.Ticks(t.room) {
		ticks = append(ticks, plot.Tick{Value: tick.At, Label: tick.Label})
	}
	return ticks
}
