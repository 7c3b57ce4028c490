package run

import (
	"regexp"
	"strings"

	"lode/engine/issue"
)

// This file rewords the panics of running Go code.

type rewording struct {
	pattern         *regexp.Regexp
	code            string
	what, got, want string // with $1 for what the pattern holds
	hint            string
}

func rewordings() []rewording {
	re := regexp.MustCompile
	return []rewording{
		{re(`index out of range \[(-?\d+)\] with length (\d+)`), issue.Index, "index: outside of the list", "$1", "0 to below $2, the length", ""},
		{re(`index out of range \[(-?\d+)\]`), issue.Index, "index: outside of the list", "$1", "0 or more", ""},
		{re(`slice bounds out of range (\[.*\])(.*)`), issue.Index, "slice: outside of the list", "$1$2", "bounds within the list, the lower one first", ""},
		{re(`reflect: slice index out of range|reflect: array index out of range|reflect: string index out of range`), issue.Index, "index: outside of the list", "a place that is not there", "0 to below the length", ""},
		{re(`reflect.Value.Slice.*out of bounds`), issue.Index, "slice: outside of the list", "a bound beyond the end, or the upper one below the lower", "bounds within the list, the lower one first", ""},
		{re(`integer divide by zero`), issue.ZeroDivision, "division by zero", "a whole number divided by 0", "a divisor that is not zero", "look at the divisor before dividing"},
		{re(`assignment to entry in nil map`), issue.NilMap, "map: there is none to put an entry in", "nil", "a map", "make it first: make(map[...]...) or a literal"},
		{re(`nil pointer dereference|nil pointer|zero Value|nil func|nil interface value`), issue.NilPointer, "nil: there is nothing behind this pointer, function or interface", "nil", "a value", "compare it with nil first"},
		{re(`interface conversion: (.*)`), issue.Assertion, "type assertion: the value has another type", "$1", "the type in the parentheses", "take two results: v, ok := x.(T)"},
		{re(`makeslice: len out of range|makeslice: cap out of range|negative len|negative cap|reflect.MakeSlice|allocation size out of range`), issue.Size, "make: the size is out of range", "a length that is negative or too large", "a length that fits into memory", ""},
		{re(`strings: (negative Repeat count|Repeat output length overflow)`), issue.Size, "Repeat: the count is out of range", "$1", "0 or more, for a text that fits into memory", ""},
		{re(`^reflect: call of`), issue.Failed, "a function of the library was given a value that it does not take", "another kind of value", "a slice for sort.Slice, a pointer for errors.As", ""},
		{re(`negative shift amount`), issue.Size, "shift: the number of places is negative", "a negative number", "0 or more", ""},
		{re(`hash of unhashable type:? (.*)`), issue.Unhashable, "map: this cannot be a key", "$1", "a value that can be compared", ""},
		{re(`comparing uncomparable type (.*)`), issue.Unhashable, "comparison: these cannot be compared", "$1", "values that can be compared", ""},
	}
}

// panicked puts the text of a panic into our words.
func panicked(text string) issue.Issue {
	text = strings.TrimPrefix(text, "runtime error: ")
	for _, r := range rewordings() {
		if m := r.pattern.FindStringSubmatchIndex(text); m != nil {
			fill := func(s string) string {
				if s = string(r.pattern.ExpandString(nil, s, text, m)); strings.Contains(s, "ˑ") {
					return "a value of a type of the notebook" // which the interpreter knows by its parts only
				}
				return s
			}
			return issue.Issue{Code: r.code, What: r.what, Got: fill(r.got), Want: fill(r.want), Hint: r.hint}
		}
	}
	return issue.Issue{Code: issue.Panic, What: "panic: " + text, Got: text, Want: "no panic"}
}
