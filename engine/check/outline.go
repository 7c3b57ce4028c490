package check

import (
	"go/ast"
	"go/token"
	"strings"

	"lode/engine/book"
	"lode/engine/library"
)

// Item is one statement or declaration of the top level, by its place in its cell's code
// and the names that it defines.
type Item struct {
	Cell     int // which cell, from zero
	From, To int // bytes of the cell's code
	Names    []string
}

// Outline lists the statements of a book without checking them. Statements that do not
// parse are left out.
func Outline(b book.Book) []Item {
	c := newChecker(&library.Library{}, b)
	c.split()
	cells := map[*book.Cell]int{}
	for i, cell := range b.Cells() {
		cells[cell] = i
	}
	var items []Item
	for _, chunk := range c.Chunks {
		items = append(items, Item{cells[chunk.Cell], chunk.Offset, chunk.Offset + len(chunk.Text), chunk.names()})
	}
	return items
}

// names lists what a chunk defines at the top level; methods count as Type.Method.
func (c *Chunk) names() []string {
	if c.Func != nil {
		return []string{receiverName(c.Func) + c.Func.Name.Name}
	}
	var names []string
	for _, s := range c.Stmts {
		switch s := s.(type) {
		case *ast.AssignStmt:
			if s.Tok == token.DEFINE {
				names = append(names, identNames(s.Lhs)...)
			}
		case *ast.DeclStmt:
			names = append(names, declNames(s.Decl)...)
		}
	}
	return names
}

func receiverName(d *ast.FuncDecl) string {
	if d.Recv == nil || len(d.Recv.List) == 0 {
		return ""
	}
	t := d.Recv.List[0].Type
	if p, ok := t.(*ast.StarExpr); ok {
		t = p.X
	}
	if id, ok := t.(*ast.Ident); ok {
		return id.Name + "."
	}
	return ""
}

func identNames(list []ast.Expr) []string {
	var names []string
	for _, e := range list {
		if id, ok := e.(*ast.Ident); ok && id.Name != "_" {
			names = append(names, id.Name)
		}
	}
	return names
}

func declNames(d ast.Decl) []string {
	var names []string
	g, ok := d.(*ast.GenDecl)
	if !ok {
		return nil
	}
	for _, s := range g.Specs {
		switch s := s.(type) {
		case *ast.ValueSpec:
			for _, n := range s.Names {
				names = append(names, n.Name)
			}
		case *ast.TypeSpec:
			names = append(names, s.Name.Name)
		}
	}
	return names
}

// Incomplete reports whether code breaks off where more is needed: an open bracket, brace
// or text, or an operator at its end.
func Incomplete(code string) bool {
	b := book.Book{File: "entry.lode", Parts: []book.Part{{Cell: &book.Cell{Code: code, Line: 1}}}}
	c := newChecker(&library.Library{}, b)
	c.split()
	for _, i := range c.issues {
		if i.Code == "syntax" && atEnd(code, i.Line, i.Column) {
			return true
		}
	}
	return strings.Count(code, "`")%2 == 1
}

// atEnd reports whether nothing but space follows a place in code.
func atEnd(code string, line, column int) bool {
	lines := strings.Split(code, "\n")
	if line > len(lines) {
		return true
	}
	rest := []rune(lines[line-1])
	tail := string(rest[min(column-1, len(rest)):]) + strings.Join(lines[line:], "\n")
	return strings.TrimSpace(tail) == ""
}
