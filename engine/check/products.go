package check

import (
	"go/ast"

	"lode/engine/dim"
	"lode/engine/library"
)

// This file reads the types of products that have no name of their own:
// product[units.Resistance, units.Area] and quotient[units.Voltage, units.Time] may stand
// wherever a type stands.

// productType reads product[...] or quotient[...]; ok is false for any other expression.
func (c *checker) productType(e *ast.IndexListExpr) Typed {
	id, ok := e.X.(*ast.Ident)
	if entry, _ := c.scope.find(nameOf(id, ok)); entry != nil || !ok || id.Name != "product" && id.Name != "quotient" {
		return c.report(e, "not-available", "type parameters are not available in notebooks", c.text(e), "product[A, B] or quotient[A, B] of quantities", "")
	}
	var v dim.Vector
	for i, part := range e.Indices {
		t := c.typeOf(part)
		if t == nil {
			return Typed{}
		}
		q, isQuantity := c.World.Quantity(t)
		if !isQuantity || q.Form != library.Linear || q.Complex {
			return c.report(part, "not-a-type", c.text(part)+": is no type of an ordinary quantity", c.World.describe(t), "a type such as units.Length", "")
		}
		if i > 0 && id.Name == "quotient" {
			v = v.Over(q.Vector)
		} else {
			v = v.Times(q.Vector)
		}
	}
	return Typed{Mode: Type, Type: c.World.settle(c.World.ofVector(v))}
}

func nameOf(id *ast.Ident, ok bool) string {
	if !ok {
		return ""
	}
	return id.Name
}
