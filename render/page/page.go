// Package page writes one self-contained HTML page from a plain Document. The page refers to
// nothing outside itself, its policy forbids it to, and it is complete without script. All
// text is escaped; prose is CommonMark whose raw HTML is shown as text.
package page

import (
	"crypto/sha256"
	_ "embed"
	"encoding/base64"
	"fmt"
	"html/template"
	"io"
	"strings"

	"lode/render/figure"
	"lode/render/table"
	"lode/units/frame"
)

// Document is what a page shows, in reading order.
type Document struct {
	Title   string
	Lang    string // language of the prose, "" for English
	Blocks  []Block
	Methods []Method // what the notebook's results rest on
	Record  []Entry  // versions, digests and settings of the run
	Turning *Turning // what a reader may turn
}

// Block is one of Prose, Cell, Cautions and Fault.
type Block interface{ block() }

// Prose is text in CommonMark.
type Prose struct{ Source string }

// Cell is a piece of the notebook's code with what it showed.
type Cell struct {
	Source  string
	Line    int // of the notebook that Source begins on, 0 for no numbers
	Results []Result
	Fault   *Fault // set when the cell stopped
}

// Result is something shown: its label and one of the others.
type Result struct {
	Label   string
	Line    int      // of the notebook that made it, 0 if it is not known
	From    []Origin // the names that it came from
	Alone   bool     // there are Minds and nothing else
	Minds   []string // what to mind about the value, such as a range that was left
	Value   string   // a quantity or a short text
	Lines   string   // a longer text, kept as it is
	Table   *table.Grid
	Figure  Drawing
	Formula template.HTML // MathML as package formula writes it
}

// Origin is a name of the notebook and the line that defines it.
type Origin struct {
	Name string
	Line int
}

// Drawing is a figure; figure.Figure is one.
type Drawing interface {
	Title() string
	Caption() string
	SVG(id string) string
	Narrow(id string) string
	Numbers() []frame.Frame
}

// Cautions are what to mind before working, each with what it is about.
type Cautions []Entry

// Fault tells what went wrong and where.
type Fault struct {
	Place      string // file, line and column
	What       string
	Source     string // the line it is in
	Start, End int    // the characters of Source that are meant, from 0
	Got, Want  string
	Hint       string
	From       []string // the calls that led there, innermost first
}

// Method is one formula or data set that results rest on.
type Method struct {
	Name, What, Source, Valid, Accuracy, Caution string

	Minds []string // where a result left what is valid
}

// Entry is a name with a text.
type Entry struct{ Name, Text string }

func (Prose) block()    {}
func (Cell) block()     {}
func (Cautions) block() {}
func (Fault) block()    {}

//go:embed page.html
var layout string

//go:embed page.css
var sheet string

//go:embed readout.js
var readout string

// newWriter returns a writer for one page after the other.
func newWriter() *writer {
	p := &writer{style: themes() + sheet + figure.Style()}
	p.layout = p.template()
	return p
}

// begin begins a page that shows the given lines of the notebook.
func (p *writer) begin(d Document, lines map[int]bool) {
	*p = writer{layout: p.layout, style: p.style, press: p.press, document: d, lines: lines}
}

func (p *writer) write(w io.Writer) error {
	v, err := p.view()
	if err != nil {
		return err
	}
	return p.layout.Execute(w, v)
}

// view is what the template sees.
type view struct {
	Title, Lang, Policy string
	Style               template.CSS
	Script, Positions   template.JS
	Blocks              []Block
	Turning             *Turning
	Methods             []Method
	Record              []Entry
}

// writer counts what needs a number of its own on the page.
type writer struct {
	document      Document
	layout        *template.Template
	style         string
	press         *Press       // nil for a page that stands alone
	elements      []string     // that were cut out
	set           int          // pieces of prose so far
	lines         map[int]bool // of the notebook that the page shows
	cell, figures int          // the cell that is written, and its figures so far
	sections      int
	heading       int // level of the last heading
	titled        bool
}

func (p *writer) view() (view, error) {
	script, connect := p.script()
	v := view{Title: p.document.Title, Lang: p.document.Lang, Style: template.CSS(p.style), Script: template.JS(script), Policy: policy(p.style, script, connect),
		Methods: p.document.Methods, Record: p.document.Record, Turning: p.document.Turning}
	cells, err := p.blocks(&v)
	if err == nil {
		v.Positions, err = p.positions(cells)
	}
	if v.Lang == "" {
		v.Lang = "en"
	}
	if v.Title == "" {
		v.Title = "Notebook"
	}
	return v, err
}

// script returns what runs on the page, and whether it talks to where the page came from.
func (p *writer) script() (script string, connect bool) {
	if t := p.document.Turning; t != nil {
		if t.Live {
			return live + readout, true
		}
		return turning + readout, false
	}
	if p.document.figures() {
		return readout, false
	}
	return "", false
}

// figures reports whether the document holds a figure.
func (d Document) figures() bool {
	for _, b := range d.Blocks {
		if cell, ok := b.(Cell); ok {
			for _, r := range cell.Results {
				if r.Figure != nil {
					return true
				}
			}
		}
	}
	return false
}

// policy allows this page its own style sheet and script, known by their digests, and
// pictures inside it, and nothing else.
func policy(style, script string, connect bool) string {
	scripts := ""
	if script != "" {
		scripts = " script-src " + digest(script) + ";"
	}
	if connect {
		scripts += " connect-src 'self';"
	}
	return "default-src 'none'; style-src " + digest(style) + ";" + scripts + " img-src data:; base-uri 'none'; form-action 'none'"
}

func digest(text string) string {
	sum := sha256.Sum256([]byte(text))
	return "'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"
}

func (p *writer) template() *template.Template {
	return template.Must(template.New("page").Funcs(template.FuncMap{
		"prose":   p.text,
		"code":    code,
		"figure":  p.figure,
		"marked":  marked,
		"name":    blockName,
		"rows":    rows,
		"crowd":   crowd,
		"brief":   brief,
		"long":    long,
		"link":    p.link,
		"element": p.element,
		"section": p.section,
		"lines":   func(text string) []string { return strings.Split(text, "\n") },
	}).Parse(layout))
}

func blockName(b Block) string {
	switch b.(type) {
	case Prose:
		return "prose"
	case Cell, cellView:
		return "cell"
	case Cautions:
		return "cautions"
	}
	return "fault"
}

// plate is a figure in its two drawings.
type plate struct {
	ID, Title, Caption string
	Wide, Narrow       template.HTML
	Numbers            []Result
	Full               bool         // printed at full size on a sheet of its own
	File               template.URL // the drawing as a file of its own
}

// fullSize is a Drawing that measures in millimetres and must be printed as large as it is.
type fullSize interface {
	FullSize() bool
	File() string
}

func (p *writer) figure(d Drawing) plate {
	p.figures++
	id := fmt.Sprintf("figure-%d-%d", p.cell, p.figures)
	result := plate{ID: id, Title: d.Title(), Caption: d.Caption(), Wide: template.HTML(d.SVG(id + "-wide")), Narrow: template.HTML(d.Narrow(id + "-narrow"))}
	if full, ok := d.(fullSize); ok && full.FullSize() {
		result.Full = true
		result.File = template.URL("data:image/svg+xml;base64," + base64.StdEncoding.EncodeToString([]byte(full.File())))
	}
	for _, f := range d.Numbers() {
		grid := table.Layout(f)
		result.Numbers = append(result.Numbers, Result{Label: f.Title, Table: &grid})
	}
	return result
}

// marked cuts a line of code into what is before, at and after the fault.
func marked(f Fault) [3]string {
	letters := []rune(f.Source)
	start := min(max(f.Start, 0), len(letters))
	end := min(max(f.End, start), len(letters))
	return [3]string{string(letters[:start]), string(letters[start:end]), string(letters[end:])}
}
