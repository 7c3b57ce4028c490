package present

import (
	"lode/engine/issue"
	"lode/render/text"
)

// Fault turns an issue into what the terminal draws.
func Fault(i issue.Issue) text.Fault {
	return text.Fault{
		File: i.File, Line: i.Line, Column: i.Column, Length: i.EndColumn - i.Column,
		What: i.What, Source: i.Source, Got: i.Got, Want: i.Want, Hint: i.Hint,
	}
}
