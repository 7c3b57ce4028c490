package session

import (
	"slices"
	"testing"
)

// TestDiffer wants the lines of code that only one of two experiments has, and no prose.
func TestDiffer(t *testing.T) {
	s := &Session{file: "a.md", experiments: map[string]*experiment{
		"one": {text: "Words.\n\n```go\nx := 1*mm\n\ny := 2*mm\nx\nx\n```\n"},
		"two": {text: "Other words.\n\n```go\nx := 3*mm\n```\n\n```go\ny := 2*mm\nx\n```\n"},
	}}
	want := []Only{{"one", "x := 1*mm"}, {"one", "x"}, {"two", "x := 3*mm"}}
	if got := s.Differ("one", "two"); !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
	if got := s.Differ("one", "one"); len(got) != 0 {
		t.Errorf("got %v for the same", got)
	}
}
