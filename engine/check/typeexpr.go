package check

import (
	"go/ast"
	"go/constant"
	"go/types"
)

// This file reads types that are written out.

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
	if _, quantity := c.World.Quantity(n.Type); n.Value != nil && !quantity {
		length, ok = constant.Int64Val(constant.ToInt(n.Value))
	}
	if !ok || length < 0 || length > 1<<24 {
		return c.report(e.Len, "not-constant", "an array's length has to be a constant", c.text(e.Len), "a whole number from 0 to 16777216", "use a slice: []"+c.text(e.Elt))
	}
	return c.small(e, types.NewArray(elem, length))
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
	c.report(e, "not-a-type", c.text(e)+": is no type", c.text(e), "a type such as float64 or units.Length", hint)
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
		names := f.Names
		if len(names) == 0 { // go on with the name that it has in Go
			names = []*ast.Ident{embeddedName(f.Type)}
			c.report(f.Type, "not-available", "embedded fields are not available in notebooks", c.text(f.Type), "a field with a name", "write "+names[0].Name+" "+c.text(f.Type)+", and use its parts through the name: x."+names[0].Name+".part")
		}
		for _, n := range names {
			if seen[n.Name] && n.Name != "_" {
				return c.report(n, "defined-twice", n.Name+": the field is there twice", n.Name, "each field once", "")
			}
			seen[n.Name] = true
			fields = append(fields, types.NewField(n.Pos(), c.Scratch, n.Name, t, false))
		}
	}
	return c.small(e, types.NewStruct(fields, nil))
}

// embeddedHint tells where a list of types may stand.
func (c *checker) embeddedHint(e ast.Expr) string {
	switch e.(type) {
	case *ast.BinaryExpr, *ast.UnaryExpr:
		return "what bounds a type parameter stands in the brackets: func f[X " + c.text(e) + "](x X)"
	}
	return "write its methods out"
}

// embeddedName is the name of a field that is written as a type alone.
func embeddedName(e ast.Expr) *ast.Ident {
	switch e := ast.Unparen(e).(type) {
	case *ast.StarExpr:
		return embeddedName(e.X)
	case *ast.SelectorExpr:
		return e.Sel
	case *ast.Ident:
		return e
	}
	return &ast.Ident{NamePos: e.Pos(), Name: "_"}
}

func (c *checker) interfaceType(e *ast.InterfaceType) Typed {
	var methods []*types.Func
	for _, m := range e.Methods.List {
		ft, ok := m.Type.(*ast.FuncType)
		if !ok || len(m.Names) != 1 {
			return c.report(m.Type, "not-available", "embedded interfaces and lists of types are not available in notebooks", c.text(m.Type), "methods", c.embeddedHint(m.Type))
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
		c.report(ft.TypeParams, "not-available", "type parameters belong to functions of the top level", c.text(ft.TypeParams), "ordinary parameter types", "")
		return nil
	}
	if c.bareParameter(ft.Params) {
		return nil
	}
	params, variadic, ok := c.parameters(ft.Params)
	results, _, ok2 := c.parameters(ft.Results)
	if !ok || !ok2 {
		return nil
	}
	return types.NewSignatureType(recv, nil, nil, types.NewTuple(params...), types.NewTuple(results...), variadic)
}

// bareParameter reports a parameter that is a name and nothing else.
func (c *checker) bareParameter(list *ast.FieldList) bool {
	for _, f := range list.List {
		if id, ok := f.Type.(*ast.Ident); ok && len(f.Names) == 0 && !c.known(id.Name) && len(c.qualifiedAs(id.Name)) == 0 {
			c.report(id, "unknown-name", id.Name+": the parameter has no kind", id.Name, "a name and its kind", "such as "+id.Name+" units.Length, or "+id.Name+" float64 for a plain number")
			return true
		}
	}
	return false
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
