package lower

import (
	"fmt"
	"go/ast"
	"go/token"
	"go/types"
	"strings"

	"lode/engine/check"
)

// This file lets the runner look at what can leave the range that it is valid for: values that
// were defined, and calls of the library. Such a call goes through a function of the host, which
// takes the receiver as its first argument. Other calls stay as they are.

// Watched is a call of the library that the runner looks at.
type Watched struct {
	Package string // import path
	Type    string // of the receiver, empty for a function
	Func    string
	Name    string // full name, such as coil.Winding.Hum
	Label   string // as the notebook writes it
	Tries   bool   // it calls functions of the notebook with arguments of its own choice

	signature *types.Signature
}

// Host is the name of the function of the host for the i-th watched call.
func (Watched) Host(i int) string { return fmt.Sprint("Watched", i) }

// watched lowers a call to one of the host, if the runner is to look at it.
func (l *lowerer) watched(e *ast.CallExpr) bool {
	s, isSelector := ast.Unparen(e.Fun).(*ast.SelectorExpr)
	f := l.libraryFunc(e.Fun)
	if !l.guard || !isSelector || f == nil || l.Lib.Ranges[fullName(f)] == nil && (e == l.direct || !l.warns(resultOf(f))) {
		return false
	}
	w := Watched{Package: f.Pkg().Path(), Func: f.Name(), Name: fullName(f), Label: l.calleeText(s, f), signature: withReceiver(f)}
	from, to := l.span(e.Fun)
	if f.Signature().Recv() == nil {
		l.edits.replace(from, to, l.host(w))
		l.arguments(e)
		return true
	}
	w.Type = receiver(f).Obj().Name()
	star := ""
	if _, ok := types.Unalias(l.Exprs[s.X].Type).(*types.Pointer); ok {
		star = "*"
	}
	begin, _ := l.span(s)
	l.edits.open(from, l.host(w)+"("+star)
	l.edits.blank(l.chunkAt.Text, from, begin)
	l.raw(s.X)
	_, to = l.span(s.X)
	l.edits.replace(to, to, ",")
	l.edits.blank(l.chunkAt.Text, to, l.offset(e.Lparen)+1)
	l.arguments(e)
	return true
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
		l.edits.replace(from, to, l.host(Watched{Package: f.Pkg().Path(), Func: twin.Name(), Name: fullName(f), Tries: true, signature: withReceiver(twin)}))
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
func withReceiver(f *types.Func) *types.Signature {
	s := f.Signature()
	if s.Recv() == nil {
		return s
	}
	params := []*types.Var{s.Recv()}
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

// valueOf returns the expression that a statement of the top level defines a name by or shows.
func (l *lowerer) valueOf(chunk *check.Chunk, s ast.Stmt) ast.Expr {
	switch s := s.(type) {
	case *ast.AssignStmt:
		if l.defined(s) != nil {
			return ast.Unparen(s.Rhs[0])
		}
	case *ast.ExprStmt:
		if shown(chunk, s) {
			return ast.Unparen(s.X)
		}
	}
	return nil
}

// defined returns the name that a statement defines, if it is one whose value is looked at.
func (l *lowerer) defined(s *ast.AssignStmt) *ast.Ident {
	if id, ok := s.Lhs[0].(*ast.Ident); ok && l.guard && s.Tok == token.DEFINE && len(s.Lhs) == 1 && id.Name != "_" && l.Defs[id] != nil && l.warns(l.Defs[id].Type()) {
		return id
	}
	return nil
}

// namesOf lists the names that a statement defines.
func namesOf(s ast.Stmt) string {
	var names []string
	switch s := s.(type) {
	case *ast.AssignStmt:
		for _, e := range s.Lhs {
			if id, ok := e.(*ast.Ident); ok && id.Name != "_" {
				names = append(names, id.Name)
			}
		}
	case *ast.DeclStmt:
		for _, spec := range s.Decl.(*ast.GenDecl).Specs {
			if v, ok := spec.(*ast.ValueSpec); ok {
				for _, id := range v.Names {
					names = append(names, id.Name)
				}
			}
		}
	}
	return strings.Join(names, ", ")
}

// madeBy returns the full name of the library's function that an expression calls.
func (l *lowerer) madeBy(e ast.Expr) string {
	call, ok := e.(*ast.CallExpr)
	if !ok {
		return ""
	}
	if f := l.libraryFunc(call.Fun); f != nil {
		return fullName(f)
	}
	return ""
}

// minded hands a value that was defined to the runner, if it may have something to warn of.
func (l *lowerer) minded(s *ast.AssignStmt, spot int) {
	if id := l.defined(s); id != nil {
		_, to := l.span(s)
		l.edits.close(to, fmt.Sprintf("; ˑh.Mind(%d, %s)", spot, id.Name))
	}
}

// warns reports whether a type of the library has a method Warnings.
func (l *lowerer) warns(t types.Type) bool {
	if t == nil || !l.foreign(t) {
		return false
	}
	obj, _, _ := types.LookupFieldOrMethod(t, true, l.Scratch, "Warnings")
	f, ok := obj.(*types.Func)
	return ok && f.Signature().Params().Len() == 0
}
