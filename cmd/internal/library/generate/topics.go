package main

import (
	"go/ast"
	"go/doc"
	"go/types"
	"strings"

	"lode/cmd/internal/library"
)

// topics collects the help of one package.
type topics struct {
	pkg  *types.Package
	name string
	list []library.Topic
}

func (t *topics) add(name, signature, comment string) {
	t.list = append(t.list, library.NewTopic(name, signature, comment))
}

func (t *topics) qualifier(p *types.Package) string {
	if p == t.pkg {
		return ""
	}
	return p.Name()
}

func (t *topics) function(f *doc.Func) {
	name := t.name + "." + f.Name
	signature := ""
	if f.Recv != "" {
		recv := strings.TrimPrefix(f.Recv, "*")
		name = t.name + "." + recv + "." + f.Name
		if obj, _, _ := types.LookupFieldOrMethod(t.pkg.Scope().Lookup(recv).Type(), true, t.pkg, f.Name); obj != nil {
			signature = f.Name + t.parameters(obj)
		}
	} else if obj := t.pkg.Scope().Lookup(f.Name); obj != nil {
		signature = name + t.parameters(obj)
	}
	t.add(name, signature, f.Doc)
}

// parameters writes a function's type without the word func.
func (t *topics) parameters(obj types.Object) string {
	return strings.TrimPrefix(types.TypeString(obj.Type(), t.qualifier), "func")
}

func (t *topics) typ(d *doc.Type) {
	obj := t.pkg.Scope().Lookup(d.Name)
	if obj == nil {
		return
	}
	t.add(t.name+"."+d.Name, "type "+t.name+"."+d.Name, d.Doc+t.fields(d, obj))
	for _, f := range d.Funcs {
		t.function(f)
	}
	for _, m := range d.Methods {
		t.function(m)
	}
	for _, c := range d.Consts {
		t.constants(c)
	}
}

// fields lists the exported fields of a struct with their comments.
func (t *topics) fields(d *doc.Type, obj types.Object) string {
	s, ok := d.Decl.Specs[0].(*ast.TypeSpec).Type.(*ast.StructType)
	if !ok {
		return ""
	}
	text := ""
	for _, f := range s.Fields.List {
		for _, n := range f.Names {
			if n.IsExported() {
				text += "\n- " + n.Name + " " + t.fieldType(obj, n.Name) + remark(f)
			}
		}
	}
	if text != "" {
		text = "\n\nFields:" + text
	}
	return text
}

func (t *topics) fieldType(obj types.Object, name string) string {
	f, _, _ := types.LookupFieldOrMethod(obj.Type(), true, t.pkg, name)
	if f == nil {
		return ""
	}
	return types.TypeString(f.Type(), t.qualifier)
}

func remark(f *ast.Field) string {
	text := strings.TrimSpace(f.Doc.Text() + " " + f.Comment.Text())
	if text == "" {
		return ""
	}
	return ": " + strings.Join(strings.Fields(text), " ")
}

func (t *topics) constants(v *doc.Value) {
	for _, name := range v.Names {
		if obj := t.pkg.Scope().Lookup(name); obj != nil && obj.Exported() {
			t.add(t.name+"."+name, types.TypeString(obj.Type(), t.qualifier), v.Doc)
		}
	}
}
