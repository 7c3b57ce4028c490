package check

import (
	"fmt"
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"strings"
)

// This file reads types and declarations.

// typeExpr reads a type that is written out.
func (c *checker) typeExpr(e ast.Expr) Typed {
	switch e := e.(type) {
	case *ast.ArrayType:
		return c.arrayType(e)
	case *ast.MapType:
		key, elem := c.typeOf(e.Key), c.typeOf(e.Value)
		if key == nil || elem == nil {
			return Typed{}
		}
		if !types.Comparable(key) {
			return c.report(e.Key, "type", c.text(e.Key)+": cannot be a key", c.World.describe(key), "a type that can be compared", "")
		}
		return Typed{Mode: Type, Type: types.NewMap(key, elem)}
	case *ast.FuncType:
		if sig := c.signatureOf(e, nil); sig != nil {
			return Typed{Mode: Type, Type: sig}
		}
		return Typed{}
	case *ast.StructType:
		return c.structType(e)
	case *ast.InterfaceType:
		return c.interfaceType(e)
	}
	return c.report(e, "not-available", "channels are not available in notebooks", c.text(e), "ordinary values and calls", "")
}

func (c *checker) arrayType(e *ast.ArrayType) Typed {
	elem := c.typeOf(e.Elt)
	if elem == nil {
		return Typed{}
	}
	if e.Len == nil {
		return Typed{Mode: Type, Type: types.NewSlice(elem)}
	}
	n := c.value(e.Len)
	length, ok := int64(0), false
	if n.Value != nil {
		length, ok = constant.Int64Val(constant.ToInt(n.Value))
	}
	if !ok || length < 0 || length > 1<<24 {
		return c.report(e.Len, "not-constant", "an array's length has to be a constant", c.text(e.Len), "a whole number from 0 to 16777216", "use a slice: []"+c.text(e.Elt))
	}
	return Typed{Mode: Type, Type: types.NewArray(elem, length)}
}

// typeOf reads e as a type; nil after a report.
func (c *checker) typeOf(e ast.Expr) types.Type {
	x := c.expr(e)
	switch x.Mode {
	case Type:
		return x.Type
	case Invalid:
		return nil
	}
	hint := ""
	if u, ok := c.Lib.Units[c.text(e)]; ok && u.Type != nil {
		hint = "its kind of quantity is " + c.World.typeText(u.Type)
	}
	c.report(e, "type", c.text(e)+": is no type", c.text(e), "a type such as float64 or units.Length", hint)
	return nil
}

func (w *World) typeText(t types.Type) string {
	return types.TypeString(t, func(p *types.Package) string { return p.Name() })
}

func (c *checker) structType(e *ast.StructType) Typed {
	var fields []*types.Var
	seen := map[string]bool{}
	for _, f := range e.Fields.List {
		t := c.typeOf(f.Type)
		if t == nil {
			return Typed{}
		}
		if len(f.Names) == 0 {
			return c.report(f.Type, "not-available", "embedded fields are not available in notebooks", c.text(f.Type), "a field with a name", "")
		}
		for _, n := range f.Names {
			if seen[n.Name] && n.Name != "_" {
				return c.report(n, "defined-twice", n.Name+": the field is there twice", n.Name, "each field once", "")
			}
			seen[n.Name] = true
			fields = append(fields, types.NewField(n.Pos(), c.Scratch, n.Name, t, false))
		}
	}
	return Typed{Mode: Type, Type: types.NewStruct(fields, nil)}
}

func (c *checker) interfaceType(e *ast.InterfaceType) Typed {
	var methods []*types.Func
	for _, m := range e.Methods.List {
		ft, ok := m.Type.(*ast.FuncType)
		if !ok || len(m.Names) != 1 {
			return c.report(m.Type, "not-available", "embedded interfaces are not available in notebooks", c.text(m.Type), "methods", "")
		}
		sig := c.signatureOf(ft, nil)
		if sig == nil {
			return Typed{}
		}
		methods = append(methods, types.NewFunc(m.Pos(), c.Scratch, m.Names[0].Name, sig))
	}
	return Typed{Mode: Type, Type: types.NewInterfaceType(methods, nil).Complete()}
}

// signatureOf reads parameters and results; nil after a report.
func (c *checker) signatureOf(ft *ast.FuncType, recv *types.Var) *types.Signature {
	if ft.TypeParams != nil {
		c.report(ft.TypeParams, "not-available", "type parameters are not available in notebooks", c.text(ft.TypeParams), "ordinary parameter types", "")
		return nil
	}
	params, variadic, ok := c.parameters(ft.Params)
	results, _, ok2 := c.parameters(ft.Results)
	if !ok || !ok2 {
		return nil
	}
	return types.NewSignatureType(recv, nil, nil, types.NewTuple(params...), types.NewTuple(results...), variadic)
}

func (c *checker) parameters(list *ast.FieldList) (vars []*types.Var, variadic, ok bool) {
	if list == nil {
		return nil, false, true
	}
	for _, f := range list.List {
		typ := f.Type
		ellipsis, many := typ.(*ast.Ellipsis)
		if many {
			typ, variadic = ellipsis.Elt, true
		}
		t := c.typeOf(typ)
		if t == nil {
			return nil, false, false
		}
		if many {
			t = types.NewSlice(t)
		}
		if len(f.Names) == 0 {
			vars = append(vars, types.NewParam(f.Pos(), c.Scratch, "", t))
		}
		for _, n := range f.Names {
			vars = append(vars, types.NewParam(n.Pos(), c.Scratch, n.Name, t))
		}
	}
	return vars, variadic, true
}

// declareAhead reads the top level's types, constants and function headers, so that
// functions may call each other wherever they stand.
func (c *checker) declareAhead() {
	for _, chunk := range c.Chunks {
		c.here = chunk
		for _, s := range chunk.Stmts {
			if d, ok := s.(*ast.DeclStmt); ok && d.Decl.(*ast.GenDecl).Tok == token.TYPE {
				c.typeDecl(d.Decl.(*ast.GenDecl))
			}
		}
	}
	for _, chunk := range c.Chunks {
		if chunk.Func != nil {
			c.here = chunk
			c.funcHeader(chunk.Func)
		}
	}
}

func (c *checker) typeDecl(d *ast.GenDecl) {
	for _, s := range d.Specs {
		spec := s.(*ast.TypeSpec)
		if spec.TypeParams != nil {
			c.report(spec, "not-available", "type parameters are not available in notebooks", c.text(spec), "ordinary types", "")
			continue
		}
		name := types.NewTypeName(spec.Name.Pos(), c.Scratch, spec.Name.Name, nil)
		if spec.Assign.IsValid() {
			if t := c.typeOf(spec.Type); t != nil {
				c.define(spec.Name, types.NewTypeName(spec.Name.Pos(), c.Scratch, spec.Name.Name, t), 0)
			}
			continue
		}
		named := types.NewNamed(name, nil, nil)
		c.define(spec.Name, name, 0)
		if t := c.typeOf(spec.Type); t != nil {
			named.SetUnderlying(t.Underlying())
			c.ownQuantity(spec, t)
		} else {
			named.SetUnderlying(types.Typ[types.Invalid])
		}
	}
}

// ownQuantity refuses a type made from a quantity type, which would lose its dimension.
func (c *checker) ownQuantity(spec *ast.TypeSpec, t types.Type) {
	if _, ok := c.World.Quantity(t); ok {
		c.report(spec.Type, "own-type", spec.Name.Name+": a type made from a quantity would lose its dimension", c.text(spec.Type), "the quantity itself, or a struct that holds it", "write type "+spec.Name.Name+" = "+c.text(spec.Type))
	}
}

func (c *checker) funcHeader(d *ast.FuncDecl) {
	var recv *types.Var
	var base *types.Named
	if d.Recv != nil {
		if recv, base = c.receiver(d); recv == nil {
			return
		}
	}
	sig := c.signatureOf(d.Type, recv)
	if sig == nil {
		return
	}
	fn := types.NewFunc(d.Name.Pos(), c.Scratch, d.Name.Name, sig)
	if base == nil {
		c.define(d.Name, fn, 0)
		return
	}
	c.Defs[d.Name] = fn
	if obj, _, _ := types.LookupFieldOrMethod(base, true, c.Scratch, d.Name.Name); obj != nil {
		c.report(d.Name, "defined-twice", d.Name.Name+": defined twice for "+base.Obj().Name(), d.Name.Name, "one field or method of a name", "")
		return
	}
	base.AddMethod(fn)
}

func (c *checker) receiver(d *ast.FuncDecl) (*types.Var, *types.Named) {
	f := d.Recv.List[0]
	t := c.typeOf(f.Type)
	if t == nil {
		return nil, nil
	}
	elem := t
	if p, ok := t.(*types.Pointer); ok {
		elem = p.Elem()
	}
	base, ok := elem.(*types.Named)
	if !ok || !c.own(elem) {
		c.report(f.Type, "own-type", "methods belong to types of the notebook", c.text(f.Type), "a type declared in this notebook", "write a function that takes the value")
		return nil, nil
	}
	name := ""
	if len(f.Names) > 0 {
		name = f.Names[0].Name
	}
	return types.NewParam(f.Pos(), c.Scratch, name, t), base
}

// funcBody reads the body of a declared function.
func (c *checker) funcBody(d *ast.FuncDecl) {
	fn, ok := c.Defs[d.Name].(*types.Func)
	if !ok || d.Body == nil {
		if d.Body == nil {
			c.report(d.Name, "syntax", "syntax: the function has no body", c.text(d.Name), "statements in braces", "")
		}
		return
	}
	c.body(fn.Signature(), fn, d.Body, d.Recv, d.Type)
}

func (c *checker) funcLit(e *ast.FuncLit) Typed {
	sig := c.signatureOf(e.Type, nil)
	if sig == nil {
		return Typed{}
	}
	c.body(sig, nil, e.Body, nil, e.Type)
	return Typed{Mode: Value, Type: sig}
}

func (c *checker) body(sig *types.Signature, obj types.Object, block *ast.BlockStmt, recv *ast.FieldList, ft *ast.FuncType) {
	c.fn = &function{c.fn, sig, obj}
	c.within(func() {
		for _, list := range []*ast.FieldList{recv, ft.Params, ft.Results} {
			c.defineFields(list)
		}
		c.within(func() { c.stmts(block.List) })
	})
	c.branches(block.List)
	c.fn = c.fn.outer
}

func (c *checker) defineFields(list *ast.FieldList) {
	if list == nil {
		return
	}
	for _, f := range list.List {
		typ := f.Type
		t := types.Type(nil)
		if el, ok := typ.(*ast.Ellipsis); ok {
			t = types.NewSlice(c.Exprs[el.Elt].Type)
		} else {
			t = c.Exprs[typ].Type
		}
		for _, n := range f.Names {
			c.define(n, types.NewVar(n.Pos(), c.Scratch, n.Name, t), 0)
		}
	}
}

// varDecl reads var declarations.
func (c *checker) varDecl(d *ast.GenDecl) {
	for _, s := range d.Specs {
		spec := s.(*ast.ValueSpec)
		var t types.Type
		if spec.Type != nil {
			if t = c.typeOf(spec.Type); t == nil {
				continue
			}
		}
		for i, x := range c.rightSide(spec, spec.Values, len(spec.Names)) {
			c.defineVar(spec.Names[i], valueAt(spec.Values, i), x, t)
		}
		if len(spec.Values) == 0 {
			for _, n := range spec.Names {
				c.define(n, types.NewVar(n.Pos(), c.Scratch, n.Name, t), 0)
			}
		}
	}
}

func valueAt(values []ast.Expr, i int) ast.Expr {
	if i < len(values) {
		return values[i]
	}
	return nil
}

// defineVar defines a variable by its first value; e is nil for one of several results.
func (c *checker) defineVar(id *ast.Ident, e ast.Expr, x Typed, t types.Type) {
	if t != nil && e != nil {
		c.assign(e, x, t, "variable "+id.Name)
	}
	if t == nil {
		if t = c.varType(id, e, x); t == nil {
			t = types.Typ[types.Invalid]
		}
	}
	c.define(id, types.NewVar(id.Pos(), c.Scratch, id.Name, t), x.Turns)
}

func (c *checker) varType(id *ast.Ident, e ast.Expr, x Typed) types.Type {
	switch {
	case x.Mode != Value:
		if e != nil && x.Mode == Type {
			c.refuseTypeOperand(e, x)
		}
		return nil
	case isNil(x):
		c.report(e, "type", id.Name+": nil alone has no type", "nil", "a value, or var "+id.Name+" with a type", "")
		return nil
	}
	if x.Value != nil && isUntyped(x.Type) && basic(x.Type)&types.IsInteger != 0 && !representable(x.Value, types.Typ[types.Int]) {
		c.report(e, "type", id.Name+": the whole number is too large", c.text(e), "at most 64 bits", "write it as 1e20")
		return nil
	}
	return c.World.settle(types.Default(x.Type))
}

// constDecl reads const declarations, iota and repeated lines included.
func (c *checker) constDecl(d *ast.GenDecl) {
	var values []ast.Expr
	var typ ast.Expr
	for i, s := range d.Specs {
		spec := s.(*ast.ValueSpec)
		if len(spec.Values) > 0 || spec.Type != nil {
			values, typ = spec.Values, spec.Type
		}
		for j, n := range spec.Names {
			c.constant(n, valueAt(values, j), typ, i)
		}
	}
}

func (c *checker) constant(id *ast.Ident, value, typ ast.Expr, iota int) {
	if value == nil {
		c.report(id, "value-count", id.Name+": has no value", "no value", "a constant value", "")
		return
	}
	var x Typed
	c.within(func() {
		c.scope.names["iota"] = &entry{object: types.NewConst(token.NoPos, c.Scratch, "iota", types.Typ[types.UntypedInt], constant.MakeInt64(int64(iota)))}
		x = c.value(value)
	})
	if x.Mode == Invalid {
		c.define(id, types.NewVar(id.Pos(), c.Scratch, id.Name, types.Typ[types.Invalid]), 0)
		return
	}
	if x.Value == nil {
		c.report(value, "not-constant", id.Name+": the value is not constant", c.text(value), "a value known before anything runs", "use := instead of const")
		return
	}
	t := x.Type
	if typ != nil {
		if t = c.typeOf(typ); t == nil || !c.assign(value, x, t, "constant "+id.Name) {
			return
		}
	}
	c.define(id, types.NewConst(id.Pos(), c.Scratch, id.Name, t, x.Value), x.Turns)
}

// genDecl reads a declaration among statements.
func (c *checker) genDecl(d *ast.GenDecl) {
	switch d.Tok {
	case token.VAR:
		c.varDecl(d)
	case token.CONST:
		c.constDecl(d)
	case token.TYPE:
		if c.fn != nil || c.scope != c.top {
			c.typeDecl(d)
		}
	}
}

func plural(n int, word string) string {
	if n == 1 {
		return fmt.Sprintf("1 %s", word)
	}
	return fmt.Sprintf("%d %ss", n, strings.TrimSuffix(word, "s"))
}
