package lower

import (
	"go/ast"
	"go/token"
	"go/types"

	"lode/engine/check"
)

// This file lowers declarations and methods kept as values.

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
		switch spec := sp.(type) {
		case *ast.TypeSpec:
			if spec.Assign.IsValid() { // its uses are written out
				from, to := l.span(spec)
				l.edits.replace(from, to, l.name("t")+" struct{}")
				continue
			}
			l.typeExpr(spec.Type, plain)
		case *ast.ValueSpec:
			if d.Tok == token.CONST {
				l.innerConst(spec)
				continue
			}
			l.typeExpr(spec.Type, plain)
			l.exprs(spec.Values)
		}
	}
}

func (l *lowerer) typeDecl(d *ast.GenDecl) {
	for _, sp := range d.Specs {
		spec := sp.(*ast.TypeSpec)
		l.typeExpr(spec.Type, plain)
		if t, ok := l.Defs[spec.Name].(*types.TypeName); ok && !spec.Assign.IsValid() {
			l.declared = append(l.declared, t.Type())
		}
	}
}

// innerConst takes a constant away, since its uses are numbers.
func (l *lowerer) innerConst(spec *ast.ValueSpec) {
	from, to := l.span(spec)
	text := ""
	for i := range spec.Names {
		if i > 0 {
			text += "; "
		}
		text += "_ = 0"
	}
	l.edits.replace(from, to, text)
}

// methodValue lowers a method of the notebook that is kept as a value: it is bound to its
// receiver at once.
func (l *lowerer) methodValue(e *ast.SelectorExpr) bool {
	x := l.Exprs[e.X]
	if l.called[e] || x.Mode != check.Value || x.Type == nil || l.foreign(x.Type) || types.IsInterface(x.Type) {
		return false
	}
	obj, _, _ := types.LookupFieldOrMethod(x.Type, true, l.Scratch, e.Sel.Name)
	method, ok := obj.(*types.Func)
	if !ok {
		return false
	}
	recv, before := method.Signature().Recv().Type(), ""
	_, wantsPointer := recv.(*types.Pointer)
	_, isPointer := types.Unalias(x.Type).(*types.Pointer)
	switch {
	case wantsPointer && !isPointer:
		before = "&"
	case !wantsPointer && isPointer:
		before = "*"
	}
	sig := types.NewSignatureType(nil, nil, nil, method.Signature().Params(), method.Signature().Results(), method.Signature().Variadic())
	name := l.helper("method "+l.plainText(recv)+" "+method.Name(), func(name string) string {
		return "func " + name + "(x " + l.plainText(recv) + ") " + l.plainText(sig) + " { return " + l.forwards(sig, "x."+method.Name()) + " }"
	})
	from, _ := l.span(e)
	_, xTo := l.span(e.X)
	_, to := l.span(e)
	l.edits.open(from, name+"("+before)
	l.raw(e.X)
	l.edits.replace(xTo, to, ")")
	return true
}

// forwards writes a function literal that calls another one.
func (l *lowerer) forwards(s *types.Signature, callee string) string {
	params, args := "", ""
	for i := range s.Params().Len() {
		name := "a" + string(rune('0'+i%10)) + string(rune('0'+i/10))
		text, arg := l.plainText(s.Params().At(i).Type()), name
		if s.Variadic() && i == s.Params().Len()-1 {
			text, arg = "..."+l.plainText(s.Params().At(i).Type().(*types.Slice).Elem()), name+"..."
		}
		if i > 0 {
			params, args = params+", ", args+", "
		}
		params, args = params+name+" "+text, args+arg
	}
	keyword := "return "
	if s.Results().Len() == 0 {
		keyword = ""
	}
	return "func(" + params + ") (" + l.tupleText(s.Results(), plain) + ") { " + keyword + callee + "(" + args + ") }"
}
