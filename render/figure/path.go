package figure

// This file writes numbers and paths in few characters, and text safely.

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"gonum.org/v1/plot/vg"
)

// data writes a path with relative steps in tenths of a pixel. Each point is rounded where
// it stands, so that the roundings do not add up.
func (c *canvas) data(p vg.Path) string {
	var b strings.Builder
	lastX, lastY := 0, 0
	for _, part := range p {
		switch part.Type {
		case vg.MoveComp:
			lastX, lastY = c.tenths(part.Pos)
			b.WriteString("M" + tenth(lastX) + pair(lastY))
		case vg.LineComp:
			x, y := c.tenths(part.Pos)
			b.WriteString("l" + tenth(x-lastX) + pair(y-lastY))
			lastX, lastY = x, y
		case vg.CurveComp:
			b.WriteString(c.curve(part))
			lastX, lastY = c.tenths(part.Pos)
		case vg.ArcComp:
			text, end := c.arc(part, b.Len() == 0)
			b.WriteString(text)
			lastX, lastY = c.tenths(end)
		case vg.CloseComp:
			b.WriteString("z")
		}
	}
	return b.String()
}

func (c *canvas) curve(part vg.PathComp) string {
	text := map[int]string{1: "Q", 2: "C"}[len(part.Control)]
	for i, p := range append(append([]vg.Point(nil), part.Control...), part.Pos) {
		x, y := c.tenths(p)
		if i > 0 {
			text += " "
		}
		text += tenth(x) + pair(y)
	}
	return text
}

// arc writes an arc of a circle as one or two SVG arcs, for SVG cannot draw a full circle
// as one.
func (c *canvas) arc(part vg.PathComp, first bool) (string, vg.Point) {
	at := func(angle float64) vg.Point {
		sin, cos := math.Sincos(angle)
		return vg.Point{X: part.Pos.X + part.Radius*vg.Length(cos), Y: part.Pos.Y + part.Radius*vg.Length(sin)}
	}
	verb, sweep := "L", 0
	if first {
		verb = "M"
	}
	if part.Angle < 0 {
		sweep = 1
	}
	x, y := c.tenths(at(part.Start))
	text := verb + tenth(x) + pair(y)
	for i := 1; i <= 2; i++ {
		x, y = c.tenths(at(part.Start + part.Angle*float64(i)/2))
		r := number(float64(part.Radius))
		text += fmt.Sprintf("A%s %s 0 0 %d %s%s", r, r, sweep, tenth(x), pair(y))
	}
	return text, at(part.Start + part.Angle)
}

func (c *canvas) tenths(p vg.Point) (x, y int) {
	fx, fy := c.space.apply(p)
	return int(math.Round(10 * fx)), int(math.Round(10 * fy))
}

// tenth writes a count of tenths in the fewest characters.
func tenth(n int) string {
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	text := strconv.Itoa(n / 10)
	if n%10 != 0 {
		text += "." + strconv.Itoa(n%10)
	}
	if n > 0 && n < 10 {
		text = text[1:]
	}
	return sign + text
}

// pair writes the second of two numbers: a sign is enough to part them.
func pair(n int) string {
	if n < 0 {
		return tenth(n)
	}
	return " " + tenth(n)
}

func number(x float64) string { return tenth(int(math.Round(10 * x))) }

var escaper = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;", "'", "&#39;")

// escape makes text safe between tags and inside quotes. Control characters, which XML does
// not allow, are dropped.
func escape(text string) string {
	return escaper.Replace(strings.Map(func(r rune) rune {
		if r < ' ' && r != '\n' && r != '\t' || r == 0x7f || r == 0xFFFE || r == 0xFFFF || r == utf8Error {
			return -1
		}
		return r
	}, text))
}

const utf8Error = '\uFFFD'
