// Package engine is the only door to the language: it opens a notebook, checks it and runs
// it. It knows no physics; the Library that it is handed holds everything a notebook may
// use.
package engine

import (
	"context"

	"lode/engine/book"
	"lode/engine/check"
	"lode/engine/issue"
	"lode/engine/library"
	"lode/engine/lower"
	"lode/engine/run"
)

// Notebook is a checked notebook.
type Notebook struct {
	Book   book.Book
	Issues []issue.Issue // empty if it can run

	// At, if set, is told of each statement of the top level before it runs: its place and
	// its source line.
	At func(issue.Issue)

	// Part, if set, is told how far the library is with a long calculation, from 0 to 1.
	Part func(part float64)

	Limits run.Limits // of a run; the zero value means the defaults

	// Turned holds where knobs stand that are not at their own value, in coherent units.
	Turned map[string]float64

	lib     *library.Library
	program *lower.Lowered
	used    map[string]bool
	checked *check.Program
	running *run.Program
}

// Minds are the warnings of a value or of a call: where it left the range it is valid for. As a
// result they follow that of the statement that they belong to.
type Minds struct {
	Of      string // full name of the library function, or of the type of a value
	Label   string // what was defined or called, as written; empty for the shown value
	Value   bool   // they are those of a value
	Defined bool   // that was given a name
	List    []string
}

// Result is one thing that a run gives: a shown value, a working, or text that was printed.
type Result struct {
	Cell    int    // which cell, from zero
	Label   string // source text of the shown expression
	Value   any    // a *worked.Line tells how a result of a working cell came about
	Printed string
	From    []lower.Origin // the names that it came from
	issue.Place
}

// Open reads and checks the text of a notebook.
func Open(lib *library.Library, file string, source []byte) *Notebook {
	n := &Notebook{Book: book.Parse(file, source), lib: lib}
	if problem := n.Book.Problem(); problem != nil {
		n.Issues = []issue.Issue{*problem}
		return n
	}
	program, issues := check.Check(lib, n.Book)
	if len(issues) == 0 {
		n.program = lower.Lower(program)
		n.running = run.New(lib, n.program)
		issues = n.program.Verify()
	}
	n.Issues, n.used, n.checked = issues, program.Called(), program
	return n
}

// Program returns the notebook as a Go program.
func (n *Notebook) Program() string { return n.program.Source }

// Called returns the full names of the library functions and methods that the cells call,
// such as "coil.Wind" or "coil.Winding.Inductance".
func (n *Notebook) Called() map[string]bool { return n.used }

// Run runs a notebook without issues from the top and hands each result to show as it
// comes. It returns the issue that ended the run, if one did. Runs of a notebook and its copies
// come one after the other; none sees anything of those before.
func (n *Notebook) Run(ctx context.Context, show func(Result)) *issue.Issue {
	s := &sink{n: n, show: show, told: map[string]bool{}}
	failed := n.running.Run(ctx, n.Limits, s)
	if ctx.Err() == nil { // a program that was stopped may still be on its way
		s.flush()
	}
	return n.closer(ctx, failed)
}

type sink struct {
	n     *Notebook
	show  func(Result)
	minds []Result        // of the statement that runs
	shown bool            // it has shown a result
	told  map[string]bool // texts of those before
}

// At tells the place of the statement that begins.
func (s *sink) At(spot int) {
	s.flush()
	if s.n.At != nil {
		p := s.n.program.Spots[spot]
		s.n.At(issue.Issue{Place: p.Place, Source: p.Source})
	}
}

func (s *sink) Part(part float64) {
	if s.n.Part != nil {
		s.n.Part(part)
	}
}

func (s *sink) Show(spot int, value any) {
	p := s.n.program.Spots[spot]
	s.show(Result{Cell: p.Cell, Label: p.Text, Value: value, From: p.From, Place: p.Place})
	s.shown = true
	s.mind(spot, value, Minds{Value: true})
}

func (s *sink) Print(spot int, text string) {
	p := s.n.program.Spots[spot]
	s.show(Result{Cell: p.Cell, Printed: text, Place: p.Place})
}
