package lower

import (
	"go/ast"
)

// Origin is a name of the notebook and the line that defines it.
type Origin struct {
	Name string
	Line int
}

// origins lists the names of the top level that a statement uses, each once.
func (l *lowerer) origins(s ast.Stmt) []Origin {
	var list []Origin
	seen := map[string]bool{}
	ast.Inspect(s, func(n ast.Node) bool {
		id, ok := n.(*ast.Ident)
		if !ok || seen[id.Name] {
			return true
		}
		if obj := l.Uses[id]; obj != nil && obj.Pos().IsValid() {
			seen[id.Name] = true
			list = append(list, Origin{id.Name, l.PlaceOf(&ast.Ident{NamePos: obj.Pos(), Name: id.Name}).Line})
		}
		return true
	})
	return list
}
