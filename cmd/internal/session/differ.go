package session

import (
	"strings"

	"lode/engine/book"
)

// Only is a line of code that one of two experiments has and the other has not.
type Only struct{ Experiment, Line string }

// Differ lists the lines of code that two experiments do not share, those of the first one before those of the second.
func (s *Session) Differ(a, b string) []Only {
	one, two := s.codeOf(a), s.codeOf(b)
	return append(only(a, one, two), only(b, two, one)...)
}

// codeOf returns the lines of an experiment's cells.
func (s *Session) codeOf(name string) []string {
	var lines []string
	for _, c := range book.Parse(s.file, []byte(s.TextOf(name))).Cells() {
		for line := range strings.Lines(c.Code) {
			if line = strings.TrimSpace(line); line != "" {
				lines = append(lines, line)
			}
		}
	}
	return lines
}

// only returns the lines that are not among others, each as often as it is missing there.
func only(name string, lines, others []string) (list []Only) {
	there := map[string]int{}
	for _, line := range others {
		there[line]++
	}
	for _, line := range lines {
		if there[line]--; there[line] < 0 {
			list = append(list, Only{name, line})
		}
	}
	return list
}
