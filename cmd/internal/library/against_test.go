package library_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"lode/engine"
)

// TestAgainstCompiler exports every cell of the corpus that runs, builds the programs with
// the standard toolchain and compares what they print with what the interpreter shows. It
// needs the toolchain and some minutes.
func TestAgainstCompiler(t *testing.T) {
	if os.Getenv("LODE_OUTSIDE") != "1" {
		t.Skip("set LODE_OUTSIDE=1 to compile the corpus")
	}
	lib, out := load(t), t.TempDir()
	folder, err := os.MkdirTemp(".", ".exported-") // inside of the module, out of the way of its wildcards
	if err != nil {
		t.Fatal(err)
	}
	defer os.RemoveAll(folder)
	want := map[string]string{}
	build := []string{"build", "-o", out + "/"}
	for name, code := range cells(t) {
		n := engine.Open(lib, "cell.lode", []byte(code))
		got := outcomeOf(lib, code)
		if len(got.issues) > 0 || strings.Contains(got.shown, "0x") {
			continue
		}
		text, err := n.Export()
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		program := strings.NewReplacer(":", "-").Replace(name)
		write(t, filepath.Join(folder, program, "main.go"), text)
		build = append(build, "./"+filepath.Join(folder, program))
		want[program] = got.shown
	}
	if text, err := exec.Command("go", build...).CombinedOutput(); err != nil {
		t.Fatalf("the toolchain refuses what was exported: %v\n%s", err, text)
	}
	for program, shown := range want {
		text, err := exec.Command(filepath.Join(out, program)).Output()
		if err != nil || string(text) != shown {
			t.Errorf("%s: compiled (error: %v) it prints\n%s\ninterpreted\n%s", program, err, text, shown)
		}
	}
	t.Logf("%d cells give the same, compiled and interpreted", len(want))
}

func write(t *testing.T, file string, text []byte) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file, text, 0o644); err != nil {
		t.Fatal(err)
	}
}
