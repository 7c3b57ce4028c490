package lower

import (
	"fmt"
	"go/format"
	"strconv"
	"strings"

	"lode/engine/check"
)

// This file writes a notebook as a Go program that stands by itself.

// Export returns a main package that builds with the standard toolchain inside of this
// module, uses the same library packages, and prints each shown result under its label,
// numbers to the last digit.
func Export(p *check.Program) ([]byte, error) {
	l := lower(p, false)
	text := strings.Replace(l.Source, "package notebook\n", "package main\n", 1)
	text = strings.Replace(text, "import ˑh \""+Host+"\"\n", "", 1)
	text = strings.ReplaceAll(text, "ˑh.", "ˑ")
	text = strings.Replace(text, "func "+Entry+"() {", "func main() {\n\tdefer ˑEnd()", 1)
	head, body, _ := strings.Cut(text, "\n")
	out, err := format.Source([]byte(exportNote + head + "\n" + exportImports + body + exportRunner + caughtText(body) + l.labels() + l.knobValues()))
	if err != nil {
		return nil, fmt.Errorf("the exported program does not parse: %w", err)
	}
	return out, nil
}

const exportNote = `// This program was written from a notebook. It prints what the notebook shows.
`

const exportImports = `
import (
	ˑfmt "fmt"
	ˑos "os"
	ˑstrconv "strconv"
	ˑstrings "strings"
)

`

const exportRunner = `
// ˑsaid is a value that is printed by a text of its own; other verbs print what is behind it.
type ˑsaid struct {
	text  string
	value any
}

// String returns the text.
func (s ˑsaid) String() string { return s.text }

// Format writes the text, or what is behind it, as fmt does.
func (s ˑsaid) Format(f ˑfmt.State, verb rune) {
	if s.value == nil || ˑstrings.ContainsRune("vsqxX", verb) && !f.Flag('#') {
		ˑfmt.Fprintf(f, ˑfmt.FormatString(f, verb), s.text)
		return
	}
	ˑfmt.Fprintf(f, ˑfmt.FormatString(f, verb), s.value)
}

// ˑfields is a struct of the notebook, ready to be printed.
type ˑfields struct {
	names  []string
	values []any
}

// String writes the fields as fmt does.
func (s ˑfields) String() string { return ˑfmt.Sprintf("%v", s) }

// Format writes each field, with its name where fmt does so.
func (s ˑfields) Format(f ˑfmt.State, verb rune) {
	named := verb == 'v' && (f.Flag('+') || f.Flag('#'))
	ˑfmt.Fprint(f, "{")
	for i, v := range s.values {
		if i > 0 {
			ˑfmt.Fprint(f, " ")
		}
		if named {
			ˑfmt.Fprint(f, s.names[i]+":")
		}
		ˑfmt.Fprintf(f, ˑfmt.FormatString(f, verb), v)
	}
	ˑfmt.Fprint(f, "}")
}

func ˑSaid(text string, value any) any { return ˑsaid{text, value} }

func ˑFields(names string, values []any) any { return ˑfields{ˑstrings.Fields(names), values} }

// ˑShow prints a result: its label, how it reads, and its number in SI units to the last digit.
func ˑShow(label int, value any) {
	exact := ""
	switch v := value.(type) {
	case interface{ SI() float64 }:
		exact = "\t" + ˑstrconv.FormatFloat(v.SI(), 'g', -1, 64)
	case float64:
		exact = "\t" + ˑstrconv.FormatFloat(v, 'g', -1, 64)
	}
	ˑfmt.Printf("%s\t%v%s\n", ˑlabels[label], value, exact)
}

type ˑfailure struct {
	error
	label int
}

// ˑFail ends the program with the error of a call, unless a function on the way recovers.
func ˑFail(label int, err error) { panic(ˑfailure{err, label}) }

// ˑEnd tells the error of a call that nobody recovered from.
func ˑEnd() {
	v := recover()
	if f, ok := v.(ˑfailure); ok {
		ˑfmt.Fprintf(ˑos.Stderr, "%s: %v\n", ˑlabels[f.label], f.error)
		ˑos.Exit(1)
	}
	if v != nil {
		panic(v)
	}
}

func ˑKnob(knob int) float64 { return ˑknobs[knob] }

`

// labels lists the source texts that results and failures are named by.
func (l *Lowered) labels() string {
	var b strings.Builder
	b.WriteString("var ˑlabels = []string{\n")
	for _, s := range l.Spots {
		label, _, more := strings.Cut(s.Text, "\n")
		if more {
			label += "…"
		}
		b.WriteString(strconv.Quote(label) + ",\n")
	}
	return b.String() + "}\n\n"
}

// knobValues lists where the knobs stand.
func (l *Lowered) knobValues() string {
	var values []string
	for _, k := range l.program.Knobs {
		values = append(values, strconv.FormatFloat(k.Value, 'g', -1, 64))
	}
	return "var ˑknobs = []float64{" + strings.Join(values, ", ") + "}\n"
}
