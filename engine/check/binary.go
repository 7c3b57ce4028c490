package check

import (
	"fmt"
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"maps"
	"math"
	"slices"

	"lode/engine/dim"
	"lode/engine/library"
)

// This file holds the arithmetic of dimensions.

func (c *checker) binary(e *ast.BinaryExpr) Typed {
	x, y := c.operand(e.X), c.operand(e.Y)
	if x.Mode == Invalid || y.Mode == Invalid {
		return Typed{}
	}
	if x.Mode == Scale || y.Mode == Scale {
		return c.onScale(e, x, y)
	}
	return c.combine(e, e.Op, e.X, e.Y, x, y)
}

// operand reads one side, leaving a unit of a point scale to onScale.
func (c *checker) operand(e ast.Expr) Typed {
	if x := c.expr(e); x.Mode == Scale {
		return x
	} else {
		return c.settled(e, x)
	}
}

// onScale reads a number times a unit of a point scale: the point itself.
func (c *checker) onScale(e *ast.BinaryExpr, x, y Typed) Typed {
	n := x
	if x.Mode == Scale {
		n = y
	}
	unit := c.scaleName(e)
	if e.Op != token.MUL || n.Mode != Value || !c.World.number(n.Type) {
		return c.report(e, "scale", c.text(e)+": "+unit+" goes with a number", c.text(e), "a number times "+unit+", such as 20*"+unit, "")
	}
	fn := c.Lib.Quantity.Scope().Lookup(c.Lib.Units[unit].Call).(*types.Func)
	c.Imports[c.Lib.Quantity.Name()] = true
	return Typed{Mode: Value, Type: fn.Signature().Results().At(0).Type()}
}

// scaleOf names a unit of a point scale.
func (c *checker) scaleOf(q Quantity) string {
	for _, name := range slices.Sorted(maps.Keys(c.Lib.Units)) {
		if call := c.Lib.Units[name].Call; call != "" && c.Lib.Quantity.Scope().Lookup(call).(*types.Func).Signature().Results().At(0).Type() == q.Type {
			return name
		}
	}
	return c.unitOf(q)
}

func (c *checker) scaleName(e *ast.BinaryExpr) string {
	for _, side := range []ast.Expr{e.X, e.Y} {
		if id, ok := ast.Unparen(side).(*ast.Ident); ok && c.Lib.Units[id.Name].Call != "" {
			return id.Name
		}
	}
	return ""
}

// combine gives the type of x op y; e is the whole for messages.
func (c *checker) combine(e ast.Node, op token.Token, ex, ey ast.Expr, x, y Typed) Typed {
	if x.Mode == Type || y.Mode == Type {
		return c.report(e, "no-value", "a type is no operand", c.both(ex, ey, x, y), "two values", "")
	}
	qx, isX := c.World.Quantity(x.Type)
	qy, isY := c.World.Quantity(y.Type)
	if !isX && !isY {
		return c.plainBinary(e, op, ex, ey, x, y)
	}
	if op == token.EQL || op == token.NEQ {
		if t, ok := c.comparedInside(ex, ey, x, y); ok {
			return t
		}
	}
	if !c.numeric(x, isX) || !c.numeric(y, isY) {
		return c.report(e, "operands", c.opName(e, op)+": these do not go together", c.both(ex, ey, x, y), "two quantities or numbers", "")
	}
	c.noteQuantities(x.Type, y.Type)
	switch op {
	case token.MUL, token.QUO:
		return c.product(e, op, ex, ey, x, y, qx, qy)
	case token.ADD, token.SUB:
		return c.sum(e, op, ex, ey, x, y)
	case token.EQL, token.NEQ, token.LSS, token.LEQ, token.GTR, token.GEQ:
		if c.comparable(e, op, ex, ey, x, y) {
			return c.compared(op, x, y)
		}
		return Typed{}
	}
	return c.report(e, "operator", fmt.Sprintf("%s: not defined for quantities", op), c.both(ex, ey, x, y), "one of * / + - and comparisons", "divide by a unit to get a plain number")
}

// comparedInside reads the comparison of a quantity with what is in an interface.
func (c *checker) comparedInside(ex, ey ast.Expr, x, y Typed) (Typed, bool) {
	for _, side := range []struct {
		e         ast.Expr
		x, inside Typed
	}{{ex, x, y}, {ey, y, x}} {
		if t := side.inside.Type; t != nil && side.inside.Mode == Value && types.IsInterface(t) && t.Underlying().(*types.Interface).Empty() {
			return Typed{Mode: Value, Type: types.Typ[types.UntypedBool]}, c.assign(side.e, side.x, t, "the value beside the interface")
		}
	}
	return Typed{}, false
}

func (c *checker) numeric(x Typed, quantity bool) bool {
	return quantity || basic(x.Type)&types.IsNumeric != 0
}

func (c *checker) noteQuantities(...types.Type) { c.Imports[c.Lib.Quantity.Name()] = true }

// compared folds a comparison of constants.
func (c *checker) compared(op token.Token, x, y Typed) Typed {
	t := Typed{Mode: Value, Type: types.Typ[types.UntypedBool]}
	if x.Value != nil && y.Value != nil {
		t.Value = constant.MakeBool(constant.Compare(x.Value, op, y.Value))
	}
	return t
}

// plainBinary leaves two operands without dimension to Go.
func (c *checker) plainBinary(e ast.Node, op token.Token, ex, ey ast.Expr, x, y Typed) Typed {
	if c.zeroDivisor(op, y) {
		return c.report(e, "division-by-zero", "division by zero", c.textOf(e), "a divisor that is not zero", "")
	}
	if op == token.ADD && textLength(x)+textLength(y) > longText {
		return c.report(e, "size", "the constant text is too long", fmt.Sprintf("%d bytes", textLength(x)+textLength(y)), fmt.Sprintf("at most %d", longText), "")
	}
	t := c.nativeBinary(e, op, ex, ey, x, y)
	if t.Mode == Value && isNumber(t.Type) {
		switch op {
		case token.MUL:
			t.Turns = x.Turns + y.Turns
		case token.QUO:
			t.Turns = x.Turns - y.Turns
		case token.ADD, token.SUB:
			t.Turns = max(x.Turns, y.Turns)
		}
	}
	return t
}

// zeroDivisor reports whether y is known to be zero and divides.
func (c *checker) zeroDivisor(op token.Token, y Typed) bool {
	return (op == token.QUO || op == token.REM) && y.Value != nil && basic(y.Type)&types.IsNumeric != 0 && constant.Sign(y.Value) == 0
}

func (c *checker) nativeBinary(e ast.Node, op token.Token, ex, ey ast.Expr, x, y Typed) Typed {
	if t, ok := alike(op, x, y); ok {
		return t
	}
	if decimals(op, x, y) {
		return c.fold(e, op, Typed{Mode: Value, Type: types.Typ[types.UntypedFloat]}, x, y)
	}
	if shift := op == token.SHL || op == token.SHR; shift && y.Value == nil && x.Value != nil && x.Type == types.Typ[types.UntypedFloat] || !shift && (shifted(x) && fractional(y.Type) || shifted(y) && fractional(x.Type)) {
		return c.floatShift(e)
	}
	copied := &ast.BinaryExpr{X: c.placeholder(ex, x), OpPos: ey.Pos(), Op: op, Y: c.placeholder(ey, y)}
	info := &types.Info{Types: map[ast.Expr]types.TypeAndValue{}}
	if err := types.CheckExpr(c.Fset, c.Scratch, token.NoPos, copied, info); err != nil {
		if w := Reword(err.Error(), c.textOf(e), c.both(ex, ey, x, y)); w.Code == "too-large" {
			return c.report(e, w.Code, w.What, w.Got, w.Want, w.Hint)
		}
		if types.Identical(x.Type, y.Type) && (op == token.EQL || op == token.NEQ) {
			return c.report(e, "operands", c.opName(e, op)+": these cannot be compared", c.both(ex, ey, x, y), "numbers, quantities, text, or structs and arrays of such", "compare their parts one by one, or with nil")
		}
		hint := ""
		if isNumber(x.Type) && isNumber(y.Type) {
			hint = "convert one side, such as float64(" + c.text(ex) + ")"
		}
		return c.report(e, "operands", c.opName(e, op)+": these do not go together", c.both(ex, ey, x, y), "operands of one type", hint)
	}
	tv := info.Types[copied]
	return Typed{Mode: Value, Type: tv.Type, Value: tv.Value}
}

// shifted reports a constant without a type that is shifted by a variable: Go gives it the type
// that is wanted around it.
func shifted(x Typed) bool {
	return x.Mode == Value && x.Value == nil && x.Type != nil && isUntyped(x.Type) && basic(x.Type)&types.IsNumeric != 0
}

func fractional(t types.Type) bool { return basic(t)&types.IsFloat != 0 }

func (c *checker) floatShift(e ast.Node) Typed {
	return c.report(e, "type", "shift: only whole numbers are shifted, and here Go would take a number with decimals", c.textOf(e), "a whole number that tells its type", "write int(...) around the number on the left of the shift")
}

// decimals reports arithmetic on two constants without a type of which one is a decimal.
func decimals(op token.Token, x, y Typed) bool {
	if x.Value == nil || y.Value == nil || op != token.ADD && op != token.SUB && op != token.MUL && op != token.QUO {
		return false
	}
	float, integer := types.Typ[types.UntypedFloat], types.Typ[types.UntypedInt]
	return x.Type == float && (y.Type == float || y.Type == integer) || x.Type == integer && y.Type == float
}

// alike gives the type of arithmetic on two variables of one of Go's own number types.
func alike(op token.Token, x, y Typed) (Typed, bool) {
	b, ok := x.Type.(*types.Basic)
	if !ok || x.Type != y.Type || x.Value != nil || y.Value != nil || b.Info()&types.IsUntyped != 0 || b.Info()&(types.IsInteger|types.IsFloat) == 0 {
		return Typed{}, false
	}
	switch op {
	case token.ADD, token.SUB, token.MUL, token.QUO:
		return Typed{Mode: Value, Type: x.Type}, true
	case token.EQL, token.NEQ, token.LSS, token.LEQ, token.GTR, token.GEQ:
		return Typed{Mode: Value, Type: types.Typ[types.UntypedBool]}, true
	}
	return Typed{}, false
}

// product multiplies or divides where at least one side is a quantity.
func (c *checker) product(e ast.Node, op token.Token, ex, ey ast.Expr, x, y Typed, qx, qy Quantity) Typed {
	if c.zeroDivisor(op, y) {
		return c.report(e, "division-by-zero", "division by zero", c.textOf(e), "a divisor that is not zero", "")
	}
	if t, done := c.levelProduct(e, op, ex, ey, x, y, qx, qy); done {
		return t
	}
	vx, vy := c.World.vector(x), c.World.vector(y)
	v := vx.Times(vy)
	if op == token.QUO {
		v = vx.Over(vy)
	}
	isComplex := isComplex(x.Type) || isComplex(y.Type)
	t := Typed{Mode: Value, Type: c.World.typeOf(product{v, isComplex})}
	if v.Number() {
		t.Turns = v.Angle()
	}
	if kept := keeps(op, qx, qy, v); kept != nil && (qx.Complex || qy.Complex || !isComplex) {
		t.Type, t.Turns = kept, 0
	}
	if x.Value != nil && y.Value != nil {
		return c.fold(e, op, t, x, y)
	}
	return t
}

// keeps returns the very type of a quantity that a number scales, so that an energy density
// halved is not called a pressure, nor an angle doubled a number.
func keeps(op token.Token, qx, qy Quantity, v dim.Vector) *types.Named {
	switch {
	case qx.Type != nil && qy.Type == nil && qx.Vector == v:
		return qx.Type
	case op == token.MUL && qy.Type != nil && qx.Type == nil && qy.Vector == v:
		return qy.Type
	case op == token.MUL && qy.Type != nil && qx.Type == nil && qy.Vector.Number():
		return qy.Type // π*rad: the unit is the angle already
	}
	return nil
}

func (c *checker) fold(e ast.Node, op token.Token, t, x, y Typed) Typed {
	a, b := constant.ToFloat(x.Value), constant.ToFloat(y.Value)
	if isComplex(t.Type) {
		a, b = constant.ToComplex(x.Value), constant.ToComplex(y.Value)
	}
	if c.zeroDivisor(op, y) {
		return c.report(e, "division-by-zero", "division by zero", c.textOf(e), "a divisor that is not zero", "")
	}
	t.Value = constant.BinaryOp(a, op, b)
	if infinite(t.Value) {
		return c.report(e, "too-large", c.textOf(e)+": the number is too large", c.textOf(e), "at most some 1e308", "")
	}
	return t
}

// infinite reports whether a constant is beyond what a float64 holds.
func infinite(v constant.Value) bool {
	for _, part := range []constant.Value{constant.Real(v), constant.Imag(v)} {
		if f, _ := constant.Float64Val(part); math.IsInf(f, 0) {
			return true
		}
	}
	return false
}

// levelProduct treats levels, which may be scaled, and points, which may not.
func (c *checker) levelProduct(e ast.Node, op token.Token, ex, ey ast.Expr, x, y Typed, qx, qy Quantity) (Typed, bool) {
	switch {
	case qx.Form == library.Point || qy.Form == library.Point:
		return c.report(e, "point", "a point on a scale cannot be scaled", c.both(ex, ey, x, y), "a difference of two", "subtract a reference first"), true
	case qx.Form == library.Log && c.World.number(y.Type):
		return c.maybeFold(e, op, Typed{Mode: Value, Type: x.Type}, x, y), true
	case qy.Form == library.Log && c.World.number(x.Type) && op == token.MUL:
		return c.maybeFold(e, op, Typed{Mode: Value, Type: y.Type}, x, y), true
	case qx.Form == library.Log && qy.Form == library.Log && op == token.QUO:
		return c.maybeFold(e, op, Typed{Mode: Value, Type: types.Typ[types.Float64]}, x, y), true
	case qx.Form == library.Log || qy.Form == library.Log:
		return c.report(e, "level", "a level in dB cannot be multiplied with a quantity", c.both(ex, ey, x, y), "a ratio", "x.Ratio() turns a level into a factor"), true
	}
	return Typed{}, false
}

func (c *checker) maybeFold(e ast.Node, op token.Token, t, x, y Typed) Typed {
	if x.Value != nil && y.Value != nil {
		return c.fold(e, op, t, x, y)
	}
	return t
}

// sum adds or subtracts where at least one side is a quantity.
func (c *checker) sum(e ast.Node, op token.Token, ex, ey ast.Expr, x, y Typed) Typed {
	qx, _ := c.World.Quantity(x.Type)
	qy, _ := c.World.Quantity(y.Type)
	if qx.Form == library.Point || qy.Form == library.Point {
		return c.pointSum(e, op, ex, ey, x, y, qx, qy)
	}
	if !c.comparable(e, op, ex, ey, x, y) {
		return Typed{}
	}
	t := x
	if qx.Type == nil || qy.Complex {
		t = y
	}
	t = Typed{Mode: Value, Type: t.Type}
	return c.maybeFold(e, op, t, x, y)
}

func (c *checker) pointSum(e ast.Node, op token.Token, ex, ey ast.Expr, x, y Typed, qx, qy Quantity) Typed {
	switch {
	case op == token.SUB && qx.Form == library.Point && qx.Type == qy.Type:
		return Typed{Mode: Value, Type: qx.Apart}
	case moves(qx, qy):
		return Typed{Mode: Value, Type: x.Type}
	case op == token.ADD && moves(qy, qx):
		return Typed{Mode: Value, Type: y.Type}
	}
	point := qx
	if qx.Form != library.Point {
		point = qy
	}
	apart, _ := c.World.Quantity(point.Apart)
	return c.report(e, "point", fmt.Sprintf("%s: two %ss are not added, and only a difference moves one", op, point.Name), c.both(ex, ey, x, y),
		articled(point.Name)+" and "+articled(apart.Name), "a difference is written such as 5*"+c.unitOf(apart))
}

// moves reports whether y is what points like x lie apart.
func moves(x, y Quantity) bool { return x.Form == library.Point && y.Type == x.Apart }

// comparable reports whether two values may be added and compared, with an issue if not.
func (c *checker) comparable(e ast.Node, op token.Token, ex, ey ast.Expr, x, y Typed) bool {
	qx, _ := c.World.Quantity(x.Type)
	qy, _ := c.World.Quantity(y.Type)
	if ordered(op) && (qx.Complex || qy.Complex) {
		c.report(e, "operator", c.opName(e, op)+": complex quantities have no order", c.both(ex, ey, x, y), "real quantities", "compare the magnitudes: abs(...)")
		return false
	}
	if c.sameScale(x, y) {
		return true
	}
	c.report(e, "dimension-mismatch", c.opName(e, op)+": the two sides have different dimensions", c.both(ex, ey, x, y),
		"two of the same dimension", c.mend(ex, ey, x, y))
	return false
}

// sameScale reports whether two values lie on one scale. A plain zero lies on all but those of points.
func (c *checker) sameScale(x, y Typed) bool {
	qx, isX := c.World.Quantity(x.Type)
	qy, isY := c.World.Quantity(y.Type)
	if isX && isY && qx.Form == qy.Form && qx.Vector.Same(qy.Vector) {
		return true
	}
	return isZero(x) && qy.Form != library.Point || isZero(y) && qx.Form != library.Point
}

// opName names what joins two operands: an operator, or the function whose arguments they are.
func (c *checker) opName(e ast.Node, op token.Token) string {
	if call, ok := e.(*ast.CallExpr); ok {
		return c.text(call.Fun)
	}
	return op.String()
}

func ordered(op token.Token) bool {
	return op == token.LSS || op == token.LEQ || op == token.GTR || op == token.GEQ
}

func isZero(x Typed) bool { return x.Value != nil && isNumber(x.Type) && constant.Sign(x.Value) == 0 }

// both describes two operands by source text and dimension.
func (c *checker) both(ex, ey ast.Expr, x, y Typed) string {
	return c.one(ex, x) + " and " + c.one(ey, y)
}

func (c *checker) one(e ast.Expr, x Typed) string {
	return c.text(e) + ", " + c.World.describe(x.Type)
}

// mend suggests what would make two dimensions agree.
func (c *checker) mend(ex, ey ast.Expr, x, y Typed) string {
	vx, vy := c.World.vector(x), c.World.vector(y)
	qx, isX := c.World.Quantity(x.Type)
	qy, isY := c.World.Quantity(y.Type)
	switch {
	case isX && isY && (qx.Form != library.Linear || qy.Form != library.Linear):
		return "a level, a point on a scale and an ordinary quantity do not mix"
	case isX && isY && vx.Visible().Over(vy.Visible()).Number():
		return "one is an angular frequency: ω = 2π·f"
	case !isX || !isY:
		return "a plain number has no unit: give it one, or divide the quantity by a unit such as " + c.someUnit(x, y)
	case vx.Times(vy).Number():
		return "one looks like the inverse of the other: 1/(" + c.text(ey) + ") has the dimension of the left side"
	}
	factor := vx.Over(vy)
	if q, ok := c.World.primary(factor); ok {
		return fmt.Sprintf("the right side times %s %s would have the dimension of the left side", articled(q.Name), "("+c.Lib.UnitText(q.Vector.Visible())+")")
	}
	if q, ok := c.World.primary(factor.Inverse()); ok {
		return fmt.Sprintf("the right side divided by %s %s would have the dimension of the left side", articled(q.Name), "("+c.Lib.UnitText(q.Vector.Visible())+")")
	}
	return ""
}

func articled(name string) string {
	switch name[0] {
	case 'a', 'e', 'i', 'o', 'u':
		return "an " + name
	}
	return "a " + name
}

// someUnit names a unit of the quantity among x and y.
func (c *checker) someUnit(x, y Typed) string {
	for _, t := range []Typed{x, y} {
		if q, ok := c.World.Quantity(t.Type); ok {
			return c.unitOf(q)
		}
	}
	return ""
}

// unitOf returns the unit that people write a quantity of this type in, for a hint.
func (c *checker) unitOf(q Quantity) string {
	best, rank := c.Lib.UnitText(q.Vector.Visible()), 0
	for symbol, u := range c.Lib.Units {
		if u.Type == nil || q.Base == nil || !types.Identical(u.Type, q.Base) {
			continue
		}
		if rank == 0 || u.Rank < rank || u.Rank == rank && symbol < best {
			best, rank = symbol, u.Rank
		}
	}
	return best
}

// factor returns the source of an expression as it stands in a product.
func (c *checker) factor(e ast.Expr) string {
	if _, ok := e.(*ast.BinaryExpr); ok {
		return "(" + c.text(e) + ")"
	}
	return c.text(e)
}

func (c *checker) unary(e *ast.UnaryExpr) Typed {
	x := c.value(e.X)
	q, ok := c.World.Quantity(x.Type)
	switch {
	case x.Mode == Invalid:
		return x
	case e.Op == token.ARROW:
		return c.report(e, "not-available", "channels are not available in notebooks", c.text(e), "ordinary values and calls", "")
	case ok && q.Form == library.Point && e.Op == token.SUB:
		return c.report(e, "point", "a point on a scale has no negative", c.one(e.X, x), "a number in front of the unit, such as (-5)*"+c.scaleOf(q), "")
	case ok && (e.Op == token.SUB || e.Op == token.ADD):
		if x.Value != nil {
			x.Value = constant.UnaryOp(e.Op, x.Value, 0)
		}
		return Typed{Mode: Value, Type: x.Type, Value: x.Value}
	}
	if e.Op == token.AND && !c.addressable(e.X) {
		return c.report(e, "type", "&: this has no address", c.text(e.X), "a variable, or a literal of a struct, slice, array or map", "assign it to a name first")
	}
	turns := x.Turns
	t := c.native(e, &ast.UnaryExpr{OpPos: e.OpPos, Op: e.Op, X: c.addressed(e, x)})
	t.Turns = turns
	return t
}

// addressable reports whether e has an address, or is a literal, which & gives one.
func (c *checker) addressable(e ast.Expr) bool {
	switch e := ast.Unparen(e).(type) {
	case *ast.Ident:
		_, ok := c.Exprs[e].object.(*types.Var)
		return ok
	case *ast.CompositeLit, *ast.StarExpr:
		return true
	case *ast.SelectorExpr:
		t := c.Exprs[e.X].Type
		if t == nil {
			return false
		}
		_, pointer := t.Underlying().(*types.Pointer)
		_, method := c.Exprs[e].Type.(*types.Signature)
		return !method && (pointer || c.addressable(e.X))
	case *ast.IndexExpr:
		switch c.Exprs[e.X].Type.Underlying().(type) {
		case *types.Slice, *types.Pointer:
			return true
		case *types.Array:
			return c.addressable(e.X)
		}
	}
	return false
}

// addressed gives & something it may point to: a composite literal or a variable.
func (c *checker) addressed(e *ast.UnaryExpr, x Typed) ast.Expr {
	return c.placeholder(e.X, x)
}

// textOf returns the source of an expression or statement.
func (c *checker) textOf(n ast.Node) string { return c.text(n) }

// textLength returns the length of a constant string.
func textLength(x Typed) int {
	if x.Value == nil || x.Value.Kind() != constant.String {
		return 0
	}
	return len(constant.StringVal(x.Value))
}
