package table

import (
	"strings"

	"github.com/mattn/go-runewidth"
)

// Width returns how many columns of a terminal text takes up.
func Width(text string) int { return measure().StringWidth(text) }

// measure counts letters that East Asian standards call ambiguous, such as Ω, as narrow,
// whatever the terminal's language.
func measure() *runewidth.Condition {
	c := runewidth.NewCondition()
	c.EastAsianWidth = false
	return c
}

// String writes the grid as lines of equal columns, two spaces apart.
func (g Grid) String() string {
	lines := make([]string, 0, len(g.Rows)+1)
	rows := g.Cells()
	for _, row := range rows {
		lines = append(lines, strings.TrimRight(strings.Join(row, "  "), " "))
	}
	return strings.Join(lines, "\n")
}

// Cells returns the head and the rows padded to equal widths.
func (g Grid) Cells() [][]string {
	rows := make([][]string, len(g.Rows)+1)
	for c, head := range g.Heads {
		name := head.Name
		if head.Unit != "" {
			name = strings.TrimSpace(name + " " + head.Unit)
		}
		cells := g.padded(c)
		width := Width(name)
		for _, cell := range cells {
			width = max(width, Width(cell))
		}
		rows[0] = append(rows[0], pad(name, width, head.Numeric))
		for i, cell := range cells {
			rows[i+1] = append(rows[i+1], pad(cell, width, head.Numeric))
		}
	}
	return rows
}

// padded aligns the numbers of a column on their decimal points.
func (g Grid) padded(column int) []string {
	cells := make([]string, len(g.Rows))
	fraction, unit := 0, 0
	for _, row := range g.Rows {
		fraction, unit = max(fraction, Width(row[column].Fraction)), max(unit, Width(tail(row[column])))
	}
	for i, row := range g.Rows {
		c := row[column]
		cells[i] = c.Text()
		if g.Heads[column].Numeric {
			cells[i] = c.Whole + pad(c.Fraction, fraction, false) + pad(tail(c), unit, false)
		}
	}
	return cells
}

// tail is what follows the number of a cell with a unit of its own.
func tail(c Cell) string {
	if c.Unit == "" {
		return ""
	}
	return Cell{Unit: c.Unit}.Text()
}

func pad(text string, width int, right bool) string {
	gap := strings.Repeat(" ", max(0, width-Width(text)))
	if right {
		return gap + text
	}
	return text + gap
}
