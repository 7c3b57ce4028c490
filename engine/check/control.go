package check

import (
	"go/ast"
	"go/token"
	"go/types"
)

// This file reads branches and loops.

func (c *checker) condition(e ast.Expr) {
	if e == nil {
		return
	}
	if x := c.value(e); x.Mode != Invalid && basic(x.Type)&types.IsBoolean == 0 {
		c.report(e, "type", "a condition has to be true or false", c.one(e, x), "a comparison", "")
	}
}

func (c *checker) ifStmt(s *ast.IfStmt) {
	c.stmt(s.Init)
	c.condition(s.Cond)
	c.stmt(s.Body)
	if s.Else != nil {
		c.stmt(s.Else)
	}
}

func (c *checker) forStmt(s *ast.ForStmt) {
	c.stmt(s.Init)
	c.condition(s.Cond)
	c.stmt(s.Post)
	c.stmt(s.Body)
}

func (c *checker) switchStmt(s *ast.SwitchStmt) {
	c.stmt(s.Init)
	tag, on := Typed{Mode: Value, Type: types.Typ[types.Bool]}, s.Tag
	if on != nil {
		if tag = c.value(on); tag.Mode == Type {
			tag = c.refuseTypeOperand(on, tag)
		}
	}
	for _, cl := range s.Body.List {
		clause := cl.(*ast.CaseClause)
		for _, e := range clause.List {
			c.caseValue(on, e, tag)
		}
		c.within(func() { c.stmts(clause.Body) })
	}
}

func (c *checker) caseValue(on, e ast.Expr, tag Typed) {
	if on == nil {
		c.condition(e)
		return
	}
	x := c.value(e)
	if x.Mode == Invalid || tag.Mode == Invalid {
		return
	}
	c.combine(e, token.EQL, on, e, Typed{Mode: Value, Type: types.Default(tag.Type)}, x)
}

func (c *checker) typeSwitch(s *ast.TypeSwitchStmt) {
	c.stmt(s.Init)
	var id *ast.Ident
	var on ast.Expr
	switch a := s.Assign.(type) {
	case *ast.AssignStmt:
		name, ok := a.Lhs[0].(*ast.Ident)
		if !ok {
			c.report(a.Lhs[0], "syntax", "syntax: := defines names", c.text(a.Lhs[0]), "a name", "")
			return
		}
		id, on = name, a.Rhs[0].(*ast.TypeAssertExpr).X
	case *ast.ExprStmt:
		on = a.X.(*ast.TypeAssertExpr).X
	}
	x := c.value(on)
	if x.Mode == Type {
		x = c.refuseTypeOperand(on, x)
	}
	if x.Mode == Value && (x.Type == nil || !types.IsInterface(x.Type)) {
		c.report(on, "type", "type switch: the value is in no interface", c.one(on, x), "a value of type any or another interface", "its type is known already")
	}
	for _, cl := range s.Body.List {
		c.typeCase(cl.(*ast.CaseClause), id, x)
	}
}

func (c *checker) typeCase(clause *ast.CaseClause, id *ast.Ident, x Typed) {
	t := x.Type
	for _, e := range clause.List {
		if name, ok := e.(*ast.Ident); ok && name.Name == "nil" {
			c.expr(e)
			continue
		}
		one := c.typeOf(e)
		if one != nil && types.IsInterface(one) {
			c.report(e, "not-available", c.text(e)+": an interface is no case of a type switch in notebooks", c.text(e), "a type that is no interface", "test it before: if v, ok := x.(error); ok { ... }")
		}
		if one != nil && len(clause.List) == 1 {
			t = one
		}
	}
	c.within(func() {
		if id != nil {
			c.scope.names[id.Name] = &entry{object: types.NewVar(id.Pos(), c.Scratch, id.Name, t), pos: id.Pos()}
		}
		c.stmts(clause.Body)
	})
}

func (c *checker) rangeStmt(s *ast.RangeStmt) {
	x := c.value(s.X)
	if x.Mode == Type {
		c.refuseTypeOperand(s.X, x)
	}
	var key, value types.Type
	ok := x.Mode == Value
	if ok {
		key, value, ok = c.rangeTypes(s, x)
	}
	if !ok {
		c.rangeAnyway(s)
		return
	}
	for i, e := range []ast.Expr{s.Key, s.Value} {
		t := []types.Type{key, value}[i]
		if e == nil {
			continue
		}
		if t == nil {
			c.report(e, "value-count", "range: gives one value here", c.text(e), "one name", "")
			continue
		}
		c.rangeVar(s, e, t)
	}
	c.stmt(s.Body)
}

// rangeAnyway reads a loop over what nothing is known of.
func (c *checker) rangeAnyway(s *ast.RangeStmt) {
	for _, e := range []ast.Expr{s.Key, s.Value} {
		if id, ok := e.(*ast.Ident); ok && s.Tok == token.DEFINE {
			c.passOver(id)
		}
	}
	c.stmt(s.Body)
}

func (c *checker) rangeVar(s *ast.RangeStmt, e ast.Expr, t types.Type) {
	id, ok := e.(*ast.Ident)
	switch {
	case s.Tok == token.DEFINE && ok:
		c.define(id, types.NewVar(id.Pos(), c.Scratch, id.Name, t), 0)
		return
	case s.Tok == token.DEFINE:
		c.report(e, "syntax", "syntax: := defines names", c.text(e), "a name", "assign with = instead")
		return
	}
	if ok && id.Name == "_" {
		return
	}
	if left := c.value(e); left.Mode != Invalid && c.assignable(e, left) {
		c.assignResult(e, left, Typed{Mode: Value, Type: t})
	}
}

// rangeTypes tells what a range over x gives.
func (c *checker) rangeTypes(s *ast.RangeStmt, x Typed) (key, value types.Type, ok bool) {
	whole := types.Typ[types.Int]
	if c.tooLarge(s.X, x) {
		return nil, nil, false
	}
	if c.World.number(x.Type) && basic(x.Type)&types.IsInteger != 0 {
		return types.Default(x.Type), nil, true
	}
	u := x.Type.Underlying()
	if p, isPointer := u.(*types.Pointer); isPointer {
		u = p.Elem().Underlying()
	}
	switch u := u.(type) {
	case *types.Slice:
		return whole, u.Elem(), true
	case *types.Array:
		return whole, u.Elem(), true
	case *types.Map:
		return u.Key(), u.Elem(), c.sortedKeys(s, u)
	case *types.Signature:
		if yield := yieldOf(u); yield != nil {
			return varType(yield, 0), varType(yield, 1), true
		}
	case *types.Basic:
		if u.Info()&types.IsString != 0 {
			return whole, types.Typ[types.Rune], true
		}
	}
	c.report(s.X, "type", "range: cannot go over this", c.one(s.X, x), "a whole number, a slice, an array, a map, a string or a function that yields", "")
	return nil, nil, false
}

// sortedKeys refuses maps whose keys have no order, since two runs must not differ.
func (c *checker) sortedKeys(s *ast.RangeStmt, m *types.Map) bool {
	if basic(m.Key())&types.IsOrdered != 0 {
		return true
	}
	c.report(s.X, "type", "range: the keys of this map have no order", c.World.describe(m.Key()), "keys that are numbers or strings", "a notebook gives the same result in each run")
	return false
}
