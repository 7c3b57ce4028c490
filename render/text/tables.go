package text

import (
	"slices"
	"strings"

	"lode/render/table"
)

// This file writes tables in the width of the terminal.

// Table writes a table. One too wide for the terminal is cut into pieces that each begin
// with the columns that tell its rows apart; long texts are folded.
func (s Style) Table(g table.Grid) string {
	var parts []string
	if g.Title != "" {
		parts = append(parts, s.in(strong, clean(g.Title)))
	}
	for _, columns := range s.pieces(g) {
		parts = append(parts, s.piece(g, columns))
	}
	return strings.Join(parts, "\n")
}

func (s Style) piece(g table.Grid, columns []int) string {
	part := table.Grid{}
	for _, c := range columns {
		part.Heads = append(part.Heads, g.Heads[c])
	}
	for _, row := range g.Rows {
		var cells []table.Cell
		for _, c := range columns {
			cells = append(cells, row[c])
		}
		part.Rows = append(part.Rows, cells)
	}
	part = s.folded(part)
	rows := part.Cells()
	rule := s.in(quiet, strings.Repeat("─", max(0, min(across(rows[0]), s.width()))))
	lines := []string{s.in(quiet, line(rows[0])), rule}
	for _, row := range rows[1:] {
		lines = append(lines, line(row))
	}
	return strings.Join(append(lines, rule), "\n")
}

// across returns the width of a line of cells.
func across(cells []string) int {
	total := -2
	for _, cell := range cells {
		total += table.Width(cell) + 2
	}
	return total
}

func line(cells []string) string {
	return strings.TrimRight(clean(strings.Join(cells, "  ")), " ")
}

// leastFold is the width that a text is folded to at least.
const leastFold = 20

// folded breaks the widest column of texts into lines where the grid is too wide.
func (s Style) folded(g table.Grid) table.Grid {
	cells := g.Cells()[0]
	widest := -1
	for c, head := range g.Heads {
		if !head.Numeric && (widest < 0 || table.Width(cells[c]) > table.Width(cells[widest])) {
			widest = c
		}
	}
	over := across(cells) - s.width()
	if widest < 0 || over <= 0 || table.Width(cells[widest])-over < leastFold {
		return g
	}
	return foldedTo(g, widest, table.Width(cells[widest])-over)
}

// foldedTo breaks a column of texts at a width, each line a row of its own.
func foldedTo(g table.Grid, column, width int) table.Grid {
	rows := g.Rows
	g.Rows = nil
	for _, row := range rows {
		for i, text := range wrap(clean(row[column].Text()), width) {
			if i > 0 {
				row = make([]table.Cell, len(row))
			}
			row = slices.Clone(row)
			row[column] = table.Cell{Whole: text}
			g.Rows = append(g.Rows, row)
		}
	}
	return g
}

// pieces tells which columns stand together.
func (s Style) pieces(g table.Grid) [][]int {
	if len(g.Heads) == 0 {
		return nil
	}
	heads := g.Cells()[0]
	keys := s.keys(g, heads)
	lead := across(heads[:keys])
	var pieces [][]int
	piece, used := upTo(keys), lead
	for c := keys; c < len(g.Heads); c++ {
		width := table.Width(heads[c]) + 2
		if used+width > s.width() && len(piece) > keys {
			pieces = append(pieces, piece)
			piece, used = upTo(keys), lead
		}
		piece, used = append(piece, c), used+width
	}
	return append(pieces, piece)
}

func upTo(n int) []int {
	list := make([]int, n)
	for i := range list {
		list[i] = i
	}
	return list
}

// keys returns how many columns of texts it takes to tell the rows apart, where they leave room: one, if more do not.
func (s Style) keys(g table.Grid, heads []string) int {
	for n := 1; n < len(g.Heads) && 3*across(heads[:n]) <= 2*s.width(); n++ {
		if distinct(g, n) {
			return n
		}
		if g.Heads[n].Numeric {
			break
		}
	}
	return 1
}

// distinct reports whether no two rows have the same first cells.
func distinct(g table.Grid, n int) bool {
	seen := map[string]bool{}
	for _, row := range g.Rows {
		key := ""
		for _, cell := range row[:n] {
			key += cell.Text() + "\x00"
		}
		if seen[key] {
			return false
		}
		seen[key] = true
	}
	return true
}
