package library_test

import (
	"flag"
	"math/rand/v2"
	"os"
	"sort"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"lode/engine"
	"lode/engine/issue"
	"lode/engine/library"
	"lode/engine/run"
)

// FuzzCells changes the cells of the corpus, token by token, and holds the language to its
// promise: what the checker accepts runs, or ends in an issue that stands in the cell, and the
// standard toolchain gives what the interpreter gives. Each accepted cell is compiled while
// fuzzing; a plain test run compiles one in sixteen of those that are made up here, since
// TestAgainstCompiler has the corpus.
func FuzzCells(f *testing.F) {
	lib := load(f)
	var all []string
	for _, code := range cells(f) {
		all = append(all, code)
	}
	sort.Strings(all)
	for i, code := range all {
		f.Add(code, uint64(0))
		f.Add(code, uint64(i)+1)
	}
	var compiler *toolchain
	if fuzzing() || os.Getenv("LODE_OUTSIDE") == "1" {
		compiler = newToolchain(f, lib)
	}
	f.Fuzz(func(t *testing.T, code string, seed uint64) {
		if seed != 0 {
			code = mutate(code, all, rand.New(rand.NewPCG(seed, seed)))
		}
		n, got := promise(t, lib, code)
		if compiler != nil && len(n.Issues) == 0 && got.comparable() && (fuzzing() || seed%16 == 1) {
			compiler.same(t, n, got)
		}
	})
}

// fuzzing reports whether this process makes up inputs, or works for one that does.
func fuzzing() bool {
	return flag.Lookup("test.fuzz").Value.String() != ""
}

func promise(t *testing.T, lib *library.Library, code string) (*engine.Notebook, outcome) {
	n := engine.Open(lib, "cell.lode", []byte(code))
	n.Limits = run.Limits{Steps: 20_000, Depth: 50}
	got := runOf(n, 5*time.Second)
	for _, i := range got.issues {
		inside(t, code, i)
	}
	return n, got
}

// inside wants an issue of the notebook, at a place in the notebook.
func inside(t *testing.T, code string, i issue.Issue) {
	t.Helper()
	switch i.Code {
	case issue.NotText, issue.Empty, issue.NoCells:
		return
	case issue.Interpreter, "go", "internal":
		t.Errorf("a fault of ours: %v\n%s", i, code)
	}
	lines := strings.Split(code, "\n")
	if i.Line < 1 || i.Line > len(lines) {
		t.Fatalf("%v [%s] stands outside of the cell:\n%s", i, i.Code, code)
	}
	if width := utf8.RuneCountInString(lines[i.Line-1]) + 1; i.Column < 1 || i.Column > width {
		t.Errorf("%v [%s] stands beside its line:\n%s", i, i.Code, code)
	}
	if i.What == "" || strings.Contains(i.Error(), "ˑ") && !strings.Contains(code, "ˑ") {
		t.Errorf("%v [%s] shows what is ours:\n%s", i, i.Code, code)
	}
}
