package library_test

import (
	"context"
	"strings"
	"testing"

	"lode/engine"
	"lode/engine/book"
	"lode/engine/check"
	"lode/engine/library"
	"lode/engine/lower"
)

// This file measures what the language costs.

// page is a notebook of 300 lines, four in five of them code.
func page() []byte {
	var b strings.Builder
	b.WriteString("# A page\n\nWindings on one bobbin, and what each of them does with a cable.\n")
	for i := range 13 {
		text := `
## Part N

` + "```go" + `
wN := wire.AWG(42)
bN := coil.Racetrack{CoreLength: 71*mm, CoreWidth: 6.5*mm, Height: 10*mm, FlangeLength: 80*mm, FlangeWidth: 16*mm}
cN := coil.Wind(bN, wN, 6000)
rN := cN.Resistance()
lN := 3.2 * H
capN := 120*pF + 5*metre*(100*pF/metre)
fN := 1 / (2 * π * sqrt(lN*capN))
fN
func impedanceN(f units.Frequency) units.Resistance {
	x := 2*π*f*lN - 1/(2*π*f*capN)
	return hypot(rN, x)
}
worstN := 0 * ohm
for f := 100 * Hz; f < 20*kHz; f *= 1.5 {
	if z := impedanceN(f); z > worstN {
		worstN = z
	}
}
` + "```\n"
		b.WriteString(strings.ReplaceAll(text, "N", "Of"+string(rune('A'+i))))
	}
	return []byte(b.String())
}

// BenchmarkOpen reads, checks and lowers a notebook of 300 lines.
func BenchmarkOpen(b *testing.B) {
	lib, text := load(b), page()
	for b.Loop() {
		if n := engine.Open(lib, "page.md", text); len(n.Issues) > 0 {
			b.Fatal(n.Issues[0])
		}
	}
}

// BenchmarkCheckAndLower leaves out reading the text and the last look at the program.
func BenchmarkCheckAndLower(b *testing.B) {
	lib, text := load(b), book.Parse("page.md", page())
	for b.Loop() {
		program, issues := check.Check(lib, text)
		if len(issues) > 0 {
			b.Fatal(issues[0])
		}
		lower.Lower(program)
	}
}

// loops are written twice: over quantities and over plain numbers. The first must not take
// more than a twentieth longer.
var loops = map[string][2]string{
	"arithmetic": {`
func f() units.Area {
	sum, w := 0*mm2, 2*mm
	for i := 0; i < 100000; i++ {
		h := w * 1.5
		sum += w*h - h*h/4.0
	}
	return sum
}
f()`, `
func f() float64 {
	sum, w := 0.0, 0.002
	for i := 0; i < 100000; i++ {
		h := w * 1.5
		sum += w*h - h*h/4.0
	}
	return sum
}
f()`},
	"calls": {`
func square(w units.Length) units.Area { return w * w }
func f() units.Area {
	sum := 0 * mm2
	for i := range 100000 {
		sum += square(2*mm) * float64(i)
	}
	return sum
}
f()`, `
func square(w float64) float64 { return w * w }
func f() float64 {
	sum := 0.0
	for i := range 100000 {
		sum += square(0.002) * float64(i)
	}
	return sum
}
f()`},
	"lists": {`
func f() units.Resistance {
	list := []units.Length{1*mm, 2*mm, 3*mm}
	sum := 0 * ohm
	for i := range 100000 {
		sum += list[i%3] * (2 * ohm / metre)
	}
	return sum
}
f()`, `
func f() float64 {
	list := []float64{0.001, 0.002, 0.003}
	sum := 0.0
	for i := range 100000 {
		sum += list[i%3] * 2.0
	}
	return sum
}
f()`},
}

// TestLoopsAreTheSame proves it without a clock: both run as the same program.
func TestLoopsAreTheSame(t *testing.T) {
	lib := load(t)
	for name, pair := range loops {
		var texts [2]string
		for i, code := range pair {
			n := engine.Open(lib, "cell.lode", []byte(code))
			if len(n.Issues) > 0 {
				t.Fatal(n.Issues[0])
			}
			_, functions, _ := strings.Cut(n.Program(), "ˑat = ˑs[depth]")
			texts[i], _, _ = strings.Cut(functions, "func ˑrun")
		}
		if texts[0] != texts[1] || len(texts[0]) < 100 {
			t.Errorf("%s: quantities run as\n%s\nnumbers as\n%s", name, texts[0], texts[1])
		}
	}
}

func BenchmarkLoop(b *testing.B) {
	lib := load(b)
	for name, pair := range loops {
		b.Run(name+"/quantities", func(b *testing.B) { benchmarkCell(b, lib, pair[0]) })
		b.Run(name+"/numbers", func(b *testing.B) { benchmarkCell(b, lib, pair[1]) })
	}
}

func benchmarkCell(b *testing.B, lib *library.Library, code string) {
	n := engine.Open(lib, "cell.lode", []byte(code))
	if len(n.Issues) > 0 {
		b.Fatal(n.Issues[0])
	}
	for b.Loop() {
		if failed := n.Run(context.Background(), func(engine.Result) {}); failed != nil {
			b.Fatal(failed)
		}
	}
}
