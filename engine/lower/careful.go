package lower

import (
	"fmt"
	"go/ast"
	"go/types"
	"math"

	"lode/engine/check"
	"lode/engine/issue"
)

// This file lowers one statement so that it tells which place of which list is not there: the interpreter only tells that
// it is not.

// Careful turns a program into Go as Lower does, in which the places of lists in one statement, and some lines more, are looked at before they are
// taken.
func Careful(p *check.Program, line issue.Place) *Lowered {
	l := newLowerer(p, true)
	l.careful = &line
	l.assemble(l.pieces())
	return l.Lowered
}

// mostLines is how many lines a statement may have after its first one.
const mostLines = 30

// looked puts the look at a place around an index that is lowered.
func (l *lowerer) looked(e *ast.IndexExpr) {
	if n, ok := l.lengthOf(e, e.X); ok {
		l.look(e.Index, "Place", n)
	}
}

// lookedBounds puts it around the bounds of a slice.
func (l *lowerer) lookedBounds(e *ast.SliceExpr) {
	n, ok := l.lengthOf(e, e.X)
	if !ok {
		return
	}
	if _, list := l.Exprs[e.X].Type.Underlying().(*types.Slice); list {
		n = "cap" + n[len("len"):]
	}
	for _, bound := range []ast.Expr{e.Low, e.High, e.Max} {
		if bound != nil {
			l.look(bound, "Bound", n)
		}
	}
}

func (l *lowerer) look(e ast.Expr, how, length string) {
	from, to := l.span(e)
	l.edits.open(from, "ˑh."+how+"(int(")
	l.edits.close(to, "), "+length+")")
}

// lengthOf is the text of the length of x, which e takes a place of, if e is to be looked at and asking x twice changes nothing.
func (l *lowerer) lengthOf(e, x ast.Expr) (text string, ok bool) {
	t := l.Exprs[x].Type
	if l.careful == nil || t == nil || l.Exprs[x].Mode != check.Value || !still(x) {
		return "", false
	}
	if at := l.PlaceOf(e); at.File != l.careful.File || at.Line < l.careful.Line || at.Line > l.careful.Line+mostLines {
		return "", false
	}
	if p, ok := t.Underlying().(*types.Pointer); ok {
		t = p.Elem()
	}
	switch t := t.Underlying().(type) {
	case *types.Slice:
		return "len(" + l.renderRaw(x) + ")", true
	case *types.Array:
		return fmt.Sprintf("len(%s)", l.renderRaw(x)), t.Len() < math.MaxInt32
	case *types.Basic:
		return "len(" + l.renderRaw(x) + ")", t.Info()&types.IsString != 0
	}
	return "", false
}

// still reports whether an expression only names things.
func still(e ast.Expr) bool {
	switch e := ast.Unparen(e).(type) {
	case *ast.Ident, *ast.BasicLit:
		return true
	case *ast.SelectorExpr:
		return still(e.X)
	case *ast.StarExpr:
		return still(e.X)
	case *ast.IndexExpr:
		return still(e.X) && still(e.Index)
	}
	return false
}
