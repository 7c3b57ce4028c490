package library_test

import (
	"context"
	"testing"

	"lode/cmd/internal/library"
	"lode/engine"
	"lode/engine/check"
)

// TestLanguageExamples runs the example of every topic on the language; each has to show
// something or define something, without an issue.
func TestLanguageExamples(t *testing.T) {
	lib := load(t)
	for _, topic := range library.Language() {
		n := engine.Open(lib, topic.Name+".md", []byte("```go\n"+topic.Example+"\n```\n"))
		for _, i := range n.Issues {
			t.Errorf("%s: %v", topic.Name, i)
		}
		if len(n.Issues) == 0 {
			if failed := n.Run(context.Background(), func(engine.Result) {}); failed != nil {
				t.Errorf("%s: %v", topic.Name, failed)
			}
		}
	}
}

// TestLanguageIsWhole wants help for every function and unit in scope, once.
func TestLanguageIsWhole(t *testing.T) {
	seen := map[string]int{}
	for _, topic := range library.Language() {
		seen[topic.Name]++
	}
	for _, name := range append(check.Functions(), "degC", "percent", "π") {
		if seen[name] == 0 {
			t.Errorf("%s: no help", name)
		}
	}
	for name := range load(t).Units {
		if seen[name] == 0 {
			t.Errorf("%s: no help", name)
		}
	}
}
