package main

import (
	"bytes"
	"context"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"lode/cmd/internal/evaluate"
	"lode/cmd/internal/present"
	"lode/engine/issue"
	"lode/render/text"
)

// The folder testdata/issues holds, for each code that an issue can have, the smallest
// notebook that produces it; the file's name is the code. The page engine/issue/ISSUES.md
// is made of them.
const (
	issueFolder = "../../testdata/issues"
	issuePage   = "../../engine/issue/ISSUES.md"
)

var issueOptions = regexp.MustCompile(`<!-- options: (.*) -->`)

// TestIssues runs every notebook of the folder and writes the page of exact texts.
func TestIssues(t *testing.T) {
	files, _ := filepath.Glob(issueFolder + "/*.md")
	if len(files) < 40 {
		t.Fatalf("got %d kinds of issue, want at least 40", len(files))
	}
	var page bytes.Buffer
	page.WriteString("# Issues\n\nEvery kind of issue by its code: the smallest notebook that produces it, and what is told.\n" +
		"Made by `go test ./cmd/lode -run TestIssues -update` from `testdata/issues`.\n")
	for _, file := range files {
		code := strings.TrimSuffix(filepath.Base(file), ".md")
		got := firstIssue(t, file)
		if got == nil || got.Code != code {
			t.Errorf("%s: got %+v, want an issue of that code", code, got)
			continue
		}
		checkWording(t, got)
		writeIssue(&page, code, file, *got)
	}
	golden(t, issuePage, page.String())
}

// firstIssue runs a notebook as the command would and returns the first issue.
func firstIssue(t *testing.T, file string) *issue.Issue {
	t.Helper()
	source, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	p := program{ctx: context.Background(), out: &bytes.Buffer{}, err: &bytes.Buffer{}}
	args := []string{file}
	if m := issueOptions.FindSubmatch(source); m != nil {
		args = append(args, strings.Fields(string(m[1]))...)
	}
	o, code := p.readOptions(args)
	if code != exitFine {
		t.Fatalf("%s: wrong options %v", file, args)
	}
	var first *issue.Issue
	r := p.request("notes.md", string(source))
	r.Limits, r.Knobs = o.limits, o.knobs
	failed := evaluate.Run(context.Background(), r, func(e evaluate.Event) {
		if len(e.Issues) > 0 && first == nil {
			first = &e.Issues[0]
		}
	})
	if first == nil {
		first = failed
	}
	return first
}

// checkWording holds an issue to the one form: no dot at the end, something got or wanted
// where there is a place, and a caret inside of the line.
func checkWording(t *testing.T, i *issue.Issue) {
	t.Helper()
	if i.What == "" || strings.HasSuffix(i.What, ".") || strings.Contains(i.What, "ˑ") || strings.Contains(i.Got+i.Want+i.Hint, "ˑ") {
		t.Errorf("%s: %q breaks the form", i.Code, i.What)
	}
	if i.Line > 0 && (i.Column < 1 || i.Column > len([]rune(i.Source))+1 || i.Source == "") {
		t.Errorf("%s: column %d is outside of %q", i.Code, i.Column, i.Source)
	}
}

func writeIssue(page *bytes.Buffer, code, file string, i issue.Issue) {
	page.WriteString("\n## " + code + "\n\n")
	if source, _ := os.ReadFile(file); bytes.IndexByte(source, 0) < 0 {
		page.WriteString("~~~\n" + strings.TrimRight(string(source), "\n") + "\n~~~\n\n")
	}
	drawn := strings.TrimRight(text.Style{Width: 100}.Fault(present.Fault(i)), "\n")
	page.WriteString("~~~\n" + drawn + "\n~~~\n")
}

// TestIssuesAreAllShown finds the codes in the engine's and the command's source and wants
// a notebook for each, but for those that no notebook can bring about.
func TestIssuesAreAllShown(t *testing.T) {
	never := map[string]string{
		"interpreter": "a fault of ours", "go": "left to go/types, only after a fault of ours", "crashed": "a fault of ours", "page": "a fault of ours",
		"unreadable": "told by the command", "stopped": "by hand, with Ctrl-C", "depth-limit": "too-deep comes first", "long-line": "too long for a page", "more": "behind twenty others",
	}
	for _, code := range codesInSource(t) {
		if _, err := os.Stat(filepath.Join(issueFolder, code+".md")); err != nil && never[code] == "" {
			t.Errorf("%s: no notebook shows it: add testdata/issues/%s.md", code, code)
		}
	}
}

var codeForm = regexp.MustCompile(`^[a-z]+(-[a-z]+)*$`)

// codesInSource collects the code of each report call, of each Code field, and of each
// constant of package issue.
func codesInSource(t *testing.T) []string {
	var codes []string
	seen := map[string]bool{}
	add := func(e ast.Expr) {
		if lit, ok := e.(*ast.BasicLit); ok && lit.Kind == token.STRING {
			if s, _ := strconv.Unquote(lit.Value); codeForm.MatchString(s) && !seen[s] {
				seen[s] = true
				codes = append(codes, s)
			}
		}
	}
	for _, pattern := range []string{"../../engine/*/*.go", "../../cmd/internal/evaluate/*.go"} {
		files, _ := filepath.Glob(pattern)
		for _, file := range files {
			if strings.HasSuffix(file, "_test.go") {
				continue
			}
			f, err := parser.ParseFile(token.NewFileSet(), file, nil, 0)
			if err != nil {
				t.Fatal(err)
			}
			ast.Inspect(f, func(n ast.Node) bool { codesIn(n, f.Name.Name, add); return true })
		}
	}
	return codes
}

func codesIn(n ast.Node, pkg string, add func(ast.Expr)) {
	switch n := n.(type) {
	case *ast.CallExpr:
		at := map[string]int{"report": 1, "stopAt": 3}
		if s, ok := n.Fun.(*ast.SelectorExpr); ok && at[s.Sel.Name] > 0 && len(n.Args) > at[s.Sel.Name] {
			add(n.Args[at[s.Sel.Name]])
		}
	case *ast.KeyValueExpr:
		if id, ok := n.Key.(*ast.Ident); ok && id.Name == "Code" {
			add(n.Value)
		}
	case *ast.ValueSpec:
		if pkg == "issue" && len(n.Values) == 1 {
			add(n.Values[0])
		}
	}
}
