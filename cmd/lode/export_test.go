package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"lode/cmd/internal/evaluate"
)

// TestExport builds every notebook that ships with the standard toolchain, runs it, and
// compares its numbers with those of the interpreter, to the last digit.
func TestExport(t *testing.T) {
	files, _ := filepath.Glob("../../notebooks/*.md")
	for _, file := range files {
		t.Run(filepath.Base(file), func(t *testing.T) {
			compareExport(t, file)
		})
	}
	t.Run("statements", func(t *testing.T) {
		compareExport(t, writeFile(t, "a.md", cell(`func fib(n int) int {
	if n < 2 {
		return n
	}
	return fib(n-1) + fib(n-2)
}
fib(15)
sum := 0*Ω
for i, r := range []units.Resistance{1*kΩ, 2.2*kΩ} {
	sum += r / (i + 1)
}
sum
sum * 3*mm
m := map[string]units.Length{"b": 1*inch, "a": 2*mm}
total := 0*mm
for _, l := range m {
	total += l
}
total
knob("turns", 3000, 1000, 5000)
wire.AWG(42).ResistancePerLength()
min(3*V, 2*V) / (7*V)
20*degC
study.Solve(func(c units.Capacitance) units.Frequency { return 1/(2*π*sqrt(2.2*H*c)) }, 5*kHz, 50*pF, 5*nF)`)))
	})
}

func compareExport(t *testing.T, file string) {
	folder, err := os.MkdirTemp("../..", ".export-")
	if err != nil {
		t.Fatal(err)
	}
	defer os.RemoveAll(folder)
	if _, complaint, code := call("export", file, "-o", filepath.Join(folder, "main.go")); code != exitFine {
		t.Fatal(complaint)
	}
	cmd := exec.Command("go", "run", "./"+filepath.Base(folder))
	cmd.Dir = "../.."
	var out, complaint bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &complaint
	if err := cmd.Run(); err != nil {
		t.Fatalf("%v\n%s", err, complaint.String())
	}
	got := exportedNumbers(out.String())
	want := shownNumbers(t, file)
	if len(want) == 0 || strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("the exported program gives\n%s\nthe notebook\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

// exportedNumbers returns label and number of each result that is one.
func exportedNumbers(out string) []string {
	var list []string
	for _, line := range strings.Split(out, "\n") {
		parts := strings.Split(line, "\t")
		if len(parts) == 3 {
			list = append(list, parts[0]+" "+parts[2])
		} else if len(parts) == 2 {
			if _, err := strconv.Atoi(parts[1]); err == nil {
				list = append(list, parts[0]+" "+parts[1])
			}
		}
	}
	return list
}

func shownNumbers(t *testing.T, file string) []string {
	source, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	var list []string
	failed := evaluate.Run(t.Context(), evaluate.Request{File: file, Source: string(source)}, func(e evaluate.Event) {
		if e.Record == nil {
			return
		}
		for _, r := range e.Record.Results {
			if r.Number != "" {
				label, _, more := strings.Cut(r.Label, "\n")
				if more {
					label += "…"
				}
				list = append(list, label+" "+r.Number)
			}
		}
	})
	if failed != nil {
		t.Fatal(failed.Error())
	}
	return list
}
