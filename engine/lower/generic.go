package lower

import (
	"go/ast"
	"go/types"
	"strconv"
	"strings"

	"lode/engine/check"
)

// genericCall lowers a call of a generic function of the library to that of its twin on
// plain numbers, which is told the kinds behind its arguments.
func (l *lowerer) genericCall(e *ast.CallExpr, instance check.Instance) {
	if !l.tries(e) {
		_, nameTo := l.span(e.Fun)
		l.edits.replace(nameTo, nameTo, check.TwinSuffix)
	}
	l.exprs(e.Args)
	_, to := l.span(e)
	kinds := make([]string, len(instance.Types))
	for i, t := range instance.Types {
		kinds[i] = l.kind(t)
	}
	l.edits.replace(to-1, to-1, ", "+strings.Join(kinds, ", "))
}

// kind writes the kind of a type as the quantity package makes it.
func (l *lowerer) kind(t types.Type) string {
	name, halves := "", ""
	if q, ok := l.World.Quantity(t); ok {
		if q.Base != nil {
			name = q.Base.Obj().Name()
		}
		halves = ", " + l.halves(q)
	}
	return l.packageName(l.Lib.Quantity) + "." + l.Lib.KindWritten + "(" + strconv.Quote(name) + halves + ")"
}
