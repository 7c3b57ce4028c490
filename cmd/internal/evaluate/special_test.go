//go:build unix

package evaluate_test

import (
	"os"
	"path/filepath"
	"syscall"
	"testing"
)

// special makes files that are no ordinary ones.
func special(t *testing.T, folder string) {
	t.Helper()
	for _, err := range []error{
		os.Symlink("../secret.csv", filepath.Join(folder, "out.csv")), os.Symlink(os.DevNull, filepath.Join(folder, "device.csv")),
		syscall.Mkfifo(filepath.Join(folder, "pipe.csv"), 0o644),
	} {
		if err != nil {
			t.Fatal(err)
		}
	}
}
