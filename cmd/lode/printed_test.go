package main

import (
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// This file prints the pages of notebooks, which must not be cut, and pages that are.

// TestPrinted prints the page of every notebook.
func TestPrinted(t *testing.T) {
	if os.Getenv("LODE_OUTSIDE") != "1" {
		t.Skip("needs a browser: set LODE_OUTSIDE=1")
	}
	for name, page := range realPages(t) {
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
	"a table wider than the paper":       {`<table><tr><td><div style="width:300mm">one</div></td></tr></table>`, "", "too wide: TABLE"},
	"a table that makes the page shrink": {`<table><tr><td><div style="width:220mm">one</div></td></tr></table>`, "", "shrunk"},
	"a table that is cut off":            {`<div style="overflow:clip"><table><tr><td style="min-width:300mm">one</td></tr></table></div>`, "", "cut: the row"},
}

// TestPrintIsMeasured prints pages that are wrong, and one that is not.
func TestPrintIsMeasured(t *testing.T) {
	for name, c := range badPages {
		t.Run(name, func(t *testing.T) {
			bad := browse(t, "file://"+writeFile(t, "a.html", onPaper(c.style, c.body))).print(t, chromedp.PaperA4)
			if !slices.ContainsFunc(bad, func(s string) bool { return strings.HasPrefix(s, c.want) }) {
				t.Errorf("got %q, want %q", bad, c.want)
			}
		})
	}
	good := onPaper("figure,tr{break-inside:avoid}", `<p style="height:150mm"></p><figure><div style="height:80mm"></div><svg viewBox="0 0 10 10" height="60mm"></svg><figcaption>A</figcaption></figure><table><caption>B</caption><tr><td>one</td><td>two</td></tr></table>`)
	if bad := browse(t, "file://"+writeFile(t, "a.html", good)).print(t, chromedp.PaperA4); len(bad) > 0 {
		t.Errorf("a good page: %q", bad)
	}
}

func onPaper(style, body string) string {
	return "<!DOCTYPE html><title>Made up</title><style>@page{margin:18mm 17mm}body,p,figure{margin:0}" + style + "</style><body>" + body
}
