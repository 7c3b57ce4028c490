package formula

import (
	"unicode/utf8"
)

// This file estimates how wide formulas are, since a browser breaks none: long sums are set in
// several lines, and what is still too wide for paper is marked to be set smaller there.

// Widths in ems.
const (
	letter = 0.55
	sign   = 1.3 // an operator, brackets or a root, with the space around
	line   = 32  // a sum is broken before it gets wider
	paper  = 40  // what common papers hold
)

// width estimates the width of a formula.
func (n Node) width() float64 {
	switch n.kind {
	case name, number:
		return letter * float64(utf8.RuneCountInString(n.text+n.unit))
	case quotient:
		return max(n.args[0].width(), n.args[1].width()) + letter
	case power:
		return n.args[0].width() + 0.75*n.args[1].width()
	}
	width := sign
	if n.kind == call {
		width += letter * float64(utf8.RuneCountInString(n.text))
	}
	for _, a := range n.args {
		width += a.width()
		if a.binding() < n.binding() {
			width += sign // brackets
		}
	}
	return width
}

// piece is a line of a formula.
type piece struct {
	markup string
	width  float64
}

// lines cuts a sum in front of its signs, so that no line is wider than need be.
func (n Node) lines() []piece {
	if n.kind != sum || n.width() <= line {
		return []piece{{n.markup(), n.width()}}
	}
	lines := n.args[0].lines()
	next := piece{`<mo form="infix">` + escape(n.text) + "</mo>" + n.boxed(1, n.binding()+1), sign + n.args[1].width()}
	last := &lines[len(lines)-1]
	if last.width+next.width > line {
		return append(lines, next)
	}
	last.markup, last.width = last.markup+next.markup, last.width+next.width
	return lines
}

// widest estimates the width of the widest line of the working.
func (w Working) widest() float64 {
	left, right := 0.0, 0.0
	steps := w.steps()
	for i, step := range steps {
		if i == 0 && len(steps) > 1 {
			left = step.width()
			continue
		}
		for _, l := range step.lines() {
			right = max(right, l.width)
		}
	}
	for _, c := range w.As {
		right = max(right, c.Condition.width()+c.Filled.width()+sign)
	}
	widest := left + sign + right
	for _, d := range w.With {
		widest = max(widest, d.widest())
	}
	return widest
}

// ink returns the class of a working that is too wide for paper at its usual size.
func (w Working) ink() string {
	switch widest := w.widest(); {
	case widest <= paper:
		return ""
	case widest <= 1.5*paper:
		return ` class="wide"`
	}
	return ` class="widest"`
}
