package check

import (
	"fmt"
	"go/ast"
	"go/types"
)

// This file reads functions.

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
	if d.Name.Name == "_" {
		c.report(d.Name, "blank-value", "_: a function needs a name", "_", "a name", "")
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
	if d.Recv.NumFields() != 1 {
		c.report(d.Name, "syntax", "syntax: a method belongs to one value", fmt.Sprint(d.Recv.NumFields()), "one receiver in the parentheses", "")
		return nil, nil
	}
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
		c.stmts(block.List)
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
