// Package template draws plates at full size for paper: to be glued on, cut out and drilled.
//
//	template.Draw(coil.Flange(bobbin, coil.Drilling{Strings: coil.Strings{Count: 8, Pitch: 9*mm}, Hole: 5*mm}))
//
// The drawing measures in millimetres, carries two scales to check the printer with and a list
// of its holes, and takes a sheet of its own on a printed page. File is the same drawing as a
// file of its own.
package template

import (
	"fmt"
	"math"

	"lode/units"
	"lode/units/frame"
)

// Template is a drawing at full size.
type Template struct {
	title, caption string
	source         frame.Frame
	parts          []part
	sheet          layout
}

// Draw draws a plate at full size. The source has a column of texts that names the part, one that names the work
// ("cut", "mark" or "drill"), and three of length: x, y and the diameter that the part is rounded to. Rows that
// follow each other under one name and work are the corners of one part, except holes, which have a row each.
//
// Valid: drawings that fit on one sheet of A4 or Letter.
//
// Accuracy: exact in the file; printers stretch paper by some 0.3 % (common practice, no source): check both scales.
//
// Caution: blades and drills: clamp the work, wear eye protection, draw off dust.
//
// Example: template.Draw(plate)
func Draw(source frame.Source) (Template, error) {
	if source == nil {
		return Template{}, fmt.Errorf("template.Draw: nothing to draw: got nothing, want a plate such as coil.Flange gives")
	}
	f := source.Frame()
	parts, err := read(f)
	if err != nil {
		return Template{}, err
	}
	sheet, err := arrange(parts)
	if err != nil {
		return Template{}, err
	}
	t := Template{title: f.Title, source: f, parts: parts, sheet: sheet}
	if t.title == "" {
		t.title = "Template"
	}
	return t, nil
}

// Title returns the drawing's title.
func (t Template) Title() string { return t.title }

// Caption returns the words under the drawing.
func (t Template) Caption() string {
	how := "Full size on paper: print at 100 %, without fitting to the page, and hold a rule against both 50 mm scales before cutting."
	if t.caption != "" {
		how = t.caption + " " + how
	}
	return how
}

// Titled returns the template under another title.
func (t Template) Titled(title string) Template {
	t.title = title
	return t
}

// Captioned returns the template with words of its own before those on printing.
func (t Template) Captioned(caption string) Template {
	t.caption = caption
	return t
}

// Size returns the width and height of the drawing on paper.
func (t Template) Size() (width, height units.Length) {
	return units.Length(t.sheet.width / 1000), units.Length(t.sheet.height / 1000)
}

// Place returns where the origin of the plate lies on the drawing, from its upper left corner.
func (t Template) Place() (right, down units.Length) {
	at := t.sheet.at(point{})
	return units.Length(at.x / 1000), units.Length(at.y / 1000)
}

// ScaleCorner returns where both scales begin, from the drawing's upper left corner.
func (t Template) ScaleCorner() (right, down units.Length) {
	return units.Length(t.sheet.scales.x / 1000), units.Length(t.sheet.scales.y / 1000)
}

// FullSize says that the drawing must be printed as large as it is.
func (t Template) FullSize() bool { return true }

// Numbers returns the list of holes.
func (t Template) Numbers() []frame.Frame {
	names, x, y, diameter := []any{}, []any{}, []any{}, []any{}
	for _, h := range holes(t.parts) {
		names = append(names, fmt.Sprintf("%d, %s", h.number, h.name))
		x, y = append(x, metres(h.points[0].x)), append(y, metres(h.points[0].y))
		diameter = append(diameter, metres(h.diameter))
	}
	if len(names) == 0 {
		return nil
	}
	return []frame.Frame{{Title: "Holes, from the centre lines", Columns: []frame.Column{
		frame.Collect("Hole", names), frame.Collect("x", x), frame.Collect("y", y), frame.Collect("Diameter", diameter)}}}
}

// metres takes a length back from the drawing's millimetres.
func metres(mm float64) units.Length { return units.Length(math.Round(mm*1e9) / 1e12) }

// Frame returns what was drawn.
func (t Template) Frame() frame.Frame { return t.source }

// String tells what the template shows.
func (t Template) String() string {
	return fmt.Sprintf("%s: %s, %g mm by %g mm of paper; print the page at 100 %%", t.title, counted(len(holes(t.parts))), round(t.sheet.width), round(t.sheet.height))
}

// counted words a number of holes.
func counted(n int) string {
	if n == 1 {
		return "1 hole"
	}
	return fmt.Sprintf("%d holes", n)
}
