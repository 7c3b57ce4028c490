package figure

// This file writes SVG behind gonum/plot's canvas interface: colours become classes, texts
// stay texts in the reader's own fonts, numbers are rounded to a tenth of a pixel, and
// strokes of one style that follow each other share an element.

import (
	"fmt"
	"image"
	"image/color"
	"math"
	"strings"

	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
)

// ink is a colour by its role; the style sheet gives it a value in each theme.
type ink string

// RGBA makes ink a colour for readers that know no roles.
func (ink) RGBA() (r, g, b, a uint32) { return color.Black.RGBA() }

type matrix struct{ a, b, c, d, e, f float64 }

func (m matrix) apply(p vg.Point) (x, y float64) {
	px, py := float64(p.X), float64(p.Y)
	return m.a*px + m.c*py + m.e, m.b*px + m.d*py + m.f
}

// before returns the matrix that applies n first and then m.
func (m matrix) before(n matrix) matrix {
	return matrix{
		m.a*n.a + m.c*n.b, m.b*n.a + m.d*n.b, m.a*n.c + m.c*n.d, m.b*n.c + m.d*n.d,
		m.a*n.e + m.c*n.f + m.e, m.b*n.e + m.d*n.f + m.f,
	}
}

type pen struct {
	class string
	width vg.Length
	dash  []vg.Length
	space matrix
}

type canvas struct {
	pen
	saved         []pen
	width, height float64
	body          strings.Builder
	name          string // of the curve that is being stroked
	style, paths  string // an open path element: its attributes and data so far
}

func newCanvas(width, height float64) *canvas {
	c := &canvas{width: width, height: height}
	c.space = matrix{1, 0, 0, -1, 0, height}
	vg.Initialize(c)
	return c
}

var _ vg.CanvasSizer = (*canvas)(nil)

func (c *canvas) Size() (x, y vg.Length)                 { return vg.Length(c.width), vg.Length(c.height) }
func (c *canvas) SetLineWidth(w vg.Length)               { c.pen.width = w }
func (c *canvas) SetLineDash(d []vg.Length, _ vg.Length) { c.dash = d }
func (c *canvas) Push()                                  { c.saved = append(c.saved, c.pen) }

func (c *canvas) Pop() {
	c.pen = c.saved[len(c.saved)-1]
	c.saved = c.saved[:len(c.saved)-1]
}

func (c *canvas) SetColor(colour color.Color) {
	c.class = "ink"
	if i, ok := colour.(ink); ok {
		c.class = string(i)
	}
}

func (c *canvas) Rotate(radians float64) {
	sin, cos := math.Sincos(radians)
	c.space = c.space.before(matrix{cos, sin, -sin, cos, 0, 0})
}

func (c *canvas) Translate(p vg.Point) {
	c.space = c.space.before(matrix{1, 0, 0, 1, float64(p.X), float64(p.Y)})
}

func (c *canvas) Scale(x, y float64) { c.space = c.space.before(matrix{x, 0, 0, y, 0, 0}) }

func (c *canvas) Stroke(p vg.Path) {
	if c.pen.width <= 0 || len(p) == 0 {
		return
	}
	style := fmt.Sprintf(`class="line %s" stroke-width="%s"`, c.class, number(float64(c.pen.width)))
	if len(c.dash) > 0 {
		parts := make([]string, len(c.dash))
		for i, d := range c.dash {
			parts[i] = number(float64(d))
		}
		style += ` stroke-dasharray="` + strings.Join(parts, " ") + `"`
	}
	if c.name != "" {
		style += ` data-name="` + escape(c.name) + `"`
	}
	c.path(style, p)
}

func (c *canvas) Fill(p vg.Path) { c.path(fmt.Sprintf(`class="area %s"`, c.class), p) }

func (c *canvas) path(style string, p vg.Path) {
	if style != c.style {
		c.flush()
		c.style = style
	}
	c.paths += c.data(p)
}

// flush ends the open path element.
func (c *canvas) flush() {
	if c.paths != "" {
		fmt.Fprintf(&c.body, "<path %s d=\"%s\"/>\n", c.style, c.paths)
	}
	c.style, c.paths = "", ""
}

// raw writes markup of our own between the drawn elements.
func (c *canvas) raw(markup string) {
	c.flush()
	c.body.WriteString(markup)
}

// FillString writes a text. Its font's variant says which end of the text is at p.
func (c *canvas) FillString(f font.Face, p vg.Point, text string) {
	if f.Font.Size == 0 || text == "" {
		return
	}
	x, y := c.space.apply(p)
	anchor := ""
	if v := f.Font.Variant; v == "middle" || v == "end" {
		anchor = fmt.Sprintf(` text-anchor="%s"`, v)
	}
	turn := ""
	if c.space.b != 0 {
		turn = fmt.Sprintf(` transform="rotate(%s %s %s)"`, number(math.Atan2(c.space.b, c.space.a)*180/math.Pi), number(x), number(y))
	}
	c.raw(fmt.Sprintf("<text class=\"%s\" font-size=\"%s\" x=\"%s\" y=\"%s\"%s%s>%s</text>\n",
		c.class, number(float64(f.Font.Size)), number(x), number(y), anchor, turn, escape(text)))
}

// DrawImage draws nothing: no figure of this package holds a picture.
func (c *canvas) DrawImage(vg.Rectangle, image.Image) {}
