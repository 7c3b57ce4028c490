package lower

import (
	"fmt"
	"strings"
)

// This file gives what a notebook recovers from one text, interpreted and compiled: Go's own panics read
// differently there.

// A Reworded is a panic of Go by a part of its text, and what a notebook that recovers from it reads.
type Reworded struct{ Part, Text string }

// Rewordings lists the panics of Go, the first that fits counting.
func Rewordings() []Reworded {
	return []Reworded{
		{"slice bounds out of range", "slice: outside of the list"},
		{"reflect.Value.Slice", "slice: outside of the list"},
		{"index out of range", "index: outside of the list"},
		{"integer divide by zero", "division by zero"},
		{"assignment to entry in nil map", "map: there is none to put an entry in"},
		{"interface conversion: ", "type assertion: the value has another type"},
		{"makeslice: ", "make: the size is out of range"},
		{"reflect.MakeSlice", "make: the size is out of range"},
		{"negative shift amount", "shift: the number of places is negative"},
		{"hash of unhashable type", "map: this cannot be a key"},
		{"comparing uncomparable type", "comparison: these cannot be compared"},
		{"strings: ", "Repeat: the count is out of range"},
		{"zero Value", "nil: there is nothing behind this pointer, function or interface"},
		{"reflect: call of", "a function of the library was given a value that it does not take"},
		{"nil ", "nil: there is nothing behind this pointer, function or interface"},
	}
}

// exportCaught is the same for an exported program.
const exportCaught = `
type ˑcaught string

func (c ˑcaught) Error() string { return string(c) }

// ˑCaught rewords a panic of Go's own that a notebook recovered from.
func ˑCaught(v any) any {
	err, ok := v.(error)
	if !ok {
		return v
	}
	for _, r := range ˑrewordings {
		if _, own := v.(interface{ RuntimeError() }); own && ˑstrings.Contains(err.Error(), r[0]) {
			return ˑcaught(r[1])
		}
	}
	return v
}

`

// caughtText is that, where the program recovers from anything.
func caughtText(body string) string {
	if !strings.Contains(body, "ˑCaught(") {
		return ""
	}
	var b strings.Builder
	b.WriteString(exportCaught + "var ˑrewordings = [][2]string{\n")
	for _, r := range Rewordings() {
		fmt.Fprintf(&b, "\t{%q, %q},\n", r.Part, r.Text)
	}
	return b.String() + "}\n"
}
