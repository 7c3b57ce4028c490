package lower

import (
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"

	"lode/engine/check"
)

// expr lowers an expression to its plain form, conversions that happen by themselves
// included.
func (l *lowerer) expr(e ast.Expr) {
	if e == nil {
		return
	}
	if name := l.told[e]; name != "" {
		l.around(e, name+"(", ")", l.untold)
		return
	}
	l.untold(e)
}

func (l *lowerer) untold(e ast.Expr) {
	target, ok := l.Convert[e]
	switch {
	case !ok:
		l.plain(e)
	case types.IsInterface(target):
		l.into(e, target)
	case l.constant(e) && l.plainText(target) == "complex128":
		from, to := l.span(e)
		l.edits.replace(from, to, valueText(constant.ToComplex(l.Exprs[e].Value), target))
	case l.runtime(e) == l.plainText(target):
		l.plain(e)
	default:
		l.around(e, l.plainText(target)+"(", ")", l.plain)
	}
}

// around lowers e between two texts.
func (l *lowerer) around(e ast.Expr, before, after string, lower func(ast.Expr)) {
	from, to := l.span(e)
	l.edits.open(from, before)
	lower(e)
	l.edits.close(to, after)
}

// wrapped lowers e and gives its text to a conversion.
func (l *lowerer) wrapped(e ast.Expr, lower func(ast.Expr), conversion func(text string) string) {
	before, after, _ := cutMark(conversion(mark))
	l.around(e, before, after, lower)
}

// runtime returns the type that e has in the running program.
func (l *lowerer) runtime(e ast.Expr) string { return l.plainText(l.Exprs[e].Type) }

// plain lowers e to its plain form.
func (l *lowerer) plain(e ast.Expr) {
	t := l.Exprs[e].Type
	if t != nil && l.isReal(e) && l.mixed(t) && !l.constant(e) {
		l.wrapped(e, l.raw, func(text string) string { return l.convert(text, t, plain) })
		return
	}
	l.raw(e)
}

func (l *lowerer) constant(e ast.Expr) bool {
	x := l.Exprs[e]
	return x.Mode == check.Value && x.Value != nil
}

// isReal reports whether the value of e comes from the library, in the library's form.
func (l *lowerer) isReal(e ast.Expr) bool {
	switch e := e.(type) {
	case *ast.ParenExpr:
		return l.isReal(e.X)
	case *ast.CallExpr:
		return l.Exprs[e.Fun].Mode == check.Value && l.realCallee(e.Fun) && !l.wraps(e)
	case *ast.SelectorExpr:
		return l.Exprs[e.X].Mode == check.Package || l.foreign(l.Exprs[e.X].Type)
	case *ast.IndexExpr:
		return l.isReal(e.X) || l.libraryNamed(l.Exprs[e.X].Type)
	case *ast.SliceExpr:
		return l.isReal(e.X)
	case *ast.StarExpr:
		return l.isReal(e.X)
	case *ast.TypeAssertExpr:
		return !l.caseOf(e.X, l.Exprs[e.Type].Type)
	}
	return false
}

// foreign reports whether the fields and methods of t are the library's.
func (l *lowerer) foreign(t types.Type) bool {
	if t == nil {
		return false
	}
	if p, ok := types.Unalias(t).(*types.Pointer); ok {
		t = p.Elem()
	}
	return l.libraryNamed(t)
}

func (l *lowerer) libraryNamed(t types.Type) bool {
	n, ok := types.Unalias(t).(*types.Named)
	return ok && n.Obj().Pkg() != nil && n.Obj().Pkg().Path() != check.NotebookPath
}

// realCallee reports whether a function takes and gives the library's form.
func (l *lowerer) realCallee(fun ast.Expr) bool {
	if _, generic := l.Generic[fun]; generic || l.Instances[ast.Unparen(fun)] != nil {
		return false
	}
	return l.isReal(fun) || l.libraryNamed(l.Exprs[fun].Type)
}

// raw lowers e without a conversion around it.
func (l *lowerer) raw(e ast.Expr) {
	if l.slots[e] > 0 && !l.constant(e) {
		l.around(e, l.tells(e)+"(", ")", l.bare)
		return
	}
	l.bare(e)
}

func (l *lowerer) bare(e ast.Expr) {
	if x := l.Exprs[e]; l.constant(e) && l.folds(e, x) {
		from, to := l.span(e)
		l.edits.replace(from, to, l.literal(x))
		return
	}
	if f := l.Instances[e]; f != nil {
		from, to := l.span(e)
		l.edits.replace(from, to, f.Name())
		return
	}
	switch e := e.(type) {
	case *ast.ParenExpr:
		l.raw(e.X)
		switch e.X.(type) {
		case *ast.Ident, *ast.SelectorExpr: // the interpreter cannot use the name of a function or method in parentheses
			from, to := l.span(e)
			l.edits.replace(from, from+1, " ")
			l.edits.replace(to-1, to, " ")
		}
	case *ast.BinaryExpr:
		l.binary(e)
	case *ast.CallExpr:
		l.call(e)
	case *ast.FuncLit:
		l.funcLit(e)
	case *ast.CompositeLit:
		l.composite(e)
	case *ast.SelectorExpr:
		l.selector(e)
	default:
		l.parts(e)
	}
}

// parts lowers the operands of the forms that stay as they are.
func (l *lowerer) parts(e ast.Expr) {
	switch e := e.(type) {
	case *ast.UnaryExpr:
		if e.Op == token.AND {
			l.raw(e.X)
			return
		}
		l.expr(e.X)
	case *ast.StarExpr:
		l.raw(e.X)
	case *ast.IndexExpr:
		l.raw(e.X)
		l.index(e)
		l.looked(e)
	case *ast.SliceExpr:
		l.raw(e.X)
		l.expr(e.Low)
		l.expr(e.High)
		l.expr(e.Max)
		l.lookedBounds(e)
	case *ast.TypeAssertExpr:
		l.assertion(e)
	case *ast.ArrayType, *ast.MapType, *ast.FuncType, *ast.StructType, *ast.InterfaceType:
		l.typeExpr(e, plain)
	}
}

// index lowers the key of a map that may be in the library's form.
func (l *lowerer) index(e *ast.IndexExpr) {
	t := l.Exprs[e.X].Type
	if m, ok := t.Underlying().(*types.Map); ok && (l.isReal(e.X) || l.libraryNamed(t)) {
		l.toReal(e.Index, m.Key())
		return
	}
	l.expr(e.Index)
}

// toReal lowers e for a place that wants type target in the library's form.
func (l *lowerer) toReal(e ast.Expr, target types.Type) {
	from := l.Exprs[e].Type
	shape := l.shape(target)
	switch {
	case l.guard && types.IsInterface(target) && l.libraryNamed(target) && check.IsNil(l.Exprs[e]):
		l.none(e, target)
	case types.IsInterface(target) && l.quantity(e):
		l.boxed(e)
	case isErrorType(target):
		l.expr(e)
	case types.IsInterface(target):
		l.plain(e)
	case !l.mixed(shape) || check.IsNil(l.Exprs[e]) || l.constant(e):
		l.expr(e)
	case types.Identical(from, target) && (l.isReal(e) || shape != target):
		l.raw(e)
	default:
		l.wrapped(e, l.expr, func(text string) string { return l.convert(text, shape, real) })
	}
}

// none lowers nil for an interface of the library, as a variable with nothing in it: the interpreter cannot hand over a plain nil.
func (l *lowerer) none(e ast.Expr, t types.Type) {
	name := l.helper("none "+l.typeText(t, real), func(name string) string {
		return "var " + name + " " + l.typeText(t, real)
	})
	from, to := l.span(e)
	l.edits.replace(from, to, name)
}

// shape returns the type that a conversion to target works on: what is below a named
// function, slice or map type of the library, which a notebook writes in its own form.
func (l *lowerer) shape(target types.Type) types.Type {
	if _, ok := l.World.Quantity(target); !ok && l.libraryNamed(target) {
		return target.Underlying()
	}
	return target
}

// selector lowers fields, methods and members of packages. A method of the notebook that
// is kept as a value binds what it is called on at once.
func (l *lowerer) selector(e *ast.SelectorExpr) {
	x := l.Exprs[e.X]
	if x.Mode == check.Package {
		return
	}
	if q, ok := l.World.Quantity(x.Type); ok && q.Base != nil {
		l.around(e.X, l.typeText(q.Base, real)+"(", ")", l.expr)
		return
	}
	if !l.methodValue(e) {
		l.raw(e.X)
	}
}

func (l *lowerer) composite(e *ast.CompositeLit) {
	if e.Type != nil {
		l.literalType(e.Type)
	}
	t := l.Exprs[e].Type
	place := l.expr
	if l.foreign(t) {
		place = nil
	}
	switch u := underlying(t).(type) {
	case *types.Struct:
		l.structElements(e, u, place)
	case *types.Map:
		l.elements(e, u.Key(), u.Elem(), place)
	case *types.Slice:
		l.elements(e, nil, u.Elem(), place)
	case *types.Array:
		l.elements(e, nil, u.Elem(), place)
	}
}

// literalType rewrites the type of a literal; [...]T counts by itself.
func (l *lowerer) literalType(e ast.Expr) {
	if a, ok := e.(*ast.ArrayType); ok {
		if _, ok := a.Len.(*ast.Ellipsis); ok {
			l.typeExpr(a.Elt, plain)
			return
		}
	}
	l.typeExpr(e, plain)
}

func (l *lowerer) elements(e *ast.CompositeLit, key, elem types.Type, place func(ast.Expr)) {
	for _, el := range e.Elts {
		value := el
		if kv, ok := el.(*ast.KeyValueExpr); ok {
			value = kv.Value
			if key == nil {
				from, to := l.span(kv.Key)
				l.edits.replace(from, to, constant.ToInt(l.Exprs[kv.Key].Value).ExactString())
			} else {
				l.placed(kv.Key, key, place)
			}
		}
		l.placed(value, elem, place)
	}
}

func (l *lowerer) structElements(e *ast.CompositeLit, s *types.Struct, place func(ast.Expr)) {
	for i, el := range e.Elts {
		t, value := types.Type(nil), el
		if kv, ok := el.(*ast.KeyValueExpr); ok {
			value = kv.Value
			for f := range s.Fields() {
				if f.Name() == kv.Key.(*ast.Ident).Name {
					t = f.Type()
				}
			}
		} else {
			t = s.Field(i).Type()
		}
		l.placed(value, t, place)
	}
}

// placed lowers a part of a literal: by place, or into the library's form.
func (l *lowerer) placed(e ast.Expr, t types.Type, place func(ast.Expr)) {
	if place != nil || t == nil {
		l.expr(e)
		return
	}
	l.toReal(e, t)
}

func underlying(t types.Type) types.Type {
	if p, ok := t.Underlying().(*types.Pointer); ok {
		return p.Elem().Underlying()
	}
	return t.Underlying()
}
