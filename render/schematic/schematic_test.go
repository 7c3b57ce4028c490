package schematic

import (
	"encoding/xml"
	"fmt"
	"io"
	"math/rand"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"lode/render/internal/chart"
	"lode/units/ladder"
)

var (
	r = ladder.Part(ladder.Resistor, "input", "1 MΩ")
	c = ladder.Part(ladder.Capacitor, "cable 6 m", "600 pF")
	l = ladder.Part(ladder.Inductor, "", "2.5 H")
	v = ladder.Part(ladder.VoltageSource, "coil", "EMF")
)

// samples are ladders with every symbol and stage.
func samples() map[string]ladder.Ladder {
	end := ladder.Step{Way: ladder.Terminal, Name: "out"}
	down := func(b ladder.Branch) ladder.Step { return ladder.Step{Way: ladder.Down, Branch: b} }
	along := func(b ladder.Branch) ladder.Step { return ladder.Step{Way: ladder.Along, Branch: b} }
	coil := down(ladder.Parallel(ladder.Series(ladder.Part(ladder.Resistor, "", "6 kΩ"), l, v), ladder.Part(ladder.Capacitor, "", "100 pF")))
	tone := down(ladder.Series(ladder.Part(ladder.Variable, "tone", "500 kΩ at 0.3"), ladder.Part(ladder.Capacitor, "", "22 nF")))
	bypass := ladder.Series(r, ladder.Parallel(c, r))
	return map[string]ladder.Ladder{
		"chain":       {Title: "Chain", Steps: []ladder.Step{coil, tone, {Way: ladder.Divider, Name: "volume", Value: "500 kΩ at 0.7"}, down(c), down(r), end}},
		"bypass":      {Steps: []ladder.Step{coil, {Way: ladder.Divider, Name: "volume", Value: "500 kΩ", Branch: bypass}, {Way: ladder.Backwards, Name: "volume 2", Value: "250 kΩ", Branch: c}, end}},
		"transformer": {Steps: []ladder.Step{{Way: ladder.Terminal, Name: "primary"}, along(r), along(l), down(l), {Way: ladder.Transformer, Name: "ideal", Value: "1 : 10"}, along(r), end}},
		"active":      {Steps: []ladder.Step{coil, along(v), down(ladder.Part(ladder.CurrentSource, "noise", "1 pA/√Hz")), {Way: ladder.Amplifier, Name: "buffer", Value: "6 dB"}, along(ladder.Part(ladder.Impedance, "loss", "")), end}},
		"feedback":    {Steps: []ladder.Step{{Way: ladder.Terminal, Name: "in"}, {Way: ladder.Amplifier, Name: "inverting", Branch: ladder.Parallel(c, r)}, end}},
		"selector":    {Steps: []ladder.Step{down(ladder.Series(ladder.Part(ladder.Closed, "neck", ""), l)), down(ladder.Series(ladder.Part(ladder.Open, "both", ""), ladder.Parallel(l, l, ladder.Series(l, l)))), end}},
		"bass cut":    {Steps: []ladder.Step{coil, along(ladder.Parallel(c, ladder.Part(ladder.Variable, "", "1 MΩ at 0.2"))), down(r), end}},
		"one part":    {Steps: []ladder.Step{down(r)}},
		"wire":        {Steps: []ladder.Step{down(r), down(ladder.Branch{}), along(ladder.Branch{}), end}},
		"hostile":     {Title: `<script>"&`, Steps: []ladder.Step{down(ladder.Part(ladder.Resistor, `<b>&"name"`, "</text>")), end}},
	}
}

func overlap(a, b chart.Box) bool {
	const touch = 0.01
	return a.Left < b.Right-touch && b.Left < a.Right-touch && a.Top < b.Bottom-touch && b.Top < a.Bottom-touch
}

// collisions finds letters on letters, symbols or wires, symbols on symbols, and what leaves the drawing.
func collisions(p *pen) []string {
	var all []string
	kinds := []struct {
		name  string
		boxes []chart.Box
	}{{"letters", p.words}, {"symbol", p.bodies}, {"wire", p.wires}}
	for i, a := range kinds {
		for j, b := range kinds[:2] {
			for m, x := range a.boxes {
				for n, y := range b.boxes {
					if (i > j || i == j && m < n) && overlap(fat(x, a.name), inner(y, a.name)) {
						all = append(all, fmt.Sprintf("%s %.1f on %s %.1f", a.name, x, b.name, y))
					}
				}
			}
		}
		for _, x := range a.boxes {
			if x.Left < 0 || x.Top < 0 || x.Right > p.width || x.Bottom > p.height {
				all = append(all, fmt.Sprintf("%s %.1f outside", a.name, x))
			}
		}
	}
	return all
}

// fat gives wires a thickness.
func fat(b chart.Box, name string) chart.Box {
	if name == "wire" {
		return chart.Box{Left: b.Left - 0.7, Top: b.Top - 0.7, Right: b.Right + 0.7, Bottom: b.Bottom + 0.7}
	}
	return b
}

// inner is a symbol without its edge where wires end.
func inner(b chart.Box, other string) chart.Box {
	if other == "wire" {
		return chart.Box{Left: b.Left + 0.8, Top: b.Top + 0.8, Right: b.Right - 0.8, Bottom: b.Bottom - 0.8}
	}
	return b
}

func TestNothingOverlaps(t *testing.T) {
	for name, l := range samples() {
		for _, width := range []float64{wide, narrow, 200} {
			for _, problem := range collisions((Drawing{ladder: l}).draw(width)) {
				t.Errorf("%s at %g: %s", name, width, problem)
			}
		}
	}
}

// random makes a branch of some depth.
func random(rng *rand.Rand, depth int) ladder.Branch {
	symbols := []ladder.Symbol{ladder.Resistor, ladder.Variable, ladder.Capacitor, ladder.Inductor, ladder.VoltageSource, ladder.CurrentSource, ladder.Impedance, ladder.Closed, ladder.Open}
	names := []string{"", "tone", "volume 2", "a rather long name"}
	if depth == 0 || rng.Intn(3) == 0 {
		return ladder.Part(symbols[rng.Intn(len(symbols))], names[rng.Intn(len(names))], names[rng.Intn(len(names))])
	}
	inner := make([]ladder.Branch, 1+rng.Intn(3))
	for i := range inner {
		inner[i] = random(rng, depth-1)
	}
	if rng.Intn(2) == 0 {
		return ladder.Series(inner...)
	}
	return ladder.Parallel(inner...)
}

func TestRandomLadders(t *testing.T) {
	rng := rand.New(rand.NewSource(8))
	ways := []ladder.Way{ladder.Along, ladder.Down, ladder.Divider, ladder.Backwards, ladder.Transformer, ladder.Amplifier}
	for i := range 300 {
		var l ladder.Ladder
		for range 1 + rng.Intn(8) {
			s := ladder.Step{Way: ways[rng.Intn(len(ways))], Name: "stage", Value: "of some value"}
			if s.Way != ladder.Transformer {
				s.Branch = random(rng, 2)
			}
			l.Steps = append(l.Steps, s)
		}
		l.Steps = append(l.Steps, ladder.Step{Way: ladder.Terminal, Name: "out"})
		for _, width := range []float64{wide, narrow} {
			if problems := collisions((Drawing{ladder: l}).draw(width)); len(problems) > 0 {
				t.Fatalf("ladder %d at %g: %v\n%s", i, width, problems, Drawing{ladder: l}.SVG("x"))
			}
		}
	}
}

// The drawing is well-formed, has title and description, names every part, and comes out the same each time.
func TestSVG(t *testing.T) {
	for name, l := range samples() {
		d, err := Of(l)
		if err != nil {
			t.Fatal(name, err)
		}
		svg := d.SVG("one")
		if svg != d.SVG("one") {
			t.Errorf("%s: two drawings differ", name)
		}
		if len(svg) > 12<<10 {
			t.Errorf("%s: %d bytes, want at most 12 KB", name, len(svg))
		}
		texts := read(t, name, svg)
		if !strings.Contains(texts, d.Title()) || !strings.Contains(texts, d.Description()) || strings.Contains(svg, "http") || strings.Contains(svg, "style=") {
			t.Errorf("%s: no title, no description, or an address or a style in\n%s", name, svg)
		}
		for _, s := range l.Steps {
			for _, p := range append(s.Branch.Parts(), ladder.Part("", s.Name, s.Value)) {
				if !strings.Contains(texts, p.Name) || !strings.Contains(texts, p.Value) {
					t.Errorf("%s: %q, %q is not in the drawing", name, p.Name, p.Value)
				}
			}
		}
		if lines := strings.Split(d.String(), "\n"); len(lines) != len(d.rows()) || !strings.Contains(lines[0], "  "+string(l.Steps[0].Way)) && l.Steps[0].Way != ladder.Terminal {
			t.Errorf("%s: in words:\n%s", name, d)
		}
		if n := d.Numbers(); len(n) != 1 || n[0].Rows() == 0 {
			t.Errorf("%s: numbers: got %v", name, n)
		}
		write(t, name, d)
	}
}

// read returns the letters of a well-formed drawing.
func read(t *testing.T, name, svg string) string {
	t.Helper()
	var texts strings.Builder
	d := xml.NewDecoder(strings.NewReader(svg))
	for {
		token, err := d.Token()
		if err == io.EOF {
			return texts.String()
		}
		if err != nil {
			t.Fatalf("%s: %v in\n%s", name, err, svg)
		}
		if letters, ok := token.(xml.CharData); ok {
			texts.Write(letters)
			texts.WriteByte('\n')
		}
	}
}

// write leaves the drawings where LODE_DRAWINGS says, to be looked at.
func write(t *testing.T, name string, d Drawing) {
	if folder := os.Getenv("LODE_DRAWINGS"); folder != "" {
		if err := os.WriteFile(filepath.Join(folder, name+".svg"), []byte(d.SVG(name)), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

func TestRefused(t *testing.T) {
	if _, err := Of(nil); err == nil {
		t.Error("nothing was drawn")
	}
	if _, err := Of(ladder.Ladder{}); err == nil {
		t.Error("an empty ladder was drawn")
	}
	d, _ := Of(samples()["chain"])
	if d.Titled("a").Title() != "a" || d.Captioned("b").Caption() != "b" || d.Title() != "Chain" {
		t.Error("titles and captions are mixed up")
	}
}

// TestPlaces wants the words to say which parts are in series with each other, and what lies in the feedback.
func TestPlaces(t *testing.T) {
	r, l, c := ladder.Part(ladder.Resistor, "", "6 kΩ"), ladder.Part(ladder.Inductor, "", "2 H"), ladder.Part(ladder.Capacitor, "C", "1 nF")
	d, err := Of(ladder.Ladder{Steps: []ladder.Step{
		{Way: ladder.Down, Branch: ladder.Parallel(ladder.Series(r, l), c)}, {Way: ladder.Along, Branch: ladder.Parallel(r, c)}, {Way: ladder.Along, Branch: r},
		{Way: ladder.Amplifier, Name: "inverting", Branch: c}, {Way: ladder.Divider, Name: "volume", Value: "500 kΩ", Branch: c},
	}})
	if err != nil {
		t.Fatal(err)
	}
	want := []string{
		"to ground, 1 of 2 in series", "to ground, 2 of 2 in series", "to ground", "in series, 1 of 2 in parallel", "in series, 2 of 2 in parallel", "in series",
		"amplifier", "from its output to its input", "divider", "from its upper end to its wiper",
	}
	for i, row := range d.rows() {
		if i >= len(want) || row[2] != want[i] {
			t.Errorf("row %d: got %q, want one of %q", i, row, want)
		}
	}
}
