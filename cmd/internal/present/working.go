package present

import (
	"fmt"

	"lode/engine/worked"
	"lode/render/formula"
	"lode/units"
)

// This file turns what a run tells of its workings into formulas to draw. A formula is set
// as it is written; then with what is inside the notebook's functions, the arguments in the
// place of the parameters; then with the numbers put in.

// working maps a worked statement. What a function of the notebook calls in its turn is not
// opened any further: its value stands for it.
func working(line worked.Line) formula.Working {
	w := formula.Working{Name: line.Name, Formula: written(line.Tree, nil), Filled: filled(line.Tree, true)}
	if opens(line.Tree) {
		w.Expanded = expanded(line.Tree)
	}
	w.Result, w.Unit = measure(line.Tree.Value)
	inside(line.Tree, &w)
	return w
}

// opens reports whether a formula calls a function whose way is known.
func opens(t *worked.Tree) bool {
	if t.Way != nil {
		return true
	}
	for _, a := range t.Args {
		if opens(a) {
			return true
		}
	}
	return false
}

// inside adds the definitions and decisions of the functions that a formula calls.
func inside(t *worked.Tree, w *formula.Working) {
	if t.Way == nil {
		for _, a := range t.Args {
			inside(a, w)
		}
		return
	}
	arguments := given(t)
	for _, s := range t.Way.Steps {
		if s.Name == "" {
			w.As = append(w.As, formula.Case{Condition: decided(written(s.Tree, arguments), s), Filled: decided(filled(s.Tree, false), s)})
			continue
		}
		d := formula.Working{Name: s.Name, Formula: written(s.Tree, arguments), Filled: filled(s.Tree, false)}
		d.Result, d.Unit = measure(s.Tree.Value)
		w.With = append(w.With, d)
	}
}

// decided writes a condition that did not hold as its opposite.
func decided(n formula.Node, s worked.Step) formula.Node {
	if s.Holds {
		return n
	}
	return formula.Not(n)
}

// given pairs a function's parameters with the arguments of a call.
func given(t *worked.Tree) map[string]formula.Node {
	arguments := map[string]formula.Node{}
	for i, name := range t.Named {
		if i < len(t.Args) {
			arguments[name] = written(t.Args[i], nil)
		}
	}
	return arguments
}

// written sets a formula as it stands in the notebook, with other formulas in the place of
// some names.
func written(t *worked.Tree, instead map[string]formula.Node) formula.Node {
	return node(t, func(t *worked.Tree) formula.Node {
		if n, ok := instead[t.Text]; ok && t.Kind == worked.Name {
			return n
		}
		switch {
		case t.Kind == worked.Constant:
			return amount(t)
		case (t.Kind == worked.Library || t.Kind == worked.Own) && len(t.Args) > 0:
			args := make([]formula.Node, len(t.Args))
			for i, a := range t.Args {
				args[i] = written(a, instead)
			}
			return formula.Call(t.Text, args...)
		}
		return formula.Name(t.Text)
	})
}

// expanded sets a formula with the insides of the functions that it calls.
func expanded(t *worked.Tree) formula.Node {
	return node(t, func(t *worked.Tree) formula.Node {
		if t.Way != nil {
			return written(t.Way.Result, given(t))
		}
		return written(t, nil)
	})
}

// filled sets a formula with values, inside of functions too if open.
func filled(t *worked.Tree, open bool) formula.Node {
	return node(t, func(t *worked.Tree) formula.Node {
		if t.Way != nil && open {
			return filled(t.Way.Result, false)
		}
		if t.Value == nil {
			return written(t, nil)
		}
		return amount(t)
	})
}

// amount is the value of a part.
func amount(t *worked.Tree) formula.Node {
	number, unit := measure(t.Value)
	return formula.Number(number, unit)
}

// measure writes a value in sensible digits and its unit.
func measure(v any) (number, unit string) {
	switch x := v.(type) {
	case units.Quantity:
		return units.Split(x.SI(), x.Kind())
	case float64:
		return units.Digits(x, 4), ""
	case fmt.Stringer:
		return x.String(), ""
	case nil:
		return "", ""
	}
	return fmt.Sprint(v), ""
}

// node sets operators and functions; the rest is left to leaf.
func node(t *worked.Tree, leaf func(*worked.Tree) formula.Node) formula.Node {
	args := func() []formula.Node {
		list := make([]formula.Node, len(t.Args))
		for i, a := range t.Args {
			list[i] = node(a, leaf)
		}
		return list
	}
	switch t.Kind {
	case worked.Number:
		return formula.Number(t.Text, "")
	case worked.Binary:
		return binary(t.Text, args())
	case worked.Unary:
		if t.Text == "!" {
			return formula.Not(args()[0])
		}
		return formula.Negative(args()[0])
	case worked.Function:
		return function(t.Text, args())
	}
	return leaf(t)
}

func binary(operator string, args []formula.Node) formula.Node {
	a, b := args[0], args[1]
	switch operator {
	case "+":
		return formula.Sum(a, b)
	case "-":
		return formula.Difference(a, b)
	case "*":
		return formula.Product(a, b)
	case "/":
		return formula.Quotient(a, b)
	case "%":
		return formula.Call("remainder", a, b)
	}
	if sign, ok := map[string]string{"==": "=", "!=": "≠", "<=": "≤", ">=": "≥", "&&": "and", "||": "or"}[operator]; ok {
		operator = sign
	}
	return formula.Relation(operator, a, b)
}

func function(name string, args []formula.Node) formula.Node {
	square := func(n formula.Node) formula.Node { return formula.Power(n, formula.Number("2", "")) }
	switch name {
	case "sqrt":
		return formula.Root(args[0])
	case "cbrt":
		return formula.Power(args[0], formula.Quotient(formula.Number("1", ""), formula.Number("3", "")))
	case "pow":
		return formula.Power(args[0], args[1])
	case "abs":
		return formula.Magnitude(args[0])
	case "hypot":
		return formula.Root(formula.Sum(square(args[0]), square(args[1])))
	case "log":
		name = "ln"
	case "log10":
		name = "lg"
	case "log2":
		name = "lb"
	case "atan2":
		return formula.Call("atan", formula.Quotient(args[0], args[1]))
	}
	return formula.Call(name, args...)
}
