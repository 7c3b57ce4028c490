// Package schematic draws circuits with the usual symbols.
//
//	schematic.Of(line)
//	schematic.Of(line).Titled("Before and after")
//
// The signal goes from left to right above, ground runs below; a circuit too long for one row goes
// on in the next, from the terminal of the same letter.
package schematic

import (
	"cmp"
	"errors"
	"fmt"
	"strings"
	"unicode/utf8"

	"lode/render/internal/chart"
	"lode/units/frame"
	"lode/units/ladder"
)

// This file holds the drawing as a value; rows.go lays out, branch.go draws what has two ends,
// stage.go the rest, symbols.go the symbols, pen.go writes SVG.

// Drawing is a schematic.
type Drawing struct {
	ladder  ladder.Ladder
	caption string
}

// Of draws a chain, a transformer's model, a piezo element, or anything else that can be laid out as a ladder.
//
// Source: symbols of IEC 60617, Graphical symbols for diagrams.
//
// Example: schematic.Of(load.From(c).Volume(500*kΩ).Cable(5*metre).Input(1*MΩ))
func Of(source ladder.Source) (Drawing, error) {
	if source == nil {
		return Drawing{}, errors.New("schematic: missing: got nothing, want a chain, a model or an element")
	}
	l, err := source.Ladder()
	if err != nil {
		return Drawing{}, err
	}
	if len(l.Steps) == 0 {
		return Drawing{}, errors.New("schematic: empty: got no parts, want at least one")
	}
	return Drawing{l, strings.Join(l.Notes, " ")}, nil
}

// Titled returns the drawing under another title.
func (d Drawing) Titled(title string) Drawing {
	d.ladder.Title = title
	return d
}

// Captioned returns the drawing with another caption.
func (d Drawing) Captioned(caption string) Drawing {
	d.caption = caption
	return d
}

// Title returns the title.
func (d Drawing) Title() string {
	if d.ladder.Title == "" {
		return "Schematic"
	}
	return d.ladder.Title
}

// Caption returns the words under the drawing, or nothing.
func (d Drawing) Caption() string { return d.caption }

// String lists the parts, one a line, with their values and places.
func (d Drawing) String() string {
	rows := d.rows()
	var widths [2]int
	for _, r := range rows {
		for i := range widths {
			widths[i] = max(widths[i], utf8.RuneCountInString(r[i]))
		}
	}
	lines := make([]string, len(rows))
	for i, r := range rows {
		for j, w := range widths {
			lines[i] += r[j] + strings.Repeat(" ", w-utf8.RuneCountInString(r[j])+2)
		}
		lines[i] += r[2]
	}
	return strings.Join(lines, "\n")
}

// Description says in words what the drawing shows, for readers who cannot see it.
func (d Drawing) Description() string {
	rows := d.rows()
	text := make([]string, len(rows))
	for i, r := range rows {
		text[i] = strings.TrimSpace(fmt.Sprintf("%s %s", r[0], r[1])) + " (" + r[2] + ")"
	}
	return "Circuit from left to right: " + strings.Join(text, ", ") + "."
}

// Numbers returns the parts as a table.
func (d Drawing) Numbers() []frame.Frame {
	columns := [3]frame.Column{{Name: "Part"}, {Name: "Value"}, {Name: "Where"}}
	for _, r := range d.rows() {
		for i := range columns {
			columns[i].Texts = append(columns[i].Texts, r[i])
		}
	}
	return []frame.Frame{{Title: d.Title(), Columns: columns[:]}}
}

// rows lists name, value and place of every part.
func (d Drawing) rows() [][3]string {
	var rows [][3]string
	for _, s := range d.ladder.Steps {
		place := string(s.Way)
		if s.Way == ladder.Divider || s.Way == ladder.Backwards || s.Way == ladder.Transformer || s.Way == ladder.Amplifier {
			rows = append(rows, [3]string{s.Name, s.Value, place})
			place = "from its upper end to its wiper"
			if s.Way == ladder.Amplifier {
				place = "from its output to its input"
			}
		}
		rows = append(rows, partRows(s.Branch, place)...)
	}
	return rows
}

// partRows lists the parts of a branch that lies in a place.
func partRows(b ladder.Branch, place string) (rows [][3]string) {
	if b.Symbol != "" {
		return [][3]string{{cmp.Or(b.Name, string(b.Symbol)), cmp.Or(b.Value, string(b.Symbol)), place}}
	}
	for i, inner := range b.Series {
		rows = append(rows, partRows(inner, fmt.Sprintf("%s, %d of %d in series", place, i+1, len(b.Series)))...)
	}
	for i, inner := range b.Parallel {
		at := place
		if place != string(ladder.Down) {
			at = fmt.Sprintf("%s, %d of %d in parallel", place, i+1, len(b.Parallel))
		}
		rows = append(rows, partRows(inner, at)...)
	}
	return rows
}

// The widths that drawings are made for, in units of the letters' size.
const (
	wide   = 720
	narrow = 360
)

// letter is the size of letters and line the distance of two lines of them.
const (
	letter = 12.5
	line   = 15.5
)

// SVG draws for screens and paper. The id must be unique on the page. The drawing is coloured by the style
// sheet of package figure.
func (d Drawing) SVG(id string) string { return d.draw(wide).svg(id, d) }

// Narrow draws for the width of a telephone.
func (d Drawing) Narrow(id string) string { return d.draw(narrow).svg(id, d) }

func textWidth(text string) float64 { return chart.TextWidth(text, letter) }
