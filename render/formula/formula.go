// Package formula sets worked calculations: a formula, the numbers put into it, and the
// result, as MathML for the page and as one line of text for the terminal. A formula is a
// small tree that the caller builds from the notebook's code.
package formula

import "strings"

// Node is a piece of a formula.
type Node struct {
	kind kind
	text string // a name, a number, an operator or a function
	unit string // of a number
	args []Node
}

type kind int

const (
	name kind = iota
	number
	sum      // args joined by text, "+" or "−"
	product  // args[0] times args[1]
	quotient // args[0] over args[1]
	power    // args[0] to the args[1]
	negative
	root // square root
	call
	magnitude
	relation // args joined by text, such as "<"
)

// Name is a variable; trailing digits and what follows an underscore become an index, and
// spelled Greek letters the letter.
func Name(text string) Node { return Node{kind: name, text: text} }

// Number is a number as it is to be shown, with its unit or none.
func Number(text, unit string) Node { return Node{kind: number, text: text, unit: unit} }

// Sum is a + b.
func Sum(a, b Node) Node { return Node{kind: sum, text: "+", args: []Node{a, b}} }

// Difference is a − b.
func Difference(a, b Node) Node { return Node{kind: sum, text: "−", args: []Node{a, b}} }

// Product is a times b.
func Product(a, b Node) Node { return Node{kind: product, args: []Node{a, b}} }

// Quotient is a over b.
func Quotient(a, b Node) Node { return Node{kind: quotient, args: []Node{a, b}} }

// Power is a to the b.
func Power(a, b Node) Node { return Node{kind: power, args: []Node{a, b}} }

// Negative is −a.
func Negative(a Node) Node { return Node{kind: negative, args: []Node{a}} }

// Root is the square root of a.
func Root(a Node) Node { return Node{kind: root, args: []Node{a}} }

// Magnitude is |a|.
func Magnitude(a Node) Node { return Node{kind: magnitude, args: []Node{a}} }

// Call is a function of its arguments.
func Call(function string, args ...Node) Node { return Node{kind: call, text: function, args: args} }

// Relation compares a and b by a sign such as "<".
func Relation(sign string, a, b Node) Node {
	return Node{kind: relation, text: sign, args: []Node{a, b}}
}

// Not is the opposite of a comparison, or the denial of something else.
func Not(n Node) Node {
	opposite := map[string]string{"<": "≥", ">": "≤", "≤": ">", "≥": "<", "=": "≠", "≠": "="}
	if sign, ok := opposite[n.text]; ok && n.kind == relation {
		return Relation(sign, n.args[0], n.args[1])
	}
	return Call("not", n)
}

// Working is one worked line: what is sought, its formula, the same formula with the numbers
// put in, and the result. Steps that say nothing new are left out, and where nothing is
// named the line begins with the formula.
type Working struct {
	Name     string
	Formula  Node
	Expanded Node // the formula with what is inside its functions
	Filled   Node
	Result   string
	Unit     string
	After    bool // of a definition: what the name has become when a loop ends

	With []Working // definitions within its functions, and calls, which have no name
	As   []Case    // what decided within its functions
}

// Case is a condition that held, and the same with the numbers put in.
type Case struct{ Condition, Filled Node }

// Text writes the working in one line, and what is inside its functions in lines below.
func (w Working) Text() string {
	var sides []string
	for _, step := range w.steps() {
		sides = append(sides, step.Text())
	}
	text := strings.Join(sides, " = ")
	for _, d := range w.definitions() {
		text += "\n  " + d.lead() + " " + indented(d.Text())
	}
	for _, c := range w.As {
		text += "\n  as " + c.text()
	}
	for _, d := range w.calls() {
		text += "\n  where " + indented(d.Text())
	}
	return text
}

func indented(text string) string { return strings.ReplaceAll(text, "\n", "\n  ") }

// lead is the word in front of a definition.
func (w Working) lead() string {
	if w.After {
		return "after the loop"
	}
	return "with"
}

// definitions are the names that are defined inside.
func (w Working) definitions() []Working {
	return w.inside(func(d Working) bool { return d.Name != "" })
}

// calls are what is called inside.
func (w Working) calls() []Working { return w.inside(func(d Working) bool { return d.Name == "" }) }

func (w Working) inside(wanted func(Working) bool) []Working {
	var list []Working
	for _, d := range w.With {
		if wanted(d) {
			list = append(list, d)
		}
	}
	return list
}

func (c Case) text() string {
	text := c.Condition.Text()
	if filled := c.Filled.Text(); filled != text {
		text += ": " + filled
	}
	return text
}

// steps are the sides of the equation, without repetitions.
func (w Working) steps() []Node {
	var steps []Node
	for _, n := range []Node{Name(w.Name), w.Formula, w.Expanded, w.Filled, Number(w.Result, w.Unit)} {
		if text := n.Text(); text != "" && (len(steps) == 0 || text != steps[len(steps)-1].Text()) {
			steps = append(steps, n)
		}
	}
	return steps
}

// binding tells how tightly a node holds together; one of lower binding needs brackets
// inside one of higher.
func (n Node) binding() int {
	switch n.kind {
	case relation:
		return 0
	case sum:
		return 1
	case negative:
		return 2
	case product, quotient:
		return 3
	case power:
		return 4
	case number:
		if n.unit != "" {
			return 3
		}
	}
	return 5
}
