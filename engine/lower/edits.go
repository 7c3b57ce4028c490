package lower

import (
	"sort"
	"strings"
)

// This file changes a text without losing where its parts came from.

// edit replaces the bytes from..to of the original by text.
type edit struct {
	from, to int
	text     string
	rank     int // order among edits at one offset: ends of inner parts, then starts of outer ones
}

type edits struct {
	list []edit
}

// open inserts text in front of what begins at offset; outer calls come before inner ones.
func (e *edits) open(offset int, text string) { e.list = append(e.list, edit{offset, offset, text, 1}) }

// close inserts text behind what ends at offset; inner calls come before outer ones.
func (e *edits) close(offset int, text string) {
	e.list = append(e.list, edit{offset, offset, text, 0})
}

// replace puts text in the place of a range.
func (e *edits) replace(from, to int, text string) {
	e.list = append(e.list, edit{from, to, text, 2})
}

// blank takes a range away but keeps its line breaks.
func (e *edits) blank(source string, from, to int) {
	e.replace(from, to, strings.Repeat("\n", strings.Count(source[from:to], "\n")))
}

// mapping leads from an offset in the changed text back to the original.
type mapping struct {
	changed, original int
}

// apply returns the changed text, and for each stretch where it begins in both texts.
func (e *edits) apply(source string) (string, []mapping) {
	sort.SliceStable(e.list, func(i, j int) bool {
		a, b := e.list[i], e.list[j]
		return a.from < b.from || a.from == b.from && a.rank < b.rank
	})
	var out strings.Builder
	marks, at := []mapping{{0, 0}}, 0
	for _, ed := range e.list {
		if ed.from < at {
			continue // inside a range that was replaced as a whole
		}
		out.WriteString(source[at:ed.from])
		marks = append(marks, mapping{out.Len(), ed.from})
		out.WriteString(ed.text)
		at = ed.to
		marks = append(marks, mapping{out.Len(), at})
	}
	out.WriteString(source[at:])
	return out.String(), marks
}

// within returns the changed text of a range that no edit crosses.
func (e *edits) within(source string, from, to int) string {
	for i := range e.list {
		e.list[i].from -= from
		e.list[i].to -= from
	}
	text, _ := e.apply(source[from:to])
	return text
}

// origin returns the original offset of a changed one.
func origin(marks []mapping, changed int) int {
	i := sort.Search(len(marks), func(i int) bool { return marks[i].changed > changed }) - 1
	m := marks[max(i, 0)]
	next := m.original + changed - m.changed
	if i+1 < len(marks) && i+1 > 0 && next > marks[i+1].original {
		return marks[i+1].original
	}
	return next
}
