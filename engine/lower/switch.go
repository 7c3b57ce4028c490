package lower

import (
	"fmt"
	"go/ast"
	"go/types"

	"lode/engine/check"
)

// This file lowers switches.

func (l *lowerer) switchStmt(s *ast.SwitchStmt) {
	if l.guard && s.Tag != nil && l.Exprs[s.Tag].Type != nil && types.IsInterface(l.Exprs[s.Tag].Type) {
		l.switchAnything(s)
		return
	}
	if s.Init != nil {
		l.apartInit(s, s.Init)
	}
	l.label = nil
	quantity := s.Tag != nil && l.quantity(s.Tag)
	if quantity {
		l.operand(s.Tag, l.runtime(s.Tag))
	} else {
		l.expr(s.Tag)
	}
	for _, b := range s.Body.List {
		clause := b.(*ast.CaseClause)
		for _, e := range clause.List {
			if quantity {
				l.operand(e, l.runtime(s.Tag))
			} else {
				l.expr(e)
			}
		}
		l.clause(clause)
	}
}

// switchAnything lowers a switch over what is in an interface, which the interpreter does not
// compare with the cases, as comparisons.
func (l *lowerer) switchAnything(s *ast.SwitchStmt) {
	init := ""
	if s.Init != nil {
		init = l.renderStmt(s.Init) + "; "
	}
	name := l.name("on")
	tag := l.render(s.Tag)
	if isErrorType(l.Exprs[s.Tag].Type) {
		tag = l.opened(tag, l.Exprs[s.Tag].Type)
	}
	l.enclose(s, l.label, "{ "+init+name+" := "+tag+"; _ = "+name+"; ")
	_, to := l.span(s.Tag)
	l.edits.replace(l.offset(s.Switch)+len("switch"), to, " ")
	l.label = nil
	for _, b := range s.Body.List {
		clause := b.(*ast.CaseClause)
		for _, e := range clause.List {
			l.around(e, name+" == ", "", func(e ast.Expr) { l.beside(e, s.Tag) })
		}
		l.clause(clause)
	}
}

// clause lowers what a case does. The interpreter wants it to do something.
func (l *lowerer) clause(c *ast.CaseClause) {
	if len(c.Body) == 0 {
		l.edits.open(l.offset(c.Colon)+1, " _ = 0; ")
	}
	l.stmts(c.Body)
}

// apartInit puts the first statement of a switch in front of it, where the interpreter
// takes it.
func (l *lowerer) apartInit(s *ast.SwitchStmt, init ast.Stmt) {
	l.enclose(s, l.label, "{ "+l.renderStmt(init)+"; ")
	end := l.offset(s.Body.Lbrace)
	if s.Tag != nil {
		end, _ = l.span(s.Tag)
	}
	l.edits.replace(l.offset(s.Switch)+len("switch"), end, " ")
}

// typeSwitch compares types as the library knows them, and takes a value out of its interface
// in plain form.
func (l *lowerer) typeSwitch(s *ast.TypeSwitchStmt) {
	x, id := switchedOn(s)
	kept := l.keepsTag(s, x)
	if kept {
		l.keepTag(s, x)
	} else {
		l.stmt(s.Init)
		l.raw(x)
	}
	l.label = nil
	if kept && id != nil && !l.used(s, id) { // for Go to complain about
		kept = false
	}
	l.switchName(s, x, id, kept)
	for _, b := range s.Body.List {
		clause := b.(*ast.CaseClause)
		for _, e := range clause.List {
			l.caseExpr(e, x)
		}
		switch {
		case id != nil && mentions(clause.Body, id.Name) && (kept || l.unpacks(s, id)):
			l.unpack(id, clause, x, kept)
		case id == nil && l.guard:
			l.edits.open(l.offset(clause.Colon)+1, " _ = ˑ; ")
		}
		l.clause(clause)
	}
}

// switchName writes the name that a type switch gives its value.
func (l *lowerer) switchName(s *ast.TypeSwitchStmt, x ast.Expr, id *ast.Ident, kept bool) {
	switch {
	case id == nil && l.guard && len(s.Body.List) > 0: // the interpreter compares better with a name
		from, _ := l.span(s.Assign)
		l.edits.open(from, "ˑ := ")
	case id != nil && (kept || l.unpacks(s, id)):
		from, to := l.span(id)
		l.edits.replace(from, to, "ˑ"+id.Name)
	}
}

// keepsTag reports whether a type switch looks for types of the notebook in an interface with
// methods.
func (l *lowerer) keepsTag(s *ast.TypeSwitchStmt, x ast.Expr) bool {
	if !l.guard || anything(l.Exprs[x].Type) {
		return false
	}
	for _, b := range s.Body.List {
		for _, e := range b.(*ast.CaseClause).List {
			if check.IsNil(l.Exprs[e]) || l.caseOf(x, l.Exprs[e].Type) {
				return true
			}
		}
	}
	return false
}

// keepTag keeps the value in front of the switch.
func (l *lowerer) keepTag(s *ast.TypeSwitchStmt, x ast.Expr) {
	init := ""
	if s.Init != nil {
		init = l.renderStmt(s.Init) + "; "
		end, _ := l.span(s.Assign)
		l.edits.replace(l.offset(s.Switch)+len("switch"), end, " ")
	}
	l.enclose(s, l.label, "{ "+init+"ˑtag := "+l.renderRaw(x)+"; _ = ˑtag; ")
	from, to := l.span(x)
	l.edits.replace(from, to, l.opened("ˑtag", l.Exprs[x].Type))
}

// used reports whether a type switch uses the name that it gives its value.
func (l *lowerer) used(s *ast.TypeSwitchStmt, id *ast.Ident) bool {
	for _, b := range s.Body.List {
		if mentions(b.(*ast.CaseClause).Body, id.Name) {
			return true
		}
	}
	return false
}

// switchedOn returns the value whose type decides, and the name that it gets.
func switchedOn(s *ast.TypeSwitchStmt) (ast.Expr, *ast.Ident) {
	if a, ok := s.Assign.(*ast.AssignStmt); ok {
		return a.Rhs[0].(*ast.TypeAssertExpr).X, a.Lhs[0].(*ast.Ident)
	}
	return s.Assign.(*ast.ExprStmt).X.(*ast.TypeAssertExpr).X, nil
}

// unpacks reports whether a case of a type switch takes out a value that has two forms.
func (l *lowerer) unpacks(s *ast.TypeSwitchStmt, id *ast.Ident) bool {
	x, _ := switchedOn(s)
	for _, b := range s.Body.List {
		clause := b.(*ast.CaseClause)
		if l.caseType(clause, x) != nil && mentions(clause.Body, id.Name) {
			return true
		}
	}
	return false
}

// caseType returns the type of a case of one type that has two forms, or a label.
func (l *lowerer) caseType(clause *ast.CaseClause, on ast.Expr) types.Type {
	if len(clause.List) != 1 {
		return nil
	}
	if x := l.Exprs[clause.List[0]]; x.Mode == check.Type && (l.mixed(x.Type) || l.caseOf(on, x.Type)) {
		return x.Type
	}
	return nil
}

func (l *lowerer) unpack(id *ast.Ident, clause *ast.CaseClause, on ast.Expr, kept bool) {
	value := "ˑ" + id.Name
	if kept && len(clause.List) != 1 || kept && check.IsNil(l.Exprs[clause.List[0]]) {
		value = "ˑtag"
	} else if t := l.caseType(clause, on); l.caseOf(on, t) {
		value += "." + l.labelName(t)
	} else if t != nil {
		value = l.convert(value, t, plain)
	}
	l.edits.open(l.offset(clause.Colon)+1, fmt.Sprintf(" _ = ˑ%s; %s := %s; ", id.Name, id.Name, value))
}

func mentions(body []ast.Stmt, name string) bool {
	found := false
	for _, s := range body {
		ast.Inspect(s, func(n ast.Node) bool {
			id, ok := n.(*ast.Ident)
			found = found || ok && id.Name == name
			return !found
		})
	}
	return found
}
