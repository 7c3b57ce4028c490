package present

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"lode/engine/worked"
	"lode/render/formula"
	"lode/units"
)

// This file turns what a run tells of its workings into formulas to draw. A formula is set
// as it is written; then with what is inside the one function of the notebook that it calls,
// the arguments in the place of the parameters; then with the numbers put in. What that
// function calls in its turn, or what a formula with several calls does, follows below, each
// call as a working of its own.

// deepest is how far down calls within calls are worked, and most how many on a level.
const (
	deepest = 3
	most    = 6
)

// working maps a worked statement.
func working(line worked.Line) formula.Working {
	w := formula.Working{Name: line.Name, Formula: written(line.Tree, nil)}
	w.Result, w.Unit = result(line.Tree)
	if calls := opened(line.Tree); len(calls) == 1 {
		w.Expanded, w.Filled = expanded(line.Tree, nil), filled(line.Tree, true)
		inside(calls[0], nil, []string{calls[0].Text}, &w)
	} else {
		w.Filled = filled(line.Tree, false)
		beside(calls, nil, nil, &w)
	}
	return w
}

// opened lists the calls in a formula whose way is known.
func opened(t *worked.Tree) []*worked.Tree {
	if t.Way != nil {
		return []*worked.Tree{t}
	}
	var calls []*worked.Tree
	for _, a := range t.Args {
		calls = append(calls, opened(a)...)
	}
	return calls
}

// inside adds the definitions and decisions of a call, and then the calls in it.
func inside(t *worked.Tree, outer map[string]formula.Node, chain []string, w *formula.Working) {
	arguments := given(t, outer)
	var calls []*worked.Tree
	for _, s := range t.Way.Steps {
		calls = append(calls, opened(s.Tree)...)
		if s.Name == "" {
			w.As = append(w.As, formula.Case{Condition: decided(written(s.Tree, arguments), s), Filled: decided(filled(s.Tree, false), s)})
			continue
		}
		d := formula.Working{Name: s.Name, After: s.After, Formula: written(s.Tree, arguments), Filled: filled(s.Tree, false)}
		d.Result, d.Unit = result(s.Tree)
		w.With = append(w.With, d)
	}
	beside(append(calls, opened(t.Way.Result)...), arguments, chain, w)
}

// beside adds calls as workings of their own: each once, and none of a function that is
// being worked already.
func beside(calls []*worked.Tree, arguments map[string]formula.Node, chain []string, w *formula.Working) {
	shown := map[string]bool{}
	for _, t := range calls {
		call := written(t, arguments)
		if shown[call.Text()] || len(shown) == most || len(chain) == deepest || slices.Contains(chain, t.Text) {
			continue
		}
		shown[call.Text()] = true
		d := formula.Working{Formula: call, Expanded: expanded(t, arguments), Filled: filled(t, true)}
		d.Result, d.Unit = result(t)
		inside(t, arguments, append(slices.Clone(chain), t.Text), &d)
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

// given pairs a function's parameters with the arguments of a call, which may use those of
// the call around it.
func given(t *worked.Tree, outer map[string]formula.Node) map[string]formula.Node {
	arguments := map[string]formula.Node{}
	for i, name := range t.Named {
		switch {
		case i < len(t.Args):
			arguments[name] = written(t.Args[i], outer)
		case t.On != nil:
			arguments[name] = written(t.On, outer)
		}
	}
	return arguments
}

// written sets a formula as it stands in the notebook, with other formulas in the place of
// some names.
func written(t *worked.Tree, instead map[string]formula.Node) formula.Node {
	return node(t, func(t *worked.Tree) formula.Node {
		if n, ok := replaced(t, instead); ok {
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
			return formula.Call(callee(t, instead), args...)
		}
		return formula.Name(callee(t, instead))
	})
}

// callee names what is called: a method with what it is called on.
func callee(t *worked.Tree, instead map[string]formula.Node) string {
	name, method, _ := strings.Cut(t.Text, ".")
	if n, ok := instead[name]; ok && t.On != nil {
		return n.Text() + "." + method
	}
	return t.Text
}

// replaced returns what stands in the place of a name, or of the name in front of a field.
func replaced(t *worked.Tree, instead map[string]formula.Node) (formula.Node, bool) {
	name, field, isField := strings.Cut(t.Text, ".")
	n, ok := instead[name]
	if !ok || t.Kind != worked.Name {
		return n, false
	}
	if isField {
		return formula.Name(n.Text() + "." + field), true
	}
	return n, true
}

// expanded sets a formula with the insides of the functions that it calls.
func expanded(t *worked.Tree, instead map[string]formula.Node) formula.Node {
	return node(t, func(t *worked.Tree) formula.Node {
		if t.Way != nil {
			return written(t.Way.Result, given(t, instead))
		}
		return written(t, instead)
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

// amount is the value of a part: of a constant as it was typed.
func amount(t *worked.Tree) formula.Node {
	if number, unit, ok := typed(t); ok {
		return formula.Number(number, unit)
	}
	number, unit := measure(t.Value)
	return formula.Number(number, unit)
}

// result is the value of a whole formula, with the minus that formulas are set with.
func result(t *worked.Tree) (number, unit string) {
	number, unit = measure(t.Value)
	if rest, negative := strings.CutPrefix(number, "-"); negative {
		number = "−" + rest
	}
	return number, unit
}

var plainAmount = regexp.MustCompile(`^([0-9.]+)\s*\*\s*(\pL+)$`)

// typed takes a constant such as 2500*mH apart.
func typed(t *worked.Tree) (number, unit string, ok bool) {
	m := plainAmount.FindStringSubmatch(t.Text)
	if m == nil || t.Kind != worked.Constant {
		return "", "", false
	}
	for _, u := range units.Units() {
		for _, s := range u.Symbols() {
			if s == m[2] {
				return m[1], u.Shown(), true
			}
		}
	}
	return "", "", false
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
