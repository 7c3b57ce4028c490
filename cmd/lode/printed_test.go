package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// This file prints the pages of notebooks, which must not be cut, and pages that are.

// muchOnPaper is a notebook of what fits on paper least.
var muchOnPaper = "# Much on paper\n\nA few words.\n\n```go\n" + `table.Of(
	table.Head("variant", "turns", "resistance", "inductance", "capacitance", "resonance", "peak", "level at 100 Hz", "level at 1 kHz", "level at 10 kHz", "weight of wire", "outer width", "room left"),
	table.Row("as it came in, with the cover on", 8000, 6.123*kΩ, 2.2345*H, 80.12*pF, 5.4321*kHz, 3.21*dB, 0.012*dB, 0.123*dB, -12.34*dB, 21.2*gram, 12.3*mm, 1.23*mm),
	table.Row("rewound with the thinner wire", 9200, 7.123*kΩ, 2.8345*H, 90.12*pF, 4.4321*kHz, 4.21*dB, 0.013*dB, 0.133*dB, -14.34*dB, 24.2*gram, 13.3*mm, 0.23*mm),
)
` + "```\n\n```go\n" + `table.Of(
	table.Head("step", "what_is_to_be_done_in_one_word_without_a_place_to_break_it"),
	table.Row("one", "` + strings.Repeat("Lead the wire through the slot. ", 30) + `"),
	table.Row("two", "` + strings.Repeat("wound", 30) + `"),
)
bars := []table.Line{}
for i := range 40 {
	bars = append(bars, table.Row(fmt.Sprint("part ", i), float64(50-i)*kΩ))
}
figure.Bars(table.Of(table.Head("part", "share"), bars...))
figure.Outline(table.Of(table.Head("part", "across", "up"), table.Row("post", 0*mm, 0*mm), table.Row("post", 10*mm, 0*mm), table.Row("post", 10*mm, 150*mm), table.Row("post", 0*mm, 150*mm)))
template.Draw(coil.Flange(coil.Racetrack{CoreLength: 100*mm, CoreWidth: 6*mm, Height: 8*mm, FlangeWidth: 60*mm}, coil.Drilling{Strings: coil.Strings{Count: 8, Pitch: 9*mm}, Hole: 5*mm}))
wire.Table("AWG")
` + "```\n\n```go working\n" + `sum := 80*pF` + strings.Repeat(" + 100*pF", 15) + `
f0 := 1/(2*π*sqrt(2.2*H*(80*pF` + strings.Repeat(" + 100*pF", 15) + `)))
` + "```\n"

// TestPrinted prints the page of every notebook, and of one that is hard to get on paper.
func TestPrinted(t *testing.T) {
	if os.Getenv("LODE_OUTSIDE") != "1" {
		t.Skip("needs a browser: set LODE_OUTSIDE=1")
	}
	pages := realPages(t)
	pages["much"] = filepath.Join(t.TempDir(), "much.html")
	if _, err, exit := call("run", writeFile(t, "much.md", muchOnPaper), "-o", pages["much"]); exit != exitFine {
		t.Fatal(err)
	}
	for name, page := range pages {
		t.Run(name, func(t *testing.T) {
			v := browse(t, "file://"+page)
			for size, paper := range papers {
				for _, bad := range v.print(t, paper) {
					t.Errorf("%s: %s", size, bad)
				}
				if _, err := chromedp.Run(v, chromedp.Reload()); err != nil {
					t.Fatal(err)
				}
			}
		})
	}
}

// badPages are pages with one thing wrong each, and what print has to say.
var badPages = map[string]struct{ body, style, want string }{
	"a figure taller than a sheet":       {`<svg viewBox="0 0 10 30" width="100mm" height="300mm"></svg>`, "", "cut: the figure"},
	"a figure taller than what is left":  {`<p style="height:150mm"></p><figure><svg viewBox="0 0 10 10" height="108mm"></svg><figcaption>A</figcaption></figure>`, "", "cut: the figure with its caption"},
	"a row across two sheets":            {`<p style="height:200mm"></p><table><tr><td>` + strings.Repeat("one word<br>", 20) + `</td></tr></table>`, "", "cut: the row"},
	"a title without its row":            {`<p style="height:225mm"></p><table><caption>A</caption><tr><td style="height:60mm">one</td></tr></table>`, "tr{break-inside:avoid}", "cut: the title"},
	"a table wider than the paper":       {`<table><tr><td><div style="width:300mm">one</div></td></tr></table>`, "", "too wide: DIV"},
	"a table that makes the page shrink": {`<table><tr><td><div style="width:220mm">one</div></td></tr></table>`, "", "shrunk"},
	"a table that is cut off":            {`<div style="overflow:clip"><table><tr><td style="min-width:300mm">one</td></tr></table></div>`, "", "cut: the row"},
}

// goodPage is a page with nothing wrong.
const goodPage = `<p style="height:150mm"></p><figure><div style="height:80mm"></div><svg viewBox="0 0 10 10" height="60mm"></svg><figcaption>A</figcaption></figure><table><caption>B</caption><tr><td>one</td><td>two</td></tr></table>`

// TestPrintIsMeasured prints pages that are wrong, and one that is not.
func TestPrintIsMeasured(t *testing.T) {
	good := writeFile(t, "a.html", onPaper("figure,tr{break-inside:avoid}", goodPage))
	v := browse(t, "file://"+good)
	if bad := v.print(t, chromedp.PaperA4); len(bad) > 0 {
		t.Errorf("a good page: %q", bad)
	}
	for name, c := range badPages {
		if _, err := chromedp.Run(v, chromedp.Navigate("file://"+writeFile(t, "a.html", onPaper(c.style, c.body)))); err != nil {
			t.Fatal(err)
		}
		bad := v.print(t, chromedp.PaperA4)
		if !slices.ContainsFunc(bad, func(s string) bool { return strings.HasPrefix(s, c.want) }) {
			t.Errorf("%s: got %q, want %q", name, bad, c.want)
		}
	}
}

func onPaper(style, body string) string {
	return "<!DOCTYPE html><title>Made up</title><style>@page{margin:18mm 17mm}body,p,figure{margin:0}" + style + "</style><body>" + body
}
