package check

import (
	"go/ast"
	"go/token"
	"go/types"
)

// This file reads assignments.

func (c *checker) assignStmt(s *ast.AssignStmt) {
	switch s.Tok {
	case token.DEFINE:
		c.defineStmt(s)
	case token.ASSIGN:
		c.plainAssign(s)
	default:
		c.opAssign(s)
	}
}

// rightSide reads the values for n receivers.
func (c *checker) rightSide(n ast.Node, values []ast.Expr, count int) []Typed {
	if len(values) == 0 {
		return nil
	}
	if len(values) == 1 && count > 1 {
		return c.several(n, values[0], count)
	}
	all := make([]Typed, len(values))
	for i, v := range values {
		all[i] = c.value(v)
	}
	if len(values) != count {
		c.countMismatch(n, "assignment", len(values), count)
		return nil
	}
	return all
}

// several reads one expression that gives several values.
func (c *checker) several(n ast.Node, e ast.Expr, count int) []Typed {
	x := c.expr(e)
	if x.Mode == Invalid {
		return make([]Typed, count)
	}
	if tuple, ok := x.Type.(*types.Tuple); ok && tuple.Len() == count {
		all := make([]Typed, count)
		for i := range all {
			all[i] = Typed{Mode: Value, Type: tuple.At(i).Type()}
		}
		return all
	}
	if count == 2 && c.commaOk(e) {
		return []Typed{x, {Mode: Value, Type: types.Typ[types.Bool]}}
	}
	got := 1
	if tuple, ok := x.Type.(*types.Tuple); ok {
		got = tuple.Len()
	}
	c.countMismatch(n, "assignment", got, count)
	return make([]Typed, count)
}

func (c *checker) commaOk(e ast.Expr) bool {
	switch e := ast.Unparen(e).(type) {
	case *ast.TypeAssertExpr:
		return true
	case *ast.IndexExpr:
		_, ok := c.Exprs[e.X].Type.Underlying().(*types.Map)
		return ok
	}
	return false
}

func (c *checker) defineStmt(s *ast.AssignStmt) {
	values := c.rightSide(s, s.Rhs, len(s.Lhs))
	fresh := false
	seen := map[string]bool{}
	for i, l := range s.Lhs {
		id, ok := l.(*ast.Ident)
		if ok && seen[id.Name] && id.Name != "_" {
			c.report(id, "defined-twice", id.Name+": stands twice on the left side", id.Name, "each name once", "")
			return
		}
		if !ok {
			c.report(l, "syntax", "syntax: := defines names", c.text(l), "a name", "assign with = instead")
			return
		}
		seen[id.Name] = true
		x, e := Typed{}, valueAt(s.Rhs, i)
		if i < len(values) {
			x = values[i]
		}
		if len(s.Rhs) != len(s.Lhs) {
			e = nil
		}
		if old, ok := c.scope.names[id.Name]; ok && len(s.Lhs) > 1 && old.pos != id.Pos() && c.fn != nil {
			c.Defs[id] = old.object
			if e != nil {
				c.assign(e, x, old.object.Type(), "variable "+id.Name)
			}
			continue
		}
		fresh = fresh || id.Name != "_"
		c.defineVar(id, e, x, nil)
	}
	if !fresh {
		c.report(s, "defined-twice", ":= defines nothing new", c.text(s), "a new name on the left", "assign with =")
	}
}

func (c *checker) plainAssign(s *ast.AssignStmt) {
	values := c.rightSide(s, s.Rhs, len(s.Lhs))
	for i, l := range s.Lhs {
		if id, ok := l.(*ast.Ident); ok && id.Name == "_" {
			if i < len(values) {
				c.dropped(valueAt(s.Rhs, i), values[i])
			}
			continue
		}
		if id, ok := l.(*ast.Ident); ok && !c.known(id.Name) && didYouMean(id.Name, c.defined()) == "" {
			c.report(id, "unknown-name", id.Name+": no such name", id.Name, "a name defined above", "a name is defined by "+id.Name+" := ...")
			continue
		}
		left := c.value(l)
		if left.Mode == Invalid || i >= len(values) {
			continue
		}
		if !c.assignable(l, left) {
			continue
		}
		c.forget(l)
		e := valueAt(s.Rhs, i)
		if len(s.Rhs) != len(s.Lhs) || e == nil {
			c.assignResult(l, left, values[i])
			continue
		}
		c.assign(e, values[i], left.Type, c.text(l))
	}
}

// dropped checks a value that is assigned to nothing.
func (c *checker) dropped(e ast.Expr, x Typed) {
	switch {
	case e == nil:
	case x.Mode == Type:
		c.refuseTypeOperand(e, x)
	case isNil(x):
		c.report(e, "no-value", "nil alone is no value", "nil", "a value", "")
	case x.Mode == Value:
		c.tooLarge(e, x)
	}
}

// assignResult checks one of several results, which no conversion can reach.
func (c *checker) assignResult(l ast.Expr, left, x Typed) {
	if x.Mode == Value && !types.AssignableTo(x.Type, left.Type) {
		c.report(l, "type", c.text(l)+": the value does not fit", c.World.describe(x.Type), c.World.describe(left.Type), "")
	}
}

// forget drops what was known of factors of π in a variable that is assigned to.
func (c *checker) forget(l ast.Expr) {
	if id, ok := l.(*ast.Ident); ok {
		if e, _ := c.scope.find(id.Name); e != nil {
			e.turns = 0
		}
	}
}

func (c *checker) assignable(l ast.Expr, x Typed) bool {
	if x.Mode == Type {
		c.refuseTypeOperand(l, x)
		return false
	}
	switch l := ast.Unparen(l).(type) {
	case *ast.Ident:
		if _, ok := x.object.(*types.Var); ok {
			return true
		}
		what := c.reserved(l.Name)
		if what == "" {
			what = "a constant or a function"
		}
		c.report(l, "not-a-variable", l.Name+": cannot be assigned to", what, "a variable", "")
		return false
	case *ast.IndexExpr:
		if basic(c.Exprs[l.X].Type)&types.IsString != 0 {
			c.report(l, "not-a-variable", c.text(l)+": a string is not changed in parts", c.text(l), "a variable, a field or an element", "make a new string")
			return false
		}
		return c.elementOf(l.X)
	case *ast.SelectorExpr:
		if c.Exprs[l.X].Mode == Package {
			c.report(l, "not-a-variable", c.text(l)+": belongs to the library", c.text(l), "a variable of the notebook", "")
			return false
		}
		return c.elementOf(l.X)
	case *ast.StarExpr:
		return true
	}
	c.report(l, "not-a-variable", c.text(l)+": cannot be assigned to", c.text(l), "a variable, a field or an element", "")
	return false
}

var assignOps = map[token.Token]token.Token{
	token.ADD_ASSIGN: token.ADD, token.SUB_ASSIGN: token.SUB, token.MUL_ASSIGN: token.MUL, token.QUO_ASSIGN: token.QUO,
	token.REM_ASSIGN: token.REM, token.AND_ASSIGN: token.AND, token.OR_ASSIGN: token.OR, token.XOR_ASSIGN: token.XOR,
	token.SHL_ASSIGN: token.SHL, token.SHR_ASSIGN: token.SHR, token.AND_NOT_ASSIGN: token.AND_NOT,
}

func (c *checker) opAssign(s *ast.AssignStmt) {
	if len(s.Lhs) != 1 || len(s.Rhs) != 1 {
		c.countMismatch(s, s.Tok.String(), max(len(s.Lhs), len(s.Rhs)), 1)
		return
	}
	l, r := s.Lhs[0], s.Rhs[0]
	x, y := c.value(l), c.value(r)
	if x.Mode == Invalid || y.Mode == Invalid || !c.assignable(l, x) {
		return
	}
	t := c.combine(s, assignOps[s.Tok], l, r, x, y)
	if t.Mode == Invalid {
		return
	}
	c.forget(l)
	q, is := c.World.Quantity(t.Type)
	want, was := c.World.Quantity(x.Type)
	switch {
	case is && was && q.Form == want.Form && q.Vector.Same(want.Vector) && q.Complex == want.Complex:
	case is || was:
		c.report(s, "dimension-mismatch", c.text(s)+": would change the dimension of "+c.text(l), c.World.describe(t.Type), c.one(l, x), "give the result a name of its own")
	default:
		c.assignOp(s, l, x, t)
	}
}

func (c *checker) incDec(s *ast.IncDecStmt) {
	x := c.value(s.X)
	if x.Mode == Invalid || !c.assignable(s.X, x) {
		return
	}
	if basic(x.Type)&types.IsNumeric == 0 {
		c.report(s, "operator", s.Tok.String()+": steps a number", c.one(s.X, x), "a number", "")
		return
	}
	if q, ok := c.World.Quantity(x.Type); ok {
		c.report(s, "unit-missing", c.text(s)+": a step needs a unit", c.one(s.X, x), "a plain number", "write "+c.text(s.X)+" += 1*"+c.unitOf(q))
	}
}
