// Package worked tells how results came about: formulas as they stand in a notebook, with
// the numbers that a run put into them. A formula is a plain tree; drawing it is somebody
// else's work.
package worked

// Kind tells what a tree is.
type Kind int

// The kinds.
const (
	Name     Kind = iota // a name, a field or another thing with a value
	Number               // a plain number as written
	Constant             // a number with its unit
	Library              // a call of the library
	Own                  // a call of a function of the notebook
	Function             // a call of the mathematics in scope
	Binary               // Args[0] Text Args[1]
	Unary                // Text Args[0]
)

// Tree is a formula or a part of one.
type Tree struct {
	Kind Kind
	Text string // a name, a number, an operator, a function
	Args []*Tree

	// Slot is the place among the values of a run that the value of this part goes to; zero
	// for none.
	Slot  int
	Value any      // what the run found, in the library's form; nil where it is not known
	Way   *Way     // of a call of a function of the notebook
	Named []string // its parameters, and behind them its receiver
	On    *Tree    // what a method is called on
}

// Way is the way that a call took through a function.
type Way struct {
	Steps  []Step
	Result *Tree // the formula that was returned
}

// Step is a definition, or a condition that decided, on a way.
type Step struct {
	Name  string // "" for a condition
	Tree  *Tree
	Holds bool // of a condition
	After bool // not a definition but what the name has become when a loop ends
}

// Line is one worked statement.
type Line struct {
	Name string // what is defined; "" for a result that is shown
	Tree *Tree
}

// Filled returns the tree with the values that were found.
func (t *Tree) Filled(value func(slot int) (any, *Way)) *Tree {
	if t == nil {
		return nil
	}
	filled := *t
	filled.Args = nil
	for _, a := range t.Args {
		filled.Args = append(filled.Args, a.Filled(value))
	}
	if t.Slot > 0 {
		filled.Value, filled.Way = value(t.Slot)
	}
	return &filled
}
