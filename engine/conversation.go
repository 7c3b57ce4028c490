package engine

import (
	"lode/engine/book"
	"lode/engine/check"
	"lode/engine/library"
)

// Item is a statement of the top level: its place in its cell's code and the names it
// defines.
type Item = check.Item

// Outline lists the statements of a book without checking them.
func Outline(b book.Book) []Item { return check.Outline(b) }

// Incomplete reports whether code breaks off where more is needed.
func Incomplete(code string) bool { return check.Incomplete(code) }

// Complete returns what could stand in place of the last word of line, which stands behind
// the cells of a notebook, and the byte where that word begins.
func Complete(lib *library.Library, b book.Book, line string) (start int, candidates []string) {
	return check.Complete(lib, b, line)
}
