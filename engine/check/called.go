package check

import (
	"go/ast"
	"go/types"
)

// Called returns the full names of the library functions and methods that the program
// mentions, such as "coil.Wind" and "coil.Winding.Inductance".
func (p *Program) Called() map[string]bool {
	names := map[string]bool{}
	for e := range p.Exprs {
		s, ok := e.(*ast.SelectorExpr)
		if !ok {
			continue
		}
		if id, ok := s.X.(*ast.Ident); ok && p.Exprs[id].Mode == Package {
			names[id.Name+"."+s.Sel.Name] = true
		} else if n := named(p.Exprs[s.X].Type); n != nil && n.Obj().Pkg() != nil {
			names[n.Obj().Pkg().Name()+"."+n.Obj().Name()+"."+s.Sel.Name] = true
		}
	}
	return names
}

func named(t types.Type) *types.Named {
	if t == nil {
		return nil
	}
	if p, ok := t.(*types.Pointer); ok {
		t = p.Elem()
	}
	n, _ := types.Unalias(t).(*types.Named)
	return n
}
