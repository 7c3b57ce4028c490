package check

import (
	"fmt"
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"math"
	"strings"
)

const (
	mulToken = token.MUL
	addToken = token.ADD
)

// composite reads a composite literal; elided is the type it has where none is written.
func (c *checker) composite(e *ast.CompositeLit, elided types.Type) Typed {
	t := elided
	if e.Type != nil {
		x := c.compositeType(e)
		if x.Mode != Type {
			return c.refuseLiteral(e, x)
		}
		t = x.Type
	}
	if t == nil {
		return c.report(e, "type", "this literal has no type", c.text(e), "a type in front of the braces", "")
	}
	c.elements(e, t)
	return Typed{Mode: Value, Type: t}
}

func (c *checker) refuseLiteral(e *ast.CompositeLit, x Typed) Typed {
	if x.Mode == Invalid {
		return x
	}
	return c.report(e.Type, "not-a-type", c.text(e.Type)+": is no type", c.text(e.Type), "a type", "")
}

// compositeType reads the type of a literal; [...]T counts the elements.
func (c *checker) compositeType(e *ast.CompositeLit) Typed {
	if a, ok := e.Type.(*ast.ArrayType); ok {
		if _, ok := a.Len.(*ast.Ellipsis); ok {
			elem := c.expr(a.Elt)
			if elem.Mode != Type {
				return elem
			}
			return Typed{Mode: Type, Type: types.NewArray(elem.Type, c.lengthOf(e.Elts))}
		}
	}
	return c.expr(e.Type)
}

// lengthOf is the length of an array whose elements may have their places in front of them.
func (c *checker) lengthOf(list []ast.Expr) (length int64) {
	at := int64(0)
	for _, e := range list {
		if kv, ok := e.(*ast.KeyValueExpr); ok {
			at = placeOr(at, c.value(kv.Key))
		}
		at++
		length = max(length, at)
	}
	return length
}

// placeOr is the place that a constant gives, or the one that is next.
func placeOr(next int64, x Typed) int64 {
	if x.Value == nil || !representable(x.Value, types.Typ[types.Uint16]) {
		return next
	}
	at, _ := constant.Int64Val(constant.ToInt(x.Value))
	return at
}

// places wants each place of a list once, and inside of it.
func (c *checker) places(e *ast.CompositeLit, length int64) {
	seen, at := map[int64]bool{}, int64(0)
	for _, el := range e.Elts {
		if kv, ok := el.(*ast.KeyValueExpr); ok {
			at, el = placeOr(at, c.Exprs[kv.Key]), kv.Key
		}
		switch {
		case seen[at]:
			c.report(el, "defined-twice", fmt.Sprintf("place %d is there twice", at), c.text(el), "each place once", "")
		case at >= length && len(e.Elts) <= int(length):
			c.report(el, "value-count", "array: this place is outside of it", fmt.Sprint(at), fmt.Sprintf("0 to %d", length-1), "[...] counts by itself")
		}
		seen[at] = true
		at++
	}
}

func (c *checker) elements(e *ast.CompositeLit, t types.Type) {
	elem := t
	if p, ok := t.(*types.Pointer); ok && e.Type == nil {
		elem = p.Elem()
	}
	switch u := elem.Underlying().(type) {
	case *types.Struct:
		c.fields(e, elem, u)
	case *types.Map:
		c.pairs(e, u.Key(), u.Elem())
	case *types.Slice:
		c.pairs(e, nil, u.Elem())
		c.places(e, math.MaxInt64)
	case *types.Array:
		if len(e.Elts) > int(u.Len()) {
			c.report(e, "value-count", "array: the number of values does not fit", fmt.Sprint(len(e.Elts)), fmt.Sprintf("at most %d", u.Len()), "[...] counts by itself")
		}
		c.pairs(e, nil, u.Elem())
		c.places(e, u.Len())
	default:
		c.report(e, "type", c.World.describe(t)+": has no literal with braces", c.text(e), "a struct, slice, array or map type", "")
	}
}

func (c *checker) pairs(e *ast.CompositeLit, key, elem types.Type) {
	seen := map[string]bool{}
	for _, el := range e.Elts {
		value := el
		if kv, ok := el.(*ast.KeyValueExpr); ok {
			value = kv.Value
			if key != nil {
				x := c.element(kv.Key, key)
				c.assign(kv.Key, x, key, "the key")
				if c.twice(x, seen) {
					c.report(kv.Key, "defined-twice", c.text(kv.Key)+": the key is there twice", c.text(kv.Key), "each key once", "")
				}
			} else {
				c.position(kv.Key)
			}
		}
		c.assign(value, c.element(value, elem), elem, "the element")
	}
}

// position reads the place of an element that is given in front of it.
func (c *checker) position(e ast.Expr) {
	x := c.value(e)
	if x.Mode == Invalid {
		return
	}
	if x.Value == nil || !c.World.number(x.Type) || !representable(x.Value, types.Typ[types.Uint16]) {
		c.report(e, "not-constant", "the place of an element has to be a constant", c.one(e, x), "a whole number from 0 to 65535", "")
	}
}

// twice reports whether a constant key was seen before.
func (c *checker) twice(x Typed, seen map[string]bool) bool {
	if x.Value == nil {
		return false
	}
	key := x.Value.ExactString()
	known := seen[key]
	seen[key] = true
	return known
}

// element reads a part of a literal, whose type may be left out if it is one itself.
func (c *checker) element(e ast.Expr, t types.Type) Typed {
	if lit, ok := e.(*ast.CompositeLit); ok && lit.Type == nil {
		x := c.composite(lit, t)
		c.Exprs[e] = x
		return x
	}
	return c.value(e)
}

// fieldValue reads the value of a field, which has to name its type if it is a literal.
func (c *checker) fieldValue(e ast.Expr) Typed {
	if lit, ok := e.(*ast.CompositeLit); ok && lit.Type == nil {
		return c.report(e, "type", "a field's literal has no type", c.text(e), "a type in front of the braces", "")
	}
	return c.value(e)
}

func (c *checker) fields(e *ast.CompositeLit, t types.Type, s *types.Struct) {
	if len(e.Elts) == 0 {
		return
	}
	if _, keyed := e.Elts[0].(*ast.KeyValueExpr); !keyed {
		c.positional(e, t, s)
		return
	}
	seen := map[string]bool{}
	for _, el := range e.Elts {
		kv, ok := el.(*ast.KeyValueExpr)
		if !ok {
			c.report(el, "type", "fields with and without names are mixed", c.text(el), "Name: value", "")
			continue
		}
		c.field(kv, t, s, seen)
	}
}

func (c *checker) field(kv *ast.KeyValueExpr, t types.Type, s *types.Struct, seen map[string]bool) {
	id, ok := kv.Key.(*ast.Ident)
	if !ok {
		c.report(kv.Key, "type", "a field's name is wanted", c.text(kv.Key), "Name: value", "")
		return
	}
	f := findField(s, id.Name, c.settable(t))
	if f == nil {
		c.report(id, "unknown-member", fmt.Sprintf("%s: no such field of %s", id.Name, c.World.describe(t)), id.Name, "one of "+strings.Join(fieldNames(s, c.settable(t)), ", "),
			didYouMean(id.Name, fieldNames(s, c.settable(t))))
		c.value(kv.Value)
		return
	}
	if seen[id.Name] {
		c.report(id, "defined-twice", id.Name+": the field is given twice", id.Name, "each field once", "")
	}
	seen[id.Name] = true
	c.assign(kv.Value, c.fieldValue(kv.Value), f.Type(), "field "+id.Name)
}

func (c *checker) positional(e *ast.CompositeLit, t types.Type, s *types.Struct) {
	if s.NumFields() != len(e.Elts) {
		c.report(e, "value-count", c.World.describe(t)+": the number of values does not fit", fmt.Sprint(len(e.Elts)), fmt.Sprint(s.NumFields()), "name the fields: Name: value")
		return
	}
	for i, el := range e.Elts {
		if !s.Field(i).Exported() && !c.settable(t) {
			c.report(el, "unknown-member", c.World.describe(t)+": has fields that cannot be set", c.text(el), "a function of the package that makes one", "")
			return
		}
		c.assign(el, c.fieldValue(el), s.Field(i).Type(), "field "+s.Field(i).Name())
	}
}

// settable reports whether the notebook may set all fields of a struct: it wrote the type.
func (c *checker) settable(t types.Type) bool {
	_, unnamed := types.Unalias(t).(*types.Struct)
	return unnamed || c.own(t)
}

func findField(s *types.Struct, name string, own bool) *types.Var {
	for f := range s.Fields() {
		if f.Name() == name && (f.Exported() || own) {
			return f
		}
	}
	return nil
}

func fieldNames(s *types.Struct, own bool) []string {
	var names []string
	for f := range s.Fields() {
		if f.Exported() || own {
			names = append(names, f.Name())
		}
	}
	return names
}
