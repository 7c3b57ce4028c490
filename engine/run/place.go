package run

import (
	"fmt"

	"lode/engine/issue"
)

// This file tells which place of a list is not there, where a program looks before it takes it.

// misplaced is such a place, or a bound beyond the end.
type misplaced struct {
	at, length int
	bound      bool
}

func (m misplaced) Error() string {
	if m.bound {
		return fmt.Sprintf("slice bounds out of range [:%d] with length %d", m.at, m.length)
	}
	return fmt.Sprintf("index out of range [%d] with length %d", m.at, m.length)
}

func (m misplaced) issue() issue.Issue {
	i := issue.Issue{Code: issue.Index, What: "index: outside of the list", Got: fmt.Sprint(m.at), Want: fmt.Sprintf("0 to %d", m.length-1)}
	switch {
	case m.bound:
		i.What, i.Want = "slice: outside of the list", fmt.Sprintf("0 to %d", m.length)
	case m.length == 0:
		i.Want = "a list that is not empty"
	case m.length == 1:
		i.Want = "0, the only place"
	}
	return i
}

func place(at, length int) int {
	if at < 0 || at >= length {
		panic(misplaced{at, length, false})
	}
	return at
}

func bound(at, length int) int {
	if at < 0 || at > length {
		panic(misplaced{at, length, true})
	}
	return at
}
