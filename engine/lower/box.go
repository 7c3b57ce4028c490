package lower

import (
	"fmt"
	"go/ast"
	"go/types"
	"strings"

	"lode/engine/check"
)

// This file lowers values that go where anything goes. In an interface a quantity has the
// library's type, so that it keeps its unit. What is shown or printed is made presentable
// besides: a type of the notebook with a String method speaks through it, a struct shows its
// fields with their units, and a pointer shows no address, which would differ between runs.

// boxed lowers e for an interface.
func (l *lowerer) boxed(e ast.Expr) {
	x := l.Exprs[e]
	t := x.Type
	switch {
	case t == nil || check.IsNil(x) || !l.mixed(t):
		l.plain(e)
	case l.isReal(e) && !l.constant(e):
		l.raw(e)
	default:
		l.wrapped(e, l.plain, func(text string) string { return l.convert(text, t, real) })
	}
}

// presents reports whether a library function's interface parameters are for reading only.
func (l *lowerer) presents(fun ast.Expr) bool {
	s, ok := ast.Unparen(fun).(*ast.SelectorExpr)
	if !ok {
		return false
	}
	id, ok := s.X.(*ast.Ident)
	return ok && l.Exprs[id].Mode == check.Package && l.Lib.Packages[id.Name].Path() == "fmt"
}

// presented lowers e for showing or printing.
func (l *lowerer) presented(e ast.Expr) {
	x := l.Exprs[e]
	t := x.Type
	if t != nil {
		t = types.Default(t)
	}
	if t == nil || check.IsNil(x) || !l.speaks(t, 0) {
		l.boxed(e)
		return
	}
	l.wrapped(e, l.plain, func(text string) string { return l.present(text, t, 0) })
}

// speaks reports whether a value of type t needs more than a conversion to be shown.
func (l *lowerer) speaks(t types.Type, depth int) bool {
	if n, ok := types.Unalias(t).(*types.Named); ok {
		if l.libraryNamed(t) {
			return false
		}
		if types.IsInterface(t) {
			return n.Obj().Pkg() != nil && len(l.declared) > 0
		}
		if _, quantity := l.World.Quantity(t); textMethod(n) != "" || !quantity && l.mixed(n.Underlying()) {
			return true
		}
	}
	switch u := t.Underlying().(type) {
	case *types.Struct, *types.Signature:
		return true
	case *types.Pointer:
		return !l.foreign(t)
	case *types.Interface:
		return len(l.declared) > 0
	case *types.Slice:
		return depth < 4 && l.speaks(u.Elem(), depth+1)
	case *types.Array:
		return depth < 4 && l.speaks(u.Elem(), depth+1)
	case *types.Map:
		return depth < 4 && (l.speaks(u.Elem(), depth+1) || l.speaks(u.Key(), depth+1))
	}
	return false
}

// textMethod names the method by which values of a type of the notebook are printed.
func textMethod(t types.Type) string {
	set := types.NewMethodSet(t)
	for _, name := range []string{"Error", "String"} {
		for m := range set.Methods() {
			sig := m.Obj().(*types.Func).Signature()
			if m.Obj().Name() == name && sig.Params().Len() == 0 && sig.Results().Len() == 1 && types.Identical(sig.Results().At(0).Type(), types.Typ[types.String]) {
				return name
			}
		}
	}
	return ""
}

// present writes the value text, of type t in plain form, as something to show.
func (l *lowerer) present(text string, t types.Type, depth int) string {
	if !l.speaks(t, depth) {
		return l.convert(text, t, real)
	}
	key := fmt.Sprint("present ", depth > 0, l.plainText(t), l.typeText(t, real))
	return l.helper(key, func(name string) string {
		return "func " + name + "(x " + l.plainText(t) + ") any { " + l.presentBody(t, depth) + " }"
	}) + "(" + text + ")"
}

func (l *lowerer) presentBody(t types.Type, depth int) string {
	if types.IsInterface(t) {
		return "return " + l.dynamic() + "(" + l.opened("x", t) + ")"
	}
	if m := textMethod(t); m != "" {
		if _, ok := types.Unalias(t).(*types.Pointer); ok {
			return "if x == nil { return nil }; return ˑh.Said(x." + m + "(), nil)"
		}
		return "return ˑh.Said(x." + m + "(), " + l.behind(t, depth) + ")"
	}
	switch u := t.Underlying().(type) {
	case *types.Struct:
		return "return " + l.fieldsText(u, depth)
	case *types.Pointer:
		if depth > 0 {
			return "if x == nil { return nil }; return ˑh.Said(\"&…\", nil)"
		}
		return "if x == nil { return nil }; return ˑh.Said(\"&\" + fmt.Sprint(" + l.present("*x", u.Elem(), depth+1) + "), nil)"
	case *types.Slice:
		return "r := []any{}; for _, v := range x { r = append(r, " + l.present("v", u.Elem(), depth+1) + ") }; return r"
	case *types.Array:
		return "r := []any{}; for _, v := range x { r = append(r, " + l.present("v", u.Elem(), depth+1) + ") }; return r"
	case *types.Map:
		if l.speaks(u.Key(), depth+1) {
			return "r := map[string]any{}; for k, v := range x { r[fmt.Sprint(" + l.present("k", u.Key(), depth+1) + ")] = " + l.present("v", u.Elem(), depth+1) + " }; return r"
		}
		return "r := map[" + l.typeText(u.Key(), real) + "]any{}; for k, v := range x { r[" + l.convert("k", u.Key(), real) + "] = " + l.present("v", u.Elem(), depth+1) + " }; return r"
	}
	return "if x == nil { return nil }; return ˑh.Said(\"a function\", nil)"
}

// fieldsText writes the fields of the struct x.
func (l *lowerer) fieldsText(u *types.Struct, depth int) string {
	var names, parts []string
	for f := range u.Fields() {
		if f.Name() != "_" {
			names, parts = append(names, f.Name()), append(parts, l.present("x."+f.Name(), f.Type(), depth+1))
		}
	}
	return fmt.Sprintf("ˑh.Fields(%q, []any{%s})", strings.Join(names, " "), strings.Join(parts, ", "))
}

// behind writes what is behind the text of x, for verbs that do not print texts.
func (l *lowerer) behind(t types.Type, depth int) string {
	switch u := t.Underlying().(type) {
	case *types.Basic:
		return u.Name() + "(x)"
	case *types.Struct:
		return l.fieldsText(u, depth)
	}
	return "nil"
}

// dynamic returns the name of the function that finds out at run time how a value in an
// interface is shown. It is written when all types are known that it may meet.
func (l *lowerer) dynamic() string {
	if l.dynamics == "" {
		l.dynamics = l.name("h")
	}
	return l.dynamics
}

// eachPresented returns the name of the function that makes a list presentable.
func (l *lowerer) eachPresented() string {
	return l.helper("each presented", func(name string) string {
		return "func " + name + "(x []any) []any { r := []any{}; for _, v := range x { r = append(r, " + l.dynamic() + "(v)) }; return r }"
	})
}

func (l *lowerer) finishDynamic() {
	if l.dynamics == "" {
		return
	}
	cases := ""
	for i := 0; i < len(l.labelled); i++ {
		t := l.labelled[i]
		cases += "case " + l.labelText(t) + ": return " + l.present("v."+l.labelName(t), t, 0) + "; "
	}
	if !l.guard {
		for _, t := range l.declared {
			if !types.IsInterface(t) {
				cases += "case " + l.plainText(t) + ": return " + l.present("v", t, 0) + "; "
				cases += "case *" + l.plainText(t) + ": return " + l.present("v", types.NewPointer(t), 0) + "; "
			}
		}
	}
	l.tail = append(l.tail, "func "+l.dynamics+"(x any) any { switch v := x.(type) { "+cases+"case []any: r := []any{}; for _, e := range v { r = append(r, "+l.dynamics+"(e)) }; return r }; return x }")
}
