package library_test

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"lode/cmd/internal/library"
	"lode/engine"
	"lode/engine/book"
	"lode/engine/issue"
	englib "lode/engine/library"
)

// This file runs the corpus in testdata/cells. Each fenced cell of its notebooks is a
// notebook of its own. What a line gives is written behind it:
//
//	x          // want: 5 kΩ        a shown value
//	fmt.Println(x) // prints: 5 kΩ  what is printed, in order; lines are joined by " | "
//	1*mm + 1   // issue: code       an issue on this line; text in parentheses behind the
//	                                code has to occur in it
//
// A shown value, printed text or issue that is not announced fails the test.

const corpus = "../../../testdata/cells"

func load(t testing.TB) *englib.Library {
	t.Helper()
	lib, err := library.Load()
	if err != nil {
		t.Fatal(err)
	}
	return lib
}

func TestCells(t *testing.T) {
	lib, count := load(t), 0
	for name, code := range cells(t) {
		count++
		t.Run(name, func(t *testing.T) { runCell(t, lib, code) })
	}
	if count < 200 {
		t.Errorf("the corpus has %d cells, want at least 200", count)
	}
}

// cells returns the code of each cell of the corpus by file and line.
func cells(t testing.TB) map[string]string {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(corpus, "*.md"))
	if err != nil || len(files) == 0 {
		t.Fatal("no corpus: ", err)
	}
	all := map[string]string{}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range book.Parse(file, text).Cells() {
			all[fmt.Sprintf("%s:%d", strings.TrimSuffix(filepath.Base(file), ".md"), c.Line)] = c.Code
		}
	}
	return all
}

// outcome is what a cell gives, by line.
type outcome struct {
	values  map[int][]string
	printed string
	shown   string // everything, in the form of an exported program
	issues  []issue.Issue
}

func outcomeOf(lib *englib.Library, code string) outcome {
	n := engine.Open(lib, "cell.lode", []byte(code))
	n.Limits.Depth = 300
	return runOf(n, time.Minute)
}

// runOf runs what the checker accepted.
func runOf(n *engine.Notebook, longest time.Duration) outcome {
	o := outcome{values: map[int][]string{}}
	if o.issues = n.Issues; len(o.issues) > 0 {
		return o
	}
	ctx, cancel := context.WithTimeout(context.Background(), longest)
	defer cancel()
	failed := n.Run(ctx, func(r engine.Result) {
		if r.Printed != "" {
			o.printed += r.Printed
			o.shown += r.Printed
			return
		}
		o.shown += exported(r)
		o.values[r.Line] = append(o.values[r.Line], fmt.Sprint(r.Value))
	})
	if failed != nil {
		o.issues = []issue.Issue{*failed}
	}
	return o
}

func runCell(t *testing.T, lib *englib.Library, code string) {
	got := outcomeOf(lib, code)
	announced, prints := 0, []string{}
	for i, line := range strings.Split(code, "\n") {
		kind, text := expectation(line)
		switch kind {
		case "issue":
			announced++
			expectIssue(t, got.issues, i+1, text)
		case "prints":
			prints = append(prints, text)
		}
		values := strings.Join(got.values[i+1], " | ")
		if kind == "want" && values != text || kind != "want" && values != "" {
			t.Errorf("line %d: %s\n\tgot  %s\n\twant %s", i+1, line, values, text)
		}
	}
	if want := strings.Join(prints, " | "); want != oneLine(got.printed) {
		t.Errorf("printed %s\n\twant    %s", oneLine(got.printed), want)
	}
	if len(got.issues) > announced {
		for _, s := range got.issues {
			t.Errorf("not announced: %v [%s]", s, s.Code)
		}
	}
}

// exported writes a result as an exported program does: label, text and exact number.
func exported(r engine.Result) string {
	label, _, more := strings.Cut(r.Label, "\n")
	if more {
		label += "…"
	}
	exact := ""
	switch v := r.Value.(type) {
	case interface{ SI() float64 }:
		exact = "\t" + strconv.FormatFloat(v.SI(), 'g', -1, 64)
	case float64:
		exact = "\t" + strconv.FormatFloat(v, 'g', -1, 64)
	}
	return fmt.Sprintf("%s\t%v%s\n", label, r.Value, exact)
}

func expectation(line string) (kind, text string) {
	for _, kind := range []string{"want", "prints", "issue"} {
		if _, text, ok := strings.Cut(line, "// "+kind+": "); ok {
			return kind, strings.TrimSpace(text)
		}
	}
	return "", ""
}

func oneLine(printed string) string {
	return strings.ReplaceAll(strings.TrimSuffix(printed, "\n"), "\n", " | ")
}

func expectIssue(t *testing.T, issues []issue.Issue, line int, want string) {
	code, text, _ := strings.Cut(strings.TrimSuffix(want, ")"), " (")
	for _, i := range issues {
		if i.Line == line && i.Code == code && strings.Contains(i.Error(), text) {
			return
		}
	}
	t.Errorf("line %d: want issue %s, got %v", line, want, issues)
}
