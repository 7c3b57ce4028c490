// Package evaluate runs notebooks in a child process of the same program, so that nothing
// a notebook does can take down, exhaust or outlive the process that a person talks to.
//
// The parent sends a Request and reads Events, one JSON value a line. The child checks the
// notebook, runs it, and presents every result itself: what crosses the border is text.
//
// What the child cannot do by itself it asks for: a data file is read by the parent, and
// only from the notebook's own folder. So the child needs nothing from the system but
// memory and processor time, and gives up everything else before it looks at the notebook.
// What holds where:
//
//	Linux         the kernel bounds memory, processor time and the number of open files,
//	              and refuses every call but those that computing needs (amd64, arm64)
//	macOS         the kernel bounds processor time and the number of open files, so that
//	              nothing can be opened; memory is bounded by the runtime, which tries
//	elsewhere     memory is bounded by the runtime, which tries
//
// Everywhere the language itself reaches no file, socket, process, clock or environment;
// the parent ends the child when its time is over, and the child ends with its parent.
//
// A stop has two steps. The parent asks; the child then ends the interpreter and tells the
// line it was in, inside functions too. A child that is inside a long call of the library
// does not answer and is killed, so no library function needs a way to be cancelled.
package evaluate

import (
	"time"

	"lode/cmd/internal/record"
	"lode/engine/issue"
	"lode/engine/run"
	"lode/render/page"
)

// Request is what the child is asked to do.
type Request struct {
	File   string
	Source string
	Folder string            // where data files come from, "" for the folder of File
	Data   map[string][]byte `json:"-"` // data files by name, instead of those in a folder
	Limits Limits
	Width  int  // of the terminal
	Colour bool // on the terminal
	Page   bool // whether the page is wanted
	Check  bool // check only
	Stay   bool // the child takes another request afterwards

	Knobs    []string           // settings such as "turns=6000"
	Turned   map[string]float64 // where knobs stand, in SI units
	Live     bool               // the page is served and its knobs turn there
	PageSize int64              // bytes that positions of knobs may bring the page to; 0 for the default

	Against *Against // compare with another notebook instead of showing results
}

// Limits bound what a notebook may use. The zero value of a field means its default.
type Limits struct {
	Time   time.Duration // from the start of the child; default 60 s
	Memory int64         // bytes; default 1 GiB
	Output int64         // bytes printed and shown; default 4 MiB
	Steps  int           // turns of loops and calls of functions; default run.DefaultSteps
	Depth  int           // calls within calls; default run.DefaultDepth
}

// Defaults are the limits that hold unless others are asked for.
func Defaults() Limits {
	return Limits{Time: 60 * time.Second, Memory: 1 << 30, Output: 4 << 20, Steps: run.DefaultSteps, Depth: run.DefaultDepth}
}

// headroom is memory for the program itself, beside what the notebook may use. The runtime
// begins to save memory when half of it is gone too; from then on it takes time instead.
const headroom = 256 << 20

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
	if l.Steps > 0 {
		d.Steps = l.Steps
	}
	if l.Depth > 0 {
		d.Depth = l.Depth
	}
	return d
}

// Event is one message from the child. Exactly one field beside At is set, except for the
// last event, which has Done.
type Event struct {
	At     *issue.Issue   `json:",omitempty"` // the statement that runs now: its place and source
	Part   float64        `json:",omitempty"` // how far the library is with a long calculation, up to 1
	Wants  *string        `json:",omitempty"` // the name of the data file that the run needs to go on
	Issues []issue.Issue  `json:",omitempty"` // the notebook does not check
	Failed *issue.Issue   `json:",omitempty"` // the run stopped
	Shown  *Shown         `json:",omitempty"`
	Record *record.Record `json:",omitempty"` // of a run that came to its end
	Page   []byte         `json:",omitempty"`
	Served *page.Pieces   `json:",omitempty"` // the page of a request that is Live, which gives no Shown and no Record
	Done   bool           `json:",omitempty"`
}

// message is what the parent sends behind the request. Exactly one field is set.
type message struct {
	Stop bool      `json:",omitempty"`
	Next *Request  `json:",omitempty"` // to a child that stays
	File *delivery `json:",omitempty"`
}

// delivery answers an event that Wants a file.
type delivery struct {
	Data    []byte
	Problem string // why there is no data
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

	Columns []record.Column `json:",omitempty"` // of a table or the curves of a figure
}

// Enclosed is what a page carries for programs: the notebook and the record of its run.
type Enclosed struct {
	File   string
	Source string
	Record *record.Record
	Data   []byte `json:",omitempty"` // data files by name, packed
}
