package template

import (
	"fmt"
	"html"
	"math"
	"sort"
	"strconv"
	"strings"
)

// This file writes the drawing. Numbers are millimetres; colours are those of the text around.

// SVG draws the template at full size. The id must be unique on the page.
func (t Template) SVG(id string) string { return t.svg(id, t.measures()) }

// Narrow draws the template reduced to the width there is, to be looked at only.
func (t Template) Narrow(id string) string { return t.svg(id, `width="100%"`) }

// File returns the template as an SVG file of its own.
func (t Template) File() string {
	return `<?xml version="1.0" encoding="UTF-8"?>` + "\n" + t.svg("template", `xmlns="http://www.w3.org/2000/svg" `+t.measures())
}

func (t Template) measures() string {
	return fmt.Sprintf(`width="%smm" height="%smm"`, number(t.sheet.width), number(t.sheet.height))
}

func (t Template) svg(id, size string) string {
	id = html.EscapeString(id)
	var b strings.Builder
	fmt.Fprintf(&b, `<svg class="template" id="%s" %s viewBox="0 0 %s %s" role="img" aria-labelledby="%s-title %s-desc" `, id, size, number(t.sheet.width), number(t.sheet.height), id, id)
	b.WriteString(`fill="none" stroke="currentColor" stroke-width="0.18" font-family="system-ui, Arial, sans-serif" font-size="2.6">` + "\n")
	fmt.Fprintf(&b, "<title id=\"%s-title\">%s</title>\n<desc id=\"%s-desc\">%s</desc>\n", id, html.EscapeString(t.title), id, html.EscapeString(t.describe()))
	p := pen{&b, t.sheet}
	p.text(point{t.sheet.width / 2, letter + 1}, "middle", t.title)
	p.centreLines()
	for _, part := range t.parts {
		p.part(part)
	}
	for _, l := range t.labels() {
		p.text(point{l.middle.x, l.middle.y + l.height/2}, "middle", l.text)
	}
	p.scales()
	p.list(holes(t.parts))
	b.WriteString("</svg>\n")
	return b.String()
}

// describe says in words what is drawn.
func (t Template) describe() string {
	low, high := t.sheet.low, t.sheet.high
	text := fmt.Sprintf("Plate of %s mm by %s mm at full size with %s and a scale of 50 mm each way.", number(high.x-low.x), number(high.y-low.y), counted(len(holes(t.parts))))
	for _, h := range holes(t.parts) {
		text += fmt.Sprintf(" Hole %d, %s: x %s mm, y %s mm, diameter %s mm.", h.number, h.name, number(h.points[0].x), number(h.points[0].y), number(h.diameter))
	}
	return text
}

// pen draws on the sheet.
type pen struct {
	*strings.Builder
	layout
}

func (p pen) text(at point, anchor, line string) {
	fmt.Fprintf(p, `<text x="%s" y="%s" text-anchor="%s" fill="currentColor" stroke="none">%s</text>`+"\n", number(at.x), number(at.y), anchor, html.EscapeString(line))
}

func (p pen) line(a, b point, style string) {
	fmt.Fprintf(p, `<path d="M%s %sL%s %s"%s/>`+"\n", number(a.x), number(a.y), number(b.x), number(b.y), style)
}

// thin chain lines mark centres, dashed lines what is not cut.
const (
	chain  = ` stroke-width="0.1" stroke-dasharray="4 0.8 0.6 0.8"`
	dashed = ` stroke-dasharray="1.6 0.8"`
)

// centreLines cross at the plate's origin.
func (p pen) centreLines() {
	over := border - 2.0
	p.line(p.at(point{p.low.x - over, 0}), p.at(point{p.high.x + over, 0}), chain)
	p.line(p.at(point{0, p.low.y - over}), p.at(point{0, p.high.y + over}), chain)
}

func (p pen) part(part part) {
	style := ""
	if part.work == "mark" {
		style = dashed
	}
	if part.work != "drill" {
		fmt.Fprintf(p, `<path data-part="%s" d="%s"%s/>`+"\n", html.EscapeString(part.name), p.outline(part), style)
		return
	}
	c, r := p.at(part.points[0]), part.diameter/2
	fmt.Fprintf(p, `<circle data-hole="%d" cx="%s" cy="%s" r="%s"/>`+"\n", part.number, number(c.x), number(c.y), number(r))
	arm := r + 0.8
	p.line(point{c.x - arm, c.y}, point{c.x + arm, c.y}, ` stroke-width="0.1"`)
	p.line(point{c.x, c.y - arm}, point{c.x, c.y + arm}, ` stroke-width="0.1"`)
}

// outline is the path around a part: straight along the hull's sides, arcs around its corners.
func (p pen) outline(part part) string {
	r, hull := part.diameter/2, around(part.points)
	if len(hull) == 1 {
		c := p.at(hull[0])
		return fmt.Sprintf("M%s %sa%s %s 0 1 0 %s 0a%s %s 0 1 0 %s 0Z", number(c.x-r), number(c.y), number(r), number(r), number(2*r), number(r), number(r), number(-2*r))
	}
	var d strings.Builder
	for i, a := range hull {
		b := hull[(i+1)%len(hull)]
		long := math.Hypot(b.x-a.x, b.y-a.y)
		nx, ny := (b.y-a.y)/long*r, -(b.x-a.x)/long*r // to the outside of a side that runs counterclockwise
		from, to := p.at(point{a.x + nx, a.y + ny}), p.at(point{b.x + nx, b.y + ny})
		switch {
		case i == 0:
			fmt.Fprintf(&d, "M%s %s", number(from.x), number(from.y))
		case r > 0:
			fmt.Fprintf(&d, "A%s %s 0 0 0 %s %s", number(r), number(r), number(from.x), number(from.y))
		}
		fmt.Fprintf(&d, "L%s %s", number(to.x), number(to.y))
	}
	if r > 0 {
		a, b := hull[0], hull[1]
		long := math.Hypot(b.x-a.x, b.y-a.y)
		start := p.at(point{a.x + (b.y-a.y)/long*r, a.y - (b.x-a.x)/long*r})
		fmt.Fprintf(&d, "A%s %s 0 0 0 %s %s", number(r), number(r), number(start.x), number(start.y))
	}
	return d.String() + "Z"
}

// around orders the corners of a convex part counterclockwise, without doubles.
func around(points []point) []point {
	var kept []point
	middle := point{}
	for _, a := range points {
		double := false
		for _, b := range kept {
			double = double || a == b
		}
		if !double {
			kept = append(kept, a)
			middle = point{middle.x + a.x, middle.y + a.y}
		}
	}
	middle = point{middle.x / float64(len(kept)), middle.y / float64(len(kept))}
	angle := func(a point) float64 { return math.Atan2(a.y-middle.y, a.x-middle.x) }
	sort.SliceStable(kept, func(i, j int) bool { return angle(kept[i]) < angle(kept[j]) })
	return kept
}

// scales draws 50 mm across and 50 mm down, a bar every 10 mm.
func (p pen) scales() {
	corner := p.layout.scales
	p.line(corner, point{corner.x + scaleLength, corner.y}, "")
	p.line(corner, point{corner.x, corner.y + scaleLength}, "")
	for i := 0; i <= scaleLength; i += 10 {
		s := float64(i)
		p.line(point{corner.x + s, corner.y}, point{corner.x + s, corner.y + 2.5}, "")
		if i > 0 {
			p.line(point{corner.x, corner.y + s}, point{corner.x + 2.5, corner.y + s}, "")
		}
	}
	p.text(point{corner.x + 5, corner.y + 8}, "start", "Both scales: 50 mm.")
	size := "Plate: " + number2(p.high.x-p.low.x) + " by " + number2(p.high.y-p.low.y) + " mm."
	for i, line := range []string{size, "Full lines: cut.", "Dashed lines: mark.", "Chain lines: centre."} {
		p.text(point{corner.x + 5, corner.y + 8 + float64(i+2)*rowStep}, "start", line)
	}
}

// list writes the holes beside the scales.
func (p pen) list(holes []part) {
	if len(holes) == 0 {
		return
	}
	const step = 50
	for i, h := range holes {
		left, top := p.layout.list.x+5+float64(i/p.rows)*step, p.layout.list.y
		if i%p.rows == 0 {
			p.cells(left, top, "Hole", "x, mm", "y, mm", "⌀, mm")
			p.line(point{left - 5, top + 1.2}, point{left + 40, top + 1.2}, ` stroke-width="0.1"`)
		}
		top += float64(i%p.rows+1)*rowStep + 0.6
		p.cells(left, top, strconv.Itoa(h.number), number2(h.points[0].x), number2(h.points[0].y), number2(h.diameter))
		if name := left + 42; p.rows >= len(holes) && name+nameWidth(h.name) <= p.width {
			p.text(point{name, top}, "start", h.name)
		}
	}
}

// nameWidth is how wide a name comes out at the most, in letters as wide as they are high.
func nameWidth(name string) float64 { return 0.7 * letter * float64(len([]rune(name))) }

func (p pen) cells(left, top float64, cells ...string) {
	for i, cell := range cells {
		p.text(point{left + 13.0*float64(i), top}, "end", cell)
	}
}

// number writes millimetres to the tenth of a micrometre.
func number(x float64) string { return strconv.FormatFloat(round(x), 'f', -1, 64) }

// number2 writes millimetres as a list shows them.
func number2(x float64) string {
	text := strconv.FormatFloat(math.Round(x*100)/100+0, 'f', 2, 64)
	return strings.Replace(text, "-", "−", 1)
}

func round(x float64) float64 { return math.Round(x*1e4)/1e4 + 0 }
