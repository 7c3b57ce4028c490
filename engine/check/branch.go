package check

import (
	"go/ast"
	"go/token"
	"go/types"
)

// This file checks that break, continue and labels find the statement they mean.

// enclosing is what a statement stands in.
type enclosing struct {
	outer  *enclosing
	label  string
	loop   bool
	yields bool // the body of a range over a function
}

// branches checks the statements of a function's body or of the top level.
func (c *checker) branches(list []ast.Stmt) {
	b := &brancher{c, map[string]*ast.LabeledStmt{}, map[string]bool{}}
	for _, s := range list {
		b.stmt(s, nil, "")
	}
	for name, l := range b.labels {
		if !b.used[name] {
			c.report(l.Label, "label", name+": no statement uses this label", name, "a break or continue that names it", "take the label out")
		}
	}
}

type brancher struct {
	c      *checker
	labels map[string]*ast.LabeledStmt
	used   map[string]bool
}

func (b *brancher) list(list []ast.Stmt, in *enclosing) {
	for _, s := range list {
		b.stmt(s, in, "")
	}
}

func (b *brancher) stmt(s ast.Stmt, in *enclosing, label string) {
	switch s := s.(type) {
	case *ast.LabeledStmt:
		if b.labels[s.Label.Name] != nil {
			b.c.report(s.Label, "label", s.Label.Name+": the label is there twice", s.Label.Name, "each label once in a function", "")
		}
		b.labels[s.Label.Name] = s
		b.stmt(s.Stmt, in, s.Label.Name)
	case *ast.BlockStmt:
		b.list(s.List, in)
	case *ast.IfStmt:
		b.list(s.Body.List, in)
		b.stmt(s.Else, in, "")
	case *ast.ForStmt:
		b.list(s.Body.List, &enclosing{in, label, true, false})
	case *ast.RangeStmt:
		b.list(s.Body.List, &enclosing{in, label, true, b.overFunction(s)})
	case *ast.SwitchStmt:
		b.cases(s.Body, &enclosing{in, label, false, false}, true)
	case *ast.TypeSwitchStmt:
		b.cases(s.Body, &enclosing{in, label, false, false}, false)
	case *ast.BranchStmt:
		b.branch(s, in)
	case *ast.ReturnStmt, *ast.DeferStmt:
		b.leaves(s, in)
	}
}

func (b *brancher) overFunction(s *ast.RangeStmt) bool {
	t := b.c.Exprs[s.X].Type
	if t == nil {
		return false
	}
	_, ok := t.Underlying().(*types.Signature)
	return ok
}

func (b *brancher) cases(body *ast.BlockStmt, in *enclosing, falls bool) {
	for i, s := range body.List {
		list := s.(*ast.CaseClause).Body
		if n := len(list); n > 0 {
			if f, ok := list[n-1].(*ast.BranchStmt); ok && f.Tok == token.FALLTHROUGH && falls && i < len(body.List)-1 {
				list = list[:n-1]
			}
		}
		b.list(list, in)
	}
}

// leaves refuses what would leave the body of a range over a function.
func (b *brancher) leaves(s ast.Stmt, in *enclosing) {
	for ; in != nil; in = in.outer {
		if in.yields {
			b.c.report(s, "not-available", "range over a function: its body may be left by break and continue only", b.c.text(s), "break or continue", "note the result in a variable and break")
			return
		}
	}
}

func (b *brancher) branch(s *ast.BranchStmt, in *enclosing) {
	what := s.Tok.String()
	switch {
	case s.Tok == token.GOTO:
		b.used[s.Label.Name] = true
		b.c.report(s, "not-available", "goto is not available in notebooks", b.c.text(s), "a loop, break or continue", "")
		return
	case s.Tok == token.FALLTHROUGH:
		b.c.report(s, "branch", "fallthrough: there is no next case to fall to", what, "the last statement of a case that is not the last", "")
		return
	}
	if s.Label != nil {
		b.used[s.Label.Name] = true
	}
	for n := in; n != nil; n = n.outer {
		if s.Label == nil && (n.loop || s.Tok == token.BREAK) || s.Label != nil && n.label == s.Label.Name && (n.loop || s.Tok == token.BREAK) {
			return
		}
		if n.yields && s.Label != nil {
			b.leaves(s, n)
			return
		}
	}
	if s.Label != nil {
		b.c.report(s.Label, "label", s.Label.Name+": no such label around this "+what, s.Label.Name, "the label of a loop that this stands in", "")
		return
	}
	b.c.report(s, "branch", what+": there is no loop around it", what, "a loop around it", "")
}
