// Package issue is the one form of everything that a person is told about a notebook: a
// place, what is wrong, what was found, what is wanted, and a hint. Issues are values;
// drawing them is somebody else's work.
package issue

import (
	"fmt"
	"strings"
)

// Place is a range of one line of a notebook. Line and Column count from one, columns in
// characters; a zero Line means the file as a whole.
type Place struct {
	File      string
	Line      int
	Column    int
	EndColumn int
}

// String writes the place as file:line:column.
func (p Place) String() string {
	if p.Line == 0 {
		return p.File
	}
	return fmt.Sprintf("%s:%d:%d", p.File, p.Line, p.Column)
}

// Issue is one message.
type Issue struct {
	Place
	Code   string // short stable name, such as "dimension-mismatch"
	What   string // subject: what is wrong
	Got    string
	Want   string
	Hint   string
	Source string // the whole source line, for a caret
	Calls  []Call // for a failure while running: the calls that led there, innermost first
}

// Call is a statement with a call that was not done yet.
type Call struct {
	Place
	Text string // its source
}

// Error writes the issue in lines of text without drawing.
func (i Issue) Error() string {
	var b strings.Builder
	b.WriteString(i.Place.String() + ": " + i.What)
	for _, part := range [][2]string{{"got", i.Got}, {"want", i.Want}, {"hint", i.Hint}} {
		if part[1] != "" {
			b.WriteString("\n  " + part[0] + ": " + part[1])
		}
	}
	if len(i.Calls) > 0 {
		b.WriteString("\n  called from:")
		for _, c := range i.Calls {
			fmt.Fprintf(&b, " %d:%d", c.Line, c.Column)
		}
	}
	return b.String()
}

// Codes of the issues that concern a notebook as a whole.
const (
	Unreadable = "unreadable" // the file cannot be read
	NotText    = "not-text"   // the file is not text
	Empty      = "empty"      // nothing in the file
	NoCells    = "no-cells"   // prose only
	Nested     = "nested"     // a cell in a list or a quotation
)

// Codes of the issues that end a run.
const (
	Failed       = "failed"       // an error of a function
	Panic        = "panic"        // a panic of the notebook's own
	Index        = "index"        // outside of a list
	ZeroDivision = "zero-divisor" // whole numbers
	NilMap       = "nil-map"
	NilPointer   = "nil-pointer"
	Assertion    = "assertion"
	Size         = "size" // of a slice, or of a shift
	Unhashable   = "unhashable"
	TooDeep      = "too-deep" // budget of depth
	TooLong      = "too-long" // budget of steps
	Stopped      = "stopped"
	Interpreter  = "interpreter" // a fault of ours
)
