package present_test

import (
	"context"
	"strings"
	"testing"

	"lode/cmd/internal/library"
	"lode/cmd/internal/present"
	"lode/engine"
	"lode/engine/worked"
)

// notebook has functions to open; each statement of its working cell is one case.
const notebook = "```go\n" + `
func resonance(l units.Inductance, c units.Capacitance) units.Frequency {
	w := 2*π
	if l > 2*H {
		return 1/(w*sqrt(l*c))
	}
	return 3*kHz
}
func pick(n int, a units.Length) units.Length {
	switch n {
	case 1:
		return 2*a
	default:
		return a/2
	}
}
func steps(n int) int {
	if n <= 1 {
		return 1
	}
	return n*steps(n-1)
}
func parallel(a, b units.Resistance) units.Resistance { return a*b/(a+b) }
func loaded(r units.Resistance) units.Resistance { return parallel(r, 6*kΩ)/2 }
type trap struct {
	L units.Inductance
	C units.Capacitance
}
func (t trap) resonance() units.Frequency { return 1/(2*π*sqrt(t.L*t.C)) }
type pair struct{ upper, lower trap }
func (p pair) beat() units.Frequency { return p.upper.resonance() - p.lower.resonance() }
func grown(n int) units.Length {
	s := 1*mm
rows:
	for range n {
		s += 2*mm
		continue rows
	}
	return 2*s
}
two := pair{trap{2.5*H, 100*pF}, trap{2.5*H, 400*pF}}
L := 2.5*H
R := []units.Resistance{4*kΩ, 6*kΩ}
b := coil.Racetrack{CoreLength: 74*mm, CoreWidth: 7*mm, Height: 9*mm, FlangeWidth: 17*mm}
` + "```\n\n```go working\n"

func workings(t *testing.T, code string) []string {
	t.Helper()
	lib, err := library.Load()
	if err != nil {
		t.Fatal(err)
	}
	n := engine.Open(lib, "x.md", []byte(notebook+code+"\n```\n"))
	for _, i := range n.Issues {
		t.Fatal(i.Error())
	}
	var texts []string
	failed := n.Run(context.Background(), func(r engine.Result) {
		if _, ok := r.Value.(*worked.Line); ok {
			texts = append(texts, present.Value(r.Label, r.Value).Text)
		}
	})
	if failed != nil {
		t.Fatal(failed.Error())
	}
	return texts
}

// The values are plain arithmetic: 1/(2π√(2.5 H · 100 pF)) = 10.066 kHz, and so on.
func TestWorkings(t *testing.T) {
	for code, want := range map[string]string{
		"x := 2500*mH + 0.5*H":               "x = 2500 mH + 0.5 H = 3 H",
		"x := 2*metre + 10*um":               "x = 2 m + 10 µm = 2 m",
		"x := 100*pF + 2*20*pF":              "x = 100 pF + 40 pF = 140 pF",
		"x := 1/(2*π*sqrt(L*100*pF))":        "x = 1/(2·π·√(L·100 pF)) = 1/(2·π·√(2.5 H·100 pF)) = 10.07 kHz",
		"var x units.Inductance = (L)":       "x = L = 2.5 H",
		"x := R[0] + R[1]/2":                 "x = R[0] + R[1]/2 = 4 kΩ + 6 kΩ/2 = 7 kΩ",
		"x := max(R[0], R[1], 1*kΩ)":         "x = max(R[0], R[1], 1 kΩ) = max(4 kΩ, 6 kΩ, 1 kΩ) = 6 kΩ",
		"x := pow(L, 2)/H":                   "x = L^2/(1 H) = (2.5 H)^2/(1 H) = 6.25 H",
		"x := abs(R[0]-R[1])":                "x = |R[0] − R[1]| = |4 kΩ − 6 kΩ| = 2 kΩ",
		"x := -b.Height":                     "x = −b.Height = −9 mm",
		"L*2":                                "L·2 = 2.5 H·2 = 5 H",
		"x := resonance(L, 100*pF)":          "x = resonance(L, 100 pF) = 1/(w·√(L·100 pF)) = 1/(6.283·√(2.5 H·100 pF)) = 10.07 kHz\n  with w = 2·π = 6.283\n  as L > 2 H: 2.5 H > 2 H",
		"x := resonance(L/5, 1*nF)":          "x = resonance(L/5, 1 nF) = 3 kHz\n  with w = 2·π = 6.283\n  as L/5 ≤ 2 H: 500 mH ≤ 2 H",
		"x := pick(1, b.Height)":             "x = pick(1, b.Height) = 2·b.Height = 2·9 mm = 18 mm\n  as 1 = 1",
		"x := pick(2, b.Height)":             "x = pick(2, b.Height) = b.Height/2 = 9 mm/2 = 4.5 mm",
		"x := steps(4)":                      "x = steps(4) = 4·steps(4 − 1) = 4·6 = 24\n  as 4 > 1",
		"x := wire.AWG(42).Bare()/mm":        "x = wire.AWG(42).Bare/(1 mm) = 0.0635 mm/(1 mm) = 0.0635",
		"x := 6*metre*load.CableCapacitance": "x = 6 m·load.CableCapacitance = 6 m·100 pF/m = 600 pF",
		"x := loaded(3*kΩ)":                  "x = loaded(3 kΩ) = parallel(3 kΩ, 6 kΩ)/2 = 2 kΩ/2 = 1 kΩ\n  where parallel(3 kΩ, 6 kΩ) = 3 kΩ·6 kΩ/(3 kΩ + 6 kΩ) = 2 kΩ",
		"x := loaded(3*kΩ) + loaded(3*kΩ)":   "x = loaded(3 kΩ) + loaded(3 kΩ) = 1 kΩ + 1 kΩ = 2 kΩ\n  where loaded(3 kΩ) = parallel(3 kΩ, 6 kΩ)/2 = 2 kΩ/2 = 1 kΩ\n    where parallel(3 kΩ, 6 kΩ) = 3 kΩ·6 kΩ/(3 kΩ + 6 kΩ) = 2 kΩ",
		"x := two.upper.resonance()":         "x = two.upper.resonance = 1/(2·π·√(two.upper.L·two.upper.C)) = 1/(2·π·√(2.5 H·100 pF)) = 10.07 kHz",
		"x := two.beat()": "x = two.beat = two.upper.resonance − two.lower.resonance = 10.07 kHz − 5.033 kHz = 5.033 kHz" +
			"\n  where two.upper.resonance = 1/(2·π·√(two.upper.L·two.upper.C)) = 1/(2·π·√(2.5 H·100 pF)) = 10.07 kHz" +
			"\n  where two.lower.resonance = 1/(2·π·√(two.lower.L·two.lower.C)) = 1/(2·π·√(2.5 H·400 pF)) = 5.033 kHz",
		"x := grown(3)": "x = grown(3) = 2·s = 2·7 mm = 14 mm\n  with s = 1 mm\n  after the loop s = 7 mm",
		"x := float64(len(R))*(20*degC - 0*degC)": "",
	} {
		got := workings(t, code)
		if want == "" {
			if len(got) != 1 {
				t.Errorf("%s: no working", code)
			}
			continue
		}
		if len(got) != 1 || got[0] != want {
			t.Errorf("%s:\n got %q\nwant %q", code, got, want)
		}
	}
}

// TestNoWorkings holds what a working cell passes over.
func TestNoWorkings(t *testing.T) {
	for _, code := range []string{"L", "x := b", `x := "text"`, "for i := range 3 { _ = i }"} {
		if got := workings(t, code); len(got) != 0 {
			t.Errorf("%s: %q, want no working", code, got)
		}
	}
}

// TestDeepWorking runs a function that calls itself more often than a run tells of.
func TestDeepWorking(t *testing.T) {
	got := workings(t, "x := steps(20) % 1000 + steps(1)")
	if len(got) != 1 || !strings.HasPrefix(got[0], "x = remainder(steps(20), 1000) + steps(1)") {
		t.Errorf("got %q", got)
	}
}
