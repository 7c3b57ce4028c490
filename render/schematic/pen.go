package schematic

import (
	"fmt"
	"html"
	"math"
	"strconv"
	"strings"

	"lode/render/internal/chart"
)

// This file writes lines, symbols and letters as SVG, and remembers where they are.

// pen collects what is drawn.
type pen struct {
	lines, thin, areas strings.Builder
	texts              strings.Builder
	width, height      float64

	words, bodies []chart.Box // letters and symbols
	wires         []chart.Box // segments of wire
}

func number(v float64) string {
	return strconv.FormatFloat(math.Round(v*10)/10, 'f', -1, 64)
}

// path adds a path to the strokes, such as "M", x, y, "L", x, y.
func path(b *strings.Builder, pieces ...any) {
	for i, p := range pieces {
		switch p := p.(type) {
		case string:
			b.WriteString(p)
		case float64:
			if _, after := pieces[max(i-1, 0)].(float64); after {
				b.WriteByte(' ')
			}
			b.WriteString(number(p))
		}
	}
}

// wire draws a straight wire, across or down.
func (p *pen) wire(x1, y1, x2, y2 float64) {
	if x1 == x2 && y1 == y2 {
		return
	}
	p.wires = append(p.wires, chart.Box{Left: min(x1, x2), Top: min(y1, y2), Right: max(x1, x2), Bottom: max(y1, y2)})
	path(&p.lines, "M", x1, y1, "L", x2, y2)
}

// dot joins wires.
func (p *pen) dot(x, y float64) {
	path(&p.areas, "M", x-2.5, y, "a2.5 2.5 0 1 0 5 0a2.5 2.5 0 1 0-5 0z")
}

// ring is an open terminal.
func (p *pen) ring(x, y float64) {
	p.body(x-3.5, y-3.5, x+3.5, y+3.5)
	path(&p.lines, "M", x-3.5, y, "a3.5 3.5 0 1 0 7 0a3.5 3.5 0 1 0-7 0z")
}

// body remembers the place of a symbol.
func (p *pen) body(left, top, right, bottom float64) {
	p.bodies = append(p.bodies, chart.Box{Left: left, Top: top, Right: right, Bottom: bottom})
}

// label writes a name and below it a value, in the middle of x or starting there, the first line with its
// top at y.
func (p *pen) label(name, value string, x, y float64, middle bool) {
	for i, text := range lines(name, value) {
		ink := ""
		if text == value && name != "" && i > 0 {
			ink = ` class="quiet"`
		}
		p.text(text, ink, x, y+float64(i)*line, middle)
	}
}

func (p *pen) text(text, attributes string, x, y float64, middle bool) {
	left := x
	if middle {
		attributes += ` text-anchor="middle"`
		left -= textWidth(text) / 2
	}
	p.words = append(p.words, chart.Box{Left: left, Top: y, Right: left + textWidth(text), Bottom: y + letter})
	fmt.Fprintf(&p.texts, "<text x=\"%s\" y=\"%s\"%s>%s</text>\n", number(x), number(y+0.8*letter), attributes, html.EscapeString(text))
}

// lines returns the lines of a label.
func lines(name, value string) []string {
	var all []string
	for _, text := range []string{name, value} {
		if text != "" {
			all = append(all, text)
		}
	}
	return all
}

// labelWidth and labelHeight are the room of a label.
func labelWidth(name, value string) float64 { return max(textWidth(name), textWidth(value)) }

func labelHeight(name, value string) float64 { return float64(len(lines(name, value))) * line }

func (p *pen) svg(id string, d Drawing) string {
	id = html.EscapeString(id)
	var b strings.Builder
	fmt.Fprintf(&b, `<svg class="figure" id="%[1]s" viewBox="0 0 %[2]s %[3]s" preserveAspectRatio="xMinYMin" role="img" aria-labelledby="%[1]s-title %[1]s-desc">`+"\n",
		id, number(p.width), number(p.height))
	fmt.Fprintf(&b, "<title id=\"%s-title\">%s</title>\n<desc id=\"%[1]s-desc\">%[3]s</desc>\n", id, html.EscapeString(d.Title()), html.EscapeString(d.Description()))
	fmt.Fprintf(&b, "<path class=\"line\" stroke-width=\"1.4\" d=\"%s\"/>\n", p.lines.String())
	if p.thin.Len() > 0 {
		fmt.Fprintf(&b, "<path class=\"line quiet\" stroke-width=\"1\" d=\"%s\"/>\n", p.thin.String())
	}
	fmt.Fprintf(&b, "<path class=\"area\" d=\"%s\"/>\n", p.areas.String())
	fmt.Fprintf(&b, "<g font-size=\"%s\">\n%s</g>\n</svg>", number(letter), p.texts.String())
	return b.String()
}
