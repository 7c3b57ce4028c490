package lower

import (
	"fmt"
	"go/ast"
	"go/token"
	"go/types"
	"strings"

	"lode/engine/check"
)

// This file lets the runner look at calls of the library that can leave the range they are valid for. Such
// a call goes through a function of the host, which takes the receiver as its first argument. Other calls
// stay as they are.

// Watched is a call of the library that the runner looks at.
type Watched struct {
	Package string // import path
	Type    string // of the receiver, empty for a function
	Func    string
	Name    string // full name, such as coil.Winding.Hum
	Label   string // as the notebook writes it
	Pointer bool   // the first argument is a pointer to the receiver, which saves copies of it
	Tries   bool   // it calls functions of the notebook with arguments of its own choice

	signature *types.Signature
}

// Host is the name of the function of the host for the i-th watched call.
func (Watched) Host(i int) string { return fmt.Sprint("Watched", i) }

// watched lowers a call to one of the host, if the runner is to look at it.
func (l *lowerer) watched(e *ast.CallExpr) bool {
	s, isSelector := ast.Unparen(e.Fun).(*ast.SelectorExpr)
	f := l.libraryFunc(e.Fun)
	if !l.guard || !isSelector || f == nil || l.Lib.Ranges[fullName(f)] == nil && !l.warnsBy(e, resultOf(f)) {
		return false
	}
	w := Watched{Package: f.Pkg().Path(), Func: f.Name(), Name: fullName(f), Label: l.calleeText(s, f)}
	if f.Signature().Recv() != nil {
		l.watchedMethod(e, s, f, w)
	} else {
		from, to := l.span(e.Fun)
		w.signature = f.Signature()
		l.edits.replace(from, to, l.host(w))
	}
	l.arguments(e)
	return true
}

// warnsBy reports whether the result of a call may warn, and is not handed to the runner anyway.
func (l *lowerer) warnsBy(e *ast.CallExpr, result types.Type) bool {
	if s, ok := result.(*types.Slice); ok {
		return l.warns(s.Elem())
	}
	return e != l.direct && l.warns(result)
}

// watchedMethod lowers what stands in front of the arguments.
func (l *lowerer) watchedMethod(e *ast.CallExpr, s *ast.SelectorExpr, f *types.Func, w Watched) {
	w.Type, w.Pointer = receiver(f).Obj().Name(), l.variable(s.X)
	before, first := "", types.Type(receiver(f))
	if w.Pointer {
		before, first = "&", types.NewPointer(first)
	} else if _, ok := types.Unalias(l.Exprs[s.X].Type).(*types.Pointer); ok {
		before = "*"
	}
	w.signature = withReceiver(f, first)
	from, _ := l.span(e.Fun)
	begin, _ := l.span(s)
	l.edits.open(from, l.host(w)+"("+before)
	l.edits.blank(l.chunkAt.Text, from, begin)
	l.raw(s.X)
	_, to := l.span(s.X)
	l.edits.replace(to, to, ",")
	l.edits.blank(l.chunkAt.Text, to, l.offset(e.Lparen)+1)
}

// variable reports whether an expression is the name of a variable of a type of the library.
func (l *lowerer) variable(e ast.Expr) bool {
	id, ok := e.(*ast.Ident)
	if !ok || l.slots[e] > 0 {
		return false
	}
	_, isVar := l.Uses[id].(*types.Var)
	return isVar && l.libraryNamed(l.Exprs[id].Type)
}

// tries lowers the name of a generic function that tries arguments out to one of the host.
func (l *lowerer) tries(e *ast.CallExpr) bool {
	f := l.libraryFunc(e.Fun)
	if !l.guard || f == nil || !l.Lib.Tries(fullName(f)) {
		return false
	}
	twin, ok := f.Pkg().Scope().Lookup(f.Name() + check.TwinSuffix).(*types.Func)
	if ok {
		from, to := l.span(e.Fun)
		l.edits.replace(from, to, l.host(Watched{Package: f.Pkg().Path(), Func: twin.Name(), Name: fullName(f), Tries: true, signature: twin.Signature()}))
	}
	return ok
}

// host adds a watched call and returns the function of the host for it.
func (l *lowerer) host(w Watched) string {
	l.Watched = append(l.Watched, w)
	return "ˑh." + w.Host(len(l.Watched)-1)
}

// libraryFunc returns the function of the library that an expression names, or its method that is
// called on a value of its own type.
func (l *lowerer) libraryFunc(e ast.Expr) *types.Func {
	s, ok := ast.Unparen(e).(*ast.SelectorExpr)
	if !ok {
		return nil
	}
	if id, ok := s.X.(*ast.Ident); ok && l.Exprs[id].Mode == check.Package {
		f, _ := l.Lib.Packages[id.Name].Scope().Lookup(s.Sel.Name).(*types.Func)
		return f
	}
	x := l.Exprs[s.X]
	if x.Mode != check.Value || !l.foreign(x.Type) {
		return nil
	}
	obj, path, _ := types.LookupFieldOrMethod(x.Type, true, l.Scratch, s.Sel.Name)
	f, ok := obj.(*types.Func)
	if !ok || len(path) != 1 || receiver(f) == nil || types.IsInterface(receiver(f)) {
		return nil
	}
	return f
}

// receiver returns the type that a method is called on by value.
func receiver(f *types.Func) *types.Named {
	if f.Signature().Recv() == nil {
		return nil
	}
	n, _ := types.Unalias(f.Signature().Recv().Type()).(*types.Named)
	return n
}

func fullName(f *types.Func) string {
	if n := receiver(f); n != nil {
		return f.Pkg().Name() + "." + n.Obj().Name() + "." + f.Name()
	}
	return f.Pkg().Name() + "." + f.Name()
}

// withReceiver is the type of a method as a function whose first parameter is the receiver.
func withReceiver(f *types.Func, first types.Type) *types.Signature {
	s := f.Signature()
	params := []*types.Var{types.NewParam(token.NoPos, f.Pkg(), "", first)}
	for v := range s.Params().Variables() {
		params = append(params, v)
	}
	return types.NewSignatureType(nil, nil, nil, types.NewTuple(params...), s.Results(), s.Variadic())
}

func resultOf(f *types.Func) types.Type {
	if f.Signature().Results().Len() == 0 {
		return nil
	}
	return f.Signature().Results().At(0).Type()
}

// calleeText is how a message names the callee: as written, if that is made of names alone.
func (l *lowerer) calleeText(s *ast.SelectorExpr, f *types.Func) string {
	for x := s.X; ; {
		switch e := x.(type) {
		case *ast.Ident:
			return strings.Join(strings.Fields(l.chunkAt.SourceText(s)), "")
		case *ast.SelectorExpr:
			x = e.X
			continue
		}
		return fullName(f)
	}
}
