package page

import (
	"fmt"
	"go/scanner"
	"go/token"
	"html/template"
	"strings"
)

// This file writes cells: their code with a mark on each line, and each result with a way
// back to the line that made it and to the names it came from.

// cellView is a cell with its results written.
type cellView struct {
	Cell
	Number int
	Code   template.HTML
	Shown  []template.HTML // one element each
}

// blocks writes the results of all cells and returns them.
func (p *writer) blocks(v *view) ([]cellView, error) {
	var cells []cellView
	for _, b := range p.document.Blocks {
		c, ok := b.(Cell)
		if !ok {
			v.Blocks = append(v.Blocks, b)
			continue
		}
		shown, err := p.results(c, len(cells)+1)
		if err != nil {
			return nil, err
		}
		one := cellView{Cell: c, Number: len(cells) + 1, Code: numbered(code(c.Source), c.Line), Shown: shown}
		v.Blocks, cells = append(v.Blocks, one), append(cells, one)
	}
	return cells, nil
}

// results writes each result of a cell, and its fault, as one element.
func (p *writer) results(c Cell, number int) (all []template.HTML, err error) {
	figures := 0
	for i, r := range c.Results {
		html, err := p.result(number, i, figures, r)
		if err != nil {
			return nil, err
		}
		if all = append(all, html); r.Figure != nil {
			figures++
		}
	}
	if c.Fault != nil {
		html, err := p.section("fault", c.Fault)
		return append(all, html), err
	}
	return all, nil
}

// result writes a result, or takes it over.
func (p *writer) result(cell, index, figures int, r Result) (template.HTML, error) {
	if p.press != nil {
		return p.press.shown(cell, index, figures, r)
	}
	return p.shown(cell, figures, r)
}

// shown writes a result of a cell that has as many figures before it.
func (p *writer) shown(cell, figures int, r Result) (template.HTML, error) {
	p.cell, p.figures = cell, figures
	return p.section("shown", r)
}

// lines tells which lines of the notebook the page shows.
func (d Document) lines() map[int]bool {
	lines := map[int]bool{}
	for _, b := range d.Blocks {
		if c, ok := b.(Cell); ok && c.Line > 0 {
			for i := range strings.Split(strings.TrimRight(clean(c.Source), "\n"), "\n") {
				lines[c.Line+i] = true
			}
		}
	}
	return lines
}

// numbered puts a mark on each line of code that is set already.
func numbered(set template.HTML, first int) template.HTML {
	if first == 0 || set == "" {
		return set
	}
	var b strings.Builder
	open := "" // a tint that goes on over the end of a line
	for i, line := range strings.Split(string(set), "\n") {
		if i > 0 {
			b.WriteString("\n")
		}
		fmt.Fprintf(&b, `<span id="L%d">%s%s`, first+i, open, line)
		if at := strings.LastIndex(line, "<span"); at > strings.LastIndex(line, "</span>") {
			open = line[at : at+strings.IndexByte(line[at:], '>')+1]
		} else if strings.Contains(line, "</span>") {
			open = ""
		}
		if open != "" {
			b.WriteString("</span>")
		}
		b.WriteString("</span>")
	}
	return template.HTML(b.String())
}

// link sets a label with its names leading to the lines that define them.
func (p *writer) link(r Result) template.HTML {
	at := map[string]int{}
	for _, o := range r.From {
		if p.lines[o.Line] {
			at[o.Name] = o.Line
		}
	}
	source := clean(r.Label)
	files := token.NewFileSet()
	file := files.AddFile("", files.Base(), len(source))
	var s scanner.Scanner
	s.Init(file, []byte(source), func(token.Position, string) {}, 0)
	var b strings.Builder
	done, before := 0, token.ILLEGAL
	for {
		pos, kind, text := s.Scan()
		if kind == token.EOF {
			break
		}
		if line := at[text]; kind == token.IDENT && before != token.PERIOD && line > 0 && line != r.Line {
			template.HTMLEscape(&b, []byte(source[done:file.Offset(pos)]))
			fmt.Fprintf(&b, `<a href="#L%d">%s</a>`, line, template.HTMLEscapeString(text))
			done = file.Offset(pos) + len(text)
		}
		before = kind
	}
	template.HTMLEscape(&b, []byte(source[done:]))
	return template.HTML(b.String())
}

// Way reports whether a result can be followed to its line.
func (r Result) Way() bool { return r.Line > 0 }
