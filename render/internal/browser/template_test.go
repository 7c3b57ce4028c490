package browser

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"lode/render/page"
	"lode/render/table"
	"lode/render/template"
	"lode/units"
	"lode/units/frame"
)

// This file measures a template on printed paper, as a rule would: Poppler draws the sheet, and edges are looked for in the picture.

const dotsPerMillimetre = 600 / 25.4

// console is a flange for eight strings with two mounting holes, one of them off the middle.
func console() frame.Frame {
	var columns [5][]any
	add := func(name, work string, x, y, d float64) {
		for i, cell := range []any{name, work, units.Length(x / 1000), units.Length(y / 1000), units.Length(d / 1000)} {
			columns[i] = append(columns[i], cell)
		}
	}
	add("flange", "cut", -36, 0, 22)
	add("flange", "cut", 36, 0, 22)
	for i := range 8 {
		add(fmt.Sprintf("pole %d", i+1), "drill", 9*(float64(i)-3.5), 0, 5)
	}
	add("mount", "drill", -42, 3, 3.2)
	add("mount", "drill", 42, -3, 3.2)
	f := frame.Frame{Title: "Flange"}
	for i, name := range []string{"Part", "Work", "x", "y", "Diameter"} {
		f.Columns = append(f.Columns, frame.Collect(name, columns[i]))
	}
	return f
}

// crowded is a page with a template among prose, wide tables and long words, which tempt a browser to shrink the page.
func crowded(t *testing.T, d template.Template) page.Document {
	var heads, cells []any
	for i := range 30 {
		heads, cells = append(heads, fmt.Sprintf("quantity number %d", i)), append(cells, units.Resistance(1000*float64(i)+1.5))
	}
	var texts []string
	for _, h := range heads {
		texts = append(texts, h.(string))
	}
	wide, err := table.Of(table.Head(texts...), table.Row(cells...))
	if err != nil {
		t.Fatal(err)
	}
	grid := wide.Grid()
	return page.Document{Title: "Plates", Blocks: []page.Block{
		page.Prose{Source: strings.Repeat("Before the plate there are words. ", 30)},
		page.Cell{Source: "wide", Results: []page.Result{{Label: "wide", Table: &grid}, {Label: strings.Repeat("x", 400), Value: "1"}}},
		page.Cell{Source: "template.Draw(plate)", Results: []page.Result{{Figure: d}}},
		page.Prose{Source: "After it too."},
	}}
}

// scanned prints a page and returns its sheets as pictures at 600 dots to the inch.
func scanned(t *testing.T, v *visit, size chromedp.PaperSize) []*image.Gray {
	t.Helper()
	folder := t.TempDir()
	if err := os.WriteFile(filepath.Join(folder, "page.pdf"), run(t, v, chromedp.PrintToPDF(chromedp.PDFPaper(size))), 0o644); err != nil {
		t.Fatal(err)
	}
	if out, err := exec.Command("pdftoppm", "-r", "600", "-gray", filepath.Join(folder, "page.pdf"), filepath.Join(folder, "sheet")).CombinedOutput(); err != nil {
		t.Fatalf("pdftoppm: %v: %s", err, out)
	}
	names, err := filepath.Glob(filepath.Join(folder, "sheet*.pgm"))
	if err != nil {
		t.Fatal(err)
	}
	var sheets []*image.Gray
	for _, name := range names {
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		sheets = append(sheets, grey(t, data))
	}
	return sheets
}

// grey reads a picture in the portable grey map form.
func grey(t *testing.T, data []byte) *image.Gray {
	t.Helper()
	var magic string
	var width, height, most int
	in := bytes.NewReader(data)
	if _, err := fmt.Fscanf(in, "%s\n%d %d\n%d\n", &magic, &width, &height, &most); err != nil || magic != "P5" {
		t.Fatalf("not a grey map: %v", err)
	}
	picture := image.NewGray(image.Rect(0, 0, width, height))
	copy(picture.Pix, data[len(data)-in.Len():])
	return picture
}

func dark(p *image.Gray, x, y int) bool { return p.At(x, y).(color.Gray).Y < 128 }

// rule finds the scale: the only unbroken line of 45 mm to 55 mm in that direction. It returns its ends and where it lies.
func rule(p *image.Gray, down bool) (from, to, at int) {
	size := p.Bounds().Size()
	long, wide := size.X, size.Y
	if down {
		long, wide = size.Y, size.X
	}
	for at = range wide {
		run := 0
		for i := range long + 1 {
			if i < long && (!down && dark(p, i, at) || down && dark(p, at, i)) {
				run++
				continue
			}
			if mm := float64(run) / dotsPerMillimetre; mm > 45 && mm < 55 {
				return i - run, i, at
			}
			run = 0
		}
	}
	return 0, 0, -1
}

// circle measures a circle near a place, in dots: its middle and diameter from the edges to each side, off the hairlines.
func circle(p *image.Gray, x, y, r float64) (mx, my, diameter float64, found bool) {
	edge := func(dx, dy float64) float64 {
		sum, count := 0.0, 0.0
		for s := 0.6 * r; s < 1.4*r; s += 0.25 {
			if dark(p, int(x+s*dx+0.5), int(y+s*dy+0.5)) {
				sum, count = sum+s, count+1
			}
			if count > 0 && !dark(p, int(x+s*dx+0.5), int(y+s*dy+0.5)) {
				break
			}
		}
		return sum / count
	}
	const angle = 0.35 // off the hairlines, and below the numbers
	sin, cos := math.Sincos(angle)
	right, left := (edge(cos, sin)+edge(cos, -sin))/2, (edge(-cos, sin)+edge(-cos, -sin))/2
	below, above := (edge(sin, cos)+edge(-sin, cos))/2, (edge(-sin, -cos)+edge(sin, -cos))/2
	if math.IsNaN(right + left + below + above) {
		return 0, 0, 0, false
	}
	return x + (right-left)/2/cos, y + (below-above)/2/cos, (right + left + below + above) / 2, true
}

// Every size on paper is right to 0.1 mm: both scales, all holes against the scale and against each other.
func TestTemplateOnPaper(t *testing.T) {
	d, err := template.Draw(console())
	if err != nil {
		t.Fatal(err)
	}
	holes := d.Numbers()[0]
	for name, paper := range papers {
		sheets, measured := scanned(t, open(t, crowded(t, d), 1200, "dark"), paper), 0
		for _, sheet := range sheets {
			from, to, top := rule(sheet, false)
			if top < 0 {
				continue
			}
			measured++
			across := float64(to-from) / dotsPerMillimetre
			upper, lower, _ := rule(sheet, true)
			down := float64(lower-upper) / dotsPerMillimetre
			if math.Abs(across-50) > 0.1 || math.Abs(down-50) > 0.1 {
				t.Errorf("%s: the scales measure %.3f mm and %.3f mm", name, across, down)
			}
			worst := measureHoles(t, name, sheet, d, holes, float64(from), float64(upper))
			t.Logf("%s, %d sheets: scales %.3f mm across and %.3f mm down; holes off by %.3f mm at most", name, len(sheets), across, down, worst)
		}
		if measured != 1 {
			t.Errorf("%s: %d of %d sheets have a template, want 1", name, measured, len(sheets))
		}
	}
}

// measureHoles compares the holes with the list, counted from the first one.
func measureHoles(t *testing.T, name string, sheet *image.Gray, d template.Template, holes frame.Frame, left, top float64) float64 {
	t.Helper()
	x, y, diameters := holes.Columns[1].Values, holes.Columns[2].Values, holes.Columns[3].Values
	originX, originY := d.Place()
	scaleX, scaleY := d.ScaleCorner()
	dots := 1000 * dotsPerMillimetre
	var firstX, firstY, worst float64
	for i := range x {
		px := left + (float64(originX-scaleX)+x[i])*dots
		py := top + (float64(originY-scaleY)-y[i])*dots
		mx, my, diameter, found := circle(sheet, px, py, diameters[i]/2*dots)
		if !found {
			t.Errorf("%s: hole %d is not there", name, i+1)
			continue
		}
		if i == 0 {
			firstX, firstY = mx, my
		}
		apart := math.Hypot((mx-firstX)/dots-(x[i]-x[0]), (firstY-my)/dots-(y[i]-y[0]))
		off := 1000 * max(apart, math.Hypot(mx-px, my-py)/dots, math.Abs(diameter/dots-diameters[i]))
		worst = max(worst, off)
		if off > 0.1 {
			t.Errorf("%s: hole %d is off by %.3f mm", name, i+1, off)
		}
	}
	return worst
}
