package rules

import (
	"fmt"
	"go/ast"
	"go/token"
	"testing"
)

func TestNoInit(t *testing.T) {
	for _, s := range sources(t) {
		for _, d := range s.File.Decls {
			if f, ok := d.(*ast.FuncDecl); ok && f.Recv == nil && f.Name.Name == "init" {
				t.Errorf("%s: func init: what a package does is done when it is called, not when it is imported", s.Fset.Position(f.Pos()))
			}
		}
	}
}

func TestNoExit(t *testing.T) {
	for _, s := range sources(t) {
		if s.Test || under(s.Package, "cmd") || s.File.Name.Name == "main" {
			continue
		}
		ast.Inspect(s.File, func(n ast.Node) bool {
			if sel, ok := n.(*ast.SelectorExpr); ok && (named(sel, "os", "Exit") || named(sel, "log", "Fatal") || named(sel, "log", "Fatalf")) {
				t.Errorf("%s: only commands end the process; everything else returns an error", s.Fset.Position(n.Pos()))
			}
			return true
		})
	}
}

func named(s *ast.SelectorExpr, pkg, name string) bool {
	id, ok := s.X.(*ast.Ident)
	return ok && id.Name == pkg && s.Sel.Name == name && id.Obj == nil
}

func TestNoState(t *testing.T) {
	for name, files := range packages(t) {
		if name == "stdlib/pace" { // a request to stop, which changes no result
			continue
		}
		vars := packageVars(files)
		for _, s := range files {
			for _, at := range changes(s, vars) {
				t.Errorf("%s: a variable of package %s changes: two runs of a program must not see each other", at, name)
			}
		}
	}
}

// changing are the methods by which atomic variables and locks change.
var changing = map[string]bool{"Store": true, "Add": true, "Swap": true, "CompareAndSwap": true, "Lock": true, "Do": true}

func packages(t *testing.T) map[string][]source {
	all := map[string][]source{}
	for _, s := range sources(t) {
		if !s.Test {
			all[s.Package] = append(all[s.Package], s)
		}
	}
	return all
}

func packageVars(files []source) map[string]bool {
	vars := map[string]bool{}
	for _, s := range files {
		for _, d := range s.File.Decls {
			g, ok := d.(*ast.GenDecl)
			if !ok || g.Tok != token.VAR {
				continue
			}
			for _, spec := range g.Specs {
				for _, id := range spec.(*ast.ValueSpec).Names {
					vars[id.Name] = id.Name != "_"
				}
			}
		}
	}
	return vars
}

// changes finds assignments to package variables, and addresses taken of them.
func changes(s source, vars map[string]bool) []string {
	var found []string
	check := func(e ast.Expr) {
		if id := rootOf(e); id != nil && vars[id.Name] && global(id) {
			found = append(found, fmt.Sprint(s.Fset.Position(e.Pos()), " ", id.Name))
		}
	}
	ast.Inspect(s.File, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.AssignStmt:
			for _, e := range n.Lhs {
				if n.Tok != token.DEFINE {
					check(e)
				}
			}
		case *ast.IncDecStmt:
			check(n.X)
		case *ast.UnaryExpr:
			if n.Op == token.AND {
				check(n.X)
			}
		case *ast.CallExpr:
			if sel, ok := n.Fun.(*ast.SelectorExpr); ok && changing[sel.Sel.Name] {
				check(sel.X)
			}
		}
		return true
	})
	return found
}

// global reports whether a name is not one of the file's inner scopes.
func global(id *ast.Ident) bool {
	if id.Obj == nil {
		return true
	}
	_, ok := id.Obj.Decl.(*ast.ValueSpec)
	return ok && id.Obj.Kind == ast.Var && id.Obj.Pos() != id.Pos() && topLevel(id)
}

func topLevel(id *ast.Ident) bool { return id.Obj.Data == nil || id.Obj.Data == 0 }

func rootOf(e ast.Expr) *ast.Ident {
	for {
		switch x := e.(type) {
		case *ast.Ident:
			return x
		case *ast.IndexExpr:
			e = x.X
		case *ast.SelectorExpr:
			e = x.X
		case *ast.ParenExpr:
			e = x.X
		default:
			return nil
		}
	}
}
