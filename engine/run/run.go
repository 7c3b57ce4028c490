// Package run lets a lowered notebook run in the interpreter, sealed from the machine: no
// source is read from disk, and only the packages of the library can be imported.
package run

import (
	"context"
	"fmt"
	"io/fs"
	"maps"
	"reflect"

	"lode/engine/issue"
	"lode/engine/library"
	"lode/engine/lower"
	"lode/engine/worked"
)

// Sink takes what a running notebook gives, in order.
type Sink interface {
	// At is told of each statement of the top level before it runs.
	At(spot int)
	// Show takes the value of a shown result; spot is its number in Lowered.Spots.
	Show(spot int, value any)
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

// Run executes a program from the top. It returns the issue that ended it, if one did.
func Run(ctx context.Context, lib *library.Library, program *lower.Lowered, limits Limits, sink Sink) (failed *issue.Issue) {
	r := &runner{program: program, sink: sink, limits: limits.withDefaults()}
	defer func() {
		if v := recover(); v != nil {
			failed = r.failed(v)
		}
	}()
	if err := r.start(lib); err != nil {
		return r.issue(err)
	}
	if _, err := r.interp.EvalWithContext(ctx, program.Source); err != nil {
		return r.issue(err)
	}
	r.running = true
	if _, err := r.interp.EvalWithContext(ctx, "notebook."+lower.Entry+"()"); err != nil {
		return r.issue(err)
	}
	if r.left != nil {
		return r.placeAt(r.left.spot, r.used(*r.left))
	}
	return nil
}

type runner struct {
	program *lower.Lowered
	sink    Sink
	limits  Limits
	interp  interpreter
	running bool
	left    *over // why the program was left, if it was
	at      int   // statement of the top level
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
	p.r.sink.Print(p.r.at, string(b))
	return len(b), nil
}
