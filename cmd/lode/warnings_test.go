package main

import (
	"html"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// TestOutside runs a notebook that leaves ranges and wants the warnings that stand behind its lines, in
// order and once each: in the terminal, under the results of the page, and in its list of methods.
func TestOutside(t *testing.T) {
	const file = "../../testdata/warnings/outside.md"
	source, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	name := filepath.Join(t.TempDir(), "page.html")
	out, told, exit := call("run", file, "-o", name)
	page, err := os.ReadFile(name)
	if exit != exitFine || err != nil {
		t.Fatalf("exit code %d, %v\n%s", exit, err, told)
	}
	want := found(`// mind: (.*)`, string(source))
	if len(want) < 15 {
		t.Fatalf("the notebook has %d warnings to wait for", len(want))
	}
	wants(t, "terminal", found(`(?m)^  mind: (.*)$`, strings.ReplaceAll(out, "\n         ", " ")), want)
	wants(t, "page", found(`<p class="mind">(.*?)</p>`, string(page)), want)
	methods := found(`<dd class="left">(.*?)</dd>`, string(page))
	slices.Sort(methods)
	slices.Sort(want)
	wants(t, "methods", methods, want)
}

// found lists what an expression has in its parentheses.
func found(expression, text string) []string {
	var list []string
	for _, m := range regexp.MustCompile(expression).FindAllStringSubmatch(text, -1) {
		list = append(list, html.UnescapeString(m[1]))
	}
	return list
}

func wants(t *testing.T, where string, got, want []string) {
	t.Helper()
	for i := range max(len(got), len(want)) {
		g, w := "nothing", "nothing"
		if i < len(got) {
			g = got[i]
		}
		if i < len(want) {
			w = want[i]
		}
		if g != w {
			t.Errorf("%s, warning %d:\n got %s\nwant %s", where, i+1, g, w)
			return
		}
	}
}
