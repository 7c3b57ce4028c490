package evaluate

import (
	"fmt"
	"slices"
	"unicode/utf8"

	"lode/engine/issue"
)

// This file keeps what is told of a notebook short where the notebook is not.

const (
	most   = 100     // issues told of one notebook
	wide   = 1000    // characters of one text
	longer = 1 << 12 // characters of a source line that are quoted
)

// fewer returns the first issues and how many there are behind them.
func fewer(list []issue.Issue) []issue.Issue {
	var short []issue.Issue
	for i, one := range list {
		if i == most {
			return append(short, issue.Issue{Place: issue.Place{File: one.File}, Code: "more", What: fmt.Sprintf("and %d more issues", len(list)-most)})
		}
		short = append(short, shorter(one))
	}
	return short
}

// shorter cuts the texts of an issue.
func shorter(i issue.Issue) issue.Issue {
	for _, text := range []*string{&i.What, &i.Got, &i.Want, &i.Hint} {
		*text = cut(*text)
	}
	i.Calls = slices.Clone(i.Calls)
	for n := range i.Calls {
		i.Calls[n].Text = cut(i.Calls[n].Text)
	}
	if len(i.Source) > longer {
		i.Source = beginning(i.Source, i.Column)
	}
	return i
}

// beginning cuts a source line behind the column, and leaves nothing of one whose column is
// too far out to be shown.
func beginning(line string, column int) string {
	switch letters := []rune(line); {
	case len(letters) <= longer:
		return line
	case column > longer/2:
		return ""
	default:
		return string(letters[:longer])
	}
}

func cut(text string) string {
	if utf8.RuneCountInString(text) <= wide {
		return text
	}
	return string([]rune(text)[:wide]) + "…"
}
