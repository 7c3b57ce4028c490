// Package text writes results for the terminal: values behind dotted leaders, tables with
// thin rules, curves in braille dots, and faults with the line they are in. It returns
// strings and touches no terminal itself.
package text

import (
	"strings"

	"lode/render/table"
)

// Style is how to write. The zero value is plain text for 80 columns.
type Style struct {
	Width  int  // columns of the terminal, 0 for 80
	Colour bool // whether escape sequences for colour may be written
}

// For returns the style for an output: colour only on a terminal, and not where the
// environment asks for none (NO_COLOR set to anything, or TERM set to dumb).
func For(terminal bool, width int, environment func(string) string) Style {
	return Style{Width: width, Colour: terminal && environment("NO_COLOR") == "" && environment("TERM") != "dumb"}
}

func (s Style) width() int {
	if s.Width <= 0 {
		return 80
	}
	return max(s.Width, 20)
}

const (
	quiet  = "2"
	strong = "1"
	alarm  = "1;31"
)

// in wraps text in an escape sequence, when colours are wanted.
func (s Style) in(code, text string) string {
	if !s.Colour || text == "" {
		return text
	}
	return "\x1b[" + code + "m" + text + "\x1b[0m"
}

// Value is a shown result.
type Value struct{ Label, Text string }

// Values writes results one to a line, the values in line behind dotted leaders.
func (s Style) Values(values ...Value) string {
	column := 0
	for _, v := range values {
		if w := table.Width(v.Label); w <= s.width()/2 {
			column = max(column, w)
		}
	}
	var lines []string
	for _, v := range values {
		lines = append(lines, s.value(v, column))
	}
	return strings.Join(lines, "\n")
}

func (s Style) value(v Value, column int) string {
	text := clean(v.Text)
	if strings.Contains(text, "\n") {
		return s.in(quiet, clean(v.Label)) + "\n" + indent(text, "  ")
	}
	label := clean(v.Label)
	if table.Width(label)+table.Width(text)+5 > s.width() {
		return s.in(quiet, strings.Join(wrap(label, s.width()), "\n")) + "\n" + indent(strings.Join(wrap(text, s.width()-4), "\n"), "    ")
	}
	leader := strings.Repeat("·", max(2, column-table.Width(label)+2))
	return s.in(quiet, label+" "+leader) + " " + s.in(strong, text)
}

// Change is a result that came out differently than before.
type Change struct{ Label, Before, After string }

// Changes writes what moved: the value before and the value now.
func (s Style) Changes(changes ...Change) string {
	values := make([]Value, len(changes))
	for i, c := range changes {
		values[i] = Value{c.Label, clean(c.After)}
		if c.Before != "" {
			values[i].Text = clean(c.Before) + " → " + clean(c.After)
		}
	}
	return s.Values(values...)
}

// clean drops control characters, so that a text in a notebook cannot steer the terminal.
func clean(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n':
			return r
		case r == '\t' || r == '\u00a0' || r == '\u202f':
			return ' '
		case r < ' ', r >= 0x7f && r < 0xa0, r >= 0x202a && r <= 0x202e, r >= 0x2066 && r <= 0x2069:
			return -1
		}
		return r
	}, text)
}

func indent(text, by string) string {
	return by + strings.ReplaceAll(text, "\n", "\n"+by)
}

// Wrap breaks text at spaces into lines that fit the terminal behind an indent.
func (s Style) Wrap(text string, indent int) []string { return wrap(text, max(s.width()-indent, 16)) }

// wrap breaks text at spaces into lines of at most width columns; longer words stay whole.
func wrap(text string, width int) []string {
	var lines []string
	for _, paragraph := range strings.Split(text, "\n") {
		now := ""
		for _, word := range strings.Fields(paragraph) {
			if now != "" && table.Width(now)+1+table.Width(word) > width {
				lines, now = append(lines, now), ""
			}
			if now != "" {
				now += " "
			}
			now += word
		}
		lines = append(lines, now)
	}
	return lines
}
