package figure

import (
	"strings"
	"testing"

	"lode/render/internal/example"
	"lode/units"
)

func kindOf(name string) units.Kind {
	k, _ := units.KindNamed(name)
	return k
}

// gallery is one figure of every kind.
func gallery(t testing.TB) map[string]Figure {
	t.Helper()
	all := map[string]Figure{}
	add := func(name string, f Figure, err error) {
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		all[name] = f
	}
	f, err := Response(three()...)
	add("response", f, err)
	f, err = f.WithPhase()
	add("phase", f, err)
	f, err = Impedance(example.Impedance("as found", 3.4, 7200, 140e-12), example.Impedance("half the turns", 0.85, 3500, 140e-12))
	add("impedance", f, err)
	f, err = Histogram(example.Spread())
	add("histogram", f, err)
	f, err = Bars(example.Budget())
	add("bars", f, err)
	f, err = Map(example.Field())
	add("map", f, err)
	f, err = Outline(example.Section())
	add("outline", f, err)
	return all
}

func TestGallery(t *testing.T) {
	for name, f := range gallery(t) {
		for size, form := range map[string]form{"wide": wide, "narrow": narrow} {
			d := newDrawing(f, "x", form)
			if svg := d.svg(); len(svg) > 25_000 || strings.Contains(svg, "NaN") || strings.Contains(svg, "Inf") {
				t.Errorf("%s, %s: %d bytes, or not a number in it", name, size, len(svg))
			}
			apart(t, name+", "+size, d)
		}
		if f.Title() == "" || len(f.Description()) < 40 {
			t.Errorf("%s: title %q, description %q", name, f.Title(), f.Description())
		}
	}
}
