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
	"go/types"
	"sort"
	"strings"

	"lode/engine/check"
	"lode/engine/issue"
)

// Host is the import path of the package through which a program speaks to its runner. It
// has three functions: At(statement int), Show(statement int, value any) and
// Fail(statement int, err error), which does not return.
const Host = "lode/host"

// Entry is the name of the function that runs the statements of the top level.
const Entry = "ˑrun"

// Spot is a place in a notebook that a running program can name by its number.
type Spot struct {
	issue.Place
	Cell   int    // which cell, from zero
	Text   string // source of the expression or statement
	Source string // whole source line
}

// Lowered is a program ready to run.
type Lowered struct {
	Source string // Go text of package notebook
	Spots  []Spot

	program  *check.Program
	segments []segment
}

// segment is the part of Source that came from one chunk.
type segment struct {
	from, to int
	chunk    *check.Chunk
	marks    []mapping
}

// Lower turns a program without issues into Go.
func Lower(p *check.Program) *Lowered {
	l := &lowerer{Program: p, Lowered: &Lowered{program: p}, cells: map[any]int{}}
	for i, cell := range p.Book.Cells() {
		l.cells[cell] = i
	}
	var decls, run []piece
	for _, chunk := range p.Chunks {
		if pc := l.chunk(chunk); pc.declares {
			decls = append(decls, pc)
		} else {
			run = append(run, pc)
		}
	}
	l.assemble(decls, run)
	return l.Lowered
}

type lowerer struct {
	*check.Program
	*Lowered
	edits   *edits
	chunkAt *check.Chunk
	cells   map[any]int
	counter int
	sorts   bool
}

// piece is a chunk's new text.
type piece struct {
	chunk    *check.Chunk
	text     string
	marks    []mapping
	declares bool
}

func (l *lowerer) chunk(chunk *check.Chunk) piece {
	l.edits, l.chunkAt = &edits{}, chunk
	declares := chunk.Func != nil
	if declares {
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
	if d, ok := s.(*ast.DeclStmt); ok && isTypeDecl(d) {
		return true
	}
	from, to := chunk.Span(s)
	spot := l.spot(s)
	l.edits.open(from, fmt.Sprintf("ˑh.At(%d); ", spot))
	switch s := s.(type) {
	case *ast.AssignStmt:
		l.assign(s, true)
	case *ast.DeclStmt:
		l.topDecl(s)
	case *ast.ExprStmt:
		if !shown(chunk, s) {
			l.exprStmt(s)
			break
		}
		l.edits.open(from, fmt.Sprintf("ˑh.Show(%d, ", spot))
		l.boxed(s.X)
		l.edits.close(to, ")")
	default:
		l.stmt(s)
	}
	return false
}

func isTypeDecl(d *ast.DeclStmt) bool {
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
	var vars strings.Builder
	for _, v := range l.Vars {
		if v.Name() != "_" {
			fmt.Fprintf(&vars, "var %s %s\n", v.Name(), l.typeText(v.Type()))
		}
	}
	var out strings.Builder
	out.WriteString("package notebook\n\n" + l.imports() + vars.String())
	l.write(&out, decls)
	out.WriteString("\nfunc " + Entry + "() {\n")
	l.write(&out, run)
	out.WriteString("}\n")
	l.Source = out.String()
}

func (l *lowerer) imports() string {
	lines := []string{"import ˑh \"" + Host + "\"\n"}
	if l.sorts {
		l.Imports["sort"] = true
	}
	for name := range l.Imports {
		if p := l.Lib.Packages[name]; p != nil {
			lines = append(lines, fmt.Sprintf("import %s %q\n", name, p.Path()))
		}
	}
	sort.Strings(lines)
	return strings.Join(lines, "") + "\nvar _ = ˑh.At\n\n"
}

func (l *lowerer) write(out *strings.Builder, pieces []piece) {
	for _, p := range pieces {
		from := out.Len()
		out.WriteString(p.text + "\n")
		l.segments = append(l.segments, segment{from, out.Len(), p.chunk, p.marks})
	}
}

// span returns the bytes of a node in the current chunk.
func (l *lowerer) span(n ast.Node) (from, to int) { return l.chunkAt.Span(n) }

// name makes a name that no notebook can define.
func (l *lowerer) name(stem string) string {
	l.counter++
	return fmt.Sprintf("ˑ%s%d", stem, l.counter)
}

// typeText writes a type as it stands in running code.
func (l *lowerer) typeText(t types.Type) string {
	switch t := types.Unalias(t).(type) {
	case *types.Named:
		return l.namedText(t)
	case *types.Pointer:
		return "*" + l.typeText(t.Elem())
	case *types.Slice:
		return "[]" + l.typeText(t.Elem())
	case *types.Array:
		return fmt.Sprintf("[%d]%s", t.Len(), l.typeText(t.Elem()))
	case *types.Map:
		return "map[" + l.typeText(t.Key()) + "]" + l.typeText(t.Elem())
	case *types.Signature:
		return "func" + l.signatureText(t)
	case *types.Struct:
		return l.structText(t)
	case *types.Basic:
		return types.Default(t).String()
	}
	return types.TypeString(t, func(p *types.Package) string { return l.use(p) })
}

func (l *lowerer) namedText(t *types.Named) string {
	if q, ok := l.World.Quantity(t); ok {
		if q.Base == nil {
			return "float64"
		}
		t = q.Base
	}
	if p := l.use(t.Obj().Pkg()); p != "" {
		return p + "." + t.Obj().Name()
	}
	return t.Obj().Name()
}

// use notes the import of a package and returns its name in the program.
func (l *lowerer) use(p *types.Package) string {
	if p == nil || p.Path() == "notebook" {
		return ""
	}
	for name, q := range l.Lib.Packages {
		if q.Path() == p.Path() {
			l.Imports[name] = true
			return name
		}
	}
	return p.Name()
}

func (l *lowerer) signatureText(s *types.Signature) string {
	var params, results []string
	for i := range s.Params().Len() {
		t := s.Params().At(i).Type()
		if s.Variadic() && i == s.Params().Len()-1 {
			params = append(params, "..."+l.typeText(t.(*types.Slice).Elem()))
			continue
		}
		params = append(params, l.typeText(t))
	}
	for i := range s.Results().Len() {
		results = append(results, l.typeText(s.Results().At(i).Type()))
	}
	return "(" + strings.Join(params, ", ") + ") (" + strings.Join(results, ", ") + ")"
}

func (l *lowerer) structText(s *types.Struct) string {
	var fields []string
	for f := range s.Fields() {
		fields = append(fields, f.Name()+" "+l.typeText(f.Type()))
	}
	return "struct{" + strings.Join(fields, "; ") + "}"
}
