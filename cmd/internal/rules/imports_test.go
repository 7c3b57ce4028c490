package rules

import (
	"strconv"
	"strings"
	"testing"
)

// rule forbids imports: of Deny (folders of ours, or whole paths) in From, except in Except.
type rule struct {
	From, Except, Deny []string
	Why                string
}

var rules = []rule{
	{[]string{"units"}, nil, []string{"lode/engine", "lode/stdlib", "lode/render", "lode/cmd"},
		"units is the ground that everything stands on: it imports nothing of ours, so that it can be used and tested alone"},
	{[]string{"stdlib"}, nil, []string{"lode/engine", "lode/render", "lode/cmd"},
		"physics knows neither the language nor the page: its functions work in any Go program"},
	{[]string{"engine"}, nil, []string{"lode/units", "lode/stdlib", "lode/render", "lode/cmd"},
		"the language is handed a Library value and knows no physics: its tests run with a toy library of five lines"},
	{[]string{"render"}, nil, []string{"lode/stdlib", "lode/engine", "lode/cmd"},
		"drawing takes plain documents and frames: it knows neither how they were computed nor by whom"},
	{[]string{"cmd", "engine", "stdlib", "units", "render"}, []string{"engine/run"}, []string{"github.com/traefik/yaegi"},
		"the interpreter has one importer, so that it can be replaced"},
	{[]string{"cmd", "engine", "stdlib", "units", "render"}, []string{"render/figure"}, []string{"gonum.org/v1/plot"},
		"the plotting library has one importer, so that it can be replaced"},
	{[]string{"cmd", "engine", "stdlib", "units", "render"}, []string{"cmd/lode"}, []string{"github.com/peterh/liner"},
		"the line editor has one importer, so that it can be replaced"},
	{[]string{"engine", "stdlib", "units", "render"}, nil, []string{"unsafe", "os/exec", "net", "net/http", "plugin"},
		"a notebook from a stranger is safe to run: nothing that it can reach starts a process, opens a socket or goes around the types"},
}

func (r rule) broken(s source, imported string) bool {
	return under(s.Package, r.From...) && !under(s.Package, r.Except...) && under(imported, r.Deny...)
}

func TestImports(t *testing.T) {
	importers := map[string]map[string]bool{}
	for _, s := range sources(t) {
		for _, i := range s.File.Imports {
			imported, _ := strconv.Unquote(i.Path.Value)
			for _, r := range rules {
				if r.broken(s, imported) && !(s.Test && r.outside()) {
					t.Errorf("%s imports %s: %s", s.Name, imported, r.Why)
				}
			}
			if !s.Test {
				note(importers, imported, s.Package)
			}
		}
	}
	for _, lib := range []string{"github.com/traefik/yaegi", "gonum.org/v1/plot", "github.com/peterh/liner"} {
		if n := len(importers[lib]); n > 1 {
			t.Errorf("%s is imported by %d packages, want one: %v", lib, n, importers[lib])
		}
	}
}

// outside reports whether a rule is about the world outside, where tests may look.
func (r rule) outside() bool { return r.Deny[0] == "unsafe" }

func note(importers map[string]map[string]bool, imported, pkg string) {
	for _, lib := range []string{"github.com/traefik/yaegi", "gonum.org/v1/plot", "github.com/peterh/liner"} {
		if strings.HasPrefix(imported, lib) {
			if importers[lib] == nil {
				importers[lib] = map[string]bool{}
			}
			importers[lib][pkg] = true
		}
	}
}

// TestRules breaks each rule on purpose.
func TestRules(t *testing.T) {
	for i, r := range rules {
		s := source{Package: r.From[0] + "/x"}
		if !r.broken(s, r.Deny[0]) || r.broken(s, "strings") {
			t.Errorf("rule %d (%s) does not tell what it forbids", i, r.Why)
		}
	}
}
