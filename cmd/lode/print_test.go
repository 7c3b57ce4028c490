package main

import (
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// This file prints pages and measures the paper. Small texts are put into the corners of every figure, row and
// cell before, without moving anything, and looked for in the printed file afterwards.

var papers = map[string]chromedp.PaperSize{"A4": chromedp.PaperA4, "Letter": chromedp.PaperLetter}

// margin is what the style sheet keeps free to the left and right of the text, in points.
const margin = 17 / 25.4 * 72

// whole is something that must stand on one sheet, known by the marks in its corners.
type whole struct {
	What     string
	Marks    []int
	Repeated bool // the head of a table, which stands on every sheet that the table goes on to
}

// marking puts marks into the corners of what must stay whole, and a rule of 100 mm on top. It returns a list of whole.
const marking = `(() => {
	let last = 0;
	const list = [], shown = e => e.checkVisibility() && e.getClientRects().length > 0;
	const note = (What, Marks, Repeated = false) => { list.push({ What, Marks, Repeated }); return Marks; };
	const corner = (e, down, x = down) => {
		const m = document.createElement("span");
		m.textContent = "@" + ++last + "@";
		Object.assign(m.style, { position: "absolute", font: "2px monospace", whiteSpace: "nowrap", [down ? "bottom" : "top"]: 0, [x ? "right" : "left"]: 0 });
		e.style.position = "relative";
		e.append(m);
		return last;
	};
	const inside = (svg, down) => {
		const m = document.createElementNS("http://www.w3.org/2000/svg", "text"), b = svg.viewBox.baseVal;
		m.textContent = "@" + ++last + "@";
		m.style.font = b.width / 400 + "px monospace";
		m.style.textAnchor = down ? "end" : "start";
		m.setAttribute("x", down ? b.x + b.width : b.x);
		m.setAttribute("y", down ? b.y + b.height - b.height / 400 : b.y + b.width / 200);
		svg.append(m);
		return last;
	};
	const rule = document.createElement("div");
	rule.style.width = "100mm";
	document.body.prepend(rule);
	note("the rule", [corner(rule, false), corner(rule, false, true)]);
	for (const svg of [...document.querySelectorAll("svg")].filter(shown)) {
		const plate = svg.closest("figure"), words = plate?.querySelector("figcaption");
		const marks = note("the figure " + (words?.textContent ?? ""), [inside(svg, false), inside(svg, true)]);
		if (words && shown(words)) note("the figure with its caption " + words.textContent, [...marks, corner(words, true)]);
	}
	for (const table of [...document.querySelectorAll("table")].filter(shown)) {
		const rows = [...table.rows].filter(shown).map(row => note("the row " + row.textContent.trim().slice(0, 40),
			[...row.cells].flatMap(c => [corner(c, false), corner(c, true)]), row.parentNode.tagName === "THEAD"));
		const first = [...table.rows].findIndex(r => r.parentNode.tagName !== "THEAD");
		if (table.caption && first >= 0) note("the title with the first row of " + table.caption.textContent, [corner(table.caption, false), ...rows[first]]);
	}
	return JSON.stringify(list);
})()`

// beyond lists what ends to the right of the window, but for drawings at full size and what is only spoken. Spaces
// that hang at the end of a line do not count.
const beyond = `JSON.stringify([...document.body.querySelectorAll("*")]
	.filter(e => e.clientWidth > 0 && e.checkVisibility() && !e.closest(".full, .spoken, .skip, svg *"))
	.filter(e => { const b = e.getBoundingClientRect(); return Math.max(b.right, b.left + e.scrollWidth) > innerWidth + 1; })
	.filter((e, _, all) => !all.some(o => o !== e && e.contains(o)))
	.map(e => e.tagName + " " + e.textContent.trim().slice(0, 40)))`

// print returns what is cut or runs out of a page on this paper.
func (v *tab) print(t *testing.T, paper chromedp.PaperSize) []string {
	t.Helper()
	width := int64((paper.Width*72 - 2*margin) / 72 * 96)
	if _, err := chromedp.Call(v, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"}); err != nil {
		t.Fatal(err)
	}
	if _, err := chromedp.Call(v, emulation.SetDeviceMetricsOverride, emulation.SetDeviceMetricsOverrideParams{Width: width, Height: 900, DeviceScaleFactor: 1}); err != nil {
		t.Fatal(err)
	}
	var wide []string
	var parts []whole
	if err := json.Unmarshal([]byte(v.text(t, beyond)), &wide); err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal([]byte(v.text(t, marking)), &parts); err != nil {
		t.Fatal(err)
	}
	if len(parts) < 2 {
		t.Error("there is nothing to measure")
	}
	for i := range wide {
		wide[i] = "too wide: " + wide[i]
	}
	return append(wide, judge(parts, v.marks(t, paper))...)
}

// spot is where a mark was found.
type spot struct {
	sheet       int
	left, right float64 // in points
}

var (
	sheetOrWord = regexp.MustCompile(`<page |<word xMin="([-\d.]+)" yMin="[-\d.]+" xMax="([-\d.]+)" yMax="[-\d.]+">([^<]*)`)
	oneMark     = regexp.MustCompile(`@(\d+)@`)
)

// marks prints the page and finds the marks.
func (v *tab) marks(t *testing.T, paper chromedp.PaperSize) map[int][]spot {
	t.Helper()
	data, err := chromedp.Run(v, chromedp.PrintToPDF(chromedp.PDFPaper(paper)))
	if err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "page.pdf")
	if err = os.WriteFile(file, data, 0o600); err != nil {
		t.Fatal(err)
	}
	text, err := exec.Command("pdftotext", "-bbox", file, "-").Output()
	if err != nil {
		t.Fatalf("pdftotext: %v", err)
	}
	found, sheet := map[int][]spot{}, 0
	for _, m := range sheetOrWord.FindAllStringSubmatch(string(text), -1) {
		if m[3] == "" {
			sheet++
			continue
		}
		left, _ := strconv.ParseFloat(m[1], 64)
		right, _ := strconv.ParseFloat(m[2], 64)
		for _, id := range oneMark.FindAllStringSubmatch(m[3], -1) {
			n, _ := strconv.Atoi(id[1])
			found[n] = append(found[n], spot{sheet, left, right})
		}
	}
	return found
}

// judge tells what does not stand whole on one sheet. A mark that is off the paper, or clipped, is on none.
func judge(parts []whole, found map[int][]spot) []string {
	var bad []string
	for _, p := range parts {
		var first []int
		for i, m := range p.Marks {
			var sheets []int
			for _, s := range found[m] {
				sheets = append(sheets, s.sheet)
			}
			if i == 0 {
				first = sheets
			}
			if len(sheets) == 0 || !p.Repeated && len(sheets) > 1 || !slices.Equal(sheets, first) {
				bad = append(bad, fmt.Sprintf("cut: %s: corner %d on sheets %v, the first on %v", p.What, i+1, sheets, first))
				break
			}
		}
	}
	return append(bad, shrunk(parts[0], found)...)
}

// shrunk tells whether the browser made the page smaller to get it on the paper.
func shrunk(rule whole, found map[int][]spot) []string {
	from, to := found[rule.Marks[0]], found[rule.Marks[1]]
	if len(from) != 1 || len(to) != 1 {
		return []string{"the rule is not there"}
	}
	if mm := (to[0].right - from[0].left) / 72 * 25.4; mm < 99.5 || mm > 100.5 {
		return []string{fmt.Sprintf("shrunk: 100 mm are %.1f mm", mm)}
	}
	return nil
}
