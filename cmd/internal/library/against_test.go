package library_test

import (
	"context"
	"fmt"
	"maps"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"lode/engine"
	"lode/engine/library"
	"lode/engine/run"
)

// TestAgainstCompiler exports every cell of the corpus that runs, and a number of cells made of
// pieces of them, builds the programs with the standard toolchain and compares what they print
// with what the interpreter shows. It needs the toolchain and some minutes. LODE_MUTANTS sets
// how many cells are made up.
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
	all := cells(t)
	madeUp := 0
	for name, code := range mutants(lib, all) {
		madeUp++
		all[name] = code
	}
	for name, code := range all {
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
	t.Logf("%d cells give the same, compiled and interpreted; %d of them made up", len(want), madeUp)
}

// mutants makes up cells of pieces of others, and returns those that run to their end.
func mutants(lib *library.Library, all map[string]string) map[string]string {
	count, err := strconv.Atoi(os.Getenv("LODE_MUTANTS"))
	if err != nil {
		count = 20
	}
	names := slices.Sorted(maps.Keys(all))
	var codes []string
	for _, name := range names {
		codes = append(codes, all[name])
	}
	found := map[string]string{}
	for seed := uint64(1); len(found) < count && seed < uint64(200*count); seed++ {
		r := rand.New(rand.NewPCG(seed, seed))
		code := codes[r.IntN(len(codes))]
		for range 1 + r.IntN(4) {
			code = mutate(code, codes, r)
		}
		if n := engine.Open(lib, "cell.lode", []byte(code)); len(n.Issues) == 0 && ends(n) && !slices.Contains(codes, code) {
			found[fmt.Sprint("mutant:", seed)] = code
		}
	}
	return found
}

// ends reports whether a notebook runs to its end in a short time.
func ends(n *engine.Notebook) bool {
	n.Limits = run.Limits{Steps: 20_000, Depth: 50}
	return n.Run(context.Background(), func(engine.Result) {}) == nil
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
