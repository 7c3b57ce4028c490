package lower

import (
	"fmt"
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"strings"

	"lode/engine/check"
)

// This file puts the guard into a program: a counter at each turn of a loop and each entry
// of a function that ends a run when its budget of steps is used up, a stack of the
// statements that calls were made from, which bounds the depth of calls and tells the way
// to a failure, and marks that tell which statement failed. Only statements that can fail
// carry a mark, and only functions with such statements keep the stack, so that plain
// arithmetic pays for neither.

// guardText is the part of a guarded program that does not depend on the notebook.
const guardText = `
var ˑn = ˑh.Steps()
var ˑs = make([]int, ˑh.Depth()+2)
var ˑmax = ˑh.Depth()
var ˑd, ˑat int
var ˑheld []int
var ˑsaved bool

func ˑway() []int {
	if ˑheld != nil { return ˑheld }
	way := []int{ˑat}
	for i := ˑd - 1; i >= 0; i-- { way = append(way, ˑs[i]) }
	return way
}

func ˑcaught(v any) any {
	if v != nil { ˑsaved = true; ˑheld = nil; v = ˑh.Caught(v) }
	return v
}

func ˑleave(done bool, depth int) {
	if !done && !ˑsaved && ˑheld == nil { ˑheld = ˑway() }
	if !done { ˑsaved = false }
	ˑd = depth
	ˑat = ˑs[depth]
}
`

// afresh returns the function that makes all variables what they were before the first run.
func (l *lowerer) afresh() string {
	var zero, set strings.Builder
	for i, v := range l.Vars {
		if v.Name() != "_" {
			fmt.Fprintf(&zero, "\tvar ˑz%d %s\n", i, l.plainText(v.Type()))
			fmt.Fprintf(&set, "\t%s = ˑz%d\n", v.Name(), i)
		}
	}
	if l.wanted {
		set.WriteString("\tˑworking = false\n")
	}
	return "\nfunc " + Afresh + "() {\n" + zero.String() + set.String() + guardAfresh + "}\n"
}

const guardAfresh = `	ˑn = ˑh.Steps()
	ˑs = make([]int, ˑh.Depth()+2)
	ˑmax = ˑh.Depth()
	ˑd, ˑat = 0, 0
	ˑheld = nil
	ˑsaved = false
`

// frame is a function being lowered.
type frame struct {
	sig     *types.Signature
	guarded bool // keeps the stack
	defers  bool // has a defer statement of its own
}

// guarded reports whether the program is to have a guard.
func (l *lowerer) guarded() bool { return l.guard }

// mark returns the text that says which statement runs, for one that can fail.
func (l *lowerer) markText(n ast.Node) string { return fmt.Sprintf("ˑat = %d; ", l.spot(n)) }

// Unlisted is the depth of a loop in a function that does not keep the stack.
const Unlisted = -1

// turnText is what stands at the start of each turn of a loop.
func (l *lowerer) turnText(n ast.Node) string {
	if !l.guard {
		return ""
	}
	depth := 0
	if l.frame.sig != nil && !l.frame.guarded {
		depth = Unlisted
	}
	return fmt.Sprintf(" ˑn--; if ˑn < 0 { ˑn = ˑh.Over(%d, %d) };", l.spot(n), depth)
}

// enter lowers the entry of a function and returns its frame.
func (l *lowerer) enter(n ast.Node, body *ast.BlockStmt, sig *types.Signature) frame {
	f := frame{sig: sig, guarded: l.guard && l.bodyMayFail(body), defers: hasDefer(body)}
	if !f.guarded {
		return f
	}
	at := l.offset(body.Lbrace) + 1
	text := fmt.Sprintf(" ˑs[ˑd] = ˑat; ˑd++; ˑn--; if ˑd > ˑmax || ˑn < 0 { ˑn = ˑh.Over(%d, ˑd) }; ", l.spot(&ast.Ident{NamePos: n.Pos(), Name: "func"}))
	if f.defers {
		text += "ˑok, ˑdepth := false, ˑd-1; defer func() { ˑleave(ˑok, ˑdepth) }(); "
	}
	l.edits.open(at, text)
	return f
}

// leave lowers the end of a function's body that is reached without a return.
func (l *lowerer) leave(f frame, body *ast.BlockStmt) {
	if f.guarded && f.sig.Results().Len() == 0 {
		l.edits.close(l.offset(body.Rbrace), "; "+f.exit())
	}
}

// exit is the text that leaves a function in good order.
func (f frame) exit() string {
	if f.defers {
		return "ˑok = true; "
	}
	return "ˑd--; ˑat = ˑs[ˑd]; "
}

func hasDefer(body *ast.BlockStmt) bool {
	found := false
	ast.Inspect(body, func(n ast.Node) bool {
		switch n.(type) {
		case *ast.FuncLit:
			return false
		case *ast.DeferStmt:
			found = true
		}
		return !found
	})
	return found
}

// bodyMayFail reports whether a function can fail or call something that can.
func (l *lowerer) bodyMayFail(body *ast.BlockStmt) bool { return l.anyFails(body) }

// mayFail reports whether evaluating one of the expressions can fail.
func (l *lowerer) mayFail(list ...ast.Expr) bool {
	for _, e := range list {
		if e != nil && l.anyFails(e) {
			return true
		}
	}
	return false
}

func (l *lowerer) anyFails(n ast.Node) bool {
	found := false
	ast.Inspect(n, func(n ast.Node) bool {
		if _, ok := n.(*ast.FuncLit); ok || found {
			return false
		}
		switch n := n.(type) {
		case *ast.RangeStmt:
			_, found = l.Exprs[n.X].Type.Underlying().(*types.Signature)
		case *ast.DeferStmt:
			found = true
		case *ast.AssignStmt:
			found = l.assignFails(n)
		case ast.Expr:
			found = l.fails(n)
		}
		return !found
	})
	return found
}

// assignFails finds whole-number division and writes to maps, which may be nil.
func (l *lowerer) assignFails(s *ast.AssignStmt) bool {
	if s.Tok == token.QUO_ASSIGN || s.Tok == token.REM_ASSIGN || s.Tok == token.SHL_ASSIGN || s.Tok == token.SHR_ASSIGN {
		return l.divides(s.Lhs[0], s.Rhs[0])
	}
	return false
}

// divides reports whether x/y or x%y works on whole numbers with a divisor that is not
// known.
func (l *lowerer) divides(x, y ast.Expr) bool {
	t := l.Exprs[x].Type
	return t != nil && basicInfo(t)&types.IsInteger != 0 && (l.Exprs[y].Value == nil || constant.Sign(l.Exprs[y].Value) == 0)
}

// fails judges an expression by itself, without its parts.
func (l *lowerer) fails(e ast.Expr) bool {
	switch e := e.(type) {
	case *ast.IndexExpr:
		return l.Exprs[e].Mode == check.Value
	case *ast.SliceExpr, *ast.StarExpr:
		return l.Exprs[e].Mode == check.Value
	case *ast.TypeAssertExpr:
		return true
	case *ast.BinaryExpr:
		if e.Op == token.QUO || e.Op == token.REM || e.Op == token.SHL || e.Op == token.SHR {
			return l.divides(e.X, e.Y)
		}
	case *ast.SelectorExpr:
		if t := l.Exprs[e.X].Type; t != nil && l.Exprs[e.X].Mode == check.Value {
			_, pointer := t.Underlying().(*types.Pointer)
			return pointer || types.IsInterface(t)
		}
	case *ast.CallExpr:
		return l.callFails(e)
	}
	return false
}

// callFails lets pass what cannot fail: mathematics, conversions, len and the like.
func (l *lowerer) callFails(e *ast.CallExpr) bool {
	switch l.Exprs[e.Fun].Mode {
	case check.Function, check.Type:
		return false
	case check.Builtin:
		switch ast.Unparen(e.Fun).(*ast.Ident).Name {
		case "len", "cap", "append", "min", "max", "new", "copy", "delete", "clear", "real", "imag", "complex":
			return false
		}
		return true
	}
	if s, ok := ast.Unparen(e.Fun).(*ast.SelectorExpr); ok && !l.Must[e] {
		if id, ok := s.X.(*ast.Ident); ok && l.Exprs[id].Mode == check.Package && (id.Name == "math" || id.Name == "cmplx") {
			return false
		}
	}
	return true
}
