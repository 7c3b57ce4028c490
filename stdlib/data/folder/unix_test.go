//go:build unix

package folder

import (
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// TestPipe makes sure that nothing waits for the other end of a pipe.
func TestPipe(t *testing.T) {
	folder := beside(t)
	if err := syscall.Mkfifo(filepath.Join(folder, "pipe.csv"), 0o644); err != nil {
		t.Fatal(err)
	}
	if _, err := Read(folder, "pipe.csv"); err == nil || !strings.Contains(err.Error(), "no ordinary file") {
		t.Errorf("got %v, want a refusal", err)
	}
}

// TestLinks follows links within the folder and none that leads out.
func TestLinks(t *testing.T) {
	folder := beside(t)
	for name, to := range map[string]string{
		"inside.csv": "measured.csv", "out.csv": "../secret.csv", "absolute.csv": filepath.Join(folder, "measured.csv"), "loop.csv": "loop.csv",
		"device.csv": os.DevNull, "chain.csv": "out.csv", "up": "..", "down": "bench",
	} {
		if err := os.Symlink(to, filepath.Join(folder, name)); err != nil {
			t.Fatal(err)
		}
	}
	for _, name := range []string{"inside.csv", "down/second.tsv"} {
		if _, err := Read(folder, name); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	for _, name := range []string{"out.csv", "absolute.csv", "loop.csv", "device.csv", "chain.csv", "up/secret.csv"} {
		if text, err := Read(folder, name); err == nil {
			t.Errorf("%s: got %q, want an error", name, text)
		}
	}
}
