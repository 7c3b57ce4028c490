// Package evaluate runs notebooks in a child process of the same program, so that nothing
// a notebook does can take down, exhaust or outlive the process that a person talks to.
//
// The parent sends a Request and reads Events, one JSON value a line. The child checks the
// notebook, runs it, and presents every result itself: what crosses the border is text.
package evaluate

import (
	"time"

	"lode/cmd/internal/record"
	"lode/engine/issue"
)

// Request is what the child is asked to do.
type Request struct {
	File   string
	Source string
	Limits Limits
	Width  int  // of the terminal
	Colour bool // on the terminal
	Page   bool // whether the page is wanted
	Check  bool // check only

	Against *Against // compare with another notebook instead of showing results
}

// Limits bound what a notebook may use. The zero value of a field means its default.
type Limits struct {
	Time   time.Duration // from the start of the child; default 60 s
	Memory int64         // bytes; default 1 GiB
	Output int64         // bytes printed and shown; default 4 MiB
}

// Defaults are the limits that hold unless others are asked for.
func Defaults() Limits { return Limits{Time: 60 * time.Second, Memory: 1 << 30, Output: 4 << 20} }

// orDefaults fills in what is not given.
func (l Limits) orDefaults() Limits {
	d := Defaults()
	if l.Time > 0 {
		d.Time = l.Time
	}
	if l.Memory > 0 {
		d.Memory = l.Memory
	}
	if l.Output > 0 {
		d.Output = l.Output
	}
	return d
}

// Event is one message from the child. Exactly one field beside At is set, except for the
// last event, which has Done.
type Event struct {
	At     *issue.Issue   `json:",omitempty"` // the statement that runs now: its place and source
	Issues []issue.Issue  `json:",omitempty"` // the notebook does not check
	Failed *issue.Issue   `json:",omitempty"` // the run stopped
	Shown  *Shown         `json:",omitempty"`
	Record *record.Record `json:",omitempty"` // of a run that came to its end
	Page   []byte         `json:",omitempty"`
	Done   bool           `json:",omitempty"`
}

// Shown is what one cell gave since the last event: text for the terminal, and the values
// for comparing runs.
type Shown struct {
	Cell     int
	Terminal string
	Values   []Value
}

// Value is a shown result by its label: its text, and its number in SI units with full
// precision where it is one.
type Value struct {
	Label  string
	Line   int
	Text   string
	Number string `json:",omitempty"`
	Unit   string `json:",omitempty"`
}

// Enclosed is what a page carries for programs: the notebook and the record of its run.
type Enclosed struct {
	File   string
	Source string
	Record *record.Record
}
