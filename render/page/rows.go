package page

import (
	"fmt"
	"html/template"
	"strings"
	"unicode/utf8"

	"lode/render/table"
)

// This file writes the rows of tables, of which a page has hundreds.

// rows writes the body of a table.
func rows(g *table.Grid) template.HTML {
	var b strings.Builder
	widths := align(g)
	for _, row := range g.Rows {
		b.WriteString("<tr>")
		for i, cell := range row {
			switch {
			case g.Heads[i].Numeric:
				number(&b, cell, widths[i])
			case i == 0:
				b.WriteString(`<th scope="row"` + longClass(cell.Text()) + ">" + template.HTMLEscapeString(cell.Text()) + "</th>")
			default:
				b.WriteString("<td" + longClass(cell.Text()) + ">" + template.HTMLEscapeString(cell.Text()) + "</td>")
			}
		}
		b.WriteString("</tr>\n")
	}
	return template.HTML(b.String())
}

// longClass is the attribute of a cell with a word to be broken, or with too many words for a narrow column.
func longClass(text string) string {
	switch {
	case long(text):
		return ` class="long"`
	case wordy(text):
		return ` class="wordy"`
	}
	return ""
}

// number writes a cell whose column has fractions of up to so many characters.
func number(b *strings.Builder, cell table.Cell, width int) {
	b.WriteString(`<td class="number">` + template.HTMLEscapeString(cell.Whole))
	if width > 0 {
		fmt.Fprintf(b, `<span class="f f%d">%s</span>`, width, template.HTMLEscapeString(cell.Fraction))
	}
	if cell.Unit != "" {
		b.WriteString(` <span class="unit">` + template.HTMLEscapeString(cell.Unit) + "</span>")
	}
	b.WriteString("</td>")
}

// align returns how many characters the longest fraction of each column has.
func align(g *table.Grid) []int {
	widths := make([]int, len(g.Heads))
	for _, row := range g.Rows {
		for c, cell := range row {
			widths[c] = max(widths[c], utf8.RuneCountInString(cell.Fraction))
		}
	}
	return widths
}
