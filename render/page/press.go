package page

import (
	"html/template"
	"io"
	"reflect"
	"slices"
	"strings"
)

// This file writes one page after the other for somebody who looks on: what has not changed
// since the last is taken over, and a page comes cut into the pieces that may change.

// Pieces is a page cut in pieces. Elements are the results of all cells, the knobs and the record, each one
// element of HTML, in the order of the page; Around is what stands before, between and behind them.
type Pieces struct {
	Around, Elements []string
}

// String returns the whole page.
func (p Pieces) String() string {
	var b strings.Builder
	for i, text := range p.Around {
		b.WriteString(text)
		if i < len(p.Elements) {
			b.WriteString(p.Elements[i])
		}
	}
	return b.String()
}

// Len returns how long the whole page is.
func (p Pieces) Len() int {
	n := 0
	for _, text := range p.Around {
		n += len(text)
	}
	for _, text := range p.Elements {
		n += len(text)
	}
	return n
}

// Press writes the pages of a notebook that runs again and again. It is not for concurrent use.
type Press struct {
	writer *writer
	turn   int // of the page in hand
	done   map[place]written
	prose  []Prose // of the last page
	set    []template.HTML
}

// place is a result's place on the page.
type place struct{ cell, index int }

// written is a result with what it was written as.
type written struct {
	turn, figures int
	result        Result
	html          template.HTML
}

// NewPress returns a press for the pages of one notebook.
func NewPress() *Press {
	p := &Press{writer: newWriter(), done: map[place]written{}}
	p.writer.press = p
	return p
}

// Begin begins a page that will have the text of d; its results may be missing.
func (p *Press) Begin(d Document) {
	lines := d.lines()
	if !reflect.DeepEqual(lines, p.writer.lines) {
		clear(p.done)
	}
	var prose []Prose
	for _, b := range d.Blocks {
		if text, ok := b.(Prose); ok {
			prose = append(prose, text)
		}
	}
	if d.Title != p.writer.document.Title || !slices.Equal(prose, p.prose) {
		p.set = nil
	}
	p.turn, p.prose = p.turn+1, prose
	p.writer.begin(d, lines)
}

// Prepare writes a result ahead that will stand on the page begun: the cell's number, from one, the result's place
// in it, from zero, and how many figures stand before it in the cell.
func (p *Press) Prepare(cell, index, figures int, r Result) error {
	_, err := p.shown(cell, index, figures, r)
	return err
}

// shown returns a result as an element: as it was prepared, as it was on the last page, or anew.
func (p *Press) shown(cell, index, figures int, r Result) (template.HTML, error) {
	at := place{cell, index}
	last, known := p.done[at]
	if known && last.figures == figures && (last.turn == p.turn || reflect.DeepEqual(last.result, r)) {
		last.turn = p.turn
		p.done[at] = last
		return last.html, nil
	}
	html, err := p.writer.shown(cell, figures, r)
	if err == nil {
		p.done[at] = written{p.turn, figures, r, html}
	}
	return html, err
}

// cut stands where an element was cut out; no text of a page has it.
const cut = "\x00"

// Pieces writes the page begun, now with its results.
func (p *Press) Pieces(d Document) (Pieces, error) {
	p.writer.begin(d, p.writer.lines)
	p.writer.elements = nil
	var frame strings.Builder
	if err := p.writer.write(&frame); err != nil {
		return Pieces{}, err
	}
	return Pieces{strings.Split(frame.String(), cut), p.writer.elements}, nil
}

// element is a piece of the page that may change.
func (p *writer) element(html template.HTML) template.HTML {
	if p.press == nil {
		return html
	}
	p.elements = append(p.elements, string(html))
	return cut
}

// section writes one of the sections behind the cells.
func (p *writer) section(name string, data any) (template.HTML, error) {
	var b strings.Builder
	err := p.layout.ExecuteTemplate(&b, name, data)
	return template.HTML(strings.TrimSpace(b.String())), err
}

// Write writes the page.
func Write(w io.Writer, d Document) error {
	p := newWriter()
	p.begin(d, d.lines())
	return p.write(w)
}
