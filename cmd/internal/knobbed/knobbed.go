// Package knobbed puts a knob into notebooks that have none, so that turning can be measured
// on any notebook. Nothing outside tests imports it.
package knobbed

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"

	"lode/engine/book"
)

// Notebook is a notebook with at least one knob.
type Notebook struct {
	Name   string // of its file, without the ending
	Source string
}

// In returns the notebooks of a folder, in order of their names.
func In(folder string) ([]Notebook, error) {
	files, err := filepath.Glob(filepath.Join(folder, "*.md"))
	if err == nil && len(files) == 0 {
		err = fmt.Errorf("no notebooks in %s", folder)
	}
	var all []Notebook
	for _, file := range files {
		source, err := os.ReadFile(file)
		if err != nil {
			return nil, err
		}
		n := Notebook{Name: strings.TrimSuffix(filepath.Base(file), ".md")}
		if n.Source, err = With(string(source)); err != nil {
			return nil, fmt.Errorf("%s: %w", file, err)
		}
		all = append(all, n)
	}
	return all, err
}

// quantity is a number times a unit, as written in a cell, with what stands around it.
const quantity = `(^|[ (=])(%s)([,)}\s])`

var written = regexp.MustCompile(fmt.Sprintf(quantity, `[0-9.]+\*[a-zA-ZµΩ]+`))

// With returns a notebook's text with a knob. Where there is none, the first quantity that is
// written out in a cell becomes one, wherever it stands, with 2 % either way.
func With(source string) (string, error) {
	var with strings.Builder
	var value string
	for _, p := range book.Parse("x.md", []byte(source)).Parts {
		if p.Cell == nil {
			with.WriteString(p.Text)
			continue
		}
		code := p.Cell.Code
		if strings.Contains(code, "knob(") {
			return source, nil
		}
		define := ""
		if m := written.FindStringSubmatch(code); m != nil && value == "" {
			value, define = m[2], fmt.Sprintf("dialled := knob(\"dialled\", %[1]s, 0.98*%[1]s, 1.02*%[1]s)\n", m[2])
		}
		with.WriteString(strings.Replace(p.Text, code, define+turnable(code, value), 1))
	}
	if value == "" {
		return "", fmt.Errorf("no quantity to turn")
	}
	return with.String(), nil
}

// turnable puts the knob's name in place of its value.
func turnable(code, value string) string {
	if value == "" {
		return code
	}
	return regexp.MustCompile(fmt.Sprintf(quantity, regexp.QuoteMeta(value))).ReplaceAllString(code, "${1}dialled${3}")
}
