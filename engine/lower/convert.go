package lower

import (
	"fmt"
	"go/types"
	"strings"

	"lode/engine/check"
)

// This file carries values between the two representations (see types.go). What is more
// than a conversion of a number becomes a small function at the end of the program.

// convert writes the conversion of the value text of type t into form f.
func (l *lowerer) convert(text string, t types.Type, f form) string {
	t = types.Unalias(t)
	if !l.mixed(t) {
		return text
	}
	if q, ok := l.World.Quantity(t); ok {
		if f == real && q.Base == nil {
			return l.packageName(l.Lib.Quantity) + "." + l.maker(q) + "(" + text + ", " + l.halves(q) + ")"
		}
		return l.typeText(t, f) + "(" + text + ")"
	}
	return l.converter(t, f) + "(" + text + ")"
}

func (l *lowerer) maker(q check.Quantity) string {
	if q.Complex {
		return l.Lib.MakePhasor
	}
	return l.Lib.Make
}

// converter returns the name of the function that converts values of type t into form f.
func (l *lowerer) converter(t types.Type, f form) string {
	key := fmt.Sprint("convert ", l.typeText(t, !f), " ", l.typeText(t, f))
	return l.helper(key, func(name string) string {
		return fmt.Sprintf("func %s(x %s) %s { %s }", name, l.typeText(t, !f), l.typeText(t, f), l.convertBody(t, f))
	})
}

func (l *lowerer) convertBody(t types.Type, f form) string {
	to := l.typeText(t, f)
	switch t := t.(type) {
	case *types.Slice:
		return "if x == nil { return nil }; r := make(" + to + ", len(x)); for i, v := range x { r[i] = " + l.convert("v", t.Elem(), f) + " }; return r"
	case *types.Array:
		return "var r " + to + "; for i, v := range x { r[i] = " + l.convert("v", t.Elem(), f) + " }; return r"
	case *types.Map:
		return "if x == nil { return nil }; r := make(" + to + ", len(x)); for k, v := range x { r[" + l.convert("k", t.Key(), f) + "] = " + l.convert("v", t.Elem(), f) + " }; return r"
	case *types.Signature:
		return l.convertFunc(t, f)
	case *types.Pointer:
		return "if x == nil { return nil }; r := " + l.convert("*x", t.Elem(), f) + "; return &r"
	case *types.Struct:
		var parts []string
		for v := range t.Fields() {
			parts = append(parts, l.convert("x."+v.Name(), v.Type(), f))
		}
		return "return " + to + "{" + strings.Join(parts, ", ") + "}"
	}
	return "return x"
}

// convertFunc wraps a function so that it takes and gives values of the other form.
func (l *lowerer) convertFunc(s *types.Signature, f form) string {
	var params, args []string
	for i := range s.Params().Len() {
		name, t := fmt.Sprint("a", i), s.Params().At(i).Type()
		text, arg := l.typeText(t, f), l.convert(name, t, !f)
		if s.Variadic() && i == s.Params().Len()-1 {
			text, arg = "..."+l.typeText(t.(*types.Slice).Elem(), f), arg+"..."
		}
		params, args = append(params, name+" "+text), append(args, arg)
	}
	head := "if x == nil { return nil }; return func(" + strings.Join(params, ", ") + ") (" + l.tupleText(s.Results(), f) + ") { "
	call := "x(" + strings.Join(args, ", ") + ")"
	if s.Results().Len() == 0 {
		return head + call + " }"
	}
	return head + l.returning(call, s.Results(), f) + " }"
}

// returning writes statements that return what a call gives, in form f.
func (l *lowerer) returning(call string, results *types.Tuple, f form) string {
	var names, values []string
	for i := range results.Len() {
		name := fmt.Sprint("ˑr", i)
		names, values = append(names, name), append(values, l.convert(name, results.At(i).Type(), f))
	}
	return strings.Join(names, ", ") + " := " + call + "; return " + strings.Join(values, ", ")
}

// helper returns the name of a function of the program that is written once.
func (l *lowerer) helper(key string, text func(name string) string) string {
	if name, ok := l.helpers[key]; ok {
		return name
	}
	name := l.name("h")
	l.helpers[key] = name
	l.tail = append(l.tail, text(name))
	return name
}
