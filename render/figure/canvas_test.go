package figure

import (
	"encoding/xml"
	"image/color"
	"io"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
)

func TestPaths(t *testing.T) {
	for _, c := range []struct {
		name string
		draw func(c *canvas)
		want string
	}{
		{"line", func(c *canvas) {
			c.Stroke(vg.Path{{Type: vg.MoveComp, Pos: vg.Point{X: 1, Y: 90}}, {Type: vg.LineComp, Pos: vg.Point{X: 1.25, Y: 90.56}}})
		}, `d="M1 10l.3-.6"`},
		{"merged", func(c *canvas) {
			for i := range 2 {
				c.Stroke(vg.Path{{Type: vg.MoveComp, Pos: vg.Point{X: vg.Length(i), Y: 100}}, {Type: vg.LineComp, Pos: vg.Point{X: vg.Length(i), Y: 99}}})
			}
		}, `d="M0 0l0 1M1 0l0 1"`},
		{"closed", func(c *canvas) {
			c.Fill(vg.Rectangle{Max: vg.Point{X: 10, Y: 10}}.Path())
		}, `class="area ink" d="M0 100l10 0l0-10l-10 0z"`},
		{"circle", func(c *canvas) {
			var p vg.Path
			p.Move(vg.Point{X: 60, Y: 50})
			p.Arc(vg.Point{X: 50, Y: 50}, 10, 0, 2*math.Pi)
			c.Stroke(p)
		}, `d="M60 50L60 50A10 10 0 0 0 40 50A10 10 0 0 0 60 50"`},
		{"quadratic", func(c *canvas) {
			var p vg.Path
			p.Move(vg.Point{X: 0, Y: 100})
			p.QuadTo(vg.Point{X: 5, Y: 90}, vg.Point{X: 10, Y: 100})
			c.Stroke(p)
		}, `d="M0 0Q5 10 10 0"`},
		{"cubic", func(c *canvas) {
			var p vg.Path
			p.Move(vg.Point{X: 0, Y: 100})
			p.CubeTo(vg.Point{X: 1, Y: 99}, vg.Point{X: 2, Y: 98}, vg.Point{X: 3, Y: 97})
			c.Stroke(p)
		}, `d="M0 0C1 1 2 2 3 3"`},
		{"moved and scaled", func(c *canvas) {
			c.Push()
			c.Translate(vg.Point{X: 10, Y: 20})
			c.Scale(2, 3)
			c.Stroke(vg.Path{{Type: vg.MoveComp}, {Type: vg.LineComp, Pos: vg.Point{X: 1, Y: 1}}})
			c.Pop()
		}, `d="M10 80l2-3"`},
		{"turned", func(c *canvas) {
			c.Rotate(math.Pi / 2)
			c.FillString(font.Face{Font: font.Font{Size: 10, Variant: "middle"}}, vg.Point{X: 30, Y: -20}, "up & <away>")
		}, `x="20" y="70" text-anchor="middle" transform="rotate(-90 20 70)">up &amp; &lt;away&gt;<`},
		{"thin air", func(c *canvas) { c.SetLineWidth(0); c.Stroke(vg.Rectangle{}.Path()) }, ``},
		{"dashes", func(c *canvas) {
			c.SetLineDash([]vg.Length{4, 2.5}, 0)
			c.SetColor(ink("row1"))
			c.Stroke(vg.Rectangle{Max: vg.Point{X: 1, Y: 1}}.Path())
		}, `class="line row1" stroke-width="1" stroke-dasharray="4 2.5"`},
		{"plain colour", func(c *canvas) { c.SetColor(color.White); c.Fill(vg.Rectangle{Max: vg.Point{X: 1, Y: 1}}.Path()) }, `class="area ink"`},
	} {
		canvas := newCanvas(100, 100)
		c.draw(canvas)
		canvas.flush()
		if got := canvas.body.String(); !strings.Contains(got, c.want) || c.want == "" && got != "" {
			t.Errorf("%s: got %s, want %s", c.name, got, c.want)
		}
	}
}

// Every figure is well-formed XML, whatever its texts are.
func TestWellFormed(t *testing.T) {
	for name, f := range gallery(t) {
		f = f.Titled("a <b> & \"c\" \x00\x1b ]]> '").Captioned("<i>")
		for _, svg := range []string{f.File(), f.SVG(`x"y`), f.Narrow("n")} {
			decoder := xml.NewDecoder(strings.NewReader(svg))
			for {
				_, err := decoder.Token()
				if err == io.EOF {
					break
				}
				if err != nil {
					t.Fatalf("%s: %v in %s", name, err, svg[:200])
				}
			}
		}
	}
}
