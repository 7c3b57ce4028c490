package run

import (
	"context"
	"errors"
	"io"
	"path"
	"reflect"
	"strings"

	"github.com/traefik/yaegi/interp"

	"lode/engine/library"
	"lode/engine/lower"
)

// This file is the only one that knows which interpreter runs a program.

// interpreter is what the rest of the package asks of one.
type interpreter interface {
	Eval(source string) (reflect.Value, error)
	EvalWithContext(ctx context.Context, source string) (reflect.Value, error)
}

// panicValue returns what a program panicked with, where that is what err tells.
func panicValue(err error) (any, bool) {
	var p interp.Panic
	if errors.As(err, &p) {
		return p.Value, true
	}
	return nil, false
}

// start makes an interpreter that has the library and the host, and nothing else.
func (r *runner) start(lib *library.Library) error {
	i := interp.New(interp.Options{SourcecodeFilesystem: nothing{}, Stdin: strings.NewReader(""), Stdout: printer{r}, Stderr: io.Discard})
	exports := interp.Exports{lower.Host + "/host": r.host(lib)}
	for p, names := range lib.Symbols {
		if p == "fmt" {
			names = r.printing(names)
		}
		// Two slashes mean the same path. Where the interpreter finds fmt under its plain name
		// it takes the library for Go's own and compiles its generic sources, which takes longer
		// than all the rest.
		exports[p+"//"+path.Base(p)] = names
	}
	r.interp = i
	return i.Use(exports)
}
