package evaluate_test

import (
	"context"
	"encoding/hex"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"
	"unicode"

	"lode/cmd/internal/evaluate"
	"lode/engine/issue"
)

// This file runs the attacks in testdata/attacks. A file holds cases:
//
//	=== name of the case
//	expect: too-long at 2       the code of the issue and its line, codes divided by |;
//	                            "runs" where nothing is wrong
//	time: 5s                    more of a limit than attacks are given, where one needs it
//	text of a cell, or of a whole notebook if it holds a fence or says "whole: yes"
//
// In the text, «5×abc» is five times abc, and «byte ff fe» is these bytes. Whatever a case
// expects, the child has to end by itself within the limits, what is told has to be free of
// control characters, the page of anything that acts, and the folder untouched.

const attacks = "../../../testdata/attacks"

// TestMain lets the test binary be the child that it starts.
func TestMain(m *testing.M) {
	if evaluate.IsChild(os.Args) {
		if err := evaluate.Serve(os.Stdin, os.Stdout); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
		return
	}
	if len(os.Args) == 2 && os.Args[1] == probeWord {
		probe()
		return
	}
	if len(os.Args) == 2 && os.Args[1] == parentWord {
		evaluate.Run(context.Background(), evaluate.Request{File: "a.md", Source: "```go\nfor {\n}\n```\n"}, func(evaluate.Event) { fmt.Println("at") })
		return
	}
	os.Exit(m.Run())
}

type attack struct {
	name, text string
	first      int // line of the notebook that the text begins on
	codes      []string
	line       int // of the issue, in the text
	limits     evaluate.Limits
}

func TestAttacks(t *testing.T) {
	files, err := filepath.Glob(filepath.Join(attacks, "*.txt"))
	if err != nil || len(files) == 0 {
		t.Fatal("no attacks: ", err)
	}
	folder, count := dangerous(t), 0
	before := listing(t, filepath.Dir(folder))
	t.Run("all", func(t *testing.T) {
		for _, file := range files {
			for _, a := range cases(t, file) {
				count++
				t.Run(strings.TrimSuffix(filepath.Base(file), ".txt")+"/"+a.name, func(t *testing.T) {
					t.Parallel()
					a.run(t, folder)
				})
			}
		}
	})
	if count < 60 {
		t.Errorf("there are %d attacks, want at least 60", count)
	}
	if after := listing(t, filepath.Dir(folder)); after != before {
		t.Errorf("files changed: before %s, after %s", before, after)
	}
}

// cases reads the attacks of a file.
func cases(t *testing.T, file string) []attack {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	var list []attack
	for _, part := range strings.Split(string(text), "\n=== ")[1:] {
		name, rest, _ := strings.Cut(part, "\n")
		a := attack{name: name, limits: evaluate.Limits{Time: 10 * time.Second, Memory: 64 << 20, Output: 1 << 20, Steps: 30_000}}
		whole := false
		for {
			word, value, ok := strings.Cut(firstLine(rest), ": ")
			if !ok || !strings.Contains(" expect time whole ", " "+word+" ") {
				break
			}
			_, rest, _ = strings.Cut(rest, "\n")
			switch word {
			case "expect":
				codes, line, _ := strings.Cut(value, " at ")
				a.codes = strings.Split(codes, "|")
				a.line, _ = strconv.Atoi(line)
			case "time":
				if a.limits.Time, err = time.ParseDuration(value); err != nil {
					t.Fatalf("%s: %s: %v", file, name, err)
				}
			case "whole":
				whole = true
			}
		}
		if a.text, a.first = expand(t, rest), 1; !whole && !strings.Contains(rest, "```go") {
			a.text, a.first = "# Attack\n\n```go\n"+a.text+"\n```\n", 4
		}
		list = append(list, a)
	}
	return list
}

func firstLine(s string) string { line, _, _ := strings.Cut(s, "\n"); return line }

var repeated = regexp.MustCompile(`«(\d+)×([^«»]*)»|«byte ([0-9a-f ]+)»`)

func expand(t *testing.T, text string) string {
	return repeated.ReplaceAllStringFunc(text, func(s string) string {
		m := repeated.FindStringSubmatch(s)
		if m[3] != "" {
			b, err := hex.DecodeString(strings.ReplaceAll(m[3], " ", ""))
			if err != nil {
				t.Fatal(err)
			}
			return string(b)
		}
		n, _ := strconv.Atoi(m[1])
		return strings.Repeat(m[2], n)
	})
}

func (a attack) run(t *testing.T, folder string) {
	r := evaluate.Request{File: "attack.md", Folder: folder, Source: a.text, Limits: a.limits, Width: 100, Page: true}
	var issues []issue.Issue
	var page []byte
	began := time.Now()
	failed := evaluate.Run(context.Background(), r, func(e evaluate.Event) {
		issues = append(issues, e.Issues...)
		if e.Shown != nil {
			plainText(t, "what is shown", e.Shown.Terminal)
		}
		if e.Page != nil {
			page = e.Page
		}
	})
	if failed != nil {
		issues = append(issues, *failed)
	}
	t.Logf("%.2f s, page of %d bytes, %d issues", time.Since(began).Seconds(), len(page), len(issues))
	for i, one := range issues {
		if i < 3 {
			t.Logf("[%s] %.300s", one.Code, one.Error())
		}
	}
	a.judge(t, issues)
	if len(issues) == 0 && len(page) == 0 {
		t.Error("there is neither a page nor an issue")
	}
	inert(t, string(page))
	if strings.Contains(string(page), canary) || strings.Contains(fmt.Sprint(issues), canary) {
		t.Error("a secret came out")
	}
}

// judge compares the first issue with what is expected.
func (a attack) judge(t *testing.T, issues []issue.Issue) {
	first := issue.Issue{Code: "runs"}
	if len(issues) > 0 {
		first = issues[0]
	}
	fits := a.line == 0 || first.Line == a.line+a.first-1
	found := false
	for _, code := range a.codes {
		found = found || code == first.Code
	}
	if !fits || !found {
		t.Errorf("got %s at %d, want %v at %d", first.Code, first.Line-a.first+1, a.codes, a.line)
	}
}

// plainText makes sure that a text cannot steer a terminal.
func plainText(t *testing.T, what, text string) {
	for _, r := range text {
		if r != '\n' && unicode.IsControl(r) {
			t.Errorf("%s holds the control character %U", what, r)
			return
		}
	}
}

const canary = "canary-7f3a9"

// dangerous makes a folder that holds what attacks on data files look for.
func dangerous(t *testing.T) string {
	t.Helper()
	outer := t.TempDir()
	folder := filepath.Join(outer, "notebook")
	if err := os.MkdirAll(filepath.Join(folder, "folder.csv"), 0o755); err != nil {
		t.Fatal(err)
	}
	t.Setenv("LODE_CANARY", canary)
	for name, text := range map[string]string{
		"../secret.csv": canary + "\n1\n", "measured.csv": "frequency Hz,level dB\n100,-1\n200,-2\n", ".hidden.csv": canary + "\n1\n",
		"attack.md": canary, "large.csv": "a\n" + strings.Repeat("1\n", 4<<20), "Case.csv": "a\n1\n",
	} {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	special(t, folder)
	return folder
}

// listing tells names, sizes and times of all files below a folder.
func listing(t *testing.T, folder string) string {
	t.Helper()
	var b strings.Builder
	err := filepath.Walk(folder, func(name string, info os.FileInfo, err error) error {
		if err == nil {
			fmt.Fprintln(&b, name, info.Mode(), info.Size(), info.ModTime().UnixNano())
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return b.String()
}
