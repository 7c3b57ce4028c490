package lower

import (
	"go/ast"
	"go/types"

	"lode/engine/check"
)

// This file carries errors of the notebook's own types, which the runner keeps for the interpreter.

// mistake returns the name of the function that makes an error of a value of type t.
func (l *lowerer) mistake(t types.Type) string {
	return l.helper("mistake "+l.plainText(t), func(name string) string {
		return "func " + name + "(x " + l.plainText(t) + ") error { return ˑh.Mistake(" + l.labelText(t) + "{x}, func() string { return x.Error() }) }"
	})
}

// fromOpened returns the name of the function that makes an error of what is in an interface of
// the notebook.
func (l *lowerer) fromOpened(t types.Type) string {
	return l.helper("error of "+l.plainText(t), func(name string) string {
		cases := ""
		for _, own := range l.implementing(t) {
			cases += "case " + l.labelText(own) + ": return " + l.mistake(own) + "(v." + l.labelName(own) + "); "
		}
		if cases == "" {
			return "func " + name + "(x " + l.plainText(t) + ") error { return x }"
		}
		return "func " + name + "(x " + l.plainText(t) + ") error { if x == nil { return nil }; switch v := " + l.opened("x", t) + ".(type) { " + cases + "}; return x }"
	})
}

// asError returns the name of the function that finds an error in what holds anything.
func (l *lowerer) asError() string {
	return l.helper("as error", func(name string) string {
		cases, err := "", types.Universe.Lookup("error").Type()
		for _, own := range l.implementing(err) {
			cases += "case " + l.labelText(own) + ": return " + l.mistake(own) + "(v." + l.labelName(own) + "), true; "
		}
		if cases != "" {
			cases = "switch v := x.(type) { " + cases + "}; "
		}
		return "func " + name + "(x any) (error, bool) { if x == nil { return nil, false }; " + cases + "e, ok := x.(error); return e, ok }"
	})
}

// findError lowers errors.As(err, &x) for an error of the notebook's own type.
func (l *lowerer) findError(e *ast.CallExpr) bool {
	s, ok := ast.Unparen(e.Fun).(*ast.SelectorExpr)
	if !ok || !l.guard || s.Sel.Name != "As" || len(e.Args) != 2 || !l.fromPackage(s, "errors") {
		return false
	}
	p, ok := l.Exprs[e.Args[1]].Type.(*types.Pointer)
	if !ok || !l.ownError(p.Elem()) {
		return false
	}
	from, to := l.span(e.Fun)
	l.edits.replace(from, to, l.helper("find "+l.plainText(p), func(name string) string {
		return "func " + name + "(e error, p " + l.plainText(p) + ") bool { return ˑh.Search(e, func(x any) bool { v, ok := x.(" + l.labelText(p.Elem()) + "); if ok { *p = v." + l.labelName(p.Elem()) + " }; return ok }) }"
	}))
	l.expr(e.Args[0])
	l.plain(e.Args[1])
	return true
}

// isMistake reports whether an argument of fmt.Errorf is an error of the notebook's own type, which
// it may wrap.
func (l *lowerer) isMistake(fun, e ast.Expr) bool {
	s, ok := ast.Unparen(fun).(*ast.SelectorExpr)
	return ok && s.Sel.Name == "Errorf" && l.ownError(l.Exprs[e].Type)
}

// ownError reports whether t is a type of the notebook that is an error.
func (l *lowerer) ownError(t types.Type) bool {
	return t != nil && !types.IsInterface(t) && l.ours(t) && types.Implements(t, types.Universe.Lookup("error").Type().Underlying().(*types.Interface))
}

func (l *lowerer) fromPackage(s *ast.SelectorExpr, path string) bool {
	id, ok := s.X.(*ast.Ident)
	return ok && l.Exprs[id].Mode == check.Package && l.Lib.Packages[id.Name].Path() == path
}
