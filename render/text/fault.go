package text

import (
	"fmt"
	"strings"

	"lode/render/table"
)

// Fault is something wrong at a place in a notebook.
type Fault struct {
	File         string
	Line, Column int    // from 1; Column counts characters
	What         string // subject: what is wrong
	Source       string // the line it is in
	Length       int    // characters to point at, 0 for one
	Got, Want    string
	Hint         string
	From         []string // the calls that led there, innermost first
}

// Fault writes where the fault is, the line with a mark under it, and what was got and what
// was wanted.
func (s Style) Fault(f Fault) string {
	lines := []string{s.in(alarm, place(f)) + s.in(strong, clean(f.What))}
	if f.Source != "" {
		lines = append(lines, s.source(f)...)
	}
	for _, row := range []struct{ name, text string }{{"got", f.Got}, {"want", f.Want}, {"hint", f.Hint}} {
		if row.text != "" {
			lines = append(lines, s.row(row.name, wrap(clean(row.text), s.width()-8))...)
		}
	}
	var calls []string
	for _, c := range f.From {
		calls = append(calls, cutTo(clean(c), s.width()-8))
	}
	return strings.Join(append(lines, s.row("from", calls)...), "\n")
}

// row writes lines with a name in front of the first.
func (s Style) row(name string, texts []string) []string {
	var lines []string
	for _, l := range texts {
		lines = append(lines, "  "+s.in(quiet, fmt.Sprintf("%-4s", name))+"  "+l)
		name = ""
	}
	return lines
}

func place(f Fault) string {
	switch {
	case f.File == "":
		return ""
	case f.Line == 0:
		return clean(f.File) + ": "
	case f.Column == 0:
		return fmt.Sprintf("%s:%d: ", clean(f.File), f.Line)
	}
	return fmt.Sprintf("%s:%d:%d: ", clean(f.File), f.Line, f.Column)
}

// source writes the faulty line with a mark under the place. A long line is cut so that the
// place stays in sight.
func (s Style) source(f Fault) []string {
	letters := []rune(strings.ReplaceAll(strings.TrimRight(f.Source, "\r\n"), "\t", " "))
	start := min(max(f.Column-1, 0), len(letters))
	end := min(max(start+max(f.Length, 1), start), len(letters))
	for i, r := range letters {
		letters[i] = []rune(clean(string(r)) + " ")[0]
	}
	room, lead := s.width()-6, ""
	if table.Width(string(letters[:end])) > room {
		cut := max(0, start-room/3)
		letters, start, end, lead = letters[cut:], start-cut, end-cut, "…"
	}
	text := lead + cutTo(string(letters), room)
	before := table.Width(lead + string(letters[:start]))
	long := max(1, min(table.Width(string(letters[start:end])), room-before))
	lines := []string{"", "    " + text}
	if f.Column > 0 {
		lines = append(lines, "    "+strings.Repeat(" ", before)+s.in(alarm, strings.Repeat("^", long)))
	}
	return append(lines, "")
}

func cutTo(text string, width int) string {
	if table.Width(text) <= width {
		return text
	}
	letters := []rune(text)
	for len(letters) > 0 && table.Width(string(letters))+1 > width {
		letters = letters[:len(letters)-1]
	}
	return string(letters) + "…"
}
