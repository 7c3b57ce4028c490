package figure

import (
	"strings"

	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"

	"lode/render/internal/chart"
)

// letters lays out plain text for gonum/plot by our own measure and hands it to the canvas
// with its anchor, so that alignment holds whatever font the reader has. No font file is
// read. Least widens every text and flat takes its width away, so that panels above one
// another get equal margins and sides, whatever their labels.
type letters struct {
	least vg.Length
	flat  bool
}

var _ text.Handler = letters{}

func (letters) Cache() *font.Cache { return nil }

func (letters) Extents(f font.Font) font.Extents {
	return font.Extents{Ascent: 0.78 * f.Size, Descent: 0.22 * f.Size, Height: 1.25 * f.Size}
}

func (letters) Lines(txt string) []string { return strings.Split(strings.TrimRight(txt, "\n"), "\n") }

func (l letters) Box(txt string, f font.Font) (width, height, depth vg.Length) {
	e := l.Extents(f)
	if l.flat {
		return 0, e.Ascent, e.Descent
	}
	return max(l.least, vg.Length(chart.TextWidth(txt, float64(f.Size)))), e.Ascent, e.Descent
}

func (l letters) Draw(c vg.Canvas, txt string, style text.Style, p vg.Point) {
	f := style.Font
	switch style.XAlign {
	case text.XCenter:
		f.Variant = "middle"
	case text.XRight:
		f.Variant = "end"
	default:
		f.Variant = "start"
	}
	c.SetColor(style.Color)
	if style.Rotation != 0 {
		c.Push()
		defer c.Pop()
		c.Translate(p)
		c.Rotate(style.Rotation)
		p = vg.Point{}
	}
	baseline := l.baseline(style, txt, p.Y)
	for i, line := range l.Lines(txt) {
		c.FillString(font.Face{Font: f}, vg.Point{X: p.X, Y: baseline - vg.Length(i)*l.Extents(f).Height}, line)
	}
}

// baseline returns where the first line stands. Axes put their labels one descent too high
// for our letters, which are centred by the height of figures; that is taken back here.
func (l letters) baseline(style text.Style, txt string, y vg.Length) vg.Length {
	e := l.Extents(style.Font)
	switch style.YAlign {
	case text.YCenter:
		return y - e.Descent - 0.36*style.Font.Size
	case text.YTop:
		return y - 1.7*e.Descent - e.Ascent
	}
	return y + style.Height(txt) - e.Ascent
}
