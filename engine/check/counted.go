package check

import (
	"fmt"
	"go/ast"
	"go/constant"
	"go/types"

	"lode/engine/library"
)

// CountedName is the name of the function that shows a quantity in a unit of one's choice:
// counted(R, Ω) is 6120 Ω where R alone would be 6.12 kΩ. What it gives is for showing.
const CountedName = "counted"

func (c *checker) counted(e *ast.CallExpr) Typed {
	args, ok := c.args(e)
	if !ok {
		return Typed{}
	}
	if len(args) != 2 {
		return c.report(e, "argument-count", "counted: the number of arguments does not fit", fmt.Sprint(len(args)), "2: a quantity and a unit", "write "+CountedName+"(R, kΩ)")
	}
	x, isX := c.World.Quantity(args[0].Type)
	unit, isUnit := c.World.Quantity(args[1].Type)
	switch {
	case !isX || x.Complex:
		return c.report(e.Args[0], "type", "counted: only real quantities have a unit to count in", c.one(e.Args[0], args[0]), "a quantity", "")
	case !isUnit || args[1].Value == nil || constant.Sign(args[1].Value) <= 0:
		return c.report(e.Args[1], "type", "counted: this is no unit", c.one(e.Args[1], args[1]), "a unit such as "+c.unitOf(x)+", or a product of units", "")
	case x.Form == library.Point || x.Form != unit.Form || !x.Vector.Same(unit.Vector):
		return c.report(e, "dimension-mismatch", "counted: the unit does not fit", c.one(e.Args[0], args[0]), c.World.describe(args[0].Type)+", a unit such as "+c.unitOf(x), c.turnInto(e.Args[0], args[0], x, unit))
	}
	reading := c.Lib.Quantity.Scope().Lookup(c.Lib.Reading)
	return Typed{Mode: Value, Type: reading.Type().(*types.Named)}
}

// UnitSource returns the text that a unit is shown by.
func (p *Program) UnitSource(e ast.Expr, text string) string {
	if id, ok := ast.Unparen(e).(*ast.Ident); ok {
		if u, ok := p.Lib.Units[id.Name]; ok && u.Best != "" {
			return u.Best
		}
	}
	return text
}
