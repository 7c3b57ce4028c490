package present

import (
	"fmt"
	"strings"

	"lode/engine/issue"
	"lode/render/text"
)

// Fault turns an issue into what the terminal draws.
func Fault(i issue.Issue) text.Fault {
	return text.Fault{
		File: i.File, Line: i.Line, Column: i.Column, Length: i.EndColumn - i.Column,
		What: i.What, Source: i.Source, Got: i.Got, Want: i.Want, Hint: i.Hint,
		From: calls(i),
	}
}

// calls names the statements that led to a failure, a repeated one once.
func calls(i issue.Issue) []string {
	var list []string
	for n, c := range i.Calls {
		text, _, more := strings.Cut(c.Text, "\n")
		if more {
			text += " …"
		}
		line := fmt.Sprintf("line %d: %s", c.Line, text)
		if n > 0 && c.Place == i.Calls[n-1].Place {
			list[len(list)-1] = line + ", again and again"
			continue
		}
		list = append(list, line)
	}
	return list
}
