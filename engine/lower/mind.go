package lower

import (
	"fmt"
	"go/ast"
	"go/token"
	"go/types"
	"strings"

	"lode/engine/check"
)

// This file hands values that were defined to the runner, and tells what a statement defines or shows.

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
	warns, known := l.warning[t]
	if !known {
		obj, _, _ := types.LookupFieldOrMethod(t, true, l.Scratch, "Warnings")
		f, ok := obj.(*types.Func)
		warns = ok && f.Signature().Params().Len() == 0
		l.warning[t] = warns
	}
	return warns
}
