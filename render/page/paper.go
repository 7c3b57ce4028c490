package page

import (
	"strings"

	"lode/render/table"
)

// This file decides what is set smaller or broken on paper, where nothing can be scrolled: tables of many columns,
// long words in them, and long code.

// onPaper is how many tenths of a digit's width a line of a table holds at the usual size and at the smaller one, on the
// narrower of the common papers in a wide typeface; gap is the space between columns, likewise.
const (
	onPaper, gap        = 700, 22
	onPaperSmall, small = 990, 12
	longestWord         = 24     // longer ones may be broken anywhere
	fewWords, easyWords = 12, 18 // letters of a text that are not broken into more lines: on a screen, and where there is room
)

// crowd returns the class of a table that is set smaller on paper, or has room to spare there, "" for none.
func crowd(g *table.Grid) string {
	width, gaps := 10*least(g, word), len(g.Heads)-1
	switch {
	case 10*least(g, easy)+gap*gaps <= onPaper:
		return " easy"
	case width+gap*gaps <= onPaper:
		return ""
	case width+small*gaps <= onPaperSmall:
		return " many"
	}
	return " most"
}

// least returns how narrow the columns can be set together, in digits: numbers are not broken, and texts are as wide as
// a function says.
func least(g *table.Grid, text func(string) int) int {
	sum := 0
	for c, head := range g.Heads {
		width := max(word(head.Name), word(head.Unit))
		for _, row := range g.Rows {
			if cell := row[c]; head.Numeric {
				width = max(width, table.Width(cell.Text()))
			} else {
				width = max(width, text(cell.Text()))
			}
		}
		sum += width
	}
	return sum
}

// word returns the width of the longest word that is not broken.
func word(text string) int {
	width := 0
	for _, w := range strings.Fields(text) {
		if n := table.Width(w); n <= longestWord {
			width = max(width, n)
		}
	}
	return width
}

// easy returns how wide a text is set where there is room.
func easy(text string) int { return max(word(text), min(table.Width(text), easyWords)) }

// wordy reports whether a text would be broken into many lines in a narrow column.
func wordy(text string) bool { return table.Width(text) > fewWords }

// long reports whether a text has a word to be broken.
func long(text string) bool {
	for _, w := range strings.Fields(text) {
		if table.Width(w) > longestWord {
			return true
		}
	}
	return false
}

// Lines of code that stay together with what they show, and their letters on paper.
const briefLines, codeLine = 16, 90

// brief reports whether code stays on one sheet with what it shows.
func brief(code string) bool {
	lines := 0
	for line := range strings.Lines(code) {
		lines += 1 + table.Width(line)/codeLine
	}
	return lines <= briefLines
}
