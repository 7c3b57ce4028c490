package library_test

import (
	"fmt"
	"maps"
	"math/rand/v2"
	"os"
	"slices"
	"strconv"
	"testing"
	"time"

	"lode/engine"
	"lode/engine/library"
	"lode/engine/run"
)

// TestAgainstCompiler exports every cell of the corpus that runs, and a number of cells made of
// pieces of them, builds the programs with the standard toolchain and compares what they print,
// and how they end, with what the interpreter does. It needs the toolchain and some minutes.
// LODE_MUTANTS sets how many cells are made up.
func TestAgainstCompiler(t *testing.T) {
	if os.Getenv("LODE_OUTSIDE") != "1" {
		t.Skip("set LODE_OUTSIDE=1 to compile the corpus")
	}
	lib := load(t)
	compiler, all := newToolchain(t, lib), cells(t)
	maps.Copy(all, mutants(lib, all))
	compared, ended := 0, 0
	for name, code := range all {
		n, got := engine.Open(lib, "cell.lode", []byte(code)), outcomeOf(lib, code)
		if len(n.Issues) > 0 || !got.comparable() {
			continue
		}
		compared++
		ended += len(got.issues)
		t.Run(name, func(t *testing.T) { compiler.same(t, n, got) })
	}
	t.Logf("%d cells give the same, compiled and interpreted; %d of them end in an issue", compared, ended)
}

// mutants makes up cells of pieces of others, and returns those that the checker accepts and
// that end in a short time.
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
		if n := engine.Open(lib, "cell.lode", []byte(code)); len(n.Issues) == 0 && short(n) && !slices.Contains(codes, code) {
			found[fmt.Sprint("mutant:", seed)] = code
		}
	}
	return found
}

// short reports whether a notebook ends within small budgets.
func short(n *engine.Notebook) bool {
	n.Limits = run.Limits{Steps: 20_000, Depth: 50}
	return runOf(n, time.Minute).comparable()
}
