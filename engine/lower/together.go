package lower

import (
	"fmt"
	"go/ast"
	"go/token"
	"go/types"
	"strings"
)

// This file lowers assignments to several variables at once that the interpreter fails at: it
// loses what goes into a map, and it cannot exchange values that hold anything. They become a
// function that puts into maps what belongs there, and returns the rest.

// together lowers such an assignment, and reports whether it is one.
func (l *lowerer) together(s *ast.AssignStmt) bool {
	if len(s.Lhs) < 2 || !l.losesSome(s) {
		return false
	}
	values := make([]string, len(s.Lhs))
	for i := range values {
		values[i] = fmt.Sprint("ˑa", i)
	}
	puts := l.puts(s, values)
	from, _ := l.span(s.Rhs[0])
	_, to := l.span(s.Rhs[len(s.Rhs)-1])
	results := append([]string{}, values...)
	for i := range results {
		if len(s.Rhs) == 1 && !l.inMap(s.Lhs[i]) {
			results[i] = l.carried(values[i], l.partType(s.Rhs[0], i), l.leftType(s.Lhs[i]))
		}
	}
	l.edits.open(from, "func() ("+strings.Join(l.givenTypes(s), ", ")+") { ")
	l.gives(s, values)
	l.edits.close(to, "; "+puts+"return "+strings.Join(results, ", ")+" }()")
	return true
}

func (l *lowerer) losesSome(s *ast.AssignStmt) bool {
	for i, e := range s.Lhs {
		left := l.leftType(e)
		switch {
		case len(s.Rhs) == 1 && (l.guard && l.inMap(e) || l.changes(l.partType(s.Rhs[0], i), left)):
			return true
		case l.guard && len(s.Rhs) > 1 && anything(left):
			return true
		}
	}
	return false
}

// changes reports whether a value of type t looks different in a variable.
func (l *lowerer) changes(t, left types.Type) bool {
	return anything(left) && t != nil && !anything(t) && (l.mixed(t) || l.guard && l.ours(t))
}

// carried writes a value of type t as it stands in a variable.
func (l *lowerer) carried(value string, t, left types.Type) string {
	switch {
	case !l.changes(t, left):
		return value
	case types.IsInterface(t):
		return l.opened(value, t)
	case l.guard && l.ours(t):
		return l.labelText(t) + "{" + value + "}"
	}
	return l.convert(value, t, real)
}

func (l *lowerer) inMap(e ast.Expr) bool {
	i, ok := ast.Unparen(e).(*ast.IndexExpr)
	if !ok || l.Exprs[i.X].Type == nil {
		return false
	}
	_, ok = l.Exprs[i.X].Type.Underlying().(*types.Map)
	return ok
}

// puts lowers the left side, and returns the statements that put values into maps.
func (l *lowerer) puts(s *ast.AssignStmt, values []string) string {
	text := ""
	for i, e := range s.Lhs {
		switch {
		case l.inMap(e):
			from, to := l.span(e)
			value := values[i]
			if len(s.Rhs) == 1 {
				value = l.carried(value, l.partType(s.Rhs[0], i), l.leftType(e))
			}
			text += l.renderRaw(e) + " = " + value + "; "
			l.edits.replace(from, to, "_")
		case s.Tok != token.DEFINE:
			l.raw(e)
		}
	}
	return text
}

// gives lowers the right side, giving each value a name.
func (l *lowerer) gives(s *ast.AssignStmt, values []string) {
	if len(s.Rhs) == 1 {
		from, _ := l.span(s.Rhs[0])
		l.edits.open(from, strings.Join(values, ", ")+" := ")
		l.pair(s.Rhs[0])
		return
	}
	given, at := l.givenTypes(s), -1
	for i, e := range s.Rhs {
		from, to := l.span(e)
		if at >= 0 {
			l.edits.replace(at, from, "; ")
		}
		at = to
		l.edits.open(from, "var "+values[i]+" "+given[i]+" = ")
		l.assigned(s, i, e)
	}
}

// givenTypes writes the types of what is assigned.
func (l *lowerer) givenTypes(s *ast.AssignStmt) []string {
	var list []string
	for i, e := range s.Lhs {
		t := l.leftType(e)
		switch {
		case len(s.Rhs) > 1 && t == nil:
			t = types.Default(l.Exprs[s.Rhs[i]].Type)
		case len(s.Rhs) == 1 && (t == nil || l.inMap(e) || !l.changes(l.partType(s.Rhs[0], i), t)):
			t = l.partType(s.Rhs[0], i)
		}
		list = append(list, l.plainText(t))
	}
	return list
}

// partType is the type of the i-th value that e gives.
func (l *lowerer) partType(e ast.Expr, i int) types.Type {
	t := l.Exprs[e].Type
	if many, ok := t.(*types.Tuple); ok {
		return many.At(i).Type()
	}
	if i == 1 {
		return types.Typ[types.Bool]
	}
	return t
}

// leftType is the type of what is assigned to, nil where it is thrown away.
func (l *lowerer) leftType(e ast.Expr) types.Type {
	if id, ok := e.(*ast.Ident); ok {
		if v := l.Defs[id]; v != nil {
			return v.Type()
		}
	}
	return l.Exprs[e].Type
}
