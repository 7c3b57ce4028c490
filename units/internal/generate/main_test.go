package main

import (
	"go/format"
	"os"
	"testing"
)

// TestFresh fails while the generated files are older than the tables.
func TestFresh(t *testing.T) {
	for name, text := range map[string]string{"kinds_gen.go": kinds(), "constants_gen.go": constants()} {
		want, err := format.Source([]byte(text))
		if err != nil {
			t.Fatal(err)
		}
		got, err := os.ReadFile("../../" + name)
		if err != nil || string(got) != string(want) {
			t.Errorf("%s is stale (%v); go generate ./units writes it anew", name, err)
		}
	}
}
