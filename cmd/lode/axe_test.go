package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// This file holds real pages against axe-core: those of every notebook that ships, and one of
// everything that is hard to do well.

// hardPage is a notebook of everything that a page can show.
const hardPage = `# Everything at once

- [ ] a list, and [a link](#cautions)
- *emphasis*, ` + "`code`" + ` and a table:

| what | how much |
|------|---------:|
| wire | 42       |

` + "```go" + `
turns := knob("turns", 6800, 5000, 9000)
bobbin := coil.Racetrack{CoreLength: 74*mm, CoreWidth: 7*mm, Height: 9*mm, FlangeWidth: 17*mm}
c := coil.Wind(bobbin, wire.AWG(42), turns)
c
line := load.From(c).Tone(500*kΩ, 22*nF).Volume(500*kΩ, 0.7).Cable(5*metre).Input(1*MΩ)
figure.Response(line.Sweep(20*Hz, 20*kHz))
schematic.Of(line)
c.BuildSheet(coil.Order{})
fmt.Println("printed", turns)
wire.Table("AWG")
` + "```" + `

` + "```go working" + `
func resonance(l units.Inductance, c units.Capacitance) units.Frequency {
	if l > 2*H {
		return 1/(2*π*sqrt(l*c))
	}
	return 1*kHz
}
f0 := resonance(c.Inductance(), 500*pF)
` + "```" + `
`

// violation is what axe-core reports.
type violation struct {
	ID, Impact, Help string
	Nodes            []struct{ HTML string }
}

// axe runs the checker on the page as it stands.
func (v *tab) axe(t *testing.T, source string) []violation {
	t.Helper()
	run := source + `; axe.run(document, {resultTypes: ["violations"]}).then(r => JSON.stringify(r.violations))`
	text, err := chromedp.Run(v, chromedp.Evaluate[string](run, chromedp.EvalAwaitPromise))
	if err != nil {
		t.Fatal(err)
	}
	var found []violation
	if err := json.Unmarshal([]byte(text), &found); err != nil {
		t.Fatal(err)
	}
	return found
}

func TestAxe(t *testing.T) {
	if os.Getenv("LODE_OUTSIDE") != "1" {
		t.Skip("needs a browser: set LODE_OUTSIDE=1")
	}
	source, err := os.ReadFile("../../testdata/axe/axe.min.js")
	if err != nil {
		t.Fatal(err)
	}
	for name, page := range realPages(t) {
		t.Run(name, func(t *testing.T) { axePage(t, "file://"+page, string(source)) })
	}
}

// realPages runs every notebook that ships and the hard one.
func realPages(t *testing.T) map[string]string {
	t.Helper()
	files, _ := filepath.Glob("../../notebooks/*.md")
	pages := map[string]string{}
	for _, file := range append(files, writeFile(t, "everything.md", hardPage)) {
		name := strings.TrimSuffix(filepath.Base(file), ".md")
		pages[name] = filepath.Join(t.TempDir(), name+".html")
		if _, err, exit := call("run", file, "-o", pages[name]); exit != exitFine {
			t.Fatalf("%s: %s", name, err)
		}
	}
	if len(pages) < 6 {
		t.Fatalf("%d pages", len(pages))
	}
	return pages
}

// axePage checks a page in light and dark, on a wide window and on a telephone.
func axePage(t *testing.T, url, source string) {
	v := browse(t, url)
	for _, scheme := range []string{"light", "dark"} {
		for _, width := range []int64{1200, 390} {
			set(t, v, scheme, width)
			for _, x := range v.axe(t, source) {
				t.Errorf("%s, %d px: %s (%s): %s, %d times, first %s", scheme, width, x.ID, x.Impact, x.Help, len(x.Nodes), x.Nodes[0].HTML)
			}
		}
	}
	v.quiet(t)
	if len(v.requests) != 1 {
		t.Errorf("requests %q, want the page alone", v.requests)
	}
}

func set(t *testing.T, v *tab, scheme string, width int64) {
	t.Helper()
	if _, err := chromedp.Call(v, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}}}); err != nil {
		t.Fatal(err)
	}
	if _, err := chromedp.Call(v, emulation.SetDeviceMetricsOverride, emulation.SetDeviceMetricsOverrideParams{Width: width, Height: 900, DeviceScaleFactor: 1}); err != nil {
		t.Fatal(err)
	}
}
