package lower

import (
	"fmt"
	"go/ast"
	"go/token"
	"go/types"
)

// This file lowers statements.

func (l *lowerer) funcDecl(d *ast.FuncDecl) { l.block(d.Body) }

func (l *lowerer) block(b *ast.BlockStmt) {
	for _, s := range b.List {
		l.stmt(s)
	}
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
		l.exprs(s.Results)
	case *ast.IncDecStmt:
		l.expr(s.X)
	case *ast.DeferStmt:
		l.expr(s.Call)
	case *ast.LabeledStmt:
		l.stmt(s.Stmt)
	case *ast.BlockStmt:
		l.block(s)
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
		l.stmt(s.Init)
		l.expr(s.Cond)
		l.stmt(s.Post)
		l.block(s.Body)
	case *ast.RangeStmt:
		l.rangeStmt(s)
	case *ast.SwitchStmt:
		l.stmt(s.Init)
		l.expr(s.Tag)
		l.block(s.Body)
	case *ast.TypeSwitchStmt:
		l.stmt(s.Init)
		l.stmt(s.Assign)
		l.block(s.Body)
	case *ast.CaseClause:
		l.exprs(s.List)
		for _, b := range s.Body {
			l.stmt(b)
		}
	}
}

// exprStmt lowers a call; an error that is its only result stops the run.
func (l *lowerer) exprStmt(s *ast.ExprStmt) {
	call, ok := ast.Unparen(s.X).(*ast.CallExpr)
	if ok && l.Must[call] && !isPair(l, call) {
		from, to := l.span(s)
		l.edits.open(from, "if ˑe := ")
		l.callParts(call)
		l.edits.close(to, fmt.Sprintf("; ˑe != nil { ˑh.Fail(%d, ˑe) }", l.spot(s)))
		return
	}
	l.expr(s.X)
}

func isPair(l *lowerer, call *ast.CallExpr) bool {
	t := l.Exprs[call].Type
	return t == nil || !types.Identical(t, types.Universe.Lookup("error").Type())
}

func (l *lowerer) callParts(e *ast.CallExpr) {
	l.expr(e.Fun)
	l.exprs(e.Args)
}

// assign lowers an assignment; at the top level := turns into =, since the variables are
// those of the package.
func (l *lowerer) assign(s *ast.AssignStmt, top bool) {
	if s.Tok != token.ASSIGN && s.Tok != token.DEFINE && (l.quantity(s.Lhs[0]) || l.quantity(s.Rhs[0])) {
		l.opAssign(s)
		return
	}
	for _, e := range s.Lhs {
		if s.Tok != token.DEFINE {
			l.expr(e)
		}
	}
	if top && s.Tok == token.DEFINE {
		at := l.offset(s.TokPos)
		l.edits.replace(at, at+2, "=")
	}
	l.exprs(s.Rhs)
}

// offset returns the byte of a position in the current chunk.
func (l *lowerer) offset(pos token.Pos) int {
	from, _ := l.span(&ast.Ident{NamePos: pos})
	return from
}

// opAssign lowers x op= y on quantities.
func (l *lowerer) opAssign(s *ast.AssignStmt) {
	x, y := s.Lhs[0], s.Rhs[0]
	left, right := l.runtime(x), l.runtime(y)
	additive := s.Tok == token.ADD_ASSIGN || s.Tok == token.SUB_ASSIGN
	l.expr(x)
	switch {
	case untypedNumber(l.Exprs[y]) || additive && left == right:
		l.expr(y)
	case additive:
		l.wrap(y, left+"(", ")")
	default:
		from, to := l.span(x)
		at, op := l.offset(s.TokPos), s.Tok.String()
		text := l.chunkAt.Text[from:to]
		l.edits.replace(at, at+len(op), "= "+left+"(float64("+text+") "+op[:len(op)-1]+" (")
		l.number(y)
		_, end := l.span(y)
		l.edits.close(end, "))")
	}
}

// topDecl lowers var and const of the top level: variables are declared in front, values
// assigned in their place, constants are numbers wherever they are used.
func (l *lowerer) topDecl(s *ast.DeclStmt) {
	d := s.Decl.(*ast.GenDecl)
	from, to := l.span(s)
	if d.Tok != token.VAR {
		l.edits.blank(l.chunkAt.Text, from, to)
		return
	}
	at := from
	for _, sp := range d.Specs {
		spec := sp.(*ast.ValueSpec)
		specFrom, specTo := l.span(spec)
		l.edits.blank(l.chunkAt.Text, at, specFrom)
		at = specTo
		if len(spec.Values) == 0 {
			l.edits.blank(l.chunkAt.Text, specFrom, specTo)
			continue
		}
		_, namesTo := l.span(spec.Names[len(spec.Names)-1])
		valuesFrom, _ := l.span(spec.Values[0])
		l.edits.replace(namesTo, valuesFrom, " = ")
		l.exprs(spec.Values)
		l.edits.close(specTo, ";")
	}
	l.edits.blank(l.chunkAt.Text, at, to)
}

func (l *lowerer) innerDecl(s *ast.DeclStmt) {
	d := s.Decl.(*ast.GenDecl)
	for _, sp := range d.Specs {
		spec, ok := sp.(*ast.ValueSpec)
		if !ok {
			continue
		}
		if d.Tok == token.CONST {
			l.innerConst(spec)
			continue
		}
		l.exprs(spec.Values)
	}
}

// innerConst takes a constant's value away, since its uses are numbers; the name stays.
func (l *lowerer) innerConst(spec *ast.ValueSpec) {
	from, to := l.span(spec)
	text := ""
	for i, n := range spec.Names {
		if i > 0 {
			text += "; "
		}
		text += "_ = 0"
		_ = n
	}
	l.edits.replace(from, to, text)
}

func (l *lowerer) rangeStmt(s *ast.RangeStmt) {
	t := l.Exprs[s.X].Type
	if _, ok := t.Underlying().(*types.Map); ok {
		l.rangeMap(s)
		return
	}
	if b, ok := t.Underlying().(*types.Basic); ok && b.Info()&types.IsInteger != 0 {
		l.rangeNumber(s)
		return
	}
	if s.Tok == token.DEFINE && keeps(s.Body) {
		l.freshVars(s)
	}
	l.expr(s.X)
	l.block(s.Body)
}

// keeps reports whether a body may keep a loop variable beyond its turn.
func keeps(body *ast.BlockStmt) bool {
	found := false
	ast.Inspect(body, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.FuncLit:
			found = true
		case *ast.UnaryExpr:
			found = found || n.Op == token.AND
		}
		return !found
	})
	return found
}

// freshVars gives each turn variables of its own.
func (l *lowerer) freshVars(s *ast.RangeStmt) {
	brace := l.offset(s.Body.Lbrace) + 1
	for _, e := range []ast.Expr{s.Key, s.Value} {
		id, ok := e.(*ast.Ident)
		if !ok || id.Name == "_" {
			continue
		}
		fresh := l.name("r")
		from, to := l.span(id)
		l.edits.replace(from, to, fresh)
		l.edits.open(brace, fmt.Sprintf(" %s := %s; _ = %s; ", id.Name, fresh, id.Name))
	}
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
	t := l.typeText(types.Default(l.Exprs[s.X].Type))
	l.header(s, fmt.Sprintf(" %s, %s := %s(", n, i, t), fmt.Sprintf("), %s(0); %s < %s; %s++ {%s", t, i, n, i, bind(s.Tok, s.Key, i)))
	l.block(s.Body)
}

// bind gives a loop variable its value at the start of a turn.
func bind(tok token.Token, e ast.Expr, value string) string {
	id, ok := e.(*ast.Ident)
	if !ok || id.Name == "_" {
		return ""
	}
	text := fmt.Sprintf(" %s %s %s;", id.Name, tok, value)
	if tok == token.DEFINE {
		text += fmt.Sprintf(" _ = %s;", id.Name)
	}
	return text
}

// rangeMap goes over a map in the order of its keys.
func (l *lowerer) rangeMap(s *ast.RangeStmt) {
	l.sorts = true
	m := l.Exprs[s.X].Type.Underlying().(*types.Map)
	key, elem, e := l.typeText(m.Key()), l.typeText(m.Elem()), l.name("e")
	entry := "struct{ K " + key + "; V " + elem + " }"
	before := fmt.Sprintf(" _, %s := range func(ˑm map[%s]%s) []%s { var ˑs []%s; for ˑk, ˑv := range ˑm { ˑs = append(ˑs, %s{ˑk, ˑv}) }; sort.Slice(ˑs, func(i, j int) bool { return ˑs[i].K < ˑs[j].K }); return ˑs }(", e, key, elem, entry, entry, entry)
	l.header(s, before, ") { _ = "+e+";"+bind(s.Tok, s.Key, e+".K")+bind(s.Tok, s.Value, e+".V"))
	l.block(s.Body)
}
