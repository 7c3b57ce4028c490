package formula

// This file writes MathML Core, the part of MathML that browsers agree on.

import (
	"html/template"
	"strings"
)

// MathML writes the working as a table of equal signs: one step to a line.
func (w Working) MathML() template.HTML {
	var b strings.Builder
	b.WriteString(`<math displaystyle="true"` + w.ink() + `><mtable displaystyle="true">`)
	w.all(&b)
	b.WriteString(`</mtable></math>`)
	return template.HTML(b.String())
}

// all writes the steps, the definitions inside, what decided, and the calls inside.
func (w Working) all(b *strings.Builder) {
	w.rows(b)
	lead := ""
	for _, d := range w.definitions() {
		if d.lead() != lead {
			lead = d.lead()
			b.WriteString(aside(lead))
		}
		d.all(b)
	}
	for i, c := range w.As {
		if i == 0 {
			b.WriteString(aside("as"))
		}
		b.WriteString(`<mtr><mtd class="left"></mtd><mtd class="middle"></mtd><mtd class="right">` + c.markup() + `</mtd></mtr>`)
	}
	for _, d := range w.calls() {
		b.WriteString(aside("where"))
		d.all(b)
	}
}

// aside is a row with a word that leads over to what is inside a function.
func aside(word string) string {
	return `<mtr><mtd class="left aside"><mtext>` + word + `</mtext></mtd><mtd></mtd><mtd></mtd></mtr>`
}

func (c Case) markup() string {
	if c.Filled.Text() == c.Condition.Text() {
		return c.Condition.markup()
	}
	return row(c.Condition.markup(), `<mtext>:</mtext><mspace width="0.6em"></mspace>`, c.Filled.markup())
}

func (w Working) rows(b *strings.Builder) {
	steps := w.steps()
	for i, step := range steps[min(1, len(steps)-1):] {
		left := ""
		if i == 0 {
			left = steps[0].markup()
		}
		middle := `<mo>=</mo>`
		for _, line := range step.lines() {
			b.WriteString(`<mtr><mtd class="left">` + left + `</mtd><mtd class="middle">` + middle + `</mtd><mtd class="right">` + line.markup + `</mtd></mtr>`)
			left, middle = "", ""
		}
	}
}

// MathML writes the formula alone.
func (n Node) MathML() template.HTML {
	return template.HTML("<math>" + n.markup() + "</math>")
}

func (n Node) markup() string {
	switch n.kind {
	case name:
		return variable(n.text)
	case number:
		return quantity(n)
	case sum, relation:
		return row(n.boxed(0, n.binding()), "<mo>"+escape(n.text)+"</mo>", n.boxed(1, n.binding()+1))
	case negative:
		return row(`<mo form="prefix">−</mo>`, n.boxed(0, 3))
	case product:
		return row(n.boxed(0, 3), n.times(), n.boxedFactor())
	case quotient:
		return "<mfrac>" + row(n.args[0].markup()) + row(n.args[1].markup()) + "</mfrac>"
	case power:
		return "<msup>" + n.boxed(0, 5) + row(n.args[1].markup()) + "</msup>"
	case root:
		return "<msqrt>" + n.args[0].markup() + "</msqrt>"
	case magnitude:
		return row(`<mo form="prefix" stretchy="true">|</mo>`, n.args[0].markup(), `<mo form="postfix" stretchy="true">|</mo>`)
	}
	return n.callMarkup()
}

func (n Node) callMarkup() string {
	args := make([]string, len(n.args))
	for i, a := range n.args {
		args[i] = a.markup()
	}
	return row(`<mi mathvariant="normal">`+escape(n.text)+"</mi><mo>&#x2061;</mo>", brackets(strings.Join(args, `<mo separator="true">,</mo>`)))
}

// times sets no sign between letters and a dot before a number.
func (n Node) times() string {
	if n.args[1].first().kind == number || n.args[0].last().kind == number && n.args[0].last().unit != "" {
		return "<mo>·</mo>"
	}
	return `<mo rspace="0.1em" lspace="0.1em">&#x2062;</mo>`
}

// first and last are the leaves that meet a neighbour on the line.
func (n Node) first() Node {
	if n.kind == product || n.kind == power {
		return n.args[0].first()
	}
	return n
}

func (n Node) last() Node {
	if n.kind == product {
		return n.args[1].last()
	}
	return n
}

func (n Node) boxed(i, least int) string {
	a := n.args[i]
	low := a.binding() < least && a.kind != quotient || least > 1 && signed(a)
	if a.kind == quotient && least > 3 {
		low = true
	}
	if low {
		return brackets(a.markup())
	}
	return a.markup()
}

func (n Node) boxedFactor() string {
	if a := n.args[1]; a.kind == quotient || a.kind == number && !signed(a) {
		return a.markup()
	}
	return n.boxed(1, 4)
}

func brackets(inside string) string {
	return row(`<mo form="prefix">(</mo>`, inside, `<mo form="postfix">)</mo>`)
}

func row(parts ...string) string { return "<mrow>" + strings.Join(parts, "") + "</mrow>" }

// variable sets one letter slanted, as mathematics does, and a word upright.
func variable(text string) string {
	base, index := split(text)
	letter := "<mi>" + escape(base) + "</mi>"
	if len([]rune(base)) > 1 {
		letter = `<mi mathvariant="normal">` + escape(base) + "</mi>"
	}
	if index == "" {
		return letter
	}
	return "<msub>" + letter + `<mtext>` + escape(index) + "</mtext></msub>"
}

func quantity(n Node) string {
	digits := "<mn>" + escape(n.text) + "</mn>"
	if mantissa, exponent, found := strings.Cut(n.text, "·10"); found {
		digits = row("<mn>" + escape(mantissa) + "</mn><mo>·</mo><msup><mn>10</mn><mn>" + escape(plain.Replace(exponent)) + "</mn></msup>")
	}
	if n.unit == "" {
		return digits
	}
	return row(digits, `<mspace width="0.2em"></mspace>`, `<mtext>`+escape(n.unit)+"</mtext>")
}

var plain = strings.NewReplacer("⁻", "−", "⁰", "0", "¹", "1", "²", "2", "³", "3", "⁴", "4", "⁵", "5", "⁶", "6", "⁷", "7", "⁸", "8", "⁹", "9")

func escape(text string) string { return template.HTMLEscapeString(text) }
