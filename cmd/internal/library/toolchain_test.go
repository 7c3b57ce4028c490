package library_test

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"lode/engine"
	"lode/engine/issue"
	"lode/engine/library"
)

// toolchain builds exported programs with the compiler and the linker of the standard
// distribution, without asking the go command about the packages each time.
type toolchain struct {
	folder, packages string // where programs are put, and the list of compiled packages
}

// newToolchain compiles the packages that an exported program can import.
func newToolchain(t testing.TB, lib *library.Library) *toolchain {
	t.Helper()
	imports := append(slices.Sorted(maps.Keys(lib.Symbols)), "fmt", "os", "strconv", "strings", "runtime")
	list := exec.Command("go", append([]string{"list", "-export", "-deps", "-f",
		"{{if .Export}}packagefile {{.ImportPath}}={{.Export}}{{end}}"}, imports...)...)
	text, err := list.Output()
	if err != nil {
		t.Fatalf("the packages are not listed: %v", err)
	}
	c := &toolchain{folder: t.TempDir()}
	c.packages = filepath.Join(c.folder, "packages")
	if err := os.WriteFile(c.packages, text, 0o644); err != nil {
		t.Fatal(err)
	}
	return c
}

// ran is what a compiled program printed, told of its failure, and how it ended.
type ran struct {
	shown, told string
	status      int
}

func (c *toolchain) run(program []byte) (r ran, err error) {
	source, object, file := filepath.Join(c.folder, "main.go"), filepath.Join(c.folder, "main.o"), filepath.Join(c.folder, "main")
	if err := os.WriteFile(source, program, 0o644); err != nil {
		return r, err
	}
	for _, step := range [][]string{
		{"tool", "compile", "-importcfg", c.packages, "-p", "main", "-o", object, source},
		{"tool", "link", "-importcfg", c.packages, "-s", "-w", "-o", file, object},
	} {
		if text, err := exec.Command("go", step...).CombinedOutput(); err != nil {
			return r, fmt.Errorf("the toolchain refuses it: %w\n%s", err, text)
		}
	}
	return execute(file)
}

func execute(file string) (r ran, err error) {
	ctx, cancel := context.WithTimeout(context.Background(), 20*time.Second)
	defer cancel()
	var out, told bytes.Buffer
	command := exec.CommandContext(ctx, file)
	command.Stdout, command.Stderr = &out, &told
	err = command.Run()
	var exit *exec.ExitError
	if errors.As(err, &exit) {
		r.status, err = exit.ExitCode(), ctx.Err()
	}
	r.shown, r.told = out.String(), told.String()
	return r, err
}

// same wants the compiled program to print what the interpreter showed, and to end as it did.
func (c *toolchain) same(t *testing.T, n *engine.Notebook, got outcome) {
	t.Helper()
	text, err := n.Export()
	if err != nil {
		t.Errorf("it is not exported: %v\n%s", err, n.Book)
		return
	}
	compiled, err := c.run(text)
	if err != nil {
		t.Errorf("%v\n%s", err, n.Book)
		return
	}
	if compiled.shown != got.shown {
		t.Errorf("compiled it prints\n%s\ninterpreted\n%s\nof\n%s", compiled.shown, got.shown, n.Book)
	}
	if !compiled.endedAs(got.issues) {
		t.Errorf("compiled it ends with status %d and %q, interpreted with %v\n%s", compiled.status, compiled.told, got.issues, n.Book)
	}
}

// endedAs compares the end of a compiled program with the issue of an interpreted one.
func (r ran) endedAs(issues []issue.Issue) bool {
	if len(issues) == 0 {
		return r.status == 0
	}
	mark, known := marks()[issues[0].Code]
	switch {
	case strings.HasPrefix(r.told, "panic: reflect"): // of Go's own packages, which our text rewords
		mark = "reflect"
	case !known:
		mark = issues[0].What
	}
	return r.status != 0 && strings.Contains(r.told, mark)
}

// marks has what the standard toolchain says where a run ends in an issue.
func marks() map[string]string {
	return map[string]string{
		issue.Index: "out of range", issue.ZeroDivision: "divide by zero", issue.NilMap: "nil map",
		issue.NilPointer: "nil pointer", issue.Assertion: "interface conversion", issue.Size: "panic",
		issue.Unhashable: "panic", issue.Panic: "panic",
	}
}

// comparable reports whether the two ways of running have to end alike: budgets are the
// interpreter's alone, and addresses in memory differ.
func (o outcome) comparable() bool {
	if strings.Contains(o.shown, "0x") {
		return false
	}
	if len(o.issues) == 0 {
		return true
	}
	switch o.issues[0].Code {
	case issue.TooLong, issue.TooDeep, issue.Stopped:
		return false
	}
	return true
}
