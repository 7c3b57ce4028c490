package library_test

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

// TestFresh makes the generated files once more and compares.
func TestFresh(t *testing.T) {
	if testing.Short() {
		t.Skip("reads every package of the library")
	}
	out := t.TempDir()
	if text, err := exec.Command("go", "run", "./generate", "-o", out).CombinedOutput(); err != nil {
		t.Fatalf("the generator fails: %v\n%s", err, text)
	}
	for _, name := range generated(t, out) {
		want, err := os.ReadFile(filepath.Join(out, name))
		if err != nil {
			t.Fatal(err)
		}
		got, err := os.ReadFile(name)
		if err != nil || !bytes.Equal(got, want) {
			t.Errorf("%s is not what the packages of the library give today (error: %v): run go generate ./cmd/internal/library", name, err)
		}
	}
	if kept, made := generated(t, "."), generated(t, out); len(kept) != len(made) {
		t.Errorf("there are %d generated files, want %d: delete what the catalogue no longer names", len(kept), len(made))
	}
}

func generated(t *testing.T, folder string) []string {
	t.Helper()
	names := []string{"symbols_gen.go", "help.json"}
	files, err := filepath.Glob(filepath.Join(folder, "declarations", "*.export"))
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		names = append(names, filepath.Join("declarations", filepath.Base(f)))
	}
	return names
}
