package check

import (
	"go/ast"
	"go/types"
)

// This file reads calls of the library's generic functions, which work on quantities of any
// kind. The type parameters are found from the arguments, functions first; then each
// argument is held against its parameter as in any other call. The interpreter knows no
// generics: the call runs as that of a twin on plain numbers, which is told the kinds.

// TwinSuffix ends the name of the function that runs in the place of a generic one.
const TwinSuffix = "Numbers"

// RangesName is the name of the function by which a package of the library tells its host where
// calls leave their range.
const RangesName = "Ranges"

// Instance is a call of a generic function.
type Instance struct {
	Types []types.Type // of its type parameters
}

func (c *checker) generic(e *ast.CallExpr, fun Typed) Typed {
	sig := fun.Type.(*types.Signature)
	args, ok := c.args(e)
	if !ok || !c.countArgs(e, sig) {
		return Typed{}
	}
	found := map[*types.TypeParam]types.Type{}
	for _, functions := range []bool{true, false} {
		for i, x := range args {
			param := paramType(sig, i, e.Ellipsis.IsValid())
			if _, isFunc := param.(*types.Signature); isFunc == functions && x.Mode == Value && !isNil(x) {
				unify(param, c.World.settle(types.Default(x.Type)), found, numeric)
			}
		}
	}
	actual := c.instantiate(e, sig, found)
	if actual == nil {
		return Typed{}
	}
	for i, a := range e.Args {
		ok = c.assign(a, args[i], paramType(actual, i, e.Ellipsis.IsValid()), c.paramRole(e, actual, i)) && ok
	}
	if !ok {
		return Typed{}
	}
	return result(actual.Results())
}

// instantiate puts types into a signature and notes them for lowering.
func (c *checker) instantiate(e *ast.CallExpr, sig *types.Signature, found map[*types.TypeParam]types.Type) *types.Signature {
	list := make([]types.Type, sig.TypeParams().Len())
	for i := range list {
		p := sig.TypeParams().At(i)
		if list[i] = found[p]; list[i] == nil {
			c.report(e, "type", c.text(e.Fun)+": the kinds are not clear", c.text(e), "arguments that tell the kind of "+p.Obj().Name(), "")
			return nil
		}
	}
	t, err := types.Instantiate(nil, sig, list, true)
	if err != nil {
		c.report(e, "type", c.text(e.Fun)+": takes quantities and numbers", c.World.describe(list[0]), "quantities or float64 numbers", "")
		return nil
	}
	c.Generic[e.Fun] = Instance{list}
	return t.(*types.Signature)
}

// unify finds type parameters by holding a parameter's type against an argument's, which is
// adapted first.
func unify(param, arg types.Type, found map[*types.TypeParam]types.Type, adapt func(types.Type) types.Type) {
	switch p := param.(type) {
	case *types.TypeParam:
		if found[p] == nil {
			found[p] = adapt(arg)
		}
	case *types.Slice:
		if a, ok := arg.Underlying().(*types.Slice); ok {
			unify(p.Elem(), a.Elem(), found, adapt)
		}
	case *types.Array:
		if a, ok := arg.Underlying().(*types.Array); ok {
			unify(p.Elem(), a.Elem(), found, adapt)
		}
	case *types.Pointer:
		if a, ok := arg.Underlying().(*types.Pointer); ok {
			unify(p.Elem(), a.Elem(), found, adapt)
		}
	case *types.Map:
		if a, ok := arg.Underlying().(*types.Map); ok {
			unify(p.Key(), a.Key(), found, adapt)
			unify(p.Elem(), a.Elem(), found, adapt)
		}
	case *types.Signature:
		a, ok := arg.Underlying().(*types.Signature)
		if !ok || a.Params().Len() != p.Params().Len() || a.Results().Len() != p.Results().Len() {
			return
		}
		for i := range p.Params().Len() {
			unify(p.Params().At(i).Type(), a.Params().At(i).Type(), found, adapt)
		}
		for i := range p.Results().Len() {
			unify(p.Results().At(i).Type(), a.Results().At(i).Type(), found, adapt)
		}
	}
}

// numeric lets a whole number stand for a plain number.
func numeric(t types.Type) types.Type {
	if b, ok := t.(*types.Basic); ok && b.Kind() == types.Int {
		return types.Typ[types.Float64]
	}
	return t
}

// hidden reports whether a name of a package is not for notebooks: a twin, a type that only
// bounds type parameters, or what the host asks for ranges.
func hidden(p *types.Package, name string) bool {
	if name == RangesName {
		return true
	}
	if t, ok := p.Scope().Lookup(name).(*types.TypeName); ok {
		i, isInterface := t.Type().Underlying().(*types.Interface)
		return isInterface && !i.IsMethodSet()
	}
	n := len(name) - len(TwinSuffix)
	if n <= 0 || name[n:] != TwinSuffix {
		return false
	}
	f, ok := p.Scope().Lookup(name[:n]).(*types.Func)
	return ok && f.Signature().TypeParams() != nil
}
