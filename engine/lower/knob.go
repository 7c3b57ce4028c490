package lower

import (
	"fmt"
	"go/ast"
)

// knob lowers a knob to a question for its position.
func (l *lowerer) knob(e *ast.CallExpr) {
	from, to := l.span(e)
	ask := fmt.Sprintf("ˑh.Knob(%d)", l.KnobAt[e])
	if t := l.runtime(e); t != "float64" {
		ask = t + "(" + ask + ")"
	}
	l.edits.replace(from, to, ask)
}
