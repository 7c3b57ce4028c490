// Package book turns the text of a notebook into prose and cells and back, without loss.
//
// A notebook is CommonMark text. Each fenced code block whose info string begins with the
// word go is a cell. A file whose name ends in .go or .lode is a plain script: one cell.
package book

import (
	"bytes"
	"path/filepath"
	"strings"
	"unicode/utf8"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"

	"lode/engine/issue"
)

// Part is a piece of the text: prose, or a cell with its fence.
type Part struct {
	Text string // exactly as in the file, fences included
	Line int    // line of the file the part begins on, from one
	Cell *Cell  // nil for prose
}

// Cell is the code of one cell.
type Cell struct {
	Code   string
	Line   int    // line of the file the code begins on
	Indent int    // characters that the file has in front of each code line
	Info   string // words behind "go" in the info string
}

// Book is a notebook as written.
type Book struct {
	File  string
	Parts []Part

	nested int // line of a cell inside of a list or a quotation, which cannot run
}

// String returns the text that the book was parsed from.
func (b Book) String() string {
	var s strings.Builder
	for _, p := range b.Parts {
		s.WriteString(p.Text)
	}
	return s.String()
}

// Cells returns the cells in order.
func (b Book) Cells() []*Cell {
	var cells []*Cell
	for _, p := range b.Parts {
		if p.Cell != nil {
			cells = append(cells, p.Cell)
		}
	}
	return cells
}

// Title returns the first heading of the prose, or the file's base name.
func (b Book) Title() string {
	for _, p := range b.Parts {
		if p.Cell != nil {
			continue
		}
		source := []byte(p.Text)
		for n := parse(source).FirstChild(); n != nil; n = n.NextSibling() {
			if h, ok := n.(*ast.Heading); ok {
				return heading(h, source)
			}
		}
	}
	return strings.TrimSuffix(filepath.Base(b.File), filepath.Ext(b.File))
}

// heading reads the text of a heading without its marks.
func heading(h *ast.Heading, source []byte) string {
	var line []byte
	for i := range h.Lines().Len() {
		at := h.Lines().At(i)
		line = append(append(line, bytes.TrimSpace(at.Value(source))...), ' ')
	}
	line = append([]byte("# "), line[:min(len(line), longestTitle)]...)
	return strings.TrimSpace(plain(goldmark.DefaultParser().Parse(text.NewReader(line)), line))
}

// longestTitle is how many bytes of a heading are read.
const longestTitle = 500

func plain(n ast.Node, source []byte) string {
	var s strings.Builder
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		if t, ok := c.(*ast.Text); ok {
			s.Write(t.Segment.Value(source))
		} else {
			s.WriteString(plain(c, source))
		}
	}
	return s.String()
}

// parse finds the blocks of a text and nothing within them, which keeps the time in
// proportion to the length of the text whatever it holds.
func parse(source []byte) ast.Node {
	return parser.NewParser(parser.WithBlockParsers(parser.DefaultBlockParsers()...)).Parse(text.NewReader(source))
}

// mark is what some programs begin a text file with.
const mark = "\ufeff"

// Parse reads a notebook. Any text gives a book; Problem tells whether it is one to run.
func Parse(file string, source []byte) Book {
	if rest, ok := bytes.CutPrefix(source, []byte(mark)); ok && !bytes.HasPrefix(rest, []byte(mark)) {
		b := Parse(file, rest)
		if len(b.Parts) == 0 {
			b.Parts = []Part{{Line: 1}}
		}
		b.Parts[0].Text = mark + b.Parts[0].Text
		return b
	}
	b := Book{File: file}
	if ext := filepath.Ext(file); ext == ".go" || ext == ".lode" {
		b.Parts = []Part{{Text: string(source), Line: 1, Cell: &Cell{Code: string(source), Line: 1}}}
		return b
	}
	at := 0
	for _, f := range fences(source) {
		b.prose(source, at, f.start)
		cell := f.cell
		b.Parts = append(b.Parts, Part{Text: string(source[f.start:f.end]), Line: lineOf(source, f.start), Cell: &cell})
		at = f.end
	}
	b.prose(source, at, len(source))
	b.nested = nested(source)
	return b
}

// nested returns the line of the first cell that stands in a list or a quotation.
func nested(source []byte) (line int) {
	root := parse(source)
	_ = ast.Walk(root, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		block, ok := n.(*ast.FencedCodeBlock)
		if ok && entering && n.Parent() != root && block.Info != nil && isCell(block, source) {
			line = lineOf(source, block.Info.Segment.Start)
			return ast.WalkStop, nil
		}
		return ast.WalkContinue, nil
	})
	return line
}

func isCell(block *ast.FencedCodeBlock, source []byte) bool {
	info := strings.Fields(string(block.Info.Segment.Value(source)))
	return len(info) > 0 && info[0] == "go"
}

func (b *Book) prose(source []byte, from, to int) {
	if from < to {
		b.Parts = append(b.Parts, Part{Text: string(source[from:to]), Line: lineOf(source, from)})
	}
}

func lineOf(source []byte, offset int) int { return 1 + bytes.Count(source[:offset], []byte("\n")) }

type fence struct {
	start, end int
	cell       Cell
}

// fences finds the cells: fenced blocks at the top level of the document.
func fences(source []byte) []fence {
	var found []fence
	for n := parse(source).FirstChild(); n != nil; n = n.NextSibling() {
		block, ok := n.(*ast.FencedCodeBlock)
		if !ok || block.Info == nil {
			continue
		}
		info := strings.Fields(string(block.Info.Segment.Value(source)))
		if len(info) > 0 && info[0] == "go" {
			found = append(found, locate(source, block, strings.Join(info[1:], " ")))
		}
	}
	return found
}

// locate finds the bytes from the opening fence's line to the end of the closing one's.
func locate(source []byte, block *ast.FencedCodeBlock, info string) fence {
	opening := block.Info.Segment.Start
	f := fence{start: bytes.LastIndexByte(source[:opening], '\n') + 1, cell: Cell{Info: info}}
	f.end = nextLine(source, opening)
	f.cell.Line = lineOf(source, opening) + 1
	var code strings.Builder
	for i := range block.Lines().Len() {
		line := block.Lines().At(i)
		if i == 0 {
			f.cell.Indent = utf8.RuneCount(source[bytes.LastIndexByte(source[:line.Start], '\n')+1 : line.Start])
		}
		code.Write(line.Value(source))
		f.end = nextLine(source, line.Stop-1)
	}
	f.cell.Code = code.String()
	if closing := source[f.end:nextLine(source, f.end)]; isFence(closing) {
		f.end += len(closing)
	}
	return f
}

func isFence(line []byte) bool {
	s := strings.TrimSpace(string(line))
	return len(s) >= 3 && (strings.Trim(s, "`") == "" || strings.Trim(s, "~") == "")
}

// nextLine returns the offset behind the line that holds offset.
func nextLine(source []byte, offset int) int {
	if offset >= len(source) {
		return len(source)
	}
	if i := bytes.IndexByte(source[offset:], '\n'); i >= 0 {
		return offset + i + 1
	}
	return len(source)
}

// Problem returns the reason why a file is no notebook that can run, if there is one.
func (b Book) Problem() *issue.Issue {
	source := b.String()
	whole := issue.Issue{Place: issue.Place{File: b.File}}
	switch {
	case !utf8.ValidString(source) || strings.ContainsRune(source, 0):
		whole.Code, whole.What = issue.NotText, "the file is not text"
		whole.Got, whole.Want = "bytes that are no UTF-8 text", "a CommonMark notebook or a script"
	case strings.TrimSpace(source) == "":
		whole.Code, whole.What = issue.Empty, "the notebook is empty"
		whole.Want, whole.Hint = "prose with cells", cellHint
	case b.nested > 0:
		whole.Code, whole.What = issue.Nested, "a cell stands inside of a list or a quotation"
		whole.Line, whole.Column, whole.Source = b.nested, 1, strings.Split(source, "\n")[b.nested-1]
		whole.Got, whole.Want = "a cell that would not run", "a cell at the left margin"
	case len(b.Cells()) == 0:
		whole.Code, whole.What = issue.NoCells, "the notebook has no cells"
		whole.Got, whole.Want, whole.Hint = "prose only", "at least one cell", cellHint
	default:
		return nil
	}
	return &whole
}

const cellHint = "a cell begins with a line ```go and ends with a line ```"
