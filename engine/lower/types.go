package lower

import (
	"fmt"
	"go/ast"
	"go/types"
	"strconv"
	"strings"

	"lode/engine/check"
)

// This file writes types. A quantity has two representations: inside the notebook it is a
// float64 (or a complex128), so that dimensions cost nothing while it runs; in the hands of
// the library, and in interfaces, it has the library's own type. Types that hold quantities
// (slices, maps, functions) follow; the named types of the library always keep their own.

type form bool

const (
	plain form = false // as the notebook computes with it
	real  form = true  // as the library knows it
)

// plainText writes a type as it stands in running code.
func (l *lowerer) plainText(t types.Type) string { return l.typeText(t, plain) }

func (l *lowerer) typeText(t types.Type, f form) string {
	switch t := types.Unalias(t).(type) {
	case *types.Named:
		return l.namedText(t, f)
	case *types.Pointer:
		return "*" + l.typeText(t.Elem(), f)
	case *types.Slice:
		return "[]" + l.typeText(t.Elem(), f)
	case *types.Array:
		return fmt.Sprintf("[%d]%s", t.Len(), l.typeText(t.Elem(), f))
	case *types.Map:
		return "map[" + l.typeText(t.Key(), f) + "]" + l.typeText(t.Elem(), f)
	case *types.Signature:
		return "func" + l.signatureText(t, f)
	case *types.Struct:
		return l.structText(t, f)
	case *types.Basic:
		return types.Default(t).String()
	}
	return types.TypeString(t, func(p *types.Package) string { return l.packageName(p) })
}

func (l *lowerer) namedText(t *types.Named, f form) string {
	if q, ok := l.World.Quantity(t); ok {
		switch {
		case f == plain && q.Complex:
			return "complex128"
		case f == plain:
			return "float64"
		case q.Base == nil:
			return l.packageName(l.Lib.Quantity) + "." + l.productType(q)
		}
		t = q.Base
	}
	if p := l.packageName(t.Obj().Pkg()); p != "" {
		return p + "." + t.Obj().Name()
	}
	return t.Obj().Name()
}

func (l *lowerer) productType(q check.Quantity) string {
	if q.Complex {
		return l.Lib.Phasor
	}
	return l.Lib.Product
}

// packageName returns the name that a package has in the program.
func (l *lowerer) packageName(p *types.Package) string {
	if p == nil || p.Path() == check.NotebookPath {
		return ""
	}
	return p.Name()
}

func (l *lowerer) signatureText(s *types.Signature, f form) string {
	var params []string
	for i := range s.Params().Len() {
		t := s.Params().At(i).Type()
		if s.Variadic() && i == s.Params().Len()-1 {
			params = append(params, "..."+l.typeText(t.(*types.Slice).Elem(), f))
			continue
		}
		params = append(params, l.typeText(t, f))
	}
	return "(" + strings.Join(params, ", ") + ") (" + l.tupleText(s.Results(), f) + ")"
}

func (l *lowerer) tupleText(t *types.Tuple, f form) string {
	var parts []string
	for v := range t.Variables() {
		parts = append(parts, l.typeText(v.Type(), f))
	}
	return strings.Join(parts, ", ")
}

func (l *lowerer) structText(s *types.Struct, f form) string {
	var fields []string
	for v := range s.Fields() {
		fields = append(fields, v.Name()+" "+l.typeText(v.Type(), f))
	}
	return "struct{" + strings.Join(fields, "; ") + "}"
}

// mixed reports whether the two forms of a type differ.
func (l *lowerer) mixed(t types.Type) bool {
	switch t := types.Unalias(t).(type) {
	case *types.Named:
		_, ok := l.World.Quantity(t)
		return ok
	case *types.Pointer:
		return l.mixed(t.Elem())
	case *types.Slice:
		return l.mixed(t.Elem())
	case *types.Array:
		return l.mixed(t.Elem())
	case *types.Map:
		return l.mixed(t.Key()) || l.mixed(t.Elem())
	case *types.Signature:
		return l.mixed(t.Params()) || l.mixed(t.Results())
	case *types.Tuple:
		for v := range t.Variables() {
			if l.mixed(v.Type()) {
				return true
			}
		}
	case *types.Struct:
		for v := range t.Fields() {
			if l.mixed(v.Type()) {
				return true
			}
		}
	}
	return false
}

// typeExpr rewrites a type that is written out.
func (l *lowerer) typeExpr(e ast.Expr, f form) {
	switch e := e.(type) {
	case *ast.ArrayType:
		if t, ok := l.Exprs[e].Type.(*types.Array); ok && e.Len != nil {
			from, to := l.span(e.Len)
			l.edits.replace(from, to, strconv.FormatInt(t.Len(), 10))
		}
		l.typeExpr(e.Elt, f)
	case *ast.MapType:
		l.typeExpr(e.Key, f)
		l.typeExpr(e.Value, f)
	case *ast.StarExpr:
		l.typeExpr(e.X, f)
	case *ast.ParenExpr:
		l.typeExpr(e.X, f)
	case *ast.Ellipsis:
		l.typeExpr(e.Elt, f)
	case *ast.FuncType:
		l.fieldTypes(e.Params, f)
		l.fieldTypes(e.Results, f)
	case *ast.StructType:
		l.fieldTypes(e.Fields, f)
	case *ast.InterfaceType:
		l.fieldTypes(e.Methods, f)
	case nil:
	default:
		if t := l.Exprs[e].Type; t != nil && (l.mixed(t) || l.isAlias(e)) {
			from, to := l.span(e)
			l.edits.replace(from, to, l.typeText(t, f))
		}
	}
}

// isAlias reports whether e names a type of the notebook that is another name for one.
func (l *lowerer) isAlias(e ast.Expr) bool {
	id, ok := e.(*ast.Ident)
	if !ok {
		return false
	}
	t, ok := l.Uses[id].(*types.TypeName)
	return ok && t.IsAlias()
}

func (l *lowerer) fieldTypes(list *ast.FieldList, f form) {
	if list == nil {
		return
	}
	for _, field := range list.List {
		l.typeExpr(field.Type, f)
	}
}

// halves writes the exponents of a dimension as arguments.
func (l *lowerer) halves(q check.Quantity) string {
	var parts []string
	for _, h := range q.Vector.Visible() {
		parts = append(parts, strconv.Itoa(int(h)))
	}
	return strings.Join(parts, ", ")
}
