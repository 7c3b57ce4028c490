package library_test

import (
	"context"
	"go/scanner"
	"go/token"
	"math/rand/v2"
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
// promise: what the checker accepts runs, or ends in an issue that stands in the cell.
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
	f.Fuzz(func(t *testing.T, code string, seed uint64) {
		if seed != 0 {
			code = mutate(code, all, rand.New(rand.NewPCG(seed, seed)))
		}
		promise(t, lib, code)
	})
}

func promise(t *testing.T, lib *library.Library, code string) {
	n := engine.Open(lib, "cell.lode", []byte(code))
	for _, i := range n.Issues {
		inside(t, code, i)
	}
	if len(n.Issues) > 0 {
		return
	}
	n.Limits = run.Limits{Steps: 20_000, Depth: 50}
	ctx, cancel := context.WithTimeout(context.Background(), 5*time.Second)
	defer cancel()
	if failed := n.Run(ctx, func(engine.Result) {}); failed != nil {
		inside(t, code, *failed)
	}
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

type piece struct {
	from, to int
	tok      token.Token
}

// pieces cuts code into tokens.
func pieces(code string) []piece {
	var s scanner.Scanner
	file := token.NewFileSet().AddFile("", -1, len(code))
	s.Init(file, []byte(code), func(token.Position, string) {}, 0)
	var all []piece
	for {
		pos, tok, text := s.Scan()
		if tok == token.EOF {
			return all
		}
		if text == "" {
			text = tok.String()
		}
		from := file.Offset(pos)
		if text != "\n" && from+len(text) <= len(code) {
			all = append(all, piece{from, from + len(text), tok})
		}
	}
}

// mutate takes tokens and lines away, doubles them, and puts others from the corpus there.
func mutate(code string, all []string, r *rand.Rand) string {
	for range 1 + r.IntN(2) {
		other := all[r.IntN(len(all))]
		if r.IntN(4) == 0 {
			code = mutateLines(code, other, r)
			continue
		}
		mine, theirs := pieces(code), pieces(other)
		if len(mine) == 0 || len(theirs) == 0 {
			return other
		}
		p, q := mine[r.IntN(len(mine))], theirs[r.IntN(len(theirs))]
		for range 20 { // rather one of the same kind
			if q.tok == p.tok {
				break
			}
			q = theirs[r.IntN(len(theirs))]
		}
		switch r.IntN(12) {
		case 0:
			code = code[:p.from] + code[p.to:]
		case 1:
			code = code[:p.to] + " " + code[p.from:]
		default:
			code = code[:p.from] + other[q.from:q.to] + code[p.to:]
		}
	}
	return code
}

func mutateLines(code, other string, r *rand.Rand) string {
	mine, theirs := strings.Split(code, "\n"), strings.Split(other, "\n")
	i, j := r.IntN(len(mine)), r.IntN(len(theirs))
	switch r.IntN(3) {
	case 0:
		mine = append(mine[:i:i], mine[i+1:]...)
	case 1:
		mine = append(mine[:i:i], append([]string{theirs[j]}, mine[i:]...)...)
	default:
		mine[i] = theirs[j]
	}
	return strings.Join(mine, "\n")
}
