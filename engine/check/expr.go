package check

import (
	"fmt"
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
)

// expr reads an expression that may have any number of values.
func (c *checker) expr(e ast.Expr) Typed {
	x := c.read(e)
	c.Exprs[e] = x
	return x
}

func (c *checker) read(e ast.Expr) Typed {
	if t, id, given := c.templateOf(e); t != nil {
		return c.templateValue(e, t, id, given)
	}
	switch e := e.(type) {
	case *ast.Ident:
		return c.ident(e)
	case *ast.ParenExpr:
		return c.expr(e.X)
	case *ast.BinaryExpr:
		return c.binary(e)
	case *ast.UnaryExpr:
		return c.unary(e)
	case *ast.CallExpr:
		return c.call(e)
	case *ast.SelectorExpr:
		return c.selector(e)
	case *ast.CompositeLit:
		return c.composite(e, nil)
	case *ast.FuncLit:
		return c.funcLit(e)
	case *ast.IndexListExpr:
		return c.productType(e)
	case *ast.BasicLit:
		return c.literal(e)
	case *ast.ArrayType, *ast.MapType, *ast.StructType, *ast.FuncType, *ast.InterfaceType, *ast.Ellipsis, *ast.ChanType:
		return c.typeExpr(e)
	}
	return c.plain(e)
}

// literal reads a number, a rune or a string.
func (c *checker) literal(e *ast.BasicLit) Typed {
	v := constant.MakeFromLiteral(e.Value, e.Kind, 0)
	if v.Kind() == constant.Unknown {
		return c.native(e, e)
	}
	if e.Kind != token.STRING && infinite(v) {
		return c.report(e, "too-large", c.text(e)+": the number is too large", c.text(e), "at most some 1e308", "")
	}
	kind := map[token.Token]types.BasicKind{token.INT: types.UntypedInt, token.FLOAT: types.UntypedFloat, token.IMAG: types.UntypedComplex, token.CHAR: types.UntypedRune, token.STRING: types.UntypedString}[e.Kind]
	return Typed{Mode: Value, Type: types.Typ[kind], Value: v}
}

// plain reads the expressions whose operands go/types can judge by their types alone.
func (c *checker) plain(e ast.Expr) Typed {
	parts := []Typed{}
	part := func(e ast.Expr) ast.Expr {
		if e == nil {
			return nil
		}
		x := c.value(e)
		if x.Mode == Type {
			x.Mode = Type
		}
		parts = append(parts, x)
		return c.placeholder(e, x)
	}
	var copied ast.Expr
	switch e := e.(type) {
	case *ast.IndexExpr:
		copied = &ast.IndexExpr{X: part(e.X), Lbrack: e.Lbrack, Index: part(e.Index), Rbrack: e.Rbrack}
	case *ast.SliceExpr:
		copied = &ast.SliceExpr{X: part(e.X), Lbrack: e.Lbrack, Low: part(e.Low), High: part(e.High), Max: part(e.Max), Slice3: e.Slice3, Rbrack: e.Rbrack}
	case *ast.StarExpr:
		copied = &ast.StarExpr{Star: e.Star, X: part(e.X)}
	case *ast.TypeAssertExpr:
		if e.Type == nil {
			return c.report(e, "syntax", "syntax: .(type) belongs in a switch", c.text(e), "a type in the parentheses", "")
		}
		copied = &ast.TypeAssertExpr{X: part(e.X), Lparen: e.Lparen, Type: part(e.Type), Rparen: e.Rparen}
		if t := parts[len(parts)-1]; t.Mode == Type && types.IsInterface(t.Type) && !isError(t.Type) {
			return c.report(e.Type, "not-available", c.text(e.Type)+": an assertion to an interface is not available in notebooks", c.text(e.Type), "a type that is no interface, or error", "keep the value in a variable of the interface type")
		}
	default:
		return c.report(e, "not-available", "this form is not available in notebooks", c.text(e), "ordinary values and calls", "")
	}
	for _, x := range parts {
		if x.Mode == Invalid {
			return Typed{}
		}
	}
	if index, ok := e.(*ast.IndexExpr); ok && !c.mapKey(index, parts[0]) || !c.wholeIndexes(e, parts[0]) {
		return Typed{}
	}
	return c.native(e, copied)
}

func (c *checker) mapKey(e *ast.IndexExpr, x Typed) bool {
	m, ok := x.Type.Underlying().(*types.Map)
	return !ok || c.assign(e.Index, c.Exprs[e.Index], m.Key(), "a key of this map")
}

// wholeIndexes checks that what counts elements is a whole number.
func (c *checker) wholeIndexes(e ast.Expr, x Typed) bool {
	var indexes []ast.Expr
	switch e := e.(type) {
	case *ast.IndexExpr:
		indexes = []ast.Expr{e.Index}
	case *ast.SliceExpr:
		indexes = []ast.Expr{e.Low, e.High, e.Max}
	}
	if _, isMap := x.Type.Underlying().(*types.Map); isMap || x.Mode != Value {
		return true
	}
	for _, i := range indexes {
		if i == nil {
			continue
		}
		n := c.Exprs[i]
		if n.Value != nil && isNumber(n.Type) && c.World.number(n.Type) && constant.ToInt(n.Value).Kind() == constant.Int {
			continue
		}
		if !c.World.number(n.Type) || basic(n.Type)&types.IsInteger == 0 {
			c.report(i, "type", "index: has to be a whole number", c.one(i, n), "a whole number", "")
			return false
		}
	}
	return true
}

// value reads an expression that must have one value (or be a type, which the caller
// judges). The error result of a call with two is left to the language.
func (c *checker) value(e ast.Expr) Typed {
	x := c.expr(e)
	return c.settled(e, x)
}

func (c *checker) settled(e ast.Expr, x Typed) Typed {
	switch x.Mode {
	case NoValue:
		return c.report(e, "no-value", c.text(e)+": has no value", "a call without results", "a value", "put the call on a line of its own")
	case Package:
		return c.report(e, "no-value", c.text(e)+": is a package", "a package", "something in it, such as "+c.text(e)+"."+c.someName(c.text(e)), "")
	case Builtin, Function:
		return c.report(e, "no-value", c.text(e)+": has to be called", c.text(e), c.text(e)+"(...)", "")
	case Scale:
		return c.report(e, "scale", c.text(e)+": goes with a number", c.text(e)+" alone", "a number times "+c.text(e)+", such as 20*"+c.text(e), "")
	}
	tuple, ok := x.Type.(*types.Tuple)
	if !ok {
		return x
	}
	call, isCall := ast.Unparen(e).(*ast.CallExpr)
	if !isCall || tuple.Len() != 2 || !isError(tuple.At(1).Type()) {
		return c.report(e, "value-count", fmt.Sprintf("%s: has %d values", c.text(e), tuple.Len()), fmt.Sprint(tuple.Len()), "one value here", "assign them to names first")
	}
	c.Must[call] = true
	x.Type = tuple.At(0).Type()
	c.Exprs[e] = x
	c.Exprs[call] = x
	return x
}

func (c *checker) someName(pkg string) string {
	if p := c.Lib.Packages[pkg]; p != nil && len(p.Scope().Names()) > 0 {
		return p.Scope().Names()[0]
	}
	return ""
}

// placeholder returns a name that go/types finds to be what x is.
func (c *checker) placeholder(e ast.Expr, x Typed) ast.Expr {
	if isNil(x) {
		return e
	}
	c.counter++
	id := &ast.Ident{NamePos: e.Pos(), Name: fmt.Sprintf("ˑ%d", c.counter)}
	var obj types.Object
	switch {
	case x.Mode == Type:
		obj = types.NewTypeName(token.NoPos, c.Scratch, id.Name, x.Type)
	case x.Mode == Builtin:
		return e
	case x.Mode != Value || x.Type == nil:
		obj = types.NewVar(token.NoPos, c.Scratch, id.Name, types.Typ[types.Invalid])
	case x.Value != nil:
		obj = types.NewConst(token.NoPos, c.Scratch, id.Name, x.Type, x.Value)
	default:
		obj = c.variable(id.Name, x)
	}
	c.Scratch.Scope().Insert(obj)
	return id
}

func (c *checker) variable(name string, x Typed) types.Object {
	if sig, ok := x.Type.(*types.Signature); ok && sig.TypeParams() != nil {
		return types.NewFunc(token.NoPos, c.Scratch, name, sig)
	}
	return types.NewVar(token.NoPos, c.Scratch, name, x.Type)
}

// native asks go/types about one expression and reports its objection at e.
func (c *checker) native(e, copied ast.Expr) Typed {
	info := &types.Info{Types: map[ast.Expr]types.TypeAndValue{}}
	if err := types.CheckExpr(c.Fset, c.Scratch, token.NoPos, copied, info); err != nil {
		return c.nativeIssue(e, err)
	}
	tv := info.Types[copied]
	switch {
	case tv.IsType():
		return Typed{Mode: Type, Type: tv.Type}
	case tv.IsVoid():
		return Typed{Mode: NoValue}
	case tv.Value != nil && tv.Value.Kind() == constant.Unknown:
		return Typed{}
	}
	return Typed{Mode: Value, Type: tv.Type, Value: tv.Value}
}

// selector reads package members, fields and methods.
func (c *checker) selector(e *ast.SelectorExpr) Typed {
	if id, ok := e.X.(*ast.Ident); ok {
		if x := c.expr(id); x.Mode == Package {
			return c.member(e, id.Name)
		}
	}
	x := c.value(e.X)
	switch {
	case x.Mode == Invalid:
		return x
	case x.Mode == Type:
		return c.report(e, "not-available", "method expressions are not available in notebooks", c.text(e), "a value in front of the point", "or a function that calls the method: func(x "+c.text(e.X)+") ... { return x."+e.Sel.Name+"(...) }")
	}
	obj, _, _ := types.LookupFieldOrMethod(x.Type, true, c.Scratch, e.Sel.Name)
	if obj == nil {
		return c.noMember(e, x)
	}
	if fn, ok := obj.(*types.Func); ok && c.needsAddress(fn, x, e.X) {
		return c.report(e, "type", c.text(e)+": the method wants a pointer", c.one(e.X, x), "a variable, which has an address", "assign the value to a name first")
	}
	return Typed{Mode: Value, Type: c.memberType(x, e, obj)}
}

// needsAddress reports whether a method with a pointer receiver is called on a value that
// has no address.
func (c *checker) needsAddress(fn *types.Func, x Typed, e ast.Expr) bool {
	recv := fn.Signature().Recv()
	if recv == nil {
		return false
	}
	_, wants := recv.Type().(*types.Pointer)
	_, has := x.Type.Underlying().(*types.Pointer)
	if _, literal := ast.Unparen(e).(*ast.CompositeLit); literal {
		return wants && !has
	}
	return wants && !has && !c.addressable(e)
}

func (c *checker) memberType(x Typed, e *ast.SelectorExpr, obj types.Object) types.Type {
	if q, ok := c.World.Quantity(x.Type); ok && q.Base != nil && q.Base != q.Type {
		x.Type = q.Base
	}
	if fn, ok := obj.(*types.Func); ok {
		sig := fn.Signature()
		return types.NewSignatureType(nil, nil, nil, sig.Params(), sig.Results(), sig.Variadic())
	}
	return obj.Type()
}

func (c *checker) noMember(e *ast.SelectorExpr, x Typed) Typed {
	if q, ok := c.World.Quantity(x.Type); ok {
		if q.Base != nil && q.Base != q.Type {
			x.Type = q.Base
			if obj, _, _ := types.LookupFieldOrMethod(q.Base, true, c.Scratch, e.Sel.Name); obj != nil {
				return Typed{Mode: Value, Type: c.memberType(x, e, obj)}
			}
		}
	}
	return c.report(e.Sel, "unknown-member", fmt.Sprintf("%s: no such field or method of %s", e.Sel.Name, c.World.describe(x.Type)), e.Sel.Name, "a field or method", c.memberMeant(e, x))
}

// memberNames lists the exported fields and methods of a type, the notebook's own included.
func memberNames(t types.Type) []string {
	var names []string
	set := types.NewMethodSet(types.NewPointer(t))
	for m := range set.Methods() {
		if m.Obj().Exported() || m.Obj().Pkg() != nil && m.Obj().Pkg().Path() == NotebookPath {
			names = append(names, m.Obj().Name())
		}
	}
	if s, ok := t.Underlying().(*types.Struct); ok {
		for f := range s.Fields() {
			if f.Exported() || f.Pkg().Path() == NotebookPath {
				names = append(names, f.Name())
			}
		}
	}
	return names
}

// qualified lists what a package offers as it is written in a cell.
func qualified(p *types.Package) []string {
	names := exported(p)
	for i, n := range names {
		names[i] = p.Name() + "." + n
	}
	return names
}

// member reads a member of a library package.
func (c *checker) member(e *ast.SelectorExpr, pkg string) Typed {
	p := c.Lib.Packages[pkg]
	obj := p.Scope().Lookup(e.Sel.Name)
	if obj == nil || !obj.Exported() || hidden(p, obj.Name()) {
		return c.report(e.Sel, "unknown-member", fmt.Sprintf("%s.%s: no such name in package %s", pkg, e.Sel.Name, pkg), e.Sel.Name, "a name of package "+pkg,
			didYouMean(pkg+"."+e.Sel.Name, qualified(p)))
	}
	c.Imports[pkg] = true
	x := objectTyped(obj, 0)
	if obj.Name() == "Pi" && pkg == "math" {
		x.Turns = 1
	}
	return x
}
