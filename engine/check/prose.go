package check

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"lode/engine/issue"
)

// manyLinks is how many links a paragraph of prose may begin. Reading them takes a time that
// grows with the square of their number.
const manyLinks = 2000

// prose refuses paragraphs that nobody writes and that would take minutes to set.
func (c *checker) prose() {
	for _, part := range c.Book.Parts {
		if part.Cell != nil {
			continue
		}
		open, at := 0, part.Line
		for line := range strings.Lines(part.Text) {
			if strings.TrimSpace(line) == "" {
				open = 0
			}
			if open += begun(line); open > manyLinks {
				c.manyLinks(at, line, open)
				break
			}
			at++
		}
	}
}

func (c *checker) manyLinks(at int, line string, open int) {
	column := utf8.RuneCountInString(line[:strings.Index(line, "[")]) + 1
	c.add(issue.Issue{
		Place: issue.Place{File: c.Book.File, Line: at, Column: column, EndColumn: column + 1}, Source: strings.TrimRight(line, "\r\n"),
		Code: "too-nested", What: "the paragraph begins too many links", Got: fmt.Sprintf("%d brackets", open), Want: fmt.Sprintf("at most %d in a paragraph", manyLinks), Hint: "an empty line ends a paragraph",
	})
}

// begun counts the links that a line begins. One that says where links lead begins none.
func begun(line string) int {
	if strings.HasPrefix(strings.TrimSpace(line), "[") && strings.Contains(line, "]:") {
		return 0
	}
	return strings.Count(line, "[")
}
