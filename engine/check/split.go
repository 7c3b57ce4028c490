package check

import (
	"go/ast"
	"go/parser"
	"go/scanner"
	"go/token"
	"regexp"
	"strings"
	"unicode/utf8"

	"lode/engine/book"
	"lode/engine/issue"
)

// Chunk is one statement or declaration of the top level of a cell.
type Chunk struct {
	Cell   *book.Cell
	Offset int    // where it begins in the cell's code
	Text   string // its text, trailing comment included
	Stmts  []ast.Stmt
	Func   *ast.FuncDecl   // instead of Stmts
	Shown  []*ast.ExprStmt // statements whose value is shown

	// Of an instance of a generic function: the type parameters in its text, and what they
	// stand for in words.
	Params  *ast.FieldList
	inWords string

	file *token.File
	head int // bytes in front of Text in the text that was parsed
}

// split cuts the cells into chunks and parses each by itself, so that one syntax error
// does not hide the next and every position leads straight back to its cell.
func (c *checker) split() {
	c.prose()
	for _, cell := range c.Book.Cells() {
		if !c.readable(cell) {
			continue
		}
		for _, span := range spans(cell.Code) {
			if len(c.issues) >= enough {
				return
			}
			c.parse(cell, span)
		}
	}
}

type span struct {
	from, to int
	kind     token.Token // first token
	method   bool        // func with a receiver and a name
	deep     int         // where brackets go too deep, zero if they do not
}

// spans finds the statements at nesting depth zero.
func spans(code string) []span {
	var s scanner.Scanner
	file := token.NewFileSet().AddFile("", -1, len(code))
	s.Init(file, []byte(code), func(token.Position, string) {}, 0)
	var found []span
	current, depth, open, before := span{from: -1}, 0, token.ILLEGAL, token.ILLEGAL
	header := false // between for, if or switch and the brace of its block
	for i := 0; ; {
		pos, tok, text := s.Scan()
		offset := file.Offset(pos)
		if current.from < 0 && tok != token.EOF && tok != token.SEMICOLON {
			current, i = span{from: offset, kind: tok}, 0
		}
		if depth == 0 {
			header = header && tok != token.LBRACE || tok == token.FOR || tok == token.IF || tok == token.SWITCH
		}
		if depth += nesting(tok); depth > deepest && current.deep == 0 {
			current.deep = offset
		}
		switch {
		case tok == token.EOF || tok == token.SEMICOLON && depth <= 0 && !(header && text == ";"):
			if current.from >= 0 {
				current.to = offset
				found = append(found, current)
			}
			current, depth, header = span{from: -1}, 0, false
		case current.kind == token.FUNC && depth == 0 && tok == token.IDENT && i == 1:
			current.method = true
		case current.kind == token.FUNC && depth == 1 && tok == token.LPAREN && open == token.IDENT && before == token.RPAREN:
			current.method = true // a receiver in parentheses, a name, and parameters
		}
		if tok == token.EOF {
			return found
		}
		i, before, open = i+1, open, tok
	}
}

func nesting(t token.Token) int {
	switch t {
	case token.LPAREN, token.LBRACE, token.LBRACK:
		return 1
	case token.RPAREN, token.RBRACE, token.RBRACK:
		return -1
	}
	return 0
}

// parse reads one span as a function declaration or as statements.
func (c *checker) parse(cell *book.Cell, s span) {
	head, tail := "package p; func _() {", "\n}"
	if s.kind == token.FUNC && s.method || s.kind == token.IMPORT {
		head, tail = "package p; ", "\n"
	}
	chunk := &Chunk{Cell: cell, Offset: s.from, Text: cell.Code[s.from:s.to], head: len(head)}
	if s.deep > 0 {
		c.tooNested(chunk, s.deep-s.from)
		return
	}
	base := c.Fset.Base()
	f, err := parser.ParseFile(c.Fset, "", head+chunk.Text+tail, parser.SkipObjectResolution)
	chunk.file = c.Fset.File(token.Pos(base))
	c.Chunks = append(c.Chunks, chunk)
	c.here = chunk
	if list, ok := err.(scanner.ErrorList); ok {
		c.syntax(chunk, list[0])
		return
	}
	if !c.sound(chunk, f) {
		return
	}
	c.sort(chunk, f)
}

// sort puts what was parsed where it belongs in the chunk.
func (c *checker) sort(chunk *Chunk, f *ast.File) {
	for _, d := range f.Decls {
		fn, ok := d.(*ast.FuncDecl)
		switch {
		case !ok:
			c.refuseImport(d)
		case chunk.head == len("package p; "):
			chunk.Func = fn
		default:
			chunk.Stmts = fn.Body.List
		}
	}
}

func (c *checker) refuseImport(d ast.Decl) {
	g := d.(*ast.GenDecl)
	if g.Tok == token.IMPORT && len(g.Specs) == 0 {
		c.report(g, "import", "import: packages are in scope without it", "an empty list", "nothing", "take the import out")
	}
	for _, s := range g.Specs {
		if spec, ok := s.(*ast.ImportSpec); ok {
			c.report(spec.Path, "import", "import: packages are in scope without it", spec.Path.Value,
				"one of "+strings.Join(c.packageNames(), ", "), "take the import out; notebooks reach nothing else")
		}
	}
}

var expected = regexp.MustCompile(`^(.*?):? ?expected (.*), found (.*)$`)

// syntax reports a parse error in the one wording.
func (c *checker) syntax(chunk *Chunk, e *scanner.Error) {
	offset := min(max(e.Pos.Offset-chunk.head, 0), len(chunk.Text))
	i := issue.Issue{Place: c.placeAt(chunk, offset, offset+1), Code: "syntax", What: "syntax: " + e.Msg, Hint: c.slipAt(chunk.Text, offset)}
	if m := expected.FindStringSubmatch(e.Msg); m != nil {
		i.What, i.Want, i.Got = "syntax: this is no complete statement", wanted(m[2]), found(m[3])
	}
	if strings.Contains(e.Msg, "declared and not used") {
		return
	}
	i.Source = c.sourceLine(chunk, i.Line)
	c.add(i)
}

// found makes the parser's name of a token readable.
func found(s string) string {
	switch {
	case strings.HasPrefix(s, "newline") || s == "'EOF'" || s == "EOF":
		return "the end of the line"
	case s == "'}'":
		return "the end of the statement"
	}
	return s
}

// wanted makes readable what the parser would have taken.
func wanted(s string) string {
	switch s {
	case "';'":
		return "the end of the statement"
	case "operand":
		return "a value"
	case "type", "statement":
		return "a " + s
	}
	return s
}

// placeAt returns the place of a range of bytes of the chunk's text.
func (c *checker) placeAt(chunk *Chunk, from, to int) issue.Place {
	return c.Program.place(chunk, from, to)
}

func (p *Program) place(chunk *Chunk, from, to int) issue.Place {
	code := chunk.Cell.Code
	start := min(chunk.Offset+from, len(code))
	lineStart := strings.LastIndexByte(code[:start], '\n') + 1
	column := utf8.RuneCountInString(code[lineStart:start]) + 1 + chunk.Cell.Indent
	text := code[start:min(max(chunk.Offset+to, start), len(code))]
	text, _, _ = strings.Cut(text, "\n")
	return issue.Place{
		File: p.Book.File, Line: chunk.Cell.Line + strings.Count(code[:start], "\n"),
		Column: column, EndColumn: column + max(1, utf8.RuneCountInString(text)),
	}
}

func (c *checker) sourceLine(chunk *Chunk, line int) string { return c.Program.SourceLine(chunk, line) }

// SourceLine returns a line of the file that the chunk's cell holds.
func (p *Program) SourceLine(chunk *Chunk, line int) string {
	rest := chunk.Cell.Code
	for range line - chunk.Cell.Line {
		_, rest, _ = strings.Cut(rest, "\n")
	}
	if line >= chunk.Cell.Line {
		text, _, _ := strings.Cut(rest, "\n")
		return strings.Repeat(" ", chunk.Cell.Indent) + strings.TrimSuffix(text, "\r")
	}
	return ""
}
