package figure

import (
	"fmt"
	"strings"
	"testing"

	"lode/render/internal/example"
	"lode/units/frame"
)

func three() []frame.Source {
	return []frame.Source{example.Coil("as found", 3.4, 7200, 140e-12), example.Coil("rewound, 5 m of cable", 3.4, 7200, 640e-12), example.Coil("half the turns", 0.85, 3500, 640e-12)}
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
	f := mustResponse(t, three()...)
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
			curves = append(curves, example.Coil(strings.Repeat("variant ", 1+i%4)+string(rune('a'+i)), 3+0.02*float64(i*i), 7000, 300e-12))
		}
		f := mustResponse(t, curves...)
		for name, form := range map[string]form{"wide": wide, "narrow": narrow} {
			apart(t, fmt.Sprintf("%d curves, %s", n, name), newDrawing(f, "x", form))
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

func BenchmarkSVG(b *testing.B) {
	f, err := Response(three()...)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		_ = f.SVG("a")
	}
}
