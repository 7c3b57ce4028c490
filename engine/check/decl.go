package check

import (
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
)

// This file reads types and declarations.

// declareAhead reads the top level's types, constants and function headers, so that
// functions may call each other wherever they stand.
func (c *checker) declareAhead() {
	c.later = c.namesAhead()
	var declared []*entry
	for _, chunk := range c.Chunks {
		c.here = chunk
		for _, s := range chunk.Stmts {
			if d, ok := s.(*ast.DeclStmt); ok && d.Decl.(*ast.GenDecl).Tok == token.TYPE {
				declared = append(declared, c.announce(d.Decl.(*ast.GenDecl))...)
			}
		}
	}
	for _, e := range declared {
		e.settle()
	}
	for _, chunk := range c.Chunks {
		c.here = chunk
		switch {
		case chunk.IsTemplate():
			c.templateHeader(chunk)
		case chunk.Func != nil:
			c.funcHeader(chunk.Func)
		}
	}
}

// namesAhead finds where the variables and constants of the top level are defined.
func (c *checker) namesAhead() map[string]token.Pos {
	names := map[string]token.Pos{}
	add := func(e ast.Expr) {
		if id, ok := e.(*ast.Ident); ok && names[id.Name] == 0 {
			names[id.Name] = id.Pos()
		}
	}
	for _, chunk := range c.Chunks {
		for _, s := range chunk.Stmts {
			switch s := s.(type) {
			case *ast.AssignStmt:
				for _, e := range s.Lhs {
					if s.Tok == token.DEFINE {
						add(e)
					}
				}
			case *ast.DeclStmt:
				for _, spec := range s.Decl.(*ast.GenDecl).Specs {
					if v, ok := spec.(*ast.ValueSpec); ok {
						for _, id := range v.Names {
							add(id)
						}
					}
				}
			}
		}
	}
	return names
}

func (c *checker) typeDecl(d *ast.GenDecl) {
	for _, e := range c.announce(d) {
		e.settle()
	}
}

// announce defines the names of types. What they stand for is read when the first use or
// settle asks for it, so that types may use each other wherever they stand.
func (c *checker) announce(d *ast.GenDecl) []*entry {
	var entries []*entry
	for _, s := range d.Specs {
		spec := s.(*ast.TypeSpec)
		if spec.Name.Name == "_" {
			c.report(spec.Name, "blank-value", "_: a type needs a name", "_", "a name", "")
			continue
		}
		if spec.TypeParams != nil {
			c.report(spec, "not-available", "type parameters are not available in notebooks", c.text(spec), "ordinary types", "")
			continue
		}
		name := types.NewTypeName(spec.Name.Pos(), c.Scratch, spec.Name.Name, nil)
		if spec.Assign.IsValid() {
			name = types.NewTypeName(spec.Name.Pos(), c.Scratch, spec.Name.Name, types.Typ[types.Invalid])
		}
		c.define(spec.Name, name, 0)
		e := c.scope.names[spec.Name.Name]
		if e == nil || e.object != name {
			continue
		}
		c.pend(e, spec, name)
		entries = append(entries, e)
	}
	return entries
}

func (c *checker) pend(e *entry, spec *ast.TypeSpec, name *types.TypeName) {
	here := c.here
	if spec.Assign.IsValid() {
		e.pending = func() {
			if t := c.typeIn(here, spec); t != nil {
				e.object = types.NewTypeName(spec.Name.Pos(), c.Scratch, spec.Name.Name, t)
			}
		}
		return
	}
	named := types.NewNamed(name, types.Typ[types.Invalid], nil)
	e.pending = func() {
		if t := c.typeIn(here, spec); t != nil {
			named.SetUnderlying(t.Underlying())
			c.ownFunctions(spec, named)
			c.ownQuantity(spec, t)
		}
	}
}

// typeIn reads the type of a declaration that stands in chunk here; nil after a report.
func (c *checker) typeIn(here *Chunk, spec *ast.TypeSpec) types.Type {
	kept := c.here
	c.here = here
	defer func() { c.here = kept }()
	t := c.typeOf(spec.Type)
	if t != nil && t.Underlying() == types.Typ[types.Invalid] {
		c.report(spec.Type, "recursive-type", spec.Name.Name+": the type is made from itself", c.text(spec.Type), "a type that is known", "")
		return nil
	}
	return t
}

// ownQuantity refuses a type made from a quantity type, which would lose its dimension.
func (c *checker) ownQuantity(spec *ast.TypeSpec, t types.Type) {
	if _, ok := c.World.Quantity(t); ok {
		c.report(spec.Type, "own-type", spec.Name.Name+": a type made from a quantity would lose its dimension", c.text(spec.Type), "the quantity itself, or a struct that holds it", "write type "+spec.Name.Name+" = "+c.text(spec.Type))
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
	if c.tooLarge(e, x) {
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
		c.passOver(id)
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
