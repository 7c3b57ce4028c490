package browser

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"lode/render/figure"
	"lode/render/internal/example"
	"lode/render/page"
	"lode/render/table"
	"lode/units"
)

// printed returns the text of each page on paper.
func (v *visit) printed(t *testing.T, size chromedp.PaperSize) []string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "page.pdf")
	data := run(t, v, chromedp.PrintToPDF(chromedp.PDFPaper(size)))
	if err := os.WriteFile(path, data, 0o644); err != nil {
		t.Fatal(err)
	}
	text, err := exec.Command("pdftotext", "-layout", path, "-").Output()
	if err != nil {
		t.Fatalf("pdftotext: %v", err)
	}
	return strings.Split(strings.TrimSuffix(string(text), "\f"), "\f")
}

var papers = map[string]chromedp.PaperSize{"A4": chromedp.PaperA4, "Letter": chromedp.PaperLetter}

// No figure is cut: its vertical and its horizontal title stand on one page with its caption.
func TestFiguresWholeOnPaper(t *testing.T) {
	f, err := figure.Response(example.Coil("as found", 3.4, 7200, 140e-12))
	if err != nil {
		t.Fatal(err)
	}
	d := page.Document{Title: "Many figures"}
	for i := range 8 {
		d.Blocks = append(d.Blocks, page.Prose{Source: strings.Repeat("Some words about the coil. ", 10+37*i%90)},
			page.Cell{Source: "figure.Response(found)", Results: []page.Result{{Figure: f.Titled("Plate")}}})
	}
	for name, paper := range papers {
		pages := open(t, d, 1200, "dark").printed(t, paper)
		figures := 0
		for i, text := range pages {
			tops, bottoms, captions := strings.Count(text, "Level, dB"), strings.Count(text, "Frequency, Hz"), strings.Count(text, "Plate")
			figures += tops
			if tops != bottoms || tops != captions {
				t.Errorf("%s, page %d of %d: %d figures begin, %d end, %d captions", name, i+1, len(pages), tops, bottoms, captions)
			}
		}
		if figures != 8 || len(pages) > 8 {
			t.Errorf("%s: %d figures on %d pages, want 8 on 8 or fewer", name, figures, len(pages))
		}
	}
}

// The head of a long table stands on every page that has rows of it.
func TestTableHeadsRepeat(t *testing.T) {
	var rows []table.Line
	for i := range 150 {
		rows = append(rows, table.Row(fmt.Sprintf("layer %d", i+1), 100+i, units.Resistance(40+0.3*float64(i))))
	}
	long, err := table.Of(table.Head("where", "turns", "resistance"), rows...)
	if err != nil {
		t.Fatal(err)
	}
	grid := long.Grid()
	d := page.Document{Title: "A long table", Blocks: []page.Block{page.Cell{Results: []page.Result{{Label: "layers", Table: &grid}}}}}
	for name, paper := range papers {
		pages := open(t, d, 1200, "light").printed(t, paper)
		if len(pages) < 3 {
			t.Errorf("%s: %d pages, want three or more", name, len(pages))
		}
		for i, text := range pages {
			if strings.Contains(text, "layer ") && !strings.Contains(text, "resistance") {
				t.Errorf("%s: page %d has rows and no head", name, i+1)
			}
		}
	}
}
