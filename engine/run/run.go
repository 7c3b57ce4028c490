// Package run lets a lowered notebook run in the interpreter, sealed from the machine: no
// source is read from disk, and only the packages of the library can be imported.
package run

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path"
	"reflect"
	"strings"

	"github.com/traefik/yaegi/interp"

	"lode/engine/issue"
	"lode/engine/library"
	"lode/engine/lower"
)

// Sink takes what a running notebook gives, in order.
type Sink interface {
	// At is told of each statement of the top level before it runs.
	At(spot int)
	// Show takes the value of a shown result; spot is its number in Lowered.Spots.
	Show(spot int, value any)
	// Print takes text that the notebook prints while statement spot runs.
	Print(spot int, text string)
}

// failure is how a library error leaves the interpreter.
type failure struct {
	spot int
	err  error
}

// nothing is a file system without files.
type nothing struct{}

func (nothing) Open(name string) (fs.File, error) {
	return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrNotExist}
}

// Run executes a program from the top. It returns the issue that ended it, if one did.
func Run(ctx context.Context, lib *library.Library, program *lower.Lowered, sink Sink) (failed *issue.Issue) {
	r := &runner{program: program, sink: sink}
	defer func() {
		if v := recover(); v != nil {
			failed = r.failed(v)
		}
	}()
	i, err := r.interpreter(lib)
	if err != nil {
		return r.issue(err)
	}
	if _, err = i.EvalWithContext(ctx, program.Source); err == nil {
		_, err = i.EvalWithContext(ctx, "notebook."+lower.Entry+"()")
	}
	if err != nil {
		return r.issue(err)
	}
	return nil
}

type runner struct {
	program *lower.Lowered
	sink    Sink
	at      int
}

func (r *runner) interpreter(lib *library.Library) (*interp.Interpreter, error) {
	i := interp.New(interp.Options{SourcecodeFilesystem: nothing{}, Stdin: strings.NewReader(""), Stdout: printer{r}, Stderr: io.Discard})
	exports := interp.Exports{lower.Host + "/host": r.host()}
	for p, names := range lib.Symbols {
		exports[p+"/"+path.Base(p)] = names
	}
	return i, i.Use(exports)
}

func (r *runner) host() map[string]reflect.Value {
	return map[string]reflect.Value{
		"At":   reflect.ValueOf(func(spot int) { r.at = spot; r.sink.At(spot) }),
		"Show": reflect.ValueOf(func(spot int, value any) { r.sink.Show(spot, value) }),
		"Fail": reflect.ValueOf(func(spot int, err error) { panic(failure{spot, err}) }),
	}
}

// printer hands printed text to the sink.
type printer struct{ r *runner }

func (p printer) Write(b []byte) (int, error) {
	p.r.sink.Print(p.r.at, string(b))
	return len(b), nil
}

// issue turns what ended a run into words.
func (r *runner) issue(err error) *issue.Issue {
	var p interp.Panic
	switch {
	case errors.As(err, &p):
		return r.failed(p.Value)
	case errors.Is(err, context.Canceled), errors.Is(err, context.DeadlineExceeded):
		return r.at1("stopped", "the run was stopped", "", "")
	}
	return r.at1("interpreter", "the interpreter does not take this program", err.Error(), "this is a fault of the program that runs notebooks, not of the notebook")
}

func (r *runner) failed(v any) *issue.Issue {
	switch v := v.(type) {
	case failure:
		r.at = v.spot
		what, hint, _ := strings.Cut(v.err.Error(), "\nhint: ")
		return r.split(what, hint)
	case error:
		return r.at1("runtime", strings.TrimPrefix(v.Error(), "runtime error: "), "", "")
	case reflect.Value:
		return r.at1("panic", "panic: "+fmt.Sprint(v.Interface()), "", "")
	}
	return r.at1("panic", fmt.Sprint("panic: ", v), "", "")
}

// split takes the parts out of an error text of the form "what: got X, want Y".
func (r *runner) split(text, hint string) *issue.Issue {
	i := r.at1("failed", text, "", hint)
	if what, rest, ok := strings.Cut(text, ": got "); ok {
		i.What, i.Got = what, rest
		if got, want, ok := strings.Cut(rest, ", want "); ok {
			i.Got, i.Want = got, want
		}
	}
	return i
}

func (r *runner) at1(code, what, got, hint string) *issue.Issue {
	i := &issue.Issue{Code: code, What: what, Got: got, Hint: hint}
	if r.at < len(r.program.Spots) {
		spot := r.program.Spots[r.at]
		i.Place, i.Source = spot.Place, spot.Source
	}
	return i
}
