package run

import (
	"fmt"
	"io"
	"strings"
)

// This file prints what has a type of the notebook.

// said is a value that is printed by a text of its own; other verbs print what is behind it.
type said struct {
	text  string
	value any
}

// String returns the text.
func (s said) String() string { return s.text }

// Format writes the text, or what is behind it, as fmt does.
func (s said) Format(f fmt.State, verb rune) {
	if s.value == nil || strings.ContainsRune("vsqxX", verb) && !f.Flag('#') {
		fmt.Fprintf(f, fmt.FormatString(f, verb), s.text)
		return
	}
	fmt.Fprintf(f, fmt.FormatString(f, verb), s.value)
}

// fields is a struct of the notebook, ready to be printed.
type fields struct {
	names  []string
	values []any
}

// String writes the fields as fmt does.
func (s fields) String() string { return fmt.Sprintf("%v", s) }

// Format writes each field, with its name where fmt does so.
func (s fields) Format(f fmt.State, verb rune) {
	named := verb == 'v' && (f.Flag('+') || f.Flag('#'))
	io.WriteString(f, "{")
	for i, v := range s.values {
		if i > 0 {
			io.WriteString(f, " ")
		}
		if named {
			io.WriteString(f, s.names[i]+":")
		}
		fmt.Fprintf(f, fmt.FormatString(f, verb), v)
	}
	io.WriteString(f, "}")
}

func newSaid(text string, value any) any { return said{text, value} }

func newFields(names string, values []any) any { return fields{strings.Fields(names), values} }
