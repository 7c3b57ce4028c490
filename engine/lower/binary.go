package lower

import (
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"math/big"
	"strconv"
	"strings"

	"lode/engine/check"
)

// This file lowers arithmetic and constants.

// folds reports whether a constant is written as a number: quantities, and names that mean
// nothing to Go.
func (l *lowerer) folds(e ast.Expr, x check.Typed) bool {
	if _, ok := l.World.Quantity(x.Type); ok {
		return true
	}
	switch e := e.(type) {
	case *ast.Ident:
		return e.Name != "true" && e.Name != "false"
	case *ast.SelectorExpr:
		return true
	case *ast.BinaryExpr: // a comparison of constants, which are exact to the checker only
		return x.Value.Kind() == constant.Bool
	case *ast.CallExpr:
		return l.Exprs[e.Fun].Mode == check.Builtin
	}
	return false
}

// literal writes a constant so that it has its type and full value.
func (l *lowerer) literal(x check.Typed) string {
	text := valueText(x.Value, x.Type)
	if q, ok := l.World.Quantity(x.Type); ok {
		if q.Complex {
			return "complex128(" + text + ")"
		}
		return text
	}
	if b, ok := x.Type.(*types.Basic); ok && b.Info()&types.IsUntyped != 0 {
		return text
	}
	return l.plainText(x.Type) + "(" + text + ")"
}

func valueText(v constant.Value, t types.Type) string {
	switch v.Kind() {
	case constant.Bool, constant.String:
		return v.ExactString()
	case constant.Complex:
		return "(" + floatText(constant.Real(v)) + " + " + floatText(constant.Imag(v)) + "*1i)"
	case constant.Int:
		if t == types.Typ[types.UntypedRune] {
			if n, ok := constant.Int64Val(v); ok {
				return strconv.QuoteRune(rune(n))
			}
		}
		if b, ok := t.Underlying().(*types.Basic); ok && b.Info()&(types.IsFloat|types.IsComplex) != 0 {
			return floatText(v)
		}
		return negative(v.ExactString())
	}
	if b, ok := t.(*types.Basic); ok && b.Info()&types.IsUntyped != 0 {
		return exactText(v)
	}
	return floatText(v)
}

// floatText writes a real constant in the shortest form that gives the same float64.
func floatText(v constant.Value) string {
	f, _ := constant.Float64Val(v)
	text := strconv.FormatFloat(f, 'g', -1, 64)
	if !strings.ContainsAny(text, ".eIN") {
		text += ".0"
	}
	return negative(text)
}

// exactText writes a real constant with digits enough to compute on with it.
func exactText(v constant.Value) string {
	if _, exact := constant.Float64Val(v); exact || constant.ToFloat(v).Kind() != constant.Float {
		return floatText(v)
	}
	text := floatText(v)
	if b, _, err := big.ParseFloat(v.ExactString(), 10, 200, big.ToNearestEven); err == nil {
		text = b.Text('g', 40)
	} else if r, ok := new(big.Rat).SetString(v.ExactString()); ok {
		text = new(big.Float).SetPrec(200).SetRat(r).Text('g', 40)
	}
	if !strings.ContainsAny(text, ".e") {
		text += ".0"
	}
	return negative(text)
}

func negative(text string) string {
	if strings.HasPrefix(text, "-") {
		return "(" + text + ")"
	}
	return text
}

// number lowers an operand of arithmetic on float64.
func (l *lowerer) number(e ast.Expr) { l.operand(e, "float64") }

func (l *lowerer) operand(e ast.Expr, form string) {
	switch {
	case l.constant(e) && constant.ToFloat(l.Exprs[e].Value).Kind() != constant.Unknown:
		from, to := l.span(e)
		l.edits.replace(from, to, floatText(constant.ToFloat(l.Exprs[e].Value)))
	case l.runtime(e) == form:
		l.expr(e)
	case form == "complex128" && basicInfo(l.Exprs[e].Type)&types.IsComplex == 0:
		l.around(e, "complex(float64(", "), 0)", l.expr)
	default:
		l.around(e, form+"(", ")", l.whole)
	}
}

// whole lowers a number that is converted; Go would give a shifted constant the type of the
// conversion.
func (l *lowerer) whole(e ast.Expr) {
	if x := l.Exprs[e]; x.Value == nil && basicInfo(x.Type)&types.IsUntyped != 0 && basicInfo(x.Type)&types.IsNumeric != 0 {
		l.around(e, "int(", ")", l.expr)
		return
	}
	l.expr(e)
}

func basicInfo(t types.Type) types.BasicInfo {
	b, _ := t.Underlying().(*types.Basic)
	if b == nil {
		return 0
	}
	return b.Info()
}

func (l *lowerer) quantity(e ast.Expr) bool {
	_, ok := l.World.Quantity(l.Exprs[e].Type)
	return ok
}

func (l *lowerer) binary(e *ast.BinaryExpr) {
	switch {
	case l.Exprs[e.X].Mode == check.Scale || l.Exprs[e.Y].Mode == check.Scale:
		l.onScale(e)
	case anything(l.Exprs[e.X].Type) || anything(l.Exprs[e.Y].Type):
		l.beside(e.X, e.Y)
		l.beside(e.Y, e.X)
	case l.quantity(e.X) || l.quantity(e.Y):
		form := "float64"
		if l.complexSide(e.X) || l.complexSide(e.Y) {
			form = "complex128"
		}
		l.operand(e.X, form)
		l.operand(e.Y, form)
	default:
		l.beside(e.X, e.Y)
		l.beside(e.Y, e.X)
	}
}

// beside lowers an operand, which goes into an interface where the other one is in one, and takes
// the name of the other one's type where it is a struct without one.
func (l *lowerer) beside(e, other ast.Expr) {
	t, o := l.Exprs[e].Type, l.Exprs[other].Type
	switch {
	case t == nil || o == nil:
		l.expr(e)
	case l.guard && l.mistakes(e, other):
		l.into(e, types.NewInterfaceType(nil, nil))
	case anything(o) && l.Convert[e] == nil:
		l.into(e, o)
	case l.guard && unnamedStruct(t) && !types.IsInterface(o) && !unnamedStruct(o):
		l.around(e, l.plainText(o)+"(", ")", l.expr)
	default:
		l.expr(e)
	}
}

func unnamedStruct(t types.Type) bool {
	_, ok := types.Unalias(t).(*types.Struct)
	return ok
}

// mistakes reports whether two errors are compared of which one may be of the notebook's own type.
func (l *lowerer) mistakes(e, other ast.Expr) bool {
	t, o := l.Exprs[e].Type, l.Exprs[other].Type
	if len(l.declared) == 0 || check.IsNil(l.Exprs[e]) || check.IsNil(l.Exprs[other]) {
		return false
	}
	return isErrorType(t) && (isErrorType(o) || l.ours(o)) || isErrorType(o) && l.ours(t)
}

func (l *lowerer) complexSide(e ast.Expr) bool { return l.runtime(e) == "complex128" }

// onScale lowers a number times a unit of a point scale to the call that makes the point.
func (l *lowerer) onScale(e *ast.BinaryExpr) {
	n, unit := e.X, e.Y
	if l.Exprs[e.X].Mode == check.Scale {
		n, unit = e.Y, e.X
	}
	call := l.packageName(l.Lib.Quantity) + "." + l.Lib.Units[ast.Unparen(unit).(*ast.Ident).Name].Call
	from, to := l.span(e)
	nFrom, nTo := l.span(n)
	if nFrom == from {
		l.edits.open(from, "float64("+call+"(")
		l.number(n)
		l.edits.replace(nTo, to, "))")
		return
	}
	l.edits.replace(from, nFrom, "float64("+call+"(")
	l.number(n)
	l.edits.close(to, "))")
}

// opAssign lowers x op= y on quantities.
func (l *lowerer) opAssign(s *ast.AssignStmt) {
	x, y := s.Lhs[0], s.Rhs[0]
	t := l.Exprs[x].Type
	l.raw(x)
	form := l.plainText(t)
	switch {
	case !l.quantity(x) && !l.complexSide(x):
		l.expr(y)
	case l.isReal(x) && !l.constant(y):
		l.around(y, l.typeText(t, real)+"(", ")", func(e ast.Expr) { l.operand(e, form) })
	default:
		l.operand(y, form)
	}
}

var _ = token.ADD
