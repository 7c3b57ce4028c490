package check

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"go/types"
	"strings"
)

// This file reads the notebook's own generic functions. The interpreter runs none: for each
// set of types that a function is used with it is read once more, as a function of its own
// with these types in the place of its type parameters. So dimensions are checked for what
// the function is really given.

// mostInstances bounds how often generic functions are read.
const mostInstances = 200

// template is a generic function of the notebook.
type template struct {
	chunk     *Chunk
	object    *types.Func
	instances map[string]*types.Func // by types
}

// pendingBody is an instance whose body is still to be read.
type pendingBody struct {
	chunk *Chunk
	scope *scope
}

// IsTemplate reports whether a chunk is a generic function, which runs as its instances.
func (c *Chunk) IsTemplate() bool { return c.Func != nil && c.Func.Type.TypeParams != nil }

// generic reports a generic function or an instance of one, which are read on their own.
func (c *Chunk) generic() bool { return c.IsTemplate() || c.Params != nil }

// templateHeader declares a generic function.
func (c *checker) templateHeader(chunk *Chunk) {
	d := chunk.Func
	if d.Recv != nil || d.Name.Name == "_" {
		c.report(d.Type.TypeParams, "not-available", "methods with type parameters are not available in notebooks", c.text(d.Type.TypeParams), "a function", "")
		return
	}
	var sig *types.Signature
	c.within(func() { sig = c.genericSignature(d.Type) })
	if sig == nil {
		c.passOver(d.Name)
		return
	}
	f := types.NewFunc(d.Name.Pos(), c.Scratch, d.Name.Name, sig)
	c.define(d.Name, f, 0)
	t := &template{chunk, f, map[string]*types.Func{}}
	c.templates[f] = t
	c.templateList = append(c.templateList, t)
}

func (c *checker) genericSignature(ft *ast.FuncType) *types.Signature {
	var list []*types.TypeParam
	for _, field := range ft.TypeParams.List {
		bound := c.constraint(field.Type)
		if bound == nil {
			return nil
		}
		for _, id := range field.Names {
			p := types.NewTypeParam(types.NewTypeName(id.Pos(), c.Scratch, id.Name, nil), bound)
			c.define(id, p.Obj(), 0)
			if c.scope.names[id.Name] == nil {
				return nil
			}
			list = append(list, p)
		}
	}
	params, variadic, ok := c.parameters(ft.Params)
	results, _, ok2 := c.parameters(ft.Results)
	if !ok || !ok2 {
		return nil
	}
	return types.NewSignatureType(nil, nil, list, types.NewTuple(params...), types.NewTuple(results...), variadic)
}

// constraint reads what a type parameter may be; nil after a report.
func (c *checker) constraint(e ast.Expr) types.Type {
	switch x := e.(type) {
	case *ast.BinaryExpr, *ast.UnaryExpr:
		terms := c.terms(e)
		if terms == nil {
			return nil
		}
		return types.NewInterfaceType(nil, []types.Type{types.NewUnion(terms)}).Complete()
	case *ast.InterfaceType:
		if len(x.Methods.List) == 1 && len(x.Methods.List[0].Names) == 0 {
			return c.constraint(x.Methods.List[0].Type)
		}
	}
	t := c.typeOf(e)
	if t != nil && !types.IsInterface(t) {
		return types.NewInterfaceType(nil, []types.Type{t}).Complete()
	}
	return t
}

// terms reads ~int | ~float64.
func (c *checker) terms(e ast.Expr) []*types.Term {
	switch e := e.(type) {
	case *ast.BinaryExpr:
		left, right := c.terms(e.X), c.terms(e.Y)
		if e.Op != token.OR || left == nil || right == nil {
			break
		}
		return append(left, right...)
	case *ast.UnaryExpr:
		if t := c.typeOf(e.X); e.Op == token.TILDE && t != nil {
			return []*types.Term{types.NewTerm(true, t.Underlying())}
		}
	default:
		if t := c.typeOf(e); t != nil {
			return []*types.Term{types.NewTerm(false, t)}
		}
	}
	return nil
}

// templateOf returns the generic function that an expression names, and the types that stand
// behind the name.
func (c *checker) templateOf(e ast.Expr) (*template, *ast.Ident, []ast.Expr) {
	if len(c.templates) == 0 {
		return nil, nil, nil
	}
	var given []ast.Expr
	switch x := ast.Unparen(e).(type) {
	case *ast.IndexExpr:
		e, given = x.X, []ast.Expr{x.Index}
	case *ast.IndexListExpr:
		e, given = x.X, x.Indices
	}
	id, ok := ast.Unparen(e).(*ast.Ident)
	if !ok {
		return nil, nil, nil
	}
	found, _ := c.scope.find(id.Name)
	if found == nil {
		return nil, nil, nil
	}
	return c.templates[found.object], id, given
}

// templateCall reads a call of a generic function.
func (c *checker) templateCall(e *ast.CallExpr, t *template, id *ast.Ident, given []ast.Expr) Typed {
	args, ok := c.args(e)
	sig := t.object.Signature()
	if !ok || !c.countArgs(e, sig) {
		return Typed{}
	}
	found, ok := c.explicit(t, given)
	if !ok {
		return Typed{}
	}
	c.infer(e, sig, args, found)
	f := c.instance(e.Fun, t, id, found)
	if f == nil {
		return Typed{}
	}
	for i, a := range e.Args {
		ok = c.assign(a, args[i], paramType(f.Signature(), i, e.Ellipsis.IsValid()), c.paramRole(e, f.Signature(), i)) && ok
	}
	if !ok {
		return Typed{}
	}
	return result(f.Signature().Results())
}

// templateValue reads a generic function that is not called, with its types in brackets.
func (c *checker) templateValue(e ast.Expr, t *template, id *ast.Ident, given []ast.Expr) Typed {
	found, ok := c.explicit(t, given)
	if !ok {
		return Typed{}
	}
	f := c.instance(e, t, id, found)
	if f == nil {
		return Typed{}
	}
	return Typed{Mode: Value, Type: f.Signature()}
}

// explicit reads the types in brackets.
func (c *checker) explicit(t *template, given []ast.Expr) (map[*types.TypeParam]types.Type, bool) {
	found, list := map[*types.TypeParam]types.Type{}, t.object.Signature().TypeParams()
	if len(given) > list.Len() {
		c.report(given[list.Len()], "type", t.object.Name()+": too many types", fmt.Sprint(len(given)), fmt.Sprint(list.Len()), "")
		return nil, false
	}
	for i, e := range given {
		if found[list.At(i)] = c.typeOf(e); found[list.At(i)] == nil {
			return nil, false
		}
	}
	return found, true
}

// infer finds types from arguments: from those that have one, then from constants.
func (c *checker) infer(e *ast.CallExpr, sig *types.Signature, args []Typed, found map[*types.TypeParam]types.Type) {
	same := func(t types.Type) types.Type { return t }
	for _, constants := range []bool{false, true} {
		for i, x := range args {
			if x.Mode == Value && !isNil(x) && constants == untyped(x.Type) {
				unify(paramType(sig, i, e.Ellipsis.IsValid()), c.widest(x, sig, i, args), found, same)
			}
		}
	}
}

func untyped(t types.Type) bool {
	b, ok := t.(*types.Basic)
	return ok && b.Info()&types.IsUntyped != 0
}

// widest is the type an argument asks for: of constants for one type parameter that of the
// widest.
func (c *checker) widest(x Typed, sig *types.Signature, at int, args []Typed) types.Type {
	t := c.World.settle(types.Default(x.Type))
	if !untyped(x.Type) {
		return t
	}
	for i, other := range args {
		if paramType(sig, i, false) == paramType(sig, at, false) && untyped(other.Type) && other.Type.(*types.Basic).Kind() > x.Type.(*types.Basic).Kind() {
			x, t = other, types.Default(other.Type)
		}
	}
	return t
}

// instance returns a generic function as it is for some types, and notes it for lowering;
// nil after a report.
func (c *checker) instance(e ast.Expr, t *template, id *ast.Ident, found map[*types.TypeParam]types.Type) *types.Func {
	list, key := t.object.Signature().TypeParams(), ""
	for p := range list.TypeParams() {
		arg := found[p]
		if arg == nil {
			c.report(e, "type", t.object.Name()+": the types are not clear", c.text(e), "arguments that tell what "+p.Obj().Name()+" is", "or the type in brackets: "+t.object.Name()+"[units.Length](...)")
			return nil
		}
		if bound := p.Constraint().Underlying().(*types.Interface); !types.Satisfies(arg, bound) {
			c.report(e, "type", fmt.Sprintf("%s: %s is not taken for %s", t.object.Name(), c.World.describe(arg), p.Obj().Name()), c.World.describe(arg), c.boundText(t, p), "")
			return nil
		}
		key += types.TypeString(arg, nil) + ";"
	}
	f := t.instances[key]
	if f == nil {
		f = c.newInstance(e, t, found, key)
	}
	if f != nil {
		c.Instances[ast.Unparen(e)] = f
		c.Exprs[ast.Unparen(e)] = Typed{Mode: Value, Type: f.Signature()}
		c.usedInstance(f, id)
	}
	return f
}

// boundText is what stands behind a type parameter in the notebook.
func (c *checker) boundText(t *template, p *types.TypeParam) string {
	for _, field := range t.chunk.Func.Type.TypeParams.List {
		for _, id := range field.Names {
			if id.Name == p.Obj().Name() {
				return c.text(field.Type)
			}
		}
	}
	return p.Constraint().String()
}

// usedInstance notes the use for the order of definitions.
func (c *checker) usedInstance(f *types.Func, id *ast.Ident) {
	if c.fn == nil {
		c.calls = append(c.calls, reference{f, id})
	} else if from := c.fn.declared(); from != nil {
		c.refs[from] = append(c.refs[from], reference{f, id})
	}
}

func (c *checker) newInstance(e ast.Expr, t *template, found map[*types.TypeParam]types.Type, key string) *types.Func {
	if c.instanceCount++; c.instanceCount > mostInstances {
		c.report(e, "too-large", t.object.Name()+": is used with too many types", fmt.Sprintf("more than %d", mostInstances), "fewer", "a generic function that calls itself with ever new types never ends")
		return nil
	}
	chunk := c.reread(t.chunk)
	chunk.inWords = c.standFor(e, t, found)
	outer, fn, here := c.scope, c.fn, c.here
	c.scope, c.fn, c.here = c.bound(chunk, t, found), nil, chunk
	chunk.Params, chunk.Func.Type.TypeParams = chunk.Func.Type.TypeParams, nil
	sig, body := c.signatureOf(chunk.Func.Type, nil), c.scope
	c.scope, c.fn, c.here = outer, fn, here
	if sig == nil {
		return nil
	}
	f := types.NewFunc(chunk.Func.Name.Pos(), c.Scratch, fmt.Sprintf("%sˑ%d", t.object.Name(), c.instanceCount), sig)
	c.Defs[chunk.Func.Name], t.instances[key] = f, f
	c.pending = append(c.pending, pendingBody{chunk, body})
	return f
}

// standFor tells what the type parameters of an instance stand for, and where that was asked.
func (c *checker) standFor(e ast.Expr, t *template, found map[*types.TypeParam]types.Type) string {
	var parts []string
	for p := range t.object.Signature().TypeParams().TypeParams() {
		parts = append(parts, p.Obj().Name()+" is "+c.World.describe(found[p]))
	}
	text := "here " + strings.Join(parts, ", ")
	if line := c.PlaceOf(e).Line; e != t.chunk.Func.Name {
		text += fmt.Sprintf(", as line %d asks for it", line)
	}
	return text
}

// bound is the scope in which the names of type parameters stand for types.
func (c *checker) bound(chunk *Chunk, t *template, found map[*types.TypeParam]types.Type) *scope {
	s, list, i := newScope(c.top), t.object.Signature().TypeParams(), 0
	for _, field := range chunk.Func.Type.TypeParams.List {
		for _, id := range field.Names {
			s.names[id.Name] = &entry{object: types.NewTypeName(id.Pos(), c.Scratch, id.Name, found[list.At(i)]), pos: id.Pos()}
			i++
		}
	}
	return s
}

// reread parses a function once more, so that its parts can be typed anew.
func (c *checker) reread(old *Chunk) *Chunk {
	chunk := &Chunk{Cell: old.Cell, Offset: old.Offset, Text: old.Text, head: old.head}
	base := c.Fset.Base()
	f, _ := parser.ParseFile(c.Fset, "", "package p; "+chunk.Text+"\n", parser.SkipObjectResolution)
	chunk.file, chunk.Func = c.Fset.File(token.Pos(base)), f.Decls[0].(*ast.FuncDecl)
	c.Chunks = append(c.Chunks, chunk)
	return chunk
}

// instanceBodies reads what is pending, and each generic function that nothing uses once for
// a type that it takes, so that its mistakes show.
func (c *checker) instanceBodies() {
	for i := 0; ; i++ {
		for ; len(c.pending) > 0; c.pending = c.pending[1:] {
			c.instanceBody(c.pending[0])
		}
		if i >= len(c.templateList) || len(c.issues) >= enough {
			return
		}
		if t := c.templateList[i]; len(t.instances) == 0 && c.instanceCount < mostInstances {
			c.tryOut(t)
		}
	}
}

func (c *checker) instanceBody(b pendingBody) {
	outer, here := c.scope, c.here
	c.scope, c.here = b.scope, b.chunk
	c.funcBody(b.chunk.Func)
	c.scope, c.here = outer, here
}

// tryOut reads a generic function for the first types that it takes.
func (c *checker) tryOut(t *template) {
	found, key := map[*types.TypeParam]types.Type{}, ""
	for p := range t.object.Signature().TypeParams().TypeParams() {
		for _, candidate := range []types.Type{types.Typ[types.Float64], types.Typ[types.Int], types.Typ[types.String]} {
			if found[p] == nil && types.Satisfies(candidate, p.Constraint().Underlying().(*types.Interface)) {
				found[p] = candidate
			}
		}
		if found[p] == nil {
			return
		}
		key += strings.TrimSpace(found[p].String()) + ";"
	}
	c.newInstance(t.chunk.Func.Name, t, found, key)
}
