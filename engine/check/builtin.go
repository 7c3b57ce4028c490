package check

import (
	"fmt"
	"go/ast"
	"go/constant"
	"go/types"
	"maps"
	"slices"

	"lode/engine/dim"
	"lode/engine/library"
)

// This file holds the functions that are in scope without a package: Go's own, and the
// mathematics that knows dimensions.

// rule tells the dimension of a function's result from that of its first argument.
type rule func(c *checker, e *ast.CallExpr, args []Typed) Typed

type mathFunction struct {
	name string // in package math
	args int    // -1 for any number, at least one
	rule rule
}

// functions are the mathematics by their names in notebooks.
var functions = map[string]mathFunction{
	"sqrt": {"Sqrt", 1, (*checker).root}, "cbrt": {"Cbrt", 1, (*checker).root}, "abs": {"Abs", 1, (*checker).magnitude}, "pow": {"Pow", 2, (*checker).power},
	"hypot": {"Hypot", 2, (*checker).same}, "round": {"Round", 1, (*checker).pure}, "floor": {"Floor", 1, (*checker).pure}, "ceil": {"Ceil", 1, (*checker).pure},
	"exp": {"Exp", 1, (*checker).pure}, "log": {"Log", 1, (*checker).pure}, "log10": {"Log10", 1, (*checker).pure}, "log2": {"Log2", 1, (*checker).pure},
	"sin": {"Sin", 1, (*checker).pure}, "cos": {"Cos", 1, (*checker).pure}, "tan": {"Tan", 1, (*checker).pure}, "asin": {"Asin", 1, (*checker).pure}, "acos": {"Acos", 1, (*checker).pure},
	"atan": {"Atan", 1, (*checker).pure}, "tanh": {"Tanh", 1, (*checker).pure}, "atan2": {"Atan2", 2, (*checker).ratio},
	"min": {"Min", -1, (*checker).same}, "max": {"Max", -1, (*checker).same},
	KnobName: {name: "Knob", args: 4}, CountedName: {name: "Counted", args: 2}, // these have rules of their own
}

// MathName returns the name in package math of one of the functions in scope.
func MathName(name string) string { return functions[name].name }

// Functions lists the names of the functions in scope beside Go's own.
func Functions() []string { return slices.Sorted(maps.Keys(functions)) }

func (c *checker) function(e *ast.CallExpr, name string) Typed {
	f := functions[name]
	args, ok := c.args(e)
	if !ok {
		return Typed{}
	}
	if len(args) != f.args && (f.args >= 0 || len(args) == 0) {
		return c.report(e, "argument-count", name+": the number of arguments does not fit", fmt.Sprint(len(args)), fmt.Sprint(max(f.args, 1)), "")
	}
	if extreme := name == "min" || name == "max"; extreme && allStrings(args) {
		return Typed{Mode: Value, Type: types.Typ[types.String]}
	}
	if len(args) == 1 && f.args < 0 && c.tooLarge(e.Args[0], args[0]) {
		return Typed{}
	}
	for i, x := range args {
		if _, isQuantity := c.World.Quantity(x.Type); x.Mode != Value || isComplex(x.Type) && name != "abs" || !isQuantity && !isNumber(x.Type) && !isComplex(x.Type) {
			return c.report(e.Args[i], "type", name+": takes real numbers and quantities", c.one(e.Args[i], x), "a number or a quantity", c.complexHint(x))
		}
	}
	c.Imports["math"] = true
	return f.rule(c, e, args)
}

func allStrings(args []Typed) bool {
	for _, x := range args {
		if x.Mode != Value || basic(x.Type)&types.IsString == 0 {
			return false
		}
	}
	return len(args) > 0
}

func (c *checker) complexHint(x Typed) string {
	if isComplex(x.Type) {
		return "abs(...) is the magnitude; package cmplx has functions of complex numbers"
	}
	return ""
}

// root halves (or takes a third of) the dimension.
func (c *checker) root(e *ast.CallExpr, args []Typed) Typed {
	name := ast.Unparen(e.Fun).(*ast.Ident).Name
	if bad := c.refuseForms(e, args[0]); bad {
		return Typed{}
	}
	v, ok := c.World.vector(args[0]).Power(1)
	if name == "cbrt" {
		v, ok = c.World.vector(args[0]).Third()
	}
	if !ok {
		return c.report(e, "no-root", name+": the dimension has no such root", c.one(e.Args[0], args[0]), "a dimension whose exponents divide", "")
	}
	return c.ofVector(v)
}

func (c *checker) ofVector(v dim.Vector) Typed {
	t := Typed{Mode: Value, Type: c.World.ofVector(v)}
	if v.Number() {
		t.Turns = v.Angle()
	}
	return t
}

// power multiplies the dimension by a constant exponent.
func (c *checker) power(e *ast.CallExpr, args []Typed) Typed {
	if _, isQuantity := c.World.Quantity(args[1].Type); isQuantity {
		return c.report(e.Args[1], "exponent", "pow: the exponent has a unit", c.one(e.Args[1], args[1]), "a plain number", "")
	}
	v := c.World.vector(args[0])
	if v.Number() {
		return c.ofVector(dim.Vector{})
	}
	if c.refuseForms(e, args[0]) {
		return Typed{}
	}
	if args[1].Value == nil {
		return c.report(e.Args[1], "exponent", "pow: the exponent of a quantity has to be constant", c.text(e.Args[1]), "a constant such as 2 or 0.5", "the dimension has to be known before anything runs")
	}
	halves, exact := constant.Int64Val(constant.ToInt(constant.BinaryOp(constant.ToFloat(args[1].Value), mulToken, constant.MakeInt64(2))))
	w, ok := v.Power(int(halves))
	if !exact || !ok || halves > 40 || halves < -40 {
		return c.report(e.Args[1], "exponent", "pow: the exponent gives no dimension", c.text(e.Args[1]), "a multiple of one half that leaves exponents in halves", "")
	}
	return c.ofVector(w)
}

// same wants arguments of one dimension and returns it.
func (c *checker) same(e *ast.CallExpr, args []Typed) Typed {
	t := Typed{Mode: Value, Type: args[0].Type, Turns: args[0].Turns}
	for i := 1; i < len(args); i++ {
		_, isX := c.World.Quantity(t.Type)
		_, isY := c.World.Quantity(args[i].Type)
		if !isX && !isY {
			if t = c.sameNumbers(e, args, i); t.Mode == Invalid {
				return t
			}
		} else if !c.sameForm(t, args[i]) && !c.comparable(e, addToken, e.Args[0], e.Args[i], t, args[i]) {
			return Typed{}
		}
		if isY && !isX {
			t.Type = args[i].Type
		}
	}
	t.Type = types.Default(t.Type)
	t.Value = nil
	if name := ast.Unparen(e.Fun).(*ast.Ident).Name; name != "min" && name != "max" && c.World.number(t.Type) {
		t.Type = types.Typ[types.Float64]
	}
	return t
}

// sameNumbers holds the argument i against those before it, as Go does for two operands.
func (c *checker) sameNumbers(e *ast.CallExpr, args []Typed, i int) Typed {
	if c.tooLarge(e.Args[0], args[0]) || c.tooLarge(e.Args[i], args[i]) {
		return Typed{}
	}
	widest := args[0]
	for _, x := range args[1:i] {
		if wider(x.Type, widest.Type) {
			widest = x
		}
	}
	for _, j := range counterparts(args, i) {
		t := c.plainBinary(e, addToken, e.Args[j], e.Args[i], args[j], args[i])
		if t.Mode == Invalid {
			return Typed{}
		}
		if wider(t.Type, widest.Type) {
			widest = t
		}
	}
	return Typed{Mode: Value, Type: widest.Type, Turns: widest.Turns}
}

// counterparts lists the arguments before i whose types decide about it: the first with a
// type of its own, since all such have the same; all of them for the first such argument;
// and else the first one, since constants without a type go together.
func counterparts(args []Typed, i int) []int {
	for j := range i {
		if !isUntyped(args[j].Type) {
			return []int{j}
		}
	}
	if isUntyped(args[i].Type) {
		return []int{0}
	}
	all := make([]int, i)
	for j := range all {
		all[j] = j
	}
	return all
}

// wider reports whether a value of type t stands for one of type u, both being numbers that
// go together: typed before untyped, and of the untyped ones the later kind.
func wider(t, u types.Type) bool {
	if isUntyped(t) != isUntyped(u) {
		return isUntyped(u)
	}
	a, okA := t.(*types.Basic)
	b, okB := u.(*types.Basic)
	return okA && okB && isUntyped(t) && a.Kind() > b.Kind()
}

// magnitude returns the dimension without direction.
func (c *checker) magnitude(e *ast.CallExpr, args []Typed) Typed {
	if !isComplex(args[0].Type) {
		return c.same(e, args)
	}
	c.Imports["cmplx"] = true
	return c.ofVector(c.World.vector(args[0]))
}

// sameForm lets two points of one scale be compared.
func (c *checker) sameForm(x, y Typed) bool {
	return x.Type != nil && y.Type != nil && types.Identical(x.Type, y.Type)
}

// ratio wants two arguments of one dimension and returns a number.
func (c *checker) ratio(e *ast.CallExpr, args []Typed) Typed {
	if t := c.same(e, args); t.Mode == Invalid {
		return t
	}
	return Typed{Mode: Value, Type: types.Typ[types.Float64]}
}

// pure wants a plain number (an angle is one) and returns one.
func (c *checker) pure(e *ast.CallExpr, args []Typed) Typed {
	q, isQuantity := c.World.Quantity(args[0].Type)
	if isQuantity && (!q.Vector.Number() || q.Form == library.Log) {
		hint := "divide by a unit first: " + c.factor(e.Args[0]) + "/" + c.unitOf(q)
		return c.report(e.Args[0], "unit-left", c.text(e.Fun)+": takes a plain number", c.one(e.Args[0], args[0]), "a plain number", hint)
	}
	return Typed{Mode: Value, Type: types.Typ[types.Float64]}
}

func (c *checker) refuseForms(e *ast.CallExpr, x Typed) bool {
	if q, ok := c.World.Quantity(x.Type); ok && q.Form != library.Linear {
		c.report(e.Args[0], "level", c.text(e.Fun)+": takes no level and no point on a scale", c.one(e.Args[0], x), "an ordinary quantity", "")
		return true
	}
	return false
}

// complexParts reads real, imag and complex of quantities, which keep the dimension.
func (c *checker) complexParts(e *ast.CallExpr, name string, args []Typed) (Typed, bool) {
	if len(args) == 0 {
		return Typed{}, false
	}
	q, ok := c.World.Quantity(args[0].Type)
	switch {
	case name == "complex" && len(args) == 2:
		r, isQuantity := c.World.Quantity(args[1].Type)
		if !ok && !isQuantity {
			return Typed{}, false
		}
		if !c.comparable(e, addToken, e.Args[0], e.Args[1], args[0], args[1]) {
			return Typed{}, true
		}
		if !ok {
			q = r
		}
		if q.Form != library.Linear || q.Complex || r.Complex {
			return c.report(e, "operator", "complex: takes two real quantities", c.both(e.Args[0], e.Args[1], args[0], args[1]), "two real quantities", ""), true
		}
		return Typed{Mode: Value, Type: c.World.typeOf(product{q.Vector, true})}, true
	case (name == "real" || name == "imag") && len(args) == 1 && q.Complex:
		return Typed{Mode: Value, Type: c.World.ofVector(q.Vector)}, true
	}
	return Typed{}, false
}

// builtin reads a call of one of Go's own functions.
func (c *checker) builtin(e *ast.CallExpr, name string) Typed {
	args, ok := c.args(e)
	if !ok {
		return Typed{}
	}
	if (name == "make" || name == "new") && len(args) > 0 && args[0].Mode != Type {
		return c.report(e.Args[0], "not-a-type", c.text(e.Args[0])+": is no type", c.one(e.Args[0], args[0]), name+" of a type", "")
	}
	switch name {
	case "len":
		if len(args) == 1 && args[0].Value != nil && args[0].Value.Kind() == constant.String {
			return Typed{Mode: Value, Type: types.Typ[types.Int], Value: constant.MakeInt64(int64(len(constant.StringVal(args[0].Value))))}
		}
	case "append":
		return c.appendCall(e, args)
	case "real", "imag", "complex":
		if t, done := c.complexParts(e, name, args); done {
			return t
		}
	case "panic":
		if len(args) == 1 {
			c.assign(e.Args[0], args[0], types.NewInterfaceType(nil, nil), "panic")
		}
	case "delete":
		if len(args) == 2 {
			if m, ok := args[0].Type.Underlying().(*types.Map); ok && !c.assign(e.Args[1], args[1], m.Key(), "the key") {
				return Typed{}
			}
		}
	}
	copied := &ast.CallExpr{Fun: e.Fun, Lparen: e.Lparen, Ellipsis: e.Ellipsis, Rparen: e.Rparen}
	for i, a := range e.Args {
		copied.Args = append(copied.Args, c.placeholder(a, args[i]))
	}
	t := c.native(e, copied)
	if t.Value != nil && name == "len" {
		t.Value = nil
	}
	return t
}

func (c *checker) appendCall(e *ast.CallExpr, args []Typed) Typed {
	if len(args) == 0 || args[0].Mode != Value {
		return c.report(e, "argument-count", "append: takes a slice and values", fmt.Sprint(len(args)), "at least 1", "")
	}
	s, ok := args[0].Type.Underlying().(*types.Slice)
	if !ok {
		return c.report(e.Args[0], "type", "append: the first argument is no slice", c.one(e.Args[0], args[0]), "a slice", "")
	}
	if e.Ellipsis.IsValid() && len(args) != 2 {
		return c.report(e, "argument-count", "append: a list with ... behind it stands alone", fmt.Sprintf("%d arguments", len(args)), "2: the list, and another with ... behind it", "append in two steps")
	}
	for i := 1; i < len(args); i++ {
		want := s.Elem()
		if e.Ellipsis.IsValid() {
			want = s
		}
		if !c.assign(e.Args[i], args[i], want, "an element of "+c.text(e.Args[0])) {
			return Typed{}
		}
	}
	return Typed{Mode: Value, Type: args[0].Type}
}
