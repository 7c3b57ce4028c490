package lower

import (
	"fmt"
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"strings"

	"lode/engine/check"
	"lode/engine/worked"
)

// This file makes a program tell how the results of its working cells come about. The
// formula of each statement is known before the run; what is missing are the values of its
// names and calls. Each of these gets a slot, and the program hands the value to its runner
// where it is used anyway, so that nothing is computed twice. Functions of the notebook tell
// the way that a call takes through them, but only while a working statement runs.

// Working is a word of a cell's info string that asks for its workings.
const Working = "working"

// Work is a formula whose values a run tells.
type Work struct {
	Line worked.Line
	Root int // slot of the whole formula's value
}

// workings is what the lowering knows of them.
type workings struct {
	wanted   bool                 // whether any cell asks for them
	slots    map[ast.Expr]int     // parts whose value is told
	own      map[ast.Expr]bool    // of these, calls of functions of the notebook
	told     map[ast.Expr]string  // functions around expressions
	after    map[ast.Stmt]string  // text behind statements
	follows  map[types.Object]int // functions that tell their way
	constant []string             // calls that tell constants, once
	count    int
}

func (l *lowerer) prepareWorkings() {
	l.workings = workings{slots: map[ast.Expr]int{}, own: map[ast.Expr]bool{}, told: map[ast.Expr]string{}, after: map[ast.Stmt]string{}, follows: map[types.Object]int{}}
	for _, chunk := range l.Chunks {
		l.wanted = l.wanted || l.guard && isWorking(chunk)
	}
	for _, chunk := range l.Chunks {
		if f := chunk.Func; l.wanted && f != nil && !chunk.IsTemplate() && l.tellable(f) {
			l.follows[l.Defs[f.Name]] = len(l.follows) + 1
		}
	}
}

func isWorking(chunk *check.Chunk) bool {
	for _, w := range strings.Fields(chunk.Cell.Info) {
		if w == Working {
			return true
		}
	}
	return false
}

// tellable reports whether a function has one number as its result and always returns it
// by a plain return.
func (l *lowerer) tellable(f *ast.FuncDecl) bool {
	sig := l.Defs[f.Name].(*types.Func).Signature()
	if f.Body == nil || sig.Results().Len() != 1 || !l.measurable(sig.Results().At(0).Type()) || hasDefer(f.Body) {
		return false
	}
	plain := true
	ast.Inspect(f.Body, func(n ast.Node) bool {
		r, ok := n.(*ast.ReturnStmt)
		plain = plain && (!ok || len(r.Results) == 1)
		_, literal := n.(*ast.FuncLit)
		return !literal
	})
	return plain
}

// measurable reports whether a type holds numbers.
func (l *lowerer) measurable(t types.Type) bool {
	if t == nil {
		return false
	}
	_, quantity := l.World.Quantity(t)
	return quantity || basicInfo(t)&types.IsNumeric != 0
}

// work notes a formula and returns its number.
func (l *lowerer) work(name string, e ast.Expr) int {
	e = ast.Unparen(e)
	tree := l.tree(e)
	if tree.Slot == 0 && l.measurable(l.Exprs[e].Type) {
		tree.Slot = l.slot(e)
	}
	l.Works = append(l.Works, Work{worked.Line{Name: name, Tree: tree}, tree.Slot})
	return len(l.Works) - 1
}

// slot gives the value of an expression a place.
func (l *lowerer) slot(e ast.Expr) int {
	if n, ok := l.slots[e]; ok {
		return n
	}
	l.count++
	if x := l.Exprs[e]; l.constant(e) {
		l.workings.constant = append(l.workings.constant, fmt.Sprintf("ˑh.Constant(%d, %s)", l.count, l.convert(l.literal(x), x.Type, real)))
		return l.count
	}
	l.slots[e] = l.count
	return l.count
}

// tells returns the function that an expression's value passes through on its way.
func (l *lowerer) tells(e ast.Expr) string {
	slot := l.slots[e]
	t, from := l.Exprs[e].Type, plain
	if l.isReal(e) {
		from = real
	}
	call := "Leaf"
	if l.own[e] {
		call = "Own"
	}
	value := "x"
	if from == plain {
		value = l.convert("x", t, real)
	}
	text := l.typeText(t, from)
	return l.helper(fmt.Sprint("tell ", slot), func(name string) string {
		return fmt.Sprintf("func %s(x %s) %s { if ˑworking { ˑh.%s(%d, %s) }; return x }", name, text, text, call, slot, value)
	})
}

// passing returns a function that makes a call of its runner and hands on a value of type t.
func (l *lowerer) passing(t, call string) string {
	return l.helper("pass "+call, func(name string) string {
		return fmt.Sprintf("func %s(x %s) %s { if ˑworking { %s }; return x }", name, t, t, call)
	})
}

// workStmt finds the formula of a statement of the top level; ok is false where there is
// none to show.
func (l *lowerer) workStmt(chunk *check.Chunk, s ast.Stmt) (work int, ok bool) {
	name, e := formulaOf(s)
	if !l.wanted || !isWorking(chunk) || e == nil || !l.measurable(l.Exprs[e].Type) {
		return 0, false
	}
	if _, single := ast.Unparen(e).(*ast.Ident); single && name == "" {
		return 0, false
	}
	return l.work(name, e), true
}

// formulaOf returns what a statement defines or shows.
func formulaOf(s ast.Stmt) (name string, e ast.Expr) {
	switch s := s.(type) {
	case *ast.ExprStmt:
		return "", s.X
	case *ast.AssignStmt:
		if id, ok := s.Lhs[0].(*ast.Ident); ok && len(s.Lhs) == 1 && len(s.Rhs) == 1 && (s.Tok == token.DEFINE || s.Tok == token.ASSIGN) && id.Name != "_" {
			return id.Name, s.Rhs[0]
		}
	case *ast.DeclStmt:
		if d, ok := s.Decl.(*ast.GenDecl); ok && d.Tok == token.VAR && len(d.Specs) == 1 {
			if v := d.Specs[0].(*ast.ValueSpec); len(v.Names) == 1 && len(v.Values) == 1 && v.Names[0].Name != "_" {
				return v.Names[0].Name, v.Values[0]
			}
		}
	}
	return "", nil
}

// tree reads the formula of an expression.
func (l *lowerer) tree(e ast.Expr) *worked.Tree {
	e = ast.Unparen(e)
	if l.constant(e) && l.literalOnly(e) {
		if _, quantity := l.World.Quantity(l.Exprs[e].Type); quantity {
			return &worked.Tree{Kind: worked.Constant, Text: l.chunkAt.SourceText(e), Slot: l.slot(e)}
		}
	}
	switch x := e.(type) {
	case *ast.BasicLit:
		return &worked.Tree{Kind: worked.Number, Text: x.Value}
	case *ast.BinaryExpr:
		if t := l.withUnit(x); t != nil {
			return t
		}
		if l.Exprs[x.X].Mode != check.Scale && l.Exprs[x.Y].Mode != check.Scale {
			return &worked.Tree{Kind: worked.Binary, Text: x.Op.String(), Args: []*worked.Tree{l.tree(x.X), l.tree(x.Y)}}
		}
	case *ast.UnaryExpr:
		if x.Op == token.SUB || x.Op == token.NOT {
			return &worked.Tree{Kind: worked.Unary, Text: x.Op.String(), Args: []*worked.Tree{l.tree(x.X)}}
		}
		if x.Op == token.ADD {
			return l.tree(x.X)
		}
	case *ast.CallExpr:
		return l.callTree(x)
	}
	return l.leaf(worked.Name, e, l.chunkAt.SourceText(e))
}

// withUnit reads x*100*pF as x times 100 pF, though Go multiplies from the left.
func (l *lowerer) withUnit(e *ast.BinaryExpr) *worked.Tree {
	unit, isName := e.Y.(*ast.Ident)
	left, isProduct := e.X.(*ast.BinaryExpr)
	if !isName || !isProduct || e.Op != token.MUL || left.Op != token.MUL || l.Uses[unit] != nil || l.Lib.Units[unit.Name].Type == nil {
		return nil
	}
	number, ok := left.Y.(*ast.BasicLit)
	if x := l.Exprs[e.Y]; ok && l.constant(e.Y) {
		l.count++
		value := constant.BinaryOp(constant.ToFloat(l.Exprs[number].Value), token.MUL, constant.ToFloat(x.Value))
		l.workings.constant = append(l.workings.constant, fmt.Sprintf("ˑh.Constant(%d, %s)", l.count, l.convert(l.literal(check.Typed{Mode: check.Value, Type: x.Type, Value: value}), x.Type, real)))
		amount := &worked.Tree{Kind: worked.Constant, Text: number.Value + "*" + unit.Name, Slot: l.count}
		return &worked.Tree{Kind: worked.Binary, Text: "*", Args: []*worked.Tree{l.tree(left.X), amount}}
	}
	return nil
}

// leaf is a part that is not taken apart.
func (l *lowerer) leaf(kind worked.Kind, e ast.Expr, text string) *worked.Tree {
	t := &worked.Tree{Kind: kind, Text: text}
	if id, ok := e.(*ast.Ident); ok && id.Name == "π" {
		return t
	}
	if x := l.Exprs[e]; x.Mode == check.Value && l.measurable(x.Type) {
		t.Slot = l.slot(e)
	}
	return t
}

func (l *lowerer) callTree(e *ast.CallExpr) *worked.Tree {
	switch l.Exprs[e.Fun].Mode {
	case check.Type:
		if l.measurable(l.Exprs[e].Type) && l.measurable(l.Exprs[e.Args[0]].Type) {
			return l.tree(e.Args[0])
		}
	case check.Function:
		t := &worked.Tree{Kind: worked.Function, Text: ast.Unparen(e.Fun).(*ast.Ident).Name}
		if t.Text != check.KnobName {
			t.Args = l.trees(e.Args)
			return t
		}
	case check.Value:
		return l.calleeTree(e)
	}
	return l.leaf(worked.Name, e, l.chunkAt.SourceText(e))
}

func (l *lowerer) trees(list []ast.Expr) []*worked.Tree {
	var trees []*worked.Tree
	for _, e := range list {
		trees = append(trees, l.tree(e))
	}
	return trees
}

// calleeTree reads a call of a function of the notebook or of the library. The arguments of
// the latter are named only: what counts is the value that comes back.
func (l *lowerer) calleeTree(e *ast.CallExpr) *worked.Tree {
	if f, on := l.ownCallee(e.Fun); f != nil {
		return l.ownTree(e, f, on)
	}
	t := l.leaf(worked.Library, e, l.chunkAt.SourceText(e.Fun))
	for _, a := range e.Args {
		t.Args = append(t.Args, l.named(a))
	}
	return t
}

// ownCallee returns the function or method of the notebook that is called, if it tells its
// way, and what the method is called on.
func (l *lowerer) ownCallee(e ast.Expr) (f *types.Func, on ast.Expr) {
	switch e := ast.Unparen(e).(type) {
	case *ast.Ident:
		if f = l.Instances[e]; f == nil {
			f, _ = l.Uses[e].(*types.Func)
		}
	case *ast.SelectorExpr:
		if x := l.Exprs[e.X]; x.Mode == check.Value {
			obj, path, _ := types.LookupFieldOrMethod(x.Type, true, l.Scratch, e.Sel.Name)
			if method, ok := obj.(*types.Func); ok && len(path) == 1 {
				f, on = method, e.X
			}
		}
	}
	if f == nil || l.follows[f] == 0 {
		return nil, nil
	}
	return f, on
}

func (l *lowerer) ownTree(e *ast.CallExpr, f *types.Func, on ast.Expr) *worked.Tree {
	l.own[e] = true
	t := l.leaf(worked.Own, e, l.chunkAt.SourceText(e.Fun))
	t.Args = l.trees(e.Args)
	for v := range f.Signature().Params().Variables() {
		t.Named = append(t.Named, v.Name())
	}
	if on != nil {
		t.Named, t.On = append(t.Named, f.Signature().Recv().Name()), l.named(on)
	}
	return t
}

// named reads an argument that only its text is needed of.
func (l *lowerer) named(e ast.Expr) *worked.Tree {
	if l.constant(e) {
		return l.tree(e)
	}
	return &worked.Tree{Kind: worked.Name, Text: l.chunkAt.SourceText(e)}
}

// literalOnly reports whether a constant is made of numbers and units alone, without names
// of the notebook or the library and without π.
func (l *lowerer) literalOnly(e ast.Expr) bool {
	only := true
	ast.Inspect(e, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.Ident:
			only = only && l.Uses[n] == nil && n.Name != "π" && l.Lib.Units[n.Name].Symbol != ""
		case *ast.SelectorExpr:
			only = false
		case *ast.BinaryExpr:
			only = only && (n.Op == token.MUL || n.Op == token.QUO)
		}
		return only
	})
	x := l.Exprs[e]
	return only && x.Value != nil && x.Value.Kind() != constant.Unknown
}

// follow makes a function tell its way.
func (l *lowerer) follow(f *ast.FuncDecl) {
	id := l.follows[l.Defs[f.Name]]
	if id == 0 {
		return
	}
	l.edits.open(l.offset(f.Body.Lbrace)+1, fmt.Sprintf(" if ˑworking { ˑh.Enter(%d) }; ", id))
	result := l.plainText(l.Defs[f.Name].(*types.Func).Signature().Results().At(0).Type())
	l.followStmts(f.Body.List, id, result)
	ast.Inspect(f.Body, func(n ast.Node) bool {
		if r, ok := n.(*ast.ReturnStmt); ok && l.told[r.Results[0]] == "" {
			l.followReturn(r, id, result) // one within a loop
		}
		_, literal := n.(*ast.FuncLit)
		return !literal
	})
}

func (l *lowerer) followReturn(r *ast.ReturnStmt, id int, result string) {
	l.told[r.Results[0]] = l.passing(result, fmt.Sprintf("ˑh.Leave(%d, %d)", id, l.work("", r.Results[0])))
}

// followStmts finds the definitions, decisions and returns outside of loops.
func (l *lowerer) followStmts(list []ast.Stmt, id int, result string) {
	for _, s := range list {
		switch s := s.(type) {
		case *ast.ReturnStmt:
			l.followReturn(s, id, result)
		case *ast.BlockStmt:
			l.followStmts(s.List, id, result)
		case *ast.IfStmt:
			l.followIf(s, id, result)
		case *ast.SwitchStmt:
			l.followSwitch(s, id, result)
		case *ast.ForStmt, *ast.RangeStmt:
			l.after[s] = l.followLoop(s)
		case *ast.LabeledStmt:
			l.followStmts([]ast.Stmt{s.Stmt}, id, result)
			l.after[s] = l.after[s.Stmt]
		case *ast.AssignStmt, *ast.DeclStmt:
			if name, e := formulaOf(s); e != nil && l.measurable(l.Exprs[e].Type) {
				l.after[s] = fmt.Sprintf("; if ˑworking { ˑh.Step(%d, true) }", l.work(name, e))
			}
		}
	}
}

// followLoop tells what the variables are behind a loop that were defined in front of it and
// changed in it.
func (l *lowerer) followLoop(loop ast.Stmt) string {
	var calls strings.Builder
	for _, id := range l.changedIn(loop) {
		l.count++
		l.Works = append(l.Works, Work{worked.Line{Name: id.Name, Tree: &worked.Tree{Kind: worked.Name, Text: id.Name, Slot: l.count}}, l.count})
		fmt.Fprintf(&calls, "; if ˑworking { ˑh.Leaf(%d, %s); ˑh.After(%d) }", l.count, l.convert(id.Name, l.Uses[id].Type(), real), len(l.Works)-1)
	}
	return calls.String()
}

// changedIn lists the variables of numbers that a loop assigns to and that live outside it.
func (l *lowerer) changedIn(loop ast.Stmt) []*ast.Ident {
	var list []*ast.Ident
	seen := map[types.Object]bool{}
	changed := func(e ast.Expr) {
		id, ok := e.(*ast.Ident)
		if !ok || l.Uses[id] == nil || seen[l.Uses[id]] || l.Uses[id].Pos() >= loop.Pos() && l.Uses[id].Pos() < loop.End() || !l.measurable(l.Uses[id].Type()) {
			return
		}
		seen[l.Uses[id]] = true
		list = append(list, id)
	}
	ast.Inspect(loop, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.AssignStmt:
			for _, e := range n.Lhs {
				changed(e)
			}
		case *ast.IncDecStmt:
			changed(n.X)
		}
		return true
	})
	return list
}

func (l *lowerer) followIf(s *ast.IfStmt, id int, result string) {
	if !l.constant(s.Cond) {
		l.told[s.Cond] = l.passing(l.plainText(l.Exprs[s.Cond].Type), fmt.Sprintf("ˑh.Step(%d, bool(x))", l.work("", s.Cond)))
	}
	l.followStmts(s.Body.List, id, result)
	if s.Else != nil {
		l.followStmts([]ast.Stmt{s.Else}, id, result)
	}
}

func (l *lowerer) followSwitch(s *ast.SwitchStmt, id int, result string) {
	var tag *worked.Tree
	if s.Tag != nil {
		tag = l.tree(s.Tag)
	}
	for _, b := range s.Body.List {
		clause := b.(*ast.CaseClause)
		if len(clause.List) == 1 {
			tree := l.tree(clause.List[0])
			if tag != nil {
				tree = &worked.Tree{Kind: worked.Binary, Text: "==", Args: []*worked.Tree{tag, tree}}
			}
			l.Works = append(l.Works, Work{worked.Line{Tree: tree}, 0})
			l.edits.open(l.offset(clause.Colon)+1, fmt.Sprintf(" if ˑworking { ˑh.Step(%d, true) }; ", len(l.Works)-1))
		}
		l.followStmts(clause.Body, id, result)
	}
}
