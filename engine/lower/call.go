package lower

import (
	"fmt"
	"go/ast"
	"go/types"
	"strconv"
	"strings"

	"lode/engine/check"
)

// This file lowers calls.

func (l *lowerer) call(e *ast.CallExpr) {
	if l.wraps(e) {
		l.wrap(e)
		return
	}
	l.bareCall(e)
}

// wraps reports whether a call stands in a function literal of its own: to check its
// error, or to convert one of several results.
func (l *lowerer) wraps(e *ast.CallExpr) bool {
	if l.Must[e] {
		return true
	}
	t, ok := l.Exprs[e].Type.(*types.Tuple)
	return ok && l.realCallee(e.Fun) && l.mixed(t)
}

func (l *lowerer) wrap(e *ast.CallExpr) {
	from, to := l.span(e)
	if !l.Must[e] {
		t := l.Exprs[e].Type.(*types.Tuple)
		before, after, _ := cutMark(l.returning(mark, t, plain))
		l.edits.open(from, "func() ("+l.tupleText(t, plain)+") { "+before)
		l.bareCall(e)
		l.edits.close(to, after+" }()")
		return
	}
	t := l.Exprs[e].Type
	value := "ˑv"
	if l.realCallee(e.Fun) {
		value = l.convert("ˑv", t, plain)
	}
	l.edits.open(from, "func() "+l.plainText(t)+" { ˑv, ˑe := ")
	l.bareCall(e)
	l.edits.close(to, fmt.Sprintf("; if ˑe != nil { ˑh.Fail(%d, ˑe) }; return %s }()", l.spot(e), value))
}

// bareCall lowers a call by the kind of what is called.
func (l *lowerer) bareCall(e *ast.CallExpr) {
	switch l.Exprs[e.Fun].Mode {
	case check.Function:
		l.function(e)
	case check.Builtin:
		l.builtin(e)
	case check.Type:
		l.conversion(e)
	default:
		if instance, ok := l.Generic[e.Fun]; ok {
			l.genericCall(e, instance)
			return
		}
		if s, ok := ast.Unparen(e.Fun).(*ast.SelectorExpr); ok {
			l.called[s] = true
		}
		if l.watched(e) || l.findError(e) {
			return
		}
		l.raw(e.Fun)
		l.arguments(e)
	}
}

func (l *lowerer) arguments(e *ast.CallExpr) {
	sig, _ := l.Exprs[e.Fun].Type.Underlying().(*types.Signature)
	if !l.realCallee(e.Fun) {
		for i, a := range e.Args {
			l.argument(a, sig, i, e.Ellipsis.IsValid())
		}
		return
	}
	present := l.presents(e.Fun)
	for i, a := range e.Args {
		t := paramType(sig, i, e.Ellipsis.IsValid())
		switch {
		case t == nil:
			l.expr(a)
		case present && types.IsInterface(t) && l.isMistake(e.Fun, a):
			l.into(a, types.Universe.Lookup("error").Type())
		case present && types.IsInterface(t):
			l.presented(a)
		case present && l.guard && e.Ellipsis.IsValid() && i == len(e.Args)-1 && len(l.declared) > 0:
			l.wrapped(a, l.plain, func(text string) string { return l.eachPresented() + "(" + text + ")" })
		default:
			l.toReal(a, t)
		}
	}
}

// argument lowers an argument of a function of the notebook. Where a function takes any number of
// anything the interpreter would take a list for several of them.
func (l *lowerer) argument(a ast.Expr, sig *types.Signature, i int, spread bool) {
	t := paramType(sig, i, spread)
	_, list := l.Exprs[a].Type.(*types.Slice)
	if !l.guard || !list || spread || !anything(t) || !sig.Variadic() || i < sig.Params().Len()-1 {
		l.expr(a)
		return
	}
	l.around(a, l.sameAs(t)+"(", ")", l.expr)
}

// sameAs returns the name of a function that returns what it is given, as a t.
func (l *lowerer) sameAs(t types.Type) string {
	return l.helper("as "+l.plainText(t), func(name string) string {
		return "func " + name + "(x " + l.plainText(t) + ") " + l.plainText(t) + " { return x }"
	})
}

func paramType(sig *types.Signature, i int, spread bool) types.Type {
	if sig == nil || sig.Params().Len() == 0 {
		return nil
	}
	last := sig.Params().Len() - 1
	if sig.Variadic() && i >= last && !spread {
		return sig.Params().At(last).Type().(*types.Slice).Elem()
	}
	return sig.Params().At(min(i, last)).Type()
}

// conversion lowers T(x). Between quantities and float64 there is nothing to do.
func (l *lowerer) conversion(e *ast.CallExpr) {
	t, x := l.Exprs[e.Fun].Type, e.Args[0]
	from, to := l.span(e.Fun)
	shape := l.shape(t)
	switch {
	case l.plainText(t) == "float64" && l.runtime(x) == "float64":
		l.edits.replace(from, to, "")
		l.number(x)
	case l.plainText(t) == "float64":
		l.edits.replace(from, to, "float64")
		l.whole(x)
	case l.plainText(t) == "complex128":
		l.edits.replace(from, to, "complex128")
		l.operand(x, "complex128")
	case shape != t && l.mixed(shape):
		l.toReal(x, t)
	case l.guard && types.IsInterface(t): // the interpreter fails where several are made at once
		l.edits.replace(from, to, l.sameAs(t))
		l.expr(x)
	default:
		l.typeExpr(e.Fun, plain)
		l.expr(x)
	}
}

// function lowers a call of the mathematics in scope to package math.
func (l *lowerer) function(e *ast.CallExpr) {
	name := ast.Unparen(e.Fun).(*ast.Ident).Name
	from, to := l.span(e.Fun)
	switch {
	case name == check.KnobName:
		l.knob(e)
		return
	case name == check.CountedName:
		unit := l.UnitSource(e.Args[1], l.chunkAt.SourceText(e.Args[1]))
		_, end := l.span(e.Args[1])
		l.edits.replace(from, to, l.packageName(l.Lib.Quantity)+"."+l.Lib.Count)
		l.number(e.Args[0])
		l.number(e.Args[1])
		l.edits.close(end, ", "+strconv.Quote(unit))
		return
	case name == "min" || name == "max":
		l.edits.replace(from, to, l.extreme(name, len(e.Args), l.runtime(e)))
		for _, a := range e.Args {
			l.asResult(e, a)
		}
		return
	case name == "abs" && l.complexSide(e.Args[0]):
		l.edits.replace(from, to, l.packageName(l.Lib.Packages["cmplx"])+".Abs")
		l.expr(e.Args[0])
		return
	}
	l.edits.replace(from, to, l.packageName(l.Lib.Packages["math"])+"."+check.MathName(name))
	for _, a := range e.Args {
		l.number(a)
	}
}

// asResult lowers an argument in the type of the call's result.
func (l *lowerer) asResult(e *ast.CallExpr, a ast.Expr) {
	if l.runtime(e) == "float64" {
		l.number(a)
		return
	}
	l.expr(a)
}

// extreme returns the name of a function that finds the least or greatest of n values, as
// Go's own min and max do, which the interpreter does not know.
func (l *lowerer) extreme(name string, n int, t string) string {
	return l.helper(fmt.Sprint(name, n, t), func(helper string) string {
		params := make([]string, n)
		body := ""
		for i := range n {
			params[i] = fmt.Sprint("a", i)
			if i > 0 && t == "float64" {
				body += fmt.Sprintf("a0 = math.%s(a0, a%d); ", strings.ToUpper(name[:1])+name[1:], i)
			} else if i > 0 {
				body += fmt.Sprintf("if a%d %s a0 { a0 = a%d }; ", i, map[string]string{"min": "<", "max": ">"}[name], i)
			}
		}
		return fmt.Sprintf("func %s(%s %s) %s { %sreturn a0 }", helper, strings.Join(params, ", "), t, t, body)
	})
}

// builtin lowers Go's own functions.
func (l *lowerer) builtin(e *ast.CallExpr) {
	switch name := ast.Unparen(e.Fun).(*ast.Ident).Name; name {
	case "clear":
		l.clear(e)
	case "make", "new":
		l.typeExpr(e.Args[0], plain)
		l.exprs(e.Args[1:])
	case "recover":
		from, to := l.span(e)
		if l.guarded() {
			l.edits.replace(from, to, "ˑcaught(recover())")
		} else {
			l.edits.replace(from, to, "ˑh.Caught(recover())")
		}
	case "append":
		l.appendCall(e)
	case "panic":
		if l.ownError(l.Exprs[e.Args[0]].Type) {
			l.into(e.Args[0], types.Universe.Lookup("error").Type())
			return
		}
		l.presented(e.Args[0])
	default:
		l.exprs(e.Args)
	}
}

// appendCall keeps the form of the slice that is appended to.
func (l *lowerer) appendCall(e *ast.CallExpr) {
	l.raw(e.Args[0])
	s, ok := l.Exprs[e.Args[0]].Type.Underlying().(*types.Slice)
	for i, a := range e.Args[1:] {
		t := s.Elem()
		if e.Ellipsis.IsValid() && i == len(e.Args)-2 {
			t = s
		}
		if ok && (l.isReal(e.Args[0]) || l.libraryNamed(l.Exprs[e.Args[0]].Type)) {
			l.toReal(a, t)
		} else {
			l.expr(a)
		}
	}
}

// clear spells out what Go's clear does, which the interpreter does not know.
func (l *lowerer) clear(e *ast.CallExpr) {
	from, to := l.span(e.Fun)
	t := l.Exprs[e.Args[0]].Type
	name := l.helper("clear "+l.plainText(t), func(helper string) string {
		body := "for k := range x { delete(x, k) }"
		if s, ok := t.Underlying().(*types.Slice); ok {
			body = "for k := range x { var z " + l.plainText(s.Elem()) + "; x[k] = z }"
		}
		return "func " + helper + "(x " + l.plainText(t) + ") { " + body + " }"
	})
	l.edits.replace(from, to, name)
	l.expr(e.Args[0])
}
