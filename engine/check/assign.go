package check

import (
	"fmt"
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"regexp"
	"strings"

	"lode/engine/library"
)

// assign checks that x, the value of e, may be given to something of type target, and
// notes the conversion that happens by itself. Role names the receiver in a message.
func (c *checker) assign(e ast.Expr, x Typed, target types.Type, role string) bool {
	if x.Mode == Invalid || target == nil || target == types.Typ[types.Invalid] {
		return false
	}
	if x.Mode == Type {
		c.report(e, "no-value", c.text(e)+": is a type", "a type", c.World.describe(target), "")
		return false
	}
	if shifted(x) && fractional(target) {
		c.floatShift(e)
		return false
	}
	q, isQuantity := c.World.Quantity(x.Type)
	want, wantsQuantity := c.World.Quantity(target)
	switch {
	case types.IsInterface(target) && !isTypeParam(target):
		return c.assignInterface(e, x, target, role)
	case wantsQuantity && isQuantity:
		return c.assignQuantity(e, x, q, want, role)
	case wantsQuantity && c.World.number(x.Type):
		return c.assignNumber(e, x, want, role)
	case isQuantity && c.World.number(target) && basic(target)&types.IsFloat != 0 && q.Form == library.Linear && q.Vector.Number():
		c.Convert[e] = target
		return true
	case isQuantity && basic(target)&types.IsNumeric != 0:
		c.report(e, "unit-left", role+": a plain number is wanted", c.one(e, x), c.World.describe(target), c.bareHint(e, q))
		return false
	}
	return c.assignPlain(e, x, target, role)
}

// bareHint tells how a quantity becomes a plain number.
func (c *checker) bareHint(e ast.Expr, q Quantity) string {
	hint := "divide by a unit to get a number: " + c.factor(e) + "/" + c.unitOf(q)
	if q.Complex {
		hint += "; abs(...), real(...) and imag(...) keep the unit"
	}
	return hint
}

func isTypeParam(t types.Type) bool { _, ok := t.(*types.TypeParam); return ok }

func (c *checker) assignQuantity(e ast.Expr, x Typed, q, want Quantity, role string) bool {
	if types.Identical(q.Type, want.Type) {
		return true
	}
	if q.Form == want.Form && q.Vector.Same(want.Vector) && q.Complex == want.Complex {
		c.Convert[e] = want.Type
		return true
	}
	c.report(e, "dimension-mismatch", role+": the dimension does not fit", c.one(e, x), c.World.describe(want.Type), c.turnInto(e, x, q, want))
	return false
}

// turnInto suggests how to get from one quantity to another.
func (c *checker) turnInto(e ast.Expr, x Typed, q, want Quantity) string {
	if q.Form != library.Linear || want.Form != library.Linear {
		return "a level, a point on a scale and an ordinary quantity do not turn into each other"
	}
	if q.Vector.Same(want.Vector) && q.Complex && !want.Complex {
		return "abs(" + c.text(e) + ") is its magnitude, real(" + c.text(e) + ") its real part"
	}
	if q.Vector.Same(want.Vector) && want.Complex {
		return "convert it: " + c.World.typeText(want.Type) + "(" + c.text(e) + ")"
	}
	if q.Vector.Visible().Over(want.Vector.Visible()).Number() {
		return "frequency and angular frequency differ by 2π: f = ω/(2*π)"
	}
	if q.Vector.Visible().Times(want.Vector.Visible()).Number() {
		return "its inverse fits: 1/(" + c.text(e) + ")"
	}
	missing := want.Vector.Over(q.Vector)
	if p, ok := c.World.primary(missing); ok {
		return "what is missing is " + articled(p.Name) + " (" + c.Lib.UnitText(p.Vector.Visible()) + ") as a factor"
	}
	if p, ok := c.World.primary(missing.Inverse()); ok {
		return "it is " + articled(p.Name) + " (" + c.Lib.UnitText(p.Vector.Visible()) + ") too much: divide by one"
	}
	return ""
}

func (c *checker) assignNumber(e ast.Expr, x Typed, want Quantity, role string) bool {
	if isZero(x) && want.Form != library.Point {
		return true
	}
	if want.Base != nil && want.Vector.Number() && want.Form == library.Linear {
		c.Convert[e] = want.Type
		return true
	}
	hint := "give it a unit, such as " + c.factor(e) + "*" + c.unitOf(want)
	if want.Form == library.Point {
		hint = "give it a unit, such as " + c.factor(e) + "*" + c.scaleOf(want)
	}
	c.report(e, "unit-missing", role+": the number has no unit", c.one(e, x), c.World.describe(want.Type), hint)
	return false
}

// assignInterface checks methods; a product without a name is boxed with its unit.
func (c *checker) assignInterface(e ast.Expr, x Typed, target types.Type, role string) bool {
	if x.Mode != Value || x.Type == nil {
		return false
	}
	t := types.Default(x.Type)
	if isNil(x) {
		if n, ok := types.Unalias(target).(*types.Named); ok && n.Obj().Pkg() != nil && n.Obj().Pkg().Path() != NotebookPath {
			c.Convert[e] = target
		}
		return true
	}
	if c.tooLarge(e, x) {
		return false
	}
	c.Convert[e] = target
	if q, ok := c.World.Quantity(t); ok {
		if q.Base == nil && target.Underlying().(*types.Interface).Empty() {
			return true
		} else if q.Base != nil {
			t = q.Base
		}
	}
	if !types.AssignableTo(t, target) {
		c.report(e, "type", role+": the value does not fit", c.one(e, x), c.World.describe(target), missingMethod(t, target))
		return false
	}
	if c.own(t) && !target.Underlying().(*types.Interface).Empty() && !isError(target) && !c.own(target) {
		c.report(e, "own-type", role+": a library interface cannot take a type of the notebook", c.one(e, x), "a value of a library type", "")
		return false
	}
	return true
}

func missingMethod(t, target types.Type) string {
	m, wrong := types.MissingMethod(t, target.Underlying().(*types.Interface), true)
	switch {
	case m == nil:
		return ""
	case wrong:
		return "its method " + m.Name() + " has other parameters or results"
	}
	return "it has no method " + m.Name()
}

// own reports whether a type is declared in the notebook.
func (c *checker) own(t types.Type) bool {
	if p, ok := t.(*types.Pointer); ok {
		t = p.Elem()
	}
	n, ok := types.Unalias(t).(*types.Named)
	return ok && n.Obj().Pkg() != nil && n.Obj().Pkg().Path() == NotebookPath
}

// assignPlain leaves the question to Go's rules.
func (c *checker) assignPlain(e ast.Expr, x Typed, target types.Type, role string) bool {
	if x.Value != nil && isUntyped(x.Type) {
		return c.assignConstant(e, x, target, role)
	}
	if x.Type != nil && types.AssignableTo(x.Type, target) {
		return true
	}
	hint := c.makers(target)
	if c.World.number(x.Type) && c.World.number(target) {
		hint = "convert it: " + types.TypeString(target, nil) + "(" + c.text(e) + ")"
	}
	c.report(e, "type", role+": the value does not fit", c.text(e)+", "+c.World.describeExactly(x.Type), c.World.describeExactly(target), hint)
	return false
}

// tooLarge reports a constant that its own type does not hold.
func (c *checker) tooLarge(e ast.Expr, x Typed) bool {
	switch {
	case x.Value == nil || !isUntyped(x.Type) || basic(x.Type)&types.IsNumeric == 0:
		return false
	case basic(x.Type)&types.IsInteger != 0 && !representable(x.Value, types.Typ[types.Int]):
		c.report(e, "too-large", c.text(e)+": the whole number is too large", c.text(e), "at most 64 bits", "write it as a float, such as 1e20")
		return true
	case infinite(x.Value):
		c.report(e, "too-large", c.text(e)+": the number is too large", c.text(e), "at most some 1e308", "")
		return true
	}
	return false
}

func isUntyped(t types.Type) bool { return basic(t)&types.IsUntyped != 0 }

// assignConstant converts an untyped constant as Go does: kind to kind, without loss.
func (c *checker) assignConstant(e ast.Expr, x Typed, target types.Type, role string) bool {
	from, to := basic(x.Type), basic(target)
	fits := from&types.IsBoolean != 0 && to&types.IsBoolean != 0 ||
		from&types.IsString != 0 && to&types.IsString != 0 ||
		from&types.IsNumeric != 0 && to&types.IsNumeric != 0 && representable(x.Value, target)
	if !fits {
		c.report(e, "type", role+": the value does not fit", c.text(e), c.World.describeExactly(target), c.makers(target))
	}
	if fits && isComplex(target) {
		c.Convert[e] = target
	}
	return fits
}

func representable(v constant.Value, target types.Type) bool {
	b, _ := target.Underlying().(*types.Basic)
	switch {
	case b == nil:
		return false
	case b.Info()&types.IsInteger != 0:
		v = constant.ToInt(v)
		return v.Kind() == constant.Int && inRange(v, b)
	case b.Info()&types.IsFloat != 0:
		return (constant.ToFloat(v).Kind() == constant.Float || constant.ToFloat(v).Kind() == constant.Int) && !infinite(v)
	}
	return constant.ToComplex(v).Kind() != constant.Unknown
}

func inRange(v constant.Value, b *types.Basic) bool {
	bits := map[types.BasicKind]uint{types.Int8: 8, types.Int16: 16, types.Int32: 32, types.Uint8: 8, types.Uint16: 16, types.Uint32: 32}[b.Kind()]
	if bits == 0 {
		bits = 64
	}
	low, high := constant.MakeInt64(0), constant.Shift(constant.MakeInt64(1), token.SHL, bits)
	if b.Info()&types.IsUnsigned == 0 {
		high = constant.Shift(constant.MakeInt64(1), token.SHL, bits-1)
		low = constant.UnaryOp(token.SUB, high, 0)
	}
	return constant.Compare(v, token.GEQ, low) && constant.Compare(v, token.LSS, high)
}

// describeExactly names Go's number types by their own names.
func (w *World) describeExactly(t types.Type) string {
	if t != nil && w.number(t) {
		return strings.TrimPrefix(types.TypeString(t, func(*types.Package) string { return "" }), "untyped ")
	}
	return w.describe(t)
}

// countMismatch reports a wrong number of values.
func (c *checker) countMismatch(n ast.Node, what string, got, want int) {
	c.report(n, "value-count", what+": the number of values does not fit", fmt.Sprint(got), fmt.Sprint(want), c.commaHint(n))
}

var decimalComma = regexp.MustCompile(`\d,\d`)

// commaHint suspects a comma between digits.
func (c *checker) commaHint(n ast.Node) string {
	if decimalComma.MatchString(c.text(n)) {
		return "a decimal number is written with a point: 2.5, not 2,5"
	}
	return ""
}
