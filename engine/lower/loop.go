package lower

import (
	"fmt"
	"go/ast"
	"go/token"
	"go/types"
)

// This file lowers loops. The interpreter knows one variable for all turns of a loop, and
// no range over numbers and functions; where that shows, other statements take their place.

func (l *lowerer) forStmt(s *ast.ForStmt) {
	label := l.label
	l.label = nil
	init, _ := s.Init.(*ast.AssignStmt)
	switch {
	case init != nil && init.Tok == token.DEFINE && keeps(s.Body, s.Post):
		l.freshFor(s, init, label)
	case l.guard && s.Cond != nil && l.mayFail(s.Cond):
		l.markedFor(s)
	default:
		l.stmt(s.Init)
		l.expr(s.Cond)
		l.stmt(s.Post)
		l.startTurn(s, s.Body, "")
		l.block(s.Body)
	}
}

// startTurn puts text at the start of each turn, behind the guard.
func (l *lowerer) startTurn(n ast.Node, body *ast.BlockStmt, text string) {
	l.edits.open(l.offset(body.Lbrace)+1, l.turnText(&ast.Ident{NamePos: n.Pos(), Name: "for"})+text)
}

// markedFor moves a condition that can fail into the body, behind a mark.
func (l *lowerer) markedFor(s *ast.ForStmt) {
	l.stmt(s.Init)
	from, to := l.span(s.Cond)
	cond := l.render(s.Cond)
	l.edits.replace(from, to, "")
	l.stmt(s.Post)
	l.startTurn(s, s.Body, " "+l.markText(s.Cond)+"if !("+cond+") { break };")
	l.block(s.Body)
}

// freshFor gives each turn variables of its own: a copy of the last turn's, made before the
// post statement runs.
func (l *lowerer) freshFor(s *ast.ForStmt, init *ast.AssignStmt, label *ast.LabeledStmt) {
	first := l.name("f")
	before := "{ " + l.renderStmt(init) + "; " + first + " := true; "
	inner := ""
	for _, e := range init.Lhs {
		id := e.(*ast.Ident)
		if id.Name == "_" {
			continue
		}
		p := l.name("p")
		before += fmt.Sprintf("%s := &%s; ", p, id.Name)
		inner += fmt.Sprintf(" %s := *%s; %s = &%s;", id.Name, p, p, id.Name)
	}
	if s.Post != nil {
		inner += " if !" + first + " { " + l.renderStmt(s.Post) + " };"
	}
	inner += " " + first + " = false;"
	if s.Cond != nil {
		if l.guard && l.mayFail(s.Cond) {
			inner += " " + l.markText(s.Cond)
		}
		inner += " if !(" + l.render(s.Cond) + ") { break };"
	}
	l.enclose(s, label, before)
	l.edits.replace(l.offset(s.For)+len("for"), l.offset(s.Body.Lbrace), " ")
	l.startTurn(s, s.Body, inner+l.nest(s.Body, init.Lhs...))
	l.block(s.Body)
}

// enclose puts a loop, with its label, into a block that begins with text.
func (l *lowerer) enclose(s ast.Stmt, label *ast.LabeledStmt, text string) {
	from, to := l.span(s)
	if label != nil {
		from, _ = l.span(label)
	}
	l.edits.open(from, text)
	l.edits.close(to, " }")
}

// keeps reports whether a body may keep a loop variable beyond its turn.
func keeps(nodes ...ast.Node) bool {
	found := false
	for _, n := range nodes {
		if n == nil {
			continue
		}
		ast.Inspect(n, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.FuncLit:
				found = true
			case *ast.UnaryExpr:
				found = found || n.Op == token.AND
			}
			return !found
		})
	}
	return found
}

func (l *lowerer) rangeStmt(s *ast.RangeStmt) {
	l.label = nil
	t := l.Exprs[s.X].Type
	switch u := t.Underlying().(type) {
	case *types.Map:
		l.rangeMap(s, u)
	case *types.Signature:
		l.rangeFunc(s, u)
	case *types.Basic:
		if u.Info()&types.IsInteger != 0 {
			l.rangeNumber(s)
			return
		}
		l.rangeList(s)
	default:
		l.rangeList(s)
	}
}

func (l *lowerer) rangeList(s *ast.RangeStmt) {
	text := ""
	if s.Tok == token.ASSIGN || s.Tok == token.DEFINE && keeps(s.Body) {
		text = l.freshVars(s)
	}
	l.list(s.X)
	l.startTurn(s, s.Body, text+l.nest(s.Body, s.Key, s.Value))
	l.block(s.Body)
}

// list lowers what a range goes over; a named list of the library comes in plain form too.
func (l *lowerer) list(e ast.Expr) {
	t := l.Exprs[e].Type
	if u := t.Underlying(); l.libraryNamed(t) && l.mixed(u) {
		l.wrapped(e, l.raw, func(text string) string { return l.convert(text, u, plain) })
		return
	}
	l.expr(e)
}

// freshVars gives each turn variables of its own, from which others are set.
func (l *lowerer) freshVars(s *ast.RangeStmt) string {
	text := ""
	for _, e := range []ast.Expr{s.Key, s.Value} {
		if id, ok := e.(*ast.Ident); e == nil || ok && id.Name == "_" {
			continue
		}
		fresh := l.name("r")
		text += l.bind(s.Tok, e, fresh)
		from, to := l.span(e)
		l.edits.replace(from, to, fresh)
	}
	if at := l.offset(s.TokPos); s.Tok == token.ASSIGN {
		l.edits.replace(at, at+1, ":=")
	}
	return text
}

// header replaces what stands between for and the range expression, and between that and
// the body.
func (l *lowerer) header(s *ast.RangeStmt, before, after string) {
	xFrom, xTo := l.span(s.X)
	brace := l.offset(s.Body.Lbrace)
	l.edits.replace(l.offset(s.For)+len("for"), xFrom, before)
	l.expr(s.X)
	l.edits.replace(xTo, brace+1, after)
}

// rangeNumber counts, which the interpreter cannot do by range.
func (l *lowerer) rangeNumber(s *ast.RangeStmt) {
	n, i := l.name("n"), l.name("i")
	t := l.plainText(types.Default(l.Exprs[s.X].Type))
	bound := l.bind(s.Tok, s.Key, i)
	if id, ok := s.Key.(*ast.Ident); ok && s.Tok == token.DEFINE && id.Name != "_" && !keeps(s.Body) && !assigns(s.Body, id.Name) {
		i, bound = id.Name, ""
	}
	turn := l.turnText(&ast.Ident{NamePos: s.Pos(), Name: "for"})
	if bound != "" {
		bound += l.nest(s.Body, s.Key)
	}
	l.header(s, fmt.Sprintf(" %s, %s := %s(", n, i, t), fmt.Sprintf("), %s(0); %s < %s; %s++ {%s%s", t, i, n, i, turn, bound))
	l.block(s.Body)
}

// assigns reports whether a body may change the variable name.
func assigns(body *ast.BlockStmt, name string) bool {
	found := false
	is := func(e ast.Expr) { id, ok := e.(*ast.Ident); found = found || ok && id.Name == name }
	ast.Inspect(body, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.AssignStmt:
			for _, e := range n.Lhs {
				is(e)
			}
		case *ast.IncDecStmt:
			is(n.X)
		case *ast.RangeStmt:
			is(n.Key)
			is(n.Value)
		}
		return !found
	})
	return found
}

// nest opens a block for a body that defines one of the loop's variables anew, as it may in
// Go, where a body is a block inside of its loop's.
func (l *lowerer) nest(body *ast.BlockStmt, vars ...ast.Expr) string {
	names := map[string]bool{}
	for _, e := range vars {
		if id, ok := e.(*ast.Ident); ok {
			names[id.Name] = true
		}
	}
	for _, s := range body.List {
		if defines(s, names) {
			l.edits.close(l.offset(body.Rbrace), "; }")
			return " {"
		}
	}
	return ""
}

// defines reports whether a statement defines one of the names in its own block.
func defines(s ast.Stmt, names map[string]bool) bool {
	var defined []ast.Expr
	switch s := s.(type) {
	case *ast.AssignStmt:
		if s.Tok == token.DEFINE {
			defined = s.Lhs
		}
	case *ast.DeclStmt:
		for _, spec := range s.Decl.(*ast.GenDecl).Specs {
			switch spec := spec.(type) {
			case *ast.ValueSpec:
				for _, id := range spec.Names {
					defined = append(defined, id)
				}
			case *ast.TypeSpec:
				defined = append(defined, spec.Name)
			}
		}
	}
	for _, e := range defined {
		if id, ok := e.(*ast.Ident); ok && names[id.Name] {
			return true
		}
	}
	return false
}

// bind gives a loop variable its value at the start of a turn.
func (l *lowerer) bind(tok token.Token, e ast.Expr, value string) string {
	if e == nil {
		return ""
	}
	id, ok := e.(*ast.Ident)
	if ok && id.Name == "_" {
		return ""
	}
	if tok == token.DEFINE {
		return fmt.Sprintf(" %s := %s; _ = %s;", id.Name, value, id.Name)
	}
	return fmt.Sprintf(" %s = %s;", l.renderRaw(e), value)
}

// rangeMap goes over a map in the order of its keys. An entry that is deleted on the way
// does not come.
func (l *lowerer) rangeMap(s *ast.RangeStmt, m *types.Map) {
	key, whole, e := l.plainText(m.Key()), "map["+l.plainText(m.Key())+"]"+l.plainText(m.Elem()), l.name("e")
	sorted := l.helper("sorted "+whole, func(name string) string {
		entry := "struct{ K " + key + "; M " + whole + " }"
		return "func " + name + "(m " + whole + ") []" + entry + " { var s []" + entry + "; for k := range m { s = append(s, " + entry + "{k, m}) }; sort.Slice(s, func(i, j int) bool { return s[i].K < s[j].K }); return s }"
	})
	v, ok := l.name("v"), l.name("o")
	turn := l.turnText(&ast.Ident{NamePos: s.Pos(), Name: "for"})
	after := fmt.Sprintf(") {%s %s, %s := %s.M[%s.K]; _ = %s; if !%s { continue };", turn, v, ok, e, e, v, ok)
	l.header(s, fmt.Sprintf(" _, %s := range %s(", e, sorted), after+l.bind(s.Tok, s.Key, e+".K")+l.bind(s.Tok, s.Value, v)+l.nest(s.Body, s.Key, s.Value))
	l.block(s.Body)
}

// rangeFunc calls the function with the body as its argument. The checker lets pass only
// bodies that end a turn by break and continue.
func (l *lowerer) rangeFunc(s *ast.RangeStmt, sig *types.Signature) {
	yield := sig.Params().At(0).Type().Underlying().(*types.Signature)
	params, bound := "", ""
	for i := range yield.Params().Len() {
		name := l.name("y")
		if i > 0 {
			params += ", "
		}
		params += name + " " + l.plainText(yield.Params().At(i).Type())
		bound += l.bind(s.Tok, []ast.Expr{s.Key, s.Value}[i], name)
	}
	from, to := l.span(s)
	xFrom, xTo := l.span(s.X)
	open, closed := "(", ")"
	if _, ok := s.X.(*ast.Ident); ok {
		open, closed = "", "" // the interpreter cannot call the name of a function in parentheses
	}
	l.edits.replace(from, xFrom, open)
	l.expr(s.X)
	l.edits.replace(xTo, l.offset(s.Body.Lbrace)+1, closed+"(func("+params+") bool {"+l.turnText(&ast.Ident{NamePos: s.Pos(), Name: "for"})+bound+l.nest(s.Body, s.Key, s.Value))
	l.branches(s.Body)
	l.block(s.Body)
	l.edits.close(to-1, "; return true")
	l.edits.close(to, ")")
}

// branches turns break and continue of a body that became a function into returns.
func (l *lowerer) branches(body *ast.BlockStmt) {
	var visit func(n ast.Node, breaks bool)
	visit = func(n ast.Node, breaks bool) {
		ast.Inspect(n, func(m ast.Node) bool {
			switch m := m.(type) {
			case *ast.FuncLit, *ast.ForStmt, *ast.RangeStmt:
				return m == n
			case *ast.SwitchStmt, *ast.TypeSwitchStmt:
				if m != n {
					visit(m, false)
					return false
				}
			case *ast.BranchStmt:
				from, to := l.span(m)
				if m.Tok == token.CONTINUE && m.Label == nil {
					l.edits.replace(from, to, "return true")
				} else if m.Tok == token.BREAK && m.Label == nil && breaks {
					l.edits.replace(from, to, "return false")
				}
			}
			return true
		})
	}
	visit(body, true)
}
