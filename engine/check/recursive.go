package check

import (
	"go/ast"
	"go/types"
)

// This file refuses the one form of recursive types that the interpreter cannot run: functions that
// take or give a type, in a list or map that is part of it.

func (c *checker) ownFunctions(spec *ast.TypeSpec, named *types.Named) {
	_, function := named.Underlying().(*types.Signature)
	if !listsOwn(named.Underlying(), named, function) {
		return
	}
	name := spec.Name.Name
	if function {
		c.report(spec.Name, "not-available", name+": a function that takes or gives its own type is not available in notebooks", c.text(spec.Type), "a type that does not need itself", "put it into a struct: type "+name+" struct { next func(...) "+name+" }")
		return
	}
	c.report(spec.Name, "not-available", name+": a list or map of functions of its own type is not available in notebooks", name, "fields of which each is one function, or a list beside the type", "keep the list in a variable: hooks := []func(*"+name+"){...}")
}

// listsOwn reports whether t holds functions of the named type in a list, or is one.
func listsOwn(t types.Type, named *types.Named, listed bool) bool {
	switch t := types.Unalias(t).(type) {
	case *types.Signature:
		return listed && (mentionsType(t.Params(), named) || mentionsType(t.Results(), named))
	case *types.Struct:
		for f := range t.Fields() {
			if listsOwn(f.Type(), named, listed) {
				return true
			}
		}
	case *types.Map:
		return listsOwn(t.Elem(), named, true)
	case interface{ Elem() types.Type }:
		_, pointer := t.(*types.Pointer)
		return listsOwn(t.Elem(), named, listed || !pointer)
	}
	return false
}

func mentionsType(list *types.Tuple, named *types.Named) bool {
	for v := range list.Variables() {
		if partOf(v.Type(), named) {
			return true
		}
	}
	return false
}

// partOf reports whether the named type is written in t.
func partOf(t types.Type, named *types.Named) bool {
	switch t := types.Unalias(t).(type) {
	case *types.Named:
		return t == named
	case *types.Signature:
		return mentionsType(t.Params(), named) || mentionsType(t.Results(), named)
	case interface{ Elem() types.Type }:
		return partOf(t.Elem(), named)
	}
	return false
}
