// Command generate writes the Go files of package units that follow from its tables.
package main

import (
	"bytes"
	"fmt"
	"go/format"
	"log"
	"os"
	"strings"

	"lode/units/internal/tables"
)

func main() {
	for name, text := range map[string]string{"kinds_gen.go": kinds(), "constants_gen.go": constants()} {
		out, err := format.Source([]byte(text))
		if err != nil {
			log.Fatal(err)
		}
		if err := os.WriteFile(name, out, 0o644); err != nil {
			log.Fatal(err)
		}
	}
}

const head = "// Code generated from internal/tables; DO NOT EDIT.\n\npackage units\n\n"

func kinds() string {
	var b bytes.Buffer
	b.WriteString(head + "var kinds = [...]Kind{\n")
	for _, k := range tables.Kinds {
		fmt.Fprintf(&b, "\t{%q, %q, %s, %q, %q, %q, %v},\n", k.Type, k.Name, dimension(k), k.Symbol, k.Form, k.Scale, k.Lead)
	}
	b.WriteString("}\n")
	for i, k := range tables.Kinds {
		fmt.Fprintf(&b, kindText, k.Type, k.Name, k.Symbol, i, article(k.Name))
	}
	return b.String()
}

const kindText = `
// %[1]s is %[5]s %[2]s, held in %[3]s.
type %[1]s float64

// SI returns the value in %[3]s.
func (x %[1]s) SI() float64 { return float64(x) }

// Kind tells that x is %[5]s %[2]s.
func (x %[1]s) Kind() Kind { return kinds[%[4]d] }

// String writes x with a sensible unit and four significant digits.
func (x %[1]s) String() string { return Text(float64(x), kinds[%[4]d]) }

// Parse%[1]s reads %[5]s %[2]s such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func Parse%[1]s(text string) (%[1]s, error) {
	value, err := parseKind(text, kinds[%[4]d])
	return %[1]s(value), err
}
`

func article(name string) string {
	if strings.ContainsRune("aeiou", rune(name[0])) {
		return "an"
	}
	return "a"
}

func dimension(k tables.Kind) string {
	halves := [6]int{}
	for i, e := range k.Dim {
		halves[i] = 2 * e
	}
	switch k.Form {
	case "angle", "angular":
		halves[5] = 2
	case "root":
		halves[2]++
	}
	return "Dimension{" + strings.ReplaceAll(strings.Trim(fmt.Sprint(halves), "[]"), " ", ", ") + "}"
}

func constants() string {
	var b bytes.Buffer
	b.WriteString(head + "import \"math\"\n\n// The units that have a name of their own. In notebooks they are in scope under their\n// symbols: mm, kΩ (or kohm), µF (or uF) and so on.\nconst (\n")
	for _, u := range tables.Units {
		fmt.Fprintf(&b, "\t%s %s = %s\n", u.Const, u.Type, u.Factor)
	}
	b.WriteString(")\n\nvar named = [...]Unit{\n")
	for _, u := range tables.Units {
		fmt.Fprintf(&b, "\t{%q, %q, float64(%s), %q, %q},\n", u.Const, u.Type, u.Const, u.Symbols, u.TextOnly)
	}
	b.WriteString("}\n")
	return b.String()
}
