// Package run lets a lowered notebook run in the interpreter, sealed from the machine: no
// source is read from disk, and only the packages of the library can be imported.
package run

import (
	"context"
	"fmt"
	"io/fs"
	"maps"
	"reflect"
	"sync/atomic"
	"time"

	"lode/engine/issue"
	"lode/engine/library"
	"lode/engine/lower"
	"lode/engine/worked"
)

// Sink takes what a running notebook gives, in order.
type Sink interface {
	// At is told of each statement of the top level before it runs.
	At(spot int)
	// Part is told how far the library is with a long calculation, from 0 to 1; it is told often.
	Part(part float64)
	// Show takes the value of a shown result; spot is its number in Lowered.Spots.
	Show(spot int, value any)
	// Mind takes a value that was defined and may have something to warn of.
	Mind(spot int, value any)
	// Left takes the warnings of a call while statement spot runs: that it left its range or,
	// ofValue, what the value that it returned warns of.
	Left(spot, watched int, warnings []string, ofValue bool)
	// Print takes text that the notebook prints while statement spot runs.
	Print(spot int, text string)
	// Knob tells where a knob stands.
	Knob(knob int) float64
	// Work takes the formula of a statement with the numbers that went into it.
	Work(spot int, line worked.Line)
}

// Limits bound a run by counts that are the same in each run. Zero values mean the
// defaults.
type Limits struct {
	Steps int // turns of loops and calls of functions
	Depth int // calls within calls
}

// Defaults: some twenty seconds of the tightest loop, and a depth far below what the stack
// holds (leaving 10000 calls at once takes the interpreter seconds, since it stops in each).
const (
	DefaultSteps = 500_000_000
	DefaultDepth = 2_000
)

func (l Limits) withDefaults() Limits {
	if l.Steps <= 0 {
		l.Steps = DefaultSteps
	}
	if l.Depth <= 0 {
		l.Depth = DefaultDepth
	}
	return l
}

// nothing is a file system without files.
type nothing struct{}

func (nothing) Open(name string) (fs.File, error) {
	return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrNotExist}
}

// Program runs one lowered program any number of times, one after the other. What it reads
// once stays; the program's variables are as in the beginning each time. The zero value is
// not usable.
type Program struct {
	lib   *library.Library
	text  *lower.Lowered
	ready *runner // after a run that came to its end
	runs  int     // of it
}

// mostRuns is how many runs an interpreter is used for: each leaves a few kilobytes behind.
const mostRuns = 1000

// New returns a program to run.
func New(lib *library.Library, text *lower.Lowered) *Program { return &Program{lib: lib, text: text} }

// Run executes the program from the top. It returns the issue that ended it, if one did.
func (p *Program) Run(ctx context.Context, limits Limits, sink Sink) *issue.Issue {
	r := p.ready
	p.ready = nil
	if r == nil {
		r, p.runs = &runner{program: p.text}, 0
	}
	r.begin(ctx, limits.withDefaults(), sink)
	failed := r.run(ctx, p.lib)
	if p.runs++; failed == nil && p.runs < mostRuns {
		r.sink = nil
		p.ready = r
	}
	return failed
}

// begin makes everything but the interpreter as for a first run.
func (r *runner) begin(ctx context.Context, limits Limits, sink Sink) {
	*r = runner{program: r.program, interp: r.interp, watches: r.watches, sink: sink, limits: limits, left: limits.Steps, reason: ctx.Err, asked: new(atomic.Bool), told: newTold()}
	for _, p := range r.watches {
		p.statement, p.last = -1, [2][]reflect.Value{}
	}
}

func (r *runner) run(ctx context.Context, lib *library.Library) (failed *issue.Issue) {
	later, forget := r.patient(ctx, lib)
	defer forget()
	defer func() {
		if v := recover(); v != nil {
			failed = r.failed(v)
		}
	}()
	if err := r.prepare(later, lib); err != nil {
		return r.issue(err)
	}
	r.running = true
	if _, err := r.interp.EvalWithContext(later, "notebook."+lower.Entry+"()"); err != nil {
		return r.issue(err)
	}
	if r.ended != nil && r.halted {
		return r.placeAt(r.ended.spot, stopped(ctx.Err()))
	}
	if r.ended != nil {
		return r.placeAt(r.ended.spot, r.used(*r.ended))
	}
	if ctx.Err() != nil { // asked to stop by what it did last
		return r.place(stopped(ctx.Err()))
	}
	r.settle()
	return nil
}

// prepare reads the program, or makes its variables as they were after that.
func (r *runner) prepare(ctx context.Context, lib *library.Library) error {
	if r.interp != nil {
		_, err := r.interp.EvalWithContext(ctx, "notebook."+lower.Afresh+"()")
		return err
	}
	if err := r.start(lib); err != nil {
		return err
	}
	_, err := r.interp.EvalWithContext(ctx, r.program.Source)
	return err
}

// patience is how long a program is given to come to its next step when it is asked to stop,
// before the interpreter is stopped wherever it is.
const patience = 25 * time.Millisecond

// patient returns a context that ends some time after ctx, for the same reason; in between
// the program is asked to stop.
func (r *runner) patient(ctx context.Context, lib *library.Library) (context.Context, func()) {
	unwatched := func() {}
	if lib.Watch != nil {
		unwatched = lib.Watch(r.sink.Part)
	}
	later, cancel := context.WithCancelCause(context.WithoutCancel(ctx))
	asked := r.asked
	forget := context.AfterFunc(ctx, func() {
		if cause := context.Cause(ctx); cause != ctx.Err() { // the notebook itself brought it about
			cancel(cause)
			return
		}
		asked.Store(true)
		if lib.Stop != nil {
			lib.Stop()
		}
		time.AfterFunc(patience, func() { cancel(ctx.Err()) })
	})
	return later, func() { forget(); unwatched() }
}

type runner struct {
	program *lower.Lowered
	sink    Sink
	limits  Limits
	interp  interpreter
	running bool
	left    int          // steps beyond the present allowance
	asked   *atomic.Bool // to stop; one for each run, since a request may come late
	halted  bool         // by that
	reason  func() error // why it is asked to stop
	ended   *over        // where the program was left, if it was
	at      int          // statement of the top level
	told    *told
	watches []*watch // of the interpreter
	trial   trial
}

// printing returns the functions of fmt with those that print printing to the sink.
func (r *runner) printing(fmtNames map[string]reflect.Value) map[string]reflect.Value {
	names := maps.Clone(fmtNames)
	for name, f := range map[string]any{
		"Print":   func(a ...any) (int, error) { return fmt.Fprint(printer{r}, a...) },
		"Printf":  func(format string, a ...any) (int, error) { return fmt.Fprintf(printer{r}, format, a...) },
		"Println": func(a ...any) (int, error) { return fmt.Fprintln(printer{r}, a...) },
	} {
		names[name] = reflect.ValueOf(f)
	}
	return names
}

// printer hands printed text to the sink.
type printer struct{ r *runner }

func (p printer) Write(b []byte) (int, error) {
	p.r.heed()
	p.r.sink.Print(p.r.at, string(b))
	return len(b), nil
}
