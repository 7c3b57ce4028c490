package check

import (
	"go/ast"
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
	case !ok || c.onlyValue(call):
		c.report(s, "unused-value", c.text(s)+": the value is not used", c.text(s), "a statement", "only at the top level of a cell a bare value is shown")
	case isError(x.Type):
		c.Must[call] = true
	default:
		if tuple, ok := x.Type.(*types.Tuple); ok && tuple.Len() == 2 && isError(tuple.At(1).Type()) && !c.Lib.Quiet(c.calleeName(call)) {
			c.settled(s.X, x)
		}
	}
}

// onlyValue reports whether a call does nothing but give a value.
func (c *checker) onlyValue(e *ast.CallExpr) bool {
	switch c.Exprs[e.Fun].Mode {
	case Type, Function:
		return true
	case Builtin:
		switch ast.Unparen(e.Fun).(*ast.Ident).Name {
		case "append", "cap", "complex", "imag", "len", "make", "new", "real":
			return true
		}
	}
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

// assignOp checks that a result without dimension fits back into its variable.
func (c *checker) assignOp(s *ast.AssignStmt, l ast.Expr, x, t Typed) {
	if !types.AssignableTo(t.Type, x.Type) {
		c.report(s, "type", c.text(l)+": the value does not fit", c.World.describeExactly(t.Type), c.World.describeExactly(x.Type), "")
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
