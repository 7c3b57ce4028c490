package lower

import (
	"fmt"
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"math/big"
	"strconv"
	"strings"

	"lode/engine/check"
	"lode/engine/library"
)

// expr lowers an expression, conversions that happen by themselves included.
func (l *lowerer) expr(e ast.Expr) {
	if e == nil {
		return
	}
	if target, ok := l.Convert[e]; ok {
		l.converted(e, target)
		return
	}
	l.inner(e)
}

func (l *lowerer) converted(e ast.Expr, target types.Type) {
	if types.IsInterface(target) {
		l.boxed(e)
		return
	}
	if l.runtime(e) == l.typeText(target) {
		l.inner(e)
		return
	}
	l.wrap(e, l.typeText(target)+"(", ")")
}

// wrap lowers e between two texts.
func (l *lowerer) wrap(e ast.Expr, before, after string) {
	from, to := l.span(e)
	l.edits.open(from, before)
	l.inner(e)
	l.edits.close(to, after)
}

// boxed lowers e for a place that takes anything: a product without a name takes its unit
// along.
func (l *lowerer) boxed(e ast.Expr) {
	q, ok := l.World.Quantity(l.Exprs[e].Type)
	if !ok || q.Base != nil {
		l.inner(e)
		return
	}
	halves := make([]string, len(q.Vector))
	for i, h := range q.Vector.Visible() {
		halves[i] = strconv.Itoa(int(h))
	}
	l.wrap(e, l.use(l.Lib.Quantity)+"."+l.Lib.Make+"(", ", "+strings.Join(halves, ", ")+")")
}

// runtime returns the type that e has in the running program.
func (l *lowerer) runtime(e ast.Expr) string { return l.typeText(l.Exprs[e].Type) }

func (l *lowerer) inner(e ast.Expr) {
	if x := l.Exprs[e]; x.Mode == check.Value && x.Value != nil && l.folds(e, x) {
		from, to := l.span(e)
		l.edits.replace(from, to, l.literal(x))
		return
	}
	switch e := e.(type) {
	case *ast.ParenExpr:
		l.expr(e.X)
	case *ast.BinaryExpr:
		l.binary(e)
	case *ast.CallExpr:
		l.call(e)
	case *ast.FuncLit:
		l.block(e.Body)
	case *ast.CompositeLit:
		l.composite(e)
	case *ast.SelectorExpr:
		if l.Exprs[e.X].Mode != check.Package {
			l.expr(e.X)
		}
	default:
		l.parts(e)
	}
}

// parts lowers the operands of the forms that stay as they are.
func (l *lowerer) parts(e ast.Expr) {
	switch e := e.(type) {
	case *ast.UnaryExpr:
		l.expr(e.X)
	case *ast.StarExpr:
		l.expr(e.X)
	case *ast.IndexExpr:
		l.expr(e.X)
		l.expr(e.Index)
	case *ast.SliceExpr:
		l.expr(e.X)
		l.expr(e.Low)
		l.expr(e.High)
		l.expr(e.Max)
	case *ast.TypeAssertExpr:
		l.expr(e.X)
	}
}

// folds reports whether a constant is written as a number: quantities, and names that mean
// nothing to Go.
func (l *lowerer) folds(e ast.Expr, x check.Typed) bool {
	if _, ok := l.World.Quantity(x.Type); ok {
		return true
	}
	id, ok := e.(*ast.Ident)
	return ok && id.Name != "true" && id.Name != "false"
}

// literal writes a constant so that it has its type and full value.
func (l *lowerer) literal(x check.Typed) string {
	text := valueText(x.Value, x.Type)
	if b, ok := x.Type.(*types.Basic); ok && b.Info()&types.IsUntyped != 0 {
		return text
	}
	return l.typeText(x.Type) + "(" + text + ")"
}

func valueText(v constant.Value, t types.Type) string {
	switch v.Kind() {
	case constant.Bool, constant.String:
		return v.ExactString()
	case constant.Complex:
		return "(" + floatText(constant.Real(v)) + " + " + floatText(constant.Imag(v)) + "i)"
	case constant.Int:
		if t == types.Typ[types.UntypedRune] {
			if n, ok := constant.Int64Val(v); ok {
				return strconv.QuoteRune(rune(n))
			}
		}
		if b, ok := t.Underlying().(*types.Basic); ok && b.Info()&types.IsFloat != 0 {
			return floatText(v)
		}
		return negative(v.ExactString())
	}
	return floatText(v)
}

// floatText writes a real constant: short where a float64 holds it, else to 40 digits.
func floatText(v constant.Value) string {
	f, exact := constant.Float64Val(v)
	text := strconv.FormatFloat(f, 'g', -1, 64)
	if !exact && constant.ToFloat(v).Kind() == constant.Float {
		if b, _, err := big.ParseFloat(v.ExactString(), 10, 200, big.ToNearestEven); err == nil {
			text = b.Text('g', 40)
		} else if r, ok := new(big.Rat).SetString(v.ExactString()); ok {
			text = new(big.Float).SetPrec(200).SetRat(r).Text('g', 40)
		}
	}
	if !strings.ContainsAny(text, ".eIN") {
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
func (l *lowerer) number(e ast.Expr) {
	x := l.Exprs[e]
	from, to := l.span(e)
	switch {
	case x.Value != nil:
		l.edits.replace(from, to, floatText(constant.ToFloat(x.Value)))
	case l.runtime(e) == "float64":
		l.expr(e)
	default:
		l.wrap(e, "float64(", ")")
	}
}

func (l *lowerer) quantity(e ast.Expr) bool {
	_, ok := l.World.Quantity(l.Exprs[e].Type)
	return ok
}

func (l *lowerer) binary(e *ast.BinaryExpr) {
	if l.Exprs[e.X].Mode == check.Scale || l.Exprs[e.Y].Mode == check.Scale {
		l.onScale(e)
		return
	}
	if !l.quantity(e.X) && !l.quantity(e.Y) {
		l.expr(e.X)
		l.expr(e.Y)
		return
	}
	switch e.Op {
	case token.MUL, token.QUO:
		if l.scalesByConstant(e) {
			l.expr(e.X)
			l.expr(e.Y)
			return
		}
		l.onNumbers(e)
	default:
		l.likeSides(e)
	}
}

// scalesByConstant reports whether Go itself gives e the right type.
func (l *lowerer) scalesByConstant(e *ast.BinaryExpr) bool {
	x, y := l.Exprs[e.X], l.Exprs[e.Y]
	result := l.runtime(e)
	return untypedNumber(y) && l.runtime(e.X) == result || e.Op == token.MUL && untypedNumber(x) && l.runtime(e.Y) == result
}

func untypedNumber(x check.Typed) bool {
	b, ok := x.Type.(*types.Basic)
	return ok && x.Value != nil && b.Info()&types.IsUntyped != 0
}

// onNumbers computes e on float64 and gives the result its type.
func (l *lowerer) onNumbers(e *ast.BinaryExpr) {
	from, to := l.span(e)
	result := l.runtime(e)
	before, after := result+"(", ")"
	if result == "float64" {
		before, after = "(", ")"
	}
	l.edits.open(from, before)
	l.number(e.X)
	l.number(e.Y)
	l.edits.close(to, after)
}

// likeSides lowers sums and comparisons, where both sides need one type.
func (l *lowerer) likeSides(e *ast.BinaryExpr) {
	x, y := l.runtime(e.X), l.runtime(e.Y)
	qx, _ := l.World.Quantity(l.Exprs[e.X].Type)
	qy, _ := l.World.Quantity(l.Exprs[e.Y].Type)
	points := qx.Form == library.Point || qy.Form == library.Point
	switch {
	case points && (e.Op == token.ADD || e.Op == token.SUB):
		l.onNumbers(e)
	case x != y && !untypedNumber(l.Exprs[e.X]) && !untypedNumber(l.Exprs[e.Y]):
		l.expr(e.X)
		l.wrap(e.Y, x+"(", ")")
	default:
		l.expr(e.X)
		l.expr(e.Y)
	}
}

// onScale lowers a number times a unit of a point scale to the call that makes the point.
func (l *lowerer) onScale(e *ast.BinaryExpr) {
	n, unit := e.X, e.Y
	if l.Exprs[e.X].Mode == check.Scale {
		n, unit = e.Y, e.X
	}
	call := l.use(l.Lib.Quantity) + "." + l.Lib.Units[ast.Unparen(unit).(*ast.Ident).Name].Call
	from, to := l.span(e)
	nFrom, nTo := l.span(n)
	if nFrom == from {
		l.edits.open(from, call+"(")
		l.number(n)
		l.edits.replace(nTo, to, ")")
		return
	}
	l.edits.replace(from, nFrom, call+"(")
	l.number(n)
	l.edits.close(to, ")")
}

func (l *lowerer) composite(e *ast.CompositeLit) {
	_, isStruct := underlying(l.Exprs[e].Type).(*types.Struct)
	for _, el := range e.Elts {
		kv, ok := el.(*ast.KeyValueExpr)
		if !ok {
			l.expr(el)
			continue
		}
		if !isStruct {
			l.expr(kv.Key)
		}
		l.expr(kv.Value)
	}
}

func underlying(t types.Type) types.Type {
	if p, ok := t.Underlying().(*types.Pointer); ok {
		return p.Elem().Underlying()
	}
	return t.Underlying()
}

func (l *lowerer) call(e *ast.CallExpr) {
	if l.Must[e] {
		l.must(e)
	}
	switch l.Exprs[e.Fun].Mode {
	case check.Function:
		l.function(e)
		return
	case check.Builtin:
		if ast.Unparen(e.Fun).(*ast.Ident).Name == "clear" {
			l.clear(e)
			return
		}
	default:
		l.expr(e.Fun)
	}
	for _, a := range e.Args {
		l.expr(a)
	}
}

// must checks the error result of a call and stops the run where there is one.
func (l *lowerer) must(e *ast.CallExpr) {
	from, to := l.span(e)
	t := l.Exprs[e].Type
	l.edits.open(from, "func() "+l.typeText(t)+" { ˑv, ˑe := ")
	l.edits.close(to, fmt.Sprintf("; if ˑe != nil { ˑh.Fail(%d, ˑe) }; return ˑv }()", l.spot(e)))
}

// function lowers a call of the mathematics in scope to package math.
func (l *lowerer) function(e *ast.CallExpr) {
	name := l.use(l.Lib.Packages["math"]) + "." + check.MathName(ast.Unparen(e.Fun).(*ast.Ident).Name)
	from, to := l.span(e.Fun)
	_, end := l.span(e)
	result := l.runtime(e)
	head := name
	if result != "float64" {
		head = result + "(" + name
		l.edits.close(end, ")")
	}
	n := len(e.Args)
	variadic := strings.HasSuffix(name, ".Min") || strings.HasSuffix(name, ".Max")
	if variadic && n == 1 {
		head = strings.TrimSuffix(head, name) + "float64"
	}
	l.edits.replace(from, to, head)
	for i, a := range e.Args {
		aFrom, aTo := l.span(a)
		if variadic && i > 0 && i < n-1 {
			l.edits.open(aFrom, name+"(")
		}
		l.number(a)
		if variadic && i == n-1 && n > 2 {
			l.edits.close(aTo, strings.Repeat(")", n-2))
		}
	}
}

// clear spells out what Go's clear does, which the interpreter does not know.
func (l *lowerer) clear(e *ast.CallExpr) {
	from, to := l.span(e.Fun)
	t := l.Exprs[e.Args[0]].Type
	body := "for ˑk := range ˑm { delete(ˑm, ˑk) }"
	if s, ok := t.Underlying().(*types.Slice); ok {
		body = "for ˑk := range ˑm { var ˑz " + l.typeText(s.Elem()) + "; ˑm[ˑk] = ˑz }"
	}
	l.edits.replace(from, to, "func(ˑm "+l.typeText(t)+") { "+body+" }")
	l.expr(e.Args[0])
}
