package figure

import (
	"fmt"
	"math"
	"math/cmplx"
	"strings"
	"testing"

	"lode/units"
	"lode/units/frame"
)

// resonant is the level across the capacitance of a series L-R-C circuit at n frequencies:
// an invented coil, good enough to look at.
func resonant(title string, l, r, c float64, n int) frame.Frame {
	hertz, level, phase := make([]float64, n), make([]float64, n), make([]float64, n)
	top, last := 0, 0
	for i := range n {
		f := 20 * math.Pow(1000, float64(i)/float64(n-1))
		s := complex(0, 2*math.Pi*f)
		h := 1 / (1 + s*complex(r*c, 0) + s*s*complex(l*c, 0) + s*complex(l/250e3, 0))
		hertz[i], level[i], phase[i] = f, 20*math.Log10(cmplx.Abs(h)), cmplx.Phase(h)
		if level[i] > level[top] {
			top = i
		}
		if level[i] > -3 {
			last = i
		}
	}
	kind := func(name string) units.Kind { k, _ := units.KindNamed(name); return k }
	return frame.Frame{Title: title,
		Columns: []frame.Column{frame.Of("frequency", kind("Frequency"), hertz), frame.Of("level", kind("Level"), level), frame.Of("phase", kind("Angle"), phase)},
		Marks:   []frame.Mark{{Name: "resonance", Of: "level", X: hertz[top], Y: level[top]}, {Name: "−3 dB", Of: "level", X: hertz[last], Y: level[last]}},
	}
}

func three(n int) []frame.Source {
	return []frame.Source{resonant("as found", 3.4, 7200, 140e-12, n), resonant("rewound, 5 m of cable", 3.4, 7200, 640e-12, n), resonant("half the turns", 0.85, 3500, 640e-12, n)}
}

func mustResponse(t *testing.T, sources ...frame.Source) Figure {
	t.Helper()
	f, err := Response(sources...)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func TestSizeOfThreeCurves(t *testing.T) {
	f := mustResponse(t, three(400)...)
	for name, svg := range map[string]string{"wide": f.SVG("a"), "narrow": f.Narrow("a")} {
		t.Logf("%s: %d bytes", name, len(svg))
		if len(svg) > 25_000 {
			t.Errorf("%s: three curves of 400 points take %d bytes, want 25000", name, len(svg))
		}
		for _, want := range []string{`<title id="a-title">`, `<desc id="a-desc">`, `role="img"`, "as found", "1\u00a0k"} {
			if !strings.Contains(svg, want) {
				t.Errorf("%s: %q is missing", name, want)
			}
		}
	}
}

func TestNamesDoNotOverlap(t *testing.T) {
	for n := 1; n <= 14; n++ {
		var curves []frame.Source
		for i := range n {
			curves = append(curves, resonant(strings.Repeat("variant ", 1+i%4)+string(rune('a'+i)), 3+0.02*float64(i*i), 7000, 300e-12, 200))
		}
		f := mustResponse(t, curves...)
		for name, form := range map[string]form{"wide": wide, "narrow": narrow} {
			apart(t, fmt.Sprintf("%d curves, %s", n, name), f.drawing("x", form))
		}
	}
}

// apart checks that no two texts of a drawing overlap and that none leaves it.
func apart(t *testing.T, name string, d *drawing) {
	t.Helper()
	for i, a := range d.places {
		for _, b := range d.places[:i] {
			if a.Overlaps(b) {
				t.Errorf("%s: texts at %v and %v overlap", name, a, b)
			}
		}
		if a.Left < 0 || a.Right > d.width || a.Top < 0 || a.Bottom > d.height {
			t.Errorf("%s: text at %v leaves the figure", name, a)
		}
	}
}
