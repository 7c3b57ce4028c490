package library_test

import (
	"context"
	"strings"
	"testing"

	"lode/cmd/internal/library"
	"lode/engine"
)

// TestExamples runs the example of every topic of the help as it stands.
func TestExamples(t *testing.T) {
	lib, without := load(t), 0
	library.Files(lib, func(string) ([]byte, error) { return []byte("frequency Hz, level dB\n82.4, -3.1\n"), nil })
	for _, topic := range library.Topics() {
		example := topic.Complete().Example
		if example == "" {
			if callable(topic) {
				without++
				t.Errorf("%s: no example for %s", topic.Name, topic.Signature)
			}
			continue
		}
		n := engine.Open(lib, topic.Name, []byte("```go\n"+example+"\n```\n"))
		for _, i := range n.Issues {
			t.Errorf("%s: %v\n%s", topic.Name, i, example)
		}
		if len(n.Issues) > 0 {
			continue
		}
		if failed := n.Run(context.Background(), func(engine.Result) {}); failed != nil {
			t.Errorf("%s: %v\n%s", topic.Name, failed, example)
		}
	}
	t.Logf("%d functions without", without)
}

// callable reports whether a topic is a function that a notebook calls for its own sake.
func callable(topic library.Topic) bool {
	if strings.HasPrefix(topic.Signature, "type ") || !strings.Contains(topic.Signature, "(") || strings.HasPrefix(topic.Name, "units.") {
		return false
	}
	return true
}

// TestCodeInHelp wants code in the help to stand as code, line by line.
func TestCodeInHelp(t *testing.T) {
	for _, topic := range library.Topics() {
		for _, p := range strings.Split(topic.Text, "\n\n") {
			if !strings.HasPrefix(p, "\t") && strings.Contains(p, "\n\t") {
				t.Errorf("%s: the first line of this is not set as code:\n%s", topic.Name, p)
			}
		}
	}
}
