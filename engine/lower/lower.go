// Package lower turns a checked notebook into an ordinary Go program on float64.
//
// The program keeps the text of the cells, line by line; quantities turn into conversions
// between named float types, constants into numbers, and the conveniences of the language
// (shown results, errors that are checked by themselves, ranges over numbers) into plain
// statements. What comes out compiles with the standard toolchain as well.
package lower

import (
	"fmt"
	"go/ast"
	"go/scanner"
	"go/token"
	"go/types"
	"sort"
	"strings"
	"unicode"
	"unicode/utf8"

	"lode/engine/check"
	"lode/engine/issue"
)

// Host is the import path of the package through which a program speaks to its runner. It
// says where the program is (At), takes results (Show) and failures (Fail), gives the budgets
// (Steps, Over, Depth), and has types for values that are shown by a text of their own.
const Host = "lode/host"

// Entry is the name of the function that runs the statements of the top level.
const Entry = "ˑrun"

// Afresh is the name of the function that makes all variables of a program what they were
// before its first run.
const Afresh = "ˑafresh"

// Way is the name of the function that returns the statement that runs and those that led
// to it, innermost first.
const Way = "ˑway"

// Spot is a place in a notebook that a running program can name by its number.
type Spot struct {
	issue.Place
	Cell   int      // which cell, from zero
	Text   string   // source of the expression or statement
	Source string   // whole source line
	From   []Origin // of a statement of the top level: the names of the notebook in it
	Name   string   // likewise: what it defines
	Made   string   // likewise: the library's function that makes its value, if it is a call of one
}

// Lowered is a program ready to run.
type Lowered struct {
	Source string // Go text of package notebook
	Spots  []Spot
	Works  []Work // formulas whose values the run tells

	Watched []Watched // calls that the runner looks at

	program  *check.Program
	verified string // the part of Source that Verify reads
	segments []segment
}

// segment is the part of a text that came from one chunk.
type segment struct {
	from, to int
	chunk    *check.Chunk
	marks    []mapping
}

// Lower turns a program without issues into Go with a guard, for Host to run.
func Lower(p *check.Program) *Lowered { return lower(p, true) }

func lower(p *check.Program, guard bool) *Lowered {
	l := newLowerer(p, guard)
	l.assemble(l.pieces())
	return l.Lowered
}

func newLowerer(p *check.Program, guard bool) *lowerer {
	l := &lowerer{Program: p, Lowered: &Lowered{program: p}, cells: map[any]int{}, helpers: map[string]string{}, called: map[*ast.SelectorExpr]bool{}, warning: map[types.Type]bool{}, guard: guard}
	for i, cell := range p.Book.Cells() {
		l.cells[cell] = i
	}
	l.prepareWorkings()
	return l
}

type lowerer struct {
	*check.Program
	*Lowered
	guard   bool
	edits   *edits
	chunkAt *check.Chunk
	cells   map[any]int
	counter int
	frame   frame
	label   *ast.LabeledStmt
	called  map[*ast.SelectorExpr]bool
	warning map[types.Type]bool // of the library: whether they warn
	careful *issue.Place        // a line in which to look before places of lists are taken
	direct  ast.Expr            // makes the value of the statement, which the runner is handed anyway
	workings
	declared []types.Type // types of the notebook's top level
	labelled []types.Type // types that are labelled in an interface
	dynamics string       // the name of the function that shows what is in an interface
	helpers  map[string]string
	tail     []string // helper functions
}

// piece is a chunk's new text.
type piece struct {
	chunk    *check.Chunk
	text     string
	marks    []mapping
	declares bool
}

// pieces lowers the types first, which printing has to know.
func (l *lowerer) pieces() (decls, run []piece) {
	done := map[*check.Chunk]bool{}
	for _, types := range []bool{true, false} {
		for _, chunk := range l.Chunks {
			if done[chunk] || chunk.IsTemplate() || types && !onlyTypes(chunk) {
				continue
			}
			done[chunk] = true
			if pc := l.chunk(chunk); pc.declares {
				decls = append(decls, pc)
			} else {
				run = append(run, pc)
			}
		}
	}
	l.finishDynamic()
	return decls, run
}

func onlyTypes(chunk *check.Chunk) bool {
	return len(chunk.Stmts) == 1 && isTypeDecl(chunk.Stmts[0])
}

func (l *lowerer) chunk(chunk *check.Chunk) piece {
	l.edits, l.chunkAt = &edits{}, chunk
	declares := chunk.Func != nil
	if declares {
		l.follow(chunk.Func)
		l.funcDecl(chunk.Func)
	}
	for _, s := range chunk.Stmts {
		declares = l.topStmt(chunk, s) || declares
	}
	text, marks := l.edits.apply(chunk.Text)
	return piece{chunk, text, marks, declares}
}

// topStmt lowers a statement of the top level and reports whether it belongs outside of
// the entry function.
func (l *lowerer) topStmt(chunk *check.Chunk, s ast.Stmt) bool {
	if isTypeDecl(s) {
		l.typeDecl(s.(*ast.DeclStmt).Decl.(*ast.GenDecl))
		return true
	}
	from, to := chunk.Span(s)
	spot := l.spot(s)
	l.Spots[spot].From = l.origins(s)
	switch s.(type) {
	case *ast.ForStmt, *ast.RangeStmt: // as a turn of the loop is told, whichever comes first
		l.Spots[spot].EndColumn = l.Spots[spot].Column + len("for")
	}
	l.direct = l.valueOf(chunk, s)
	l.Spots[spot].Name, l.Spots[spot].Made = namesOf(s), l.madeBy(l.direct)
	if l.guard {
		l.edits.open(from, fmt.Sprintf("ˑh.At(%d); ˑat = %d; ", spot, spot))
	}
	if work, ok := l.workStmt(chunk, s); ok {
		l.edits.open(from, "ˑworking = true; ")
		defer func() { l.edits.close(to, fmt.Sprintf("; ˑworking = false; ˑh.Work(%d, %d)", spot, work)) }()
	}
	switch s := s.(type) {
	case *ast.AssignStmt:
		l.assign(s, true)
		l.minded(s, spot)
	case *ast.DeclStmt:
		l.topDecl(s)
	case *ast.ExprStmt:
		if !shown(chunk, s) {
			l.exprStmt(s)
			break
		}
		l.edits.open(from, fmt.Sprintf("ˑh.Show(%d, ", spot))
		l.presented(s.X)
		l.edits.close(to, ")")
	default:
		l.stmt(s)
	}
	return false
}

func isTypeDecl(s ast.Stmt) bool {
	d, ok := s.(*ast.DeclStmt)
	if !ok {
		return false
	}
	g, ok := d.Decl.(*ast.GenDecl)
	return ok && g.Tok.String() == "type"
}

func shown(chunk *check.Chunk, s *ast.ExprStmt) bool {
	for _, x := range chunk.Shown {
		if x == s {
			return true
		}
	}
	return false
}

// spot gives a place a number.
func (l *lowerer) spot(n ast.Node) int {
	place := l.PlaceOf(n)
	l.Spots = append(l.Spots, Spot{
		Place: place, Cell: l.cells[l.chunkAt.Cell], Text: strings.TrimSpace(l.chunkAt.SourceText(n)),
		Source: l.SourceLine(l.chunkAt, place.Line),
	})
	return len(l.Spots) - 1
}

// assemble puts the program together: imports, variables, declarations, statements.
func (l *lowerer) assemble(decls, run []piece) {
	body, _ := l.join(decls, run)
	imports := l.imports(body)
	l.Source = imports + body
	l.verified, l.segments = l.join(decls, withBlocks(run))
	l.verified = imports + l.verified
	for i := range l.segments {
		l.segments[i].from += len(imports)
		l.segments[i].to += len(imports)
	}
}

// join writes the given pieces, and tells where each of them begins.
func (l *lowerer) join(decls, run []piece) (string, []segment) {
	var body strings.Builder
	for _, v := range l.Vars {
		if v.Name() != "_" {
			fmt.Fprintf(&body, "var %s %s\n", v.Name(), l.plainText(v.Type()))
		}
	}
	if l.guard {
		body.WriteString(guardText)
	}
	if l.wanted {
		body.WriteString("\nvar ˑworking bool\n")
	}
	if l.guard {
		body.WriteString(l.afresh())
	}
	segments := write(&body, decls, nil)
	body.WriteString("\nfunc " + Entry + "() {\n")
	if l.wanted {
		body.WriteString(strings.Join(append(l.workings.constant, ""), "; "))
	}
	segments = write(&body, run, segments)
	body.WriteString("}\n\n" + strings.Join(l.tail, "\n") + "\n")
	return body.String(), segments
}

// withBlocks returns the pieces that hold a block or a function, where Go has rules that the
// checker leaves to it: variables that are not used, returns that are missing.
func withBlocks(run []piece) []piece {
	var kept []piece
	for _, p := range run {
		found := false
		for _, s := range p.chunk.Stmts {
			ast.Inspect(s, func(n ast.Node) bool {
				_, ok := n.(*ast.BlockStmt)
				found = found || ok
				return !found
			})
		}
		if found {
			kept = append(kept, p)
		}
	}
	return kept
}

// imports writes the head of a program: the packages that its text uses, whose names cannot
// mean anything else.
func (l *lowerer) imports(body string) string {
	lines := []string{"import ˑh \"" + Host + "\"\n"}
	if !strings.Contains(body, "ˑh.") {
		lines = nil
	}
	for _, name := range l.packagesIn(body) {
		lines = append(lines, fmt.Sprintf("import %s %q\n", name, l.Lib.Packages[name].Path()))
	}
	sort.Strings(lines)
	return "package notebook\n\n" + strings.Join(lines, "") + "\n"
}

// packagesIn finds the packages of the library in a text, and reads no further than it has to.
func (l *lowerer) packagesIn(body string) []string {
	open := map[string]bool{}
	var found []string
	for name := range l.Lib.Packages {
		switch {
		case plainlyUsed(body, name):
			found = append(found, name)
		case strings.Contains(body, name+"."):
			open[name] = true
		}
	}
	var s scanner.Scanner
	file := token.NewFileSet().AddFile("", -1, len(body))
	s.Init(file, []byte(body), func(token.Position, string) {}, 0)
	for name, last := "", token.ILLEGAL; len(open) > 0 && last != token.EOF; {
		_, tok, text := s.Scan()
		if tok == token.PERIOD && open[name] {
			found = append(found, name)
			delete(open, name)
		}
		name = ""
		if tok == token.IDENT && last != token.PERIOD {
			name = text
		}
		last = tok
	}
	return found
}

// plainlyUsed finds a package in front of a point in a line that holds no text and no remark,
// of a program that holds none of more than a line.
func plainlyUsed(body, name string) bool {
	if strings.Contains(body, "`") || strings.Contains(body, "/*") {
		return false
	}
	for at := 0; ; at++ {
		i := strings.Index(body[at:], name+".")
		if i < 0 {
			return false
		}
		at += i
		line := body[strings.LastIndexByte(body[:at], '\n')+1 : at]
		before, _ := utf8.DecodeLastRuneInString(line)
		if !strings.ContainsAny(line, "\"'/") && before != '.' && before != '_' && !unicode.IsLetter(before) && !unicode.IsDigit(before) {
			return true
		}
	}
}

func write(out *strings.Builder, pieces []piece, segments []segment) []segment {
	for _, p := range pieces {
		from := out.Len()
		out.WriteString(p.text + "\n")
		segments = append(segments, segment{from, out.Len(), p.chunk, p.marks})
	}
	return segments
}

// span returns the bytes of a node in the current chunk.
func (l *lowerer) span(n ast.Node) (from, to int) { return l.chunkAt.Span(n) }

// name makes a name that no notebook can define.
func (l *lowerer) name(stem string) string {
	l.counter++
	return fmt.Sprintf("ˑ%s%d", stem, l.counter)
}

// render returns the lowered text of an expression that moves to another place.
func (l *lowerer) render(e ast.Expr) string { return l.apart(e, func() { l.expr(e) }) }

func (l *lowerer) renderRaw(e ast.Expr) string { return l.apart(e, func() { l.raw(e) }) }

func (l *lowerer) renderStmt(s ast.Stmt) string { return l.apart(s, func() { l.stmt(s) }) }

func (l *lowerer) apart(n ast.Node, lower func()) string {
	kept := l.edits
	l.edits = &edits{}
	lower()
	from, to := l.span(n)
	text := l.edits.within(l.chunkAt.Text, from, to)
	l.edits = kept
	return text
}

// mark stands for a value in the text of its conversion.
const mark = "\x00"

func cutMark(text string) (before, after string, found bool) { return strings.Cut(text, mark) }

// offset returns the byte of a position in the current chunk.
func (l *lowerer) offset(pos token.Pos) int {
	from, _ := l.span(&ast.Ident{NamePos: pos})
	return from
}
