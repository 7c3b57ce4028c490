package check

import (
	"fmt"
	"go/ast"
	"go/constant"
	"go/types"
)

func (c *checker) call(e *ast.CallExpr) Typed {
	if t, id, given := c.templateOf(e.Fun); t != nil {
		return c.templateCall(e, t, id, given)
	}
	fun := c.expr(e.Fun)
	switch fun.Mode {
	case Invalid:
		c.args(e)
		return fun
	case Type:
		return c.conversion(e, fun.Type)
	case Builtin:
		return c.builtin(e, fun.object.Name())
	case Function:
		name := ast.Unparen(e.Fun).(*ast.Ident).Name
		if name == KnobName {
			return c.knob(e)
		}
		if name == CountedName {
			return c.counted(e)
		}
		return c.function(e, name)
	case Package, Scale, NoValue:
		return c.settled(e.Fun, fun)
	}
	fun = c.settled(e.Fun, fun)
	if fun.Mode == Invalid {
		return fun
	}
	sig, ok := fun.Type.Underlying().(*types.Signature)
	if !ok {
		return c.report(e.Fun, "not-a-function", c.text(e.Fun)+": cannot be called", c.one(e.Fun, fun), "a function", "")
	}
	if sig.TypeParams() != nil {
		return c.generic(e, fun)
	}
	if !c.arguments(e, sig) {
		return Typed{}
	}
	return result(sig.Results())
}

func result(r *types.Tuple) Typed {
	switch r.Len() {
	case 0:
		return Typed{Mode: NoValue}
	case 1:
		return Typed{Mode: Value, Type: r.At(0).Type()}
	}
	return Typed{Mode: Value, Type: r}
}

// args reads the arguments, each as one value.
func (c *checker) args(e *ast.CallExpr) ([]Typed, bool) {
	all, ok := make([]Typed, len(e.Args)), true
	for i, a := range e.Args {
		all[i] = c.value(a)
		ok = ok && all[i].Mode != Invalid
	}
	return all, ok
}

// arguments checks the arguments of a call against the parameters.
func (c *checker) arguments(e *ast.CallExpr, sig *types.Signature) bool {
	if spread, ok := c.spread(e, sig); spread {
		return ok
	}
	args, ok := c.args(e)
	if !c.countArgs(e, sig) {
		return false
	}
	for i, a := range e.Args {
		if c.mayAssign(args[i]) && !c.assign(a, args[i], paramType(sig, i, e.Ellipsis.IsValid()), c.paramRole(e, sig, i)) {
			ok = false
		}
	}
	return ok
}

func (c *checker) mayAssign(x Typed) bool { return x.Mode != Invalid }

func (c *checker) countArgs(e *ast.CallExpr, sig *types.Signature) bool {
	n, want := len(e.Args), sig.Params().Len()
	if n == want || sig.Variadic() && n >= want-1 && !e.Ellipsis.IsValid() {
		return true
	}
	c.report(e, "argument-count", c.text(e.Fun)+": the number of arguments does not fit", fmt.Sprint(n), c.signature(e, sig), spreadHint(e, sig))
	return false
}

// spreadHint tells how single values go beside a list that is spread.
func spreadHint(e *ast.CallExpr, sig *types.Signature) string {
	if sig.Variadic() && e.Ellipsis.IsValid() && len(e.Args) > sig.Params().Len() {
		return "a list with ... stands alone: append the single values to it first"
	}
	return ""
}

// signature writes the parameters as a person would call the function.
func (c *checker) signature(e *ast.CallExpr, sig *types.Signature) string {
	number := fmt.Sprint(sig.Params().Len())
	if sig.Variadic() && !e.Ellipsis.IsValid() {
		number = fmt.Sprint(sig.Params().Len()-1) + " or more"
	}
	s := fmt.Sprintf("%s: %s(", number, c.text(e.Fun))
	for i := range sig.Params().Len() {
		p := sig.Params().At(i)
		if i > 0 {
			s += ", "
		}
		t := p.Type()
		if sig.Variadic() && i == sig.Params().Len()-1 {
			s += p.Name() + " any number of " + c.World.describe(t.(*types.Slice).Elem())
			continue
		}
		s += p.Name() + " " + c.World.describe(t)
	}
	return s + ")"
}

func paramType(sig *types.Signature, i int, ellipsis bool) types.Type {
	last := sig.Params().Len() - 1
	if sig.Variadic() && i >= last && !ellipsis {
		return sig.Params().At(last).Type().(*types.Slice).Elem()
	}
	return sig.Params().At(i).Type()
}

func (c *checker) paramRole(e *ast.CallExpr, sig *types.Signature, i int) string {
	p := sig.Params().At(min(i, sig.Params().Len()-1))
	if p.Name() == "" {
		return fmt.Sprintf("argument %d of %s", i+1, c.text(e.Fun))
	}
	return fmt.Sprintf("argument %s of %s", p.Name(), c.text(e.Fun))
}

// spread checks f(g()) where g has as many results as f has parameters.
func (c *checker) spread(e *ast.CallExpr, sig *types.Signature) (spread, ok bool) {
	if len(e.Args) != 1 || sig.Params().Len() < 2 || sig.Variadic() {
		return false, false
	}
	x := c.expr(e.Args[0])
	tuple, isTuple := x.Type.(*types.Tuple)
	if !isTuple || tuple.Len() != sig.Params().Len() {
		return false, false
	}
	for i := range tuple.Len() {
		if !types.AssignableTo(tuple.At(i).Type(), sig.Params().At(i).Type()) {
			c.report(e.Args[0], "type", c.paramRole(e, sig, i)+": the value does not fit", c.World.describe(tuple.At(i).Type()), c.World.describe(sig.Params().At(i).Type()), "")
			return true, false
		}
	}
	return true, true
}

// conversion reads T(x).
func (c *checker) conversion(e *ast.CallExpr, t types.Type) Typed {
	if len(e.Args) != 1 {
		return c.report(e, "argument-count", c.text(e.Fun)+": a conversion takes one value", fmt.Sprint(len(e.Args)), "1", "")
	}
	x := c.value(e.Args[0])
	if x.Mode != Value {
		return c.refuseTypeOperand(e.Args[0], x)
	}
	q, isQuantity := c.World.Quantity(x.Type)
	want, wantsQuantity := c.World.Quantity(t)
	switch {
	case wantsQuantity && isQuantity && !(q.Form == want.Form && q.Vector.Same(want.Vector) && (want.Complex || !q.Complex)):
		return c.report(e, "dimension-mismatch", "conversion: the dimension does not fit", c.one(e.Args[0], x), c.World.describe(t), c.turnInto(e.Args[0], x, q, want))
	case isQuantity && q.Complex && !wantsQuantity && basic(t)&(types.IsFloat|types.IsInteger) != 0:
		return c.report(e, "conversion", "conversion: a complex quantity is no real number", c.one(e.Args[0], x), c.World.describeExactly(t), "abs(...) is its magnitude, real(...) its real part")
	case isQuantity && basic(t)&types.IsInteger != 0 && x.Value != nil:
		return c.report(e, "conversion", "conversion: "+c.text(e.Args[0])+" is no whole number", c.one(e.Args[0], x), c.World.describeExactly(t), "divide by a unit and round: int(round(x/"+c.unitOf(q)+"))")
	case isQuantity && basic(t)&types.IsNumeric != 0, wantsQuantity && (c.World.number(x.Type) || want.Complex && isComplex(x.Type)):
		if c.tooLarge(e.Args[0], x) {
			return Typed{}
		}
		return c.convertNumber(t, x)
	case x.Value != nil && basic(t)&types.IsInteger != 0 && x.Value.Kind() == constant.Float && constant.ToInt(x.Value).Kind() != constant.Int:
		return c.report(e, "conversion", "conversion: would lose a fraction", c.text(e), "a whole number", "round it first, such as int(round("+c.text(e.Args[0])+"))")
	case types.IsInterface(t):
		c.assign(e.Args[0], x, t, "conversion")
		return Typed{Mode: Value, Type: t}
	}
	return c.native(e, &ast.CallExpr{Fun: c.placeholder(e.Fun, Typed{Mode: Type, Type: t}), Lparen: e.Lparen, Args: []ast.Expr{c.placeholder(e.Args[0], x)}, Rparen: e.Rparen})
}

func (c *checker) convertNumber(t types.Type, x Typed) Typed {
	r := Typed{Mode: Value, Type: t}
	if x.Value != nil && basic(t)&types.IsFloat != 0 {
		r.Value = constant.ToFloat(x.Value)
	}
	return r
}

func (c *checker) refuseTypeOperand(e ast.Expr, x Typed) Typed {
	if x.Mode == Type {
		return c.report(e, "no-value", c.text(e)+": is a type", "a type", "a value", "")
	}
	return Typed{}
}

// calleeName returns package.Name of a call of a library function.
func (c *checker) calleeName(e *ast.CallExpr) string {
	s, ok := ast.Unparen(e.Fun).(*ast.SelectorExpr)
	if !ok {
		return ""
	}
	if id, ok := s.X.(*ast.Ident); ok && c.Exprs[id].Mode == Package {
		return id.Name + "." + s.Sel.Name
	}
	return ""
}
