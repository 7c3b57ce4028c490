package check

import (
	"go/ast"
	"go/token"
	"go/types"
)

// This file reads statements.

func (c *checker) stmts(list []ast.Stmt) {
	for _, s := range list {
		c.stmt(s)
	}
}

func (c *checker) stmt(s ast.Stmt) {
	switch s := s.(type) {
	case *ast.AssignStmt:
		c.assignStmt(s)
	case *ast.ExprStmt:
		c.exprStmt(s)
	case *ast.DeclStmt:
		c.genDecl(s.Decl.(*ast.GenDecl))
	case *ast.ReturnStmt:
		c.returnStmt(s)
	case *ast.IncDecStmt:
		c.incDec(s)
	case *ast.DeferStmt:
		c.expr(s.Call)
	case *ast.BranchStmt, *ast.EmptyStmt, nil:
	case *ast.LabeledStmt:
		c.stmt(s.Stmt)
	case *ast.BlockStmt:
		c.within(func() { c.stmts(s.List) })
	default:
		c.control(s)
	}
}

func (c *checker) control(s ast.Stmt) {
	switch s := s.(type) {
	case *ast.IfStmt:
		c.within(func() { c.ifStmt(s) })
	case *ast.ForStmt:
		c.within(func() { c.forStmt(s) })
	case *ast.RangeStmt:
		c.within(func() { c.rangeStmt(s) })
	case *ast.SwitchStmt:
		c.within(func() { c.switchStmt(s) })
	case *ast.TypeSwitchStmt:
		c.within(func() { c.typeSwitch(s) })
	default:
		c.report(s, "not-available", "goroutines and channels are not available in notebooks", c.text(s), "ordinary statements", "")
	}
}

// exprStmt reads a call inside a function; other expressions there would do nothing.
func (c *checker) exprStmt(s *ast.ExprStmt) {
	x := c.expr(s.X)
	call, ok := ast.Unparen(s.X).(*ast.CallExpr)
	switch {
	case x.Mode == Invalid:
	case !ok:
		c.report(s, "unused-value", c.text(s)+": the value is not used", c.text(s), "a statement", "only at the top level of a cell a bare value is shown")
	case isError(x.Type):
		c.Must[call] = true
	default:
		if tuple, ok := x.Type.(*types.Tuple); ok && tuple.Len() == 2 && isError(tuple.At(1).Type()) && !c.Lib.Quiet(c.calleeName(call)) {
			c.settled(s.X, x)
		}
	}
}

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
	for i, l := range s.Lhs {
		id, ok := l.(*ast.Ident)
		if !ok {
			c.report(l, "syntax", "syntax: := defines names", c.text(l), "a name", "assign with = instead")
			return
		}
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
		return c.elementOf(l.X)
	case *ast.StarExpr:
		return true
	}
	c.report(l, "not-a-variable", c.text(l)+": cannot be assigned to", c.text(l), "a variable, a field or an element", "")
	return false
}

// elementOf reports whether a part of e can be assigned to: not if e is a value that only
// passes by, such as an entry of a map or a call's result.
func (c *checker) elementOf(e ast.Expr) bool {
	e = ast.Unparen(e)
	switch c.Exprs[e].Type.Underlying().(type) {
	case *types.Pointer, *types.Slice, *types.Map:
		return true
	}
	switch x := e.(type) {
	case *ast.Ident:
		return true
	case *ast.SelectorExpr:
		return c.Exprs[x.X].Mode == Package || c.elementOf(x.X)
	case *ast.StarExpr:
		return true
	case *ast.IndexExpr:
		if _, isMap := c.Exprs[x.X].Type.Underlying().(*types.Map); !isMap {
			return c.elementOf(x.X)
		}
	}
	c.report(e, "not-a-variable", c.text(e)+": its parts cannot be assigned to", c.text(e), "a variable", "assign it to a variable, change that and put it back")
	return false
}

var assignOps = map[token.Token]token.Token{
	token.ADD_ASSIGN: token.ADD, token.SUB_ASSIGN: token.SUB, token.MUL_ASSIGN: token.MUL, token.QUO_ASSIGN: token.QUO,
	token.REM_ASSIGN: token.REM, token.AND_ASSIGN: token.AND, token.OR_ASSIGN: token.OR, token.XOR_ASSIGN: token.XOR,
	token.SHL_ASSIGN: token.SHL, token.SHR_ASSIGN: token.SHR, token.AND_NOT_ASSIGN: token.AND_NOT,
}

func (c *checker) opAssign(s *ast.AssignStmt) {
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
	case is && was && q.Form == want.Form && q.Vector.Same(want.Vector):
	case is || was:
		c.report(s, "dimension-mismatch", c.text(s)+": would change the dimension of "+c.text(l), c.World.describe(t.Type), c.one(l, x), "give the result a name of its own")
	default:
		c.assignOp(s, l, x, t)
	}
}

// assignOp checks that a result without dimension fits back into its variable.
func (c *checker) assignOp(s *ast.AssignStmt, l ast.Expr, x, t Typed) {
	if !types.AssignableTo(t.Type, x.Type) {
		c.report(s, "type", c.text(l)+": the value does not fit", c.World.describeExactly(t.Type), c.World.describeExactly(x.Type), "")
	}
}

func (c *checker) incDec(s *ast.IncDecStmt) {
	x := c.value(s.X)
	if x.Mode == Invalid || !c.assignable(s.X, x) {
		return
	}
	if q, ok := c.World.Quantity(x.Type); ok {
		c.report(s, "unit-missing", c.text(s)+": a step needs a unit", c.one(s.X, x), "a plain number", "write "+c.text(s.X)+" += 1*"+c.unitOf(q))
	}
}

func (c *checker) returnStmt(s *ast.ReturnStmt) {
	if c.fn == nil {
		c.report(s, "syntax", "return: there is no function to return from", "return", "a statement", "")
		return
	}
	results := c.fn.signature.Results()
	if len(s.Results) == 0 {
		if results.Len() > 0 && results.At(0).Name() == "" {
			c.countMismatch(s, "return", 0, results.Len())
		}
		return
	}
	for i, x := range c.rightSide(s, s.Results, results.Len()) {
		if len(s.Results) == results.Len() {
			c.assign(s.Results[i], x, results.At(i).Type(), "the result")
		} else if x.Mode == Value && !types.AssignableTo(x.Type, results.At(i).Type()) {
			c.report(s, "type", "return: the value does not fit", c.World.describe(x.Type), c.World.describe(results.At(i).Type()), "")
		}
	}
}

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

// captured refuses a loop variable that a function literal or a pointer keeps: it would
// have to be a new one in each turn.
func (c *checker) captured(s *ast.ForStmt) {
	init, ok := s.Init.(*ast.AssignStmt)
	if !ok || init.Tok != token.DEFINE {
		return
	}
	names := map[string]bool{}
	for _, l := range init.Lhs {
		if id, ok := l.(*ast.Ident); ok {
			names[id.Name] = true
		}
	}
	ast.Inspect(s.Body, func(n ast.Node) bool {
		lit, ok := n.(*ast.FuncLit)
		if !ok {
			return true
		}
		ast.Inspect(lit.Body, func(n ast.Node) bool {
			if id, ok := n.(*ast.Ident); ok && names[id.Name] {
				c.report(id, "captured", id.Name+": a function keeps the variable of this loop", id.Name, "a copy of it", "write "+id.Name+"1 := "+id.Name+" in the loop and use that, or range over a number")
			}
			return true
		})
		return false
	})
}

func (c *checker) switchStmt(s *ast.SwitchStmt) {
	c.stmt(s.Init)
	tag, on := Typed{Mode: Value, Type: types.Typ[types.Bool]}, s.Tag
	if on != nil {
		tag = c.value(on)
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
		id, on = a.Lhs[0].(*ast.Ident), a.Rhs[0].(*ast.TypeAssertExpr).X
	case *ast.ExprStmt:
		on = a.X.(*ast.TypeAssertExpr).X
	}
	x := c.value(on)
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
			c.scope.names[id.Name] = &entry{types.NewVar(id.Pos(), c.Scratch, id.Name, t), id.Pos(), 0}
		}
		c.stmts(clause.Body)
	})
}

func (c *checker) rangeStmt(s *ast.RangeStmt) {
	x := c.value(s.X)
	if x.Mode != Value {
		c.stmt(s.Body)
		return
	}
	key, value, ok := c.rangeTypes(s, x)
	if !ok {
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

func (c *checker) rangeVar(s *ast.RangeStmt, e ast.Expr, t types.Type) {
	id, ok := e.(*ast.Ident)
	if s.Tok == token.DEFINE && ok {
		c.define(id, types.NewVar(id.Pos(), c.Scratch, id.Name, t), 0)
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

// yieldOf returns the parameters that a function to range over hands to its body.
func yieldOf(s *types.Signature) *types.Tuple {
	if s.Params().Len() != 1 || s.Results().Len() != 0 {
		return nil
	}
	y, ok := s.Params().At(0).Type().Underlying().(*types.Signature)
	if !ok || y.Params().Len() > 2 || y.Variadic() || y.Results().Len() != 1 || basic(y.Results().At(0).Type())&types.IsBoolean == 0 {
		return nil
	}
	return y.Params()
}

func varType(t *types.Tuple, i int) types.Type {
	if i < t.Len() {
		return t.At(i).Type()
	}
	return nil
}

// sortedKeys refuses maps whose keys have no order, since two runs must not differ.
func (c *checker) sortedKeys(s *ast.RangeStmt, m *types.Map) bool {
	if basic(m.Key())&types.IsOrdered != 0 {
		return true
	}
	c.report(s.X, "type", "range: the keys of this map have no order", c.World.describe(m.Key()), "keys that are numbers or strings", "a notebook gives the same result in each run")
	return false
}
