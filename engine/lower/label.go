package lower

import (
	"fmt"
	"go/ast"
	"go/types"

	"lode/engine/check"
)

// This file labels what has a type of the notebook where it goes into an interface that holds
// anything. The interpreter knows such a value by its parts only: two structs of the same fields,
// or a whole number and a type that is one, are the same to it. So it gets a struct around it
// whose only field is named after its type. An exported program needs none.

// anything reports whether t is an interface without methods.
func anything(t types.Type) bool {
	if t == nil {
		return false
	}
	i, ok := t.Underlying().(*types.Interface)
	return ok && i.Empty()
}

// into lowers e for an interface.
func (l *lowerer) into(e ast.Expr, target types.Type) {
	x := l.Exprs[e]
	switch {
	case l.guard && check.IsNil(x) && l.libraryNamed(target):
		l.none(e, target)
	case l.guard && isErrorType(target) && l.ours(x.Type) && !types.IsInterface(x.Type):
		l.wrapped(e, l.plain, func(text string) string { return l.mistake(x.Type) + "(" + text + ")" })
	case l.guard && isErrorType(target) && types.IsInterface(x.Type) && l.ours(x.Type):
		l.wrapped(e, l.plain, func(text string) string { return l.fromOpened(x.Type) + "(" + text + ")" })
	case l.guard && !anything(target) && isList(x.Type) && l.ours(x.Type):
		l.around(e, l.helper("hand "+l.plainText(x.Type)+" as "+l.plainText(target), func(name string) string {
			return "func " + name + "(x " + l.plainText(x.Type) + ") " + l.plainText(target) + " { return x }"
		})+"(", ")", l.plain)
	case !l.guard || !anything(target) || x.Type == nil || check.IsNil(x) || anything(x.Type):
		l.boxed(e)
	case types.IsInterface(x.Type):
		l.wrapped(e, l.plain, func(text string) string { return l.opened(text, x.Type) })
	case l.ours(x.Type):
		l.around(e, l.labelText(x.Type)+"{", "}", l.plain)
	default:
		l.boxed(e)
	}
}

// isList reports the types of which the interpreter hands a value to an interface with methods only
// as the result of a function.
func isList(t types.Type) bool {
	if t == nil {
		return false
	}
	_, ok := t.Underlying().(*types.Slice)
	return ok
}

// ours reports whether a type of the notebook's top level is part of t.
func (l *lowerer) ours(t types.Type) bool {
	switch t := types.Unalias(t).(type) {
	case *types.Named:
		for _, d := range l.declared {
			if types.Identical(d, t) {
				return true
			}
		}
	case interface{ Elem() types.Type }:
		if m, ok := t.(*types.Map); ok && l.ours(m.Key()) {
			return true
		}
		return l.ours(t.Elem())
	}
	return false
}

// labelName is the name of the field that holds a value of type t.
func (l *lowerer) labelName(t types.Type) string {
	for i, known := range l.labelled {
		if types.Identical(known, t) {
			return fmt.Sprint("ˑis", i)
		}
	}
	l.labelled = append(l.labelled, t)
	return fmt.Sprint("ˑis", len(l.labelled)-1)
}

func (l *lowerer) labelText(t types.Type) string {
	return "struct{ " + l.labelName(t) + " " + l.plainText(t) + " }"
}

// caseOf reports whether a value of type t is labelled where it comes out of x.
func (l *lowerer) caseOf(x ast.Expr, t types.Type) bool {
	from := l.Exprs[x].Type
	return l.guard && t != nil && from != nil && types.IsInterface(from) && !types.IsInterface(t) && l.ours(t)
}

// assertion lowers x.(T).
func (l *lowerer) assertion(e *ast.TypeAssertExpr) {
	t := l.Exprs[e.Type].Type
	if l.guard && isErrorType(t) && anything(l.Exprs[e.X].Type) {
		name := l.asError()
		l.around(e, "func() error { ˑe, ˑok := "+name+"(", "); if !ˑok { panic(\"interface conversion: no error\") }; return ˑe }()", func(ast.Expr) { l.assertedValue(e) })
		return
	}
	if !l.caseOf(e.X, t) {
		l.asserted(e)
		return
	}
	l.asserted(e)
	_, to := l.span(e)
	l.edits.close(to, "."+l.labelName(t))
}

// asserted lowers x.(T) as it stands, with the label on.
func (l *lowerer) asserted(e *ast.TypeAssertExpr) {
	if l.caseOf(e.X, l.Exprs[e.Type].Type) {
		l.wrapped(e.X, l.raw, func(text string) string { return l.opened(text, l.Exprs[e.X].Type) })
	} else {
		l.raw(e.X)
	}
	l.caseExpr(e.Type, e.X)
}

// assertedValue lowers the x of x.(error) alone.
func (l *lowerer) assertedValue(e *ast.TypeAssertExpr) {
	l.raw(e.X)
	_, from := l.span(e.X)
	_, to := l.span(e)
	l.edits.replace(from, to, "")
}

// caseExpr lowers the type that a value in x may have.
func (l *lowerer) caseExpr(e, x ast.Expr) {
	if t := l.Exprs[e].Type; l.caseOf(x, t) {
		from, to := l.span(e)
		l.edits.replace(from, to, l.labelText(t))
		return
	}
	l.typeExpr(e, real)
}

// opened writes the value text of an interface type t with methods as one that holds anything.
func (l *lowerer) opened(text string, t types.Type) string {
	if !l.guard || anything(t) || len(l.declared) == 0 {
		return text
	}
	return l.helper("opened "+l.plainText(t), func(name string) string {
		return "func " + name + "(x " + l.plainText(t) + ") any { if x == nil { return nil }; " + l.openedBody(t) + " }"
	}) + "(" + text + ")"
}

// openedBody tells the types of the notebook apart.
func (l *lowerer) openedBody(t types.Type) string {
	if isErrorType(t) {
		return "return ˑh.Inside(x)"
	}
	cases := ""
	for _, own := range l.implementing(t) {
		text := l.plainText(own)
		cases += "case " + text + ": return " + l.labelText(own) + "{x.(" + text + ")}; "
	}
	if cases == "" {
		return "return x"
	}
	return "switch x.(type) { " + cases + "}; return x"
}

// implementing lists the types of the notebook, and pointers to them, that have the methods of t.
func (l *lowerer) implementing(t types.Type) []types.Type {
	var list []types.Type
	for _, d := range l.declared {
		for _, own := range []types.Type{d, types.NewPointer(d)} {
			if !types.IsInterface(d) && types.Implements(own, t.Underlying().(*types.Interface)) {
				list = append(list, own)
			}
		}
	}
	return list
}
