package lower

import (
	"fmt"
	"go/ast"
	"go/token"
	"go/types"
	"strings"
)

// This file lowers statements.

func (l *lowerer) funcDecl(d *ast.FuncDecl) {
	if d.Recv != nil {
		l.fieldTypes(d.Recv, plain)
	}
	l.instanceName(d)
	l.typeExpr(d.Type, plain)
	l.body(d.Name, d.Body, l.Defs[d.Name].(*types.Func).Signature())
}

// instanceName gives an instance of a generic function its own name, without the parameters
// that have become types.
func (l *lowerer) instanceName(d *ast.FuncDecl) {
	if l.chunkAt.Params != nil {
		from, _ := l.span(d.Name)
		_, to := l.span(l.chunkAt.Params)
		l.edits.replace(from, to, l.Defs[d.Name].Name())
	}
}

func (l *lowerer) funcLit(e *ast.FuncLit) {
	l.typeExpr(e.Type, plain)
	l.body(e, e.Body, l.Exprs[e].Type.Underlying().(*types.Signature))
}

func (l *lowerer) body(n ast.Node, body *ast.BlockStmt, sig *types.Signature) {
	outer := l.frame
	l.frame = l.enter(n, body, sig)
	l.block(body)
	l.leave(l.frame, body)
	l.frame = outer
}

func (l *lowerer) block(b *ast.BlockStmt) { l.stmts(b.List) }

func (l *lowerer) stmts(list []ast.Stmt) {
	for _, s := range list {
		l.marked(s)
		l.stmt(s)
		if text := l.after[s]; text != "" {
			_, to := l.span(s)
			l.edits.close(to, text)
		}
	}
}

// marked puts a mark in front of a statement of a list that can fail by itself.
func (l *lowerer) marked(s ast.Stmt) {
	if !l.guard || !l.stmtFails(s) {
		return
	}
	from, _ := l.span(s)
	l.edits.open(from, l.markText(headOf(s)))
}

// headOf returns the part of a statement that a message about it points to.
func headOf(s ast.Stmt) ast.Node {
	switch s := s.(type) {
	case *ast.IfStmt:
		return s.Cond
	case *ast.SwitchStmt:
		if s.Tag != nil {
			return s.Tag
		}
	case *ast.RangeStmt:
		return s.X
	case *ast.ForStmt:
		if s.Cond != nil {
			return s.Cond
		}
	case *ast.LabeledStmt:
		return headOf(s.Stmt)
	}
	return s
}

func (l *lowerer) stmtFails(s ast.Stmt) bool {
	switch s := s.(type) {
	case nil, *ast.BlockStmt, *ast.BranchStmt, *ast.EmptyStmt:
		return false
	case *ast.IfStmt:
		return l.stmtFails(s.Init) || l.mayFail(s.Cond)
	case *ast.ForStmt:
		return l.stmtFails(s.Init) || l.mayFail(s.Cond)
	case *ast.RangeStmt:
		return l.mayFail(s.X) || l.anyFails(&ast.RangeStmt{X: s.X, Body: &ast.BlockStmt{}})
	case *ast.SwitchStmt:
		return l.stmtFails(s.Init) || l.mayFail(s.Tag) || l.casesFail(s.Body)
	case *ast.TypeSwitchStmt:
		return l.stmtFails(s.Init)
	case *ast.LabeledStmt:
		return l.stmtFails(s.Stmt)
	case *ast.AssignStmt:
		return l.anyFails(s) || l.writesMap(s)
	}
	return l.anyFails(s)
}

func (l *lowerer) casesFail(b *ast.BlockStmt) bool {
	for _, s := range b.List {
		if l.mayFail(s.(*ast.CaseClause).List...) {
			return true
		}
	}
	return false
}

func (l *lowerer) writesMap(s *ast.AssignStmt) bool {
	for _, e := range s.Lhs {
		if i, ok := e.(*ast.IndexExpr); ok && l.Exprs[i.X].Type != nil {
			return true
		}
	}
	return false
}

func (l *lowerer) exprs(list []ast.Expr) {
	for _, e := range list {
		l.expr(e)
	}
}

func (l *lowerer) stmt(s ast.Stmt) {
	switch s := s.(type) {
	case *ast.ExprStmt:
		l.exprStmt(s)
	case *ast.AssignStmt:
		l.assign(s, false)
	case *ast.DeclStmt:
		l.innerDecl(s)
	case *ast.ReturnStmt:
		l.returnStmt(s)
	case *ast.IncDecStmt:
		l.raw(s.X)
	case *ast.DeferStmt:
		l.bareCall(s.Call)
	case *ast.LabeledStmt:
		l.label = s
		l.stmt(s.Stmt)
		l.label = nil
	case *ast.BlockStmt:
		l.block(s)
	case *ast.EmptyStmt:
		if from, to := l.span(s); !s.Implicit {
			l.edits.replace(from, to, " ")
		}
	default:
		l.control(s)
	}
}

func (l *lowerer) control(s ast.Stmt) {
	switch s := s.(type) {
	case *ast.IfStmt:
		l.stmt(s.Init)
		l.expr(s.Cond)
		l.block(s.Body)
		l.stmt(s.Else)
	case *ast.ForStmt:
		l.forStmt(s)
	case *ast.RangeStmt:
		l.rangeStmt(s)
	case *ast.SwitchStmt:
		l.switchStmt(s)
	case *ast.TypeSwitchStmt:
		l.typeSwitch(s)
	}
}

// exprStmt lowers a call; an error that is its only result stops the run.
func (l *lowerer) exprStmt(s *ast.ExprStmt) {
	call, ok := ast.Unparen(s.X).(*ast.CallExpr)
	if ok && l.Must[call] && isErrorType(l.Exprs[call].Type) {
		from, to := l.span(s)
		l.edits.open(from, "if ˑe := ")
		l.bareCall(call)
		l.edits.close(to, fmt.Sprintf("; ˑe != nil { ˑh.Fail(%d, ˑe) }", l.spot(s)))
		return
	}
	l.raw(s.X)
}

func isErrorType(t types.Type) bool {
	return t != nil && types.Identical(t, types.Universe.Lookup("error").Type())
}

// assign lowers an assignment; at the top level := turns into =, since the variables are
// those of the package.
func (l *lowerer) assign(s *ast.AssignStmt, top bool) {
	if s.Tok != token.ASSIGN && s.Tok != token.DEFINE {
		l.opAssign(s)
		return
	}
	if top && s.Tok == token.DEFINE {
		at := l.offset(s.TokPos)
		l.edits.replace(at, at+2, "=")
	}
	if l.together(s) {
		return
	}
	for _, e := range s.Lhs {
		if s.Tok != token.DEFINE {
			l.raw(e)
		}
	}
	if len(s.Lhs) == 2 && len(s.Rhs) == 1 {
		l.pair(s.Rhs[0])
		return
	}
	for i, e := range s.Rhs {
		l.assigned(s, i, e)
	}
}

// assigned lowers a value for the left side that it goes to.
func (l *lowerer) assigned(s *ast.AssignStmt, i int, e ast.Expr) {
	if len(s.Lhs) != len(s.Rhs) {
		l.expr(e)
		return
	}
	if left := s.Lhs[i]; s.Tok == token.ASSIGN && l.isReal(left) {
		l.toReal(e, l.Exprs[left].Type)
		return
	}
	l.expr(e)
}

// pair lowers what gives a value and whether there is one.
func (l *lowerer) pair(e ast.Expr) {
	t := l.Exprs[e].Type
	if a, ok := ast.Unparen(e).(*ast.TypeAssertExpr); ok && l.caseOf(a.X, l.Exprs[a.Type].Type) {
		t = l.Exprs[a.Type].Type
		l.around(e, "func() ("+l.plainText(t)+", bool) { ˑv, ˑok := ", "; return ˑv."+l.labelName(t)+", ˑok }()", func(ast.Expr) { l.asserted(a) })
		return
	}
	if a, ok := ast.Unparen(e).(*ast.TypeAssertExpr); ok && l.guard && isErrorType(l.Exprs[a.Type].Type) && anything(l.Exprs[a.X].Type) {
		l.around(e, l.asError()+"(", ")", func(ast.Expr) { l.assertedValue(a) })
		return
	}
	_, call := ast.Unparen(e).(*ast.CallExpr)
	if call || t == nil || !l.isReal(e) || !l.mixed(t) {
		l.expr(e)
		return
	}
	l.around(e, "func() ("+l.plainText(t)+", bool) { ˑv, ˑok := ", "; return "+l.convert("ˑv", t, plain)+", ˑok }()", l.raw)
}

// returnStmt lowers a return; a guarded function leaves in good order.
func (l *lowerer) returnStmt(s *ast.ReturnStmt) {
	from, to := l.span(s)
	f := l.frame
	simple := !l.mayFail(s.Results...)
	switch {
	case !f.guarded:
		l.results(s)
	case simple:
		l.edits.open(from, "{ "+f.exit())
		l.results(s)
		l.edits.close(to, " }")
	case len(s.Results) == 1 && f.sig.Results().Len() > 1:
		names := resultNames(f.sig.Results().Len())
		at, _ := l.span(s.Results[0])
		l.edits.replace(from, at, "{ "+names+" := ")
		l.expr(s.Results[0])
		l.edits.close(to, "; "+f.exit()+"return "+names+" }")
	default:
		l.keepResults(s, f, from, to)
	}
}

func (l *lowerer) results(s *ast.ReturnStmt) { l.exprs(s.Results) }

func resultNames(n int) string {
	names := make([]string, n)
	for i := range n {
		names[i] = fmt.Sprint("ˑr", i)
	}
	return strings.Join(names, ", ")
}

// keepResults evaluates the results before the function leaves.
func (l *lowerer) keepResults(s *ast.ReturnStmt, f frame, from, to int) {
	at := from
	for i, e := range s.Results {
		eFrom, eTo := l.span(e)
		text := fmt.Sprintf("var ˑr%d %s = ", i, l.plainText(f.sig.Results().At(i).Type()))
		if i == 0 {
			text = "{ " + text
		} else {
			text = "; " + text
		}
		l.edits.replace(at, eFrom, text)
		l.expr(e)
		at = eTo
	}
	l.edits.close(to, "; "+f.exit()+"return "+resultNames(len(s.Results))+" }")
}
