// Package record keeps what a run gave, at full precision, so that anyone can find out
// later whether a notebook still gives the same.
package record

import (
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"

	"lode/engine/worked"
	"lode/units"
	"lode/units/frame"
)

// Record is what one run of a notebook gave.
type Record struct {
	Form    int // of this record: 1
	Lode    string
	Go      string
	Source  string             // SHA-256 of the notebook
	Data    map[string]string  `json:",omitempty"` // SHA-256 of each data file that was read, by name
	Knobs   map[string]float64 `json:",omitempty"` // SI values they stood at
	Results []Result
}

// form is the form of records that this version writes.
const form = 1

// Result is one shown result.
type Result struct {
	Cell    int
	Line    int
	Label   string
	Number  string   `json:",omitempty"` // shortest decimal that gives the float64 back
	Unit    string   `json:",omitempty"`
	Text    string   `json:",omitempty"` // instead of a number
	Columns []Column `json:",omitempty"` // of a table or the curves of a figure
}

// Column is one column of a table or a curve.
type Column struct {
	Name   string
	Unit   string   `json:",omitempty"`
	Values []string // shortest decimals in SI units, or texts
}

// New begins the record of a notebook's run.
func New(lode, goVersion, source string) *Record {
	return &Record{Form: form, Lode: lode, Go: goVersion, Source: Digest(source)}
}

// Digest returns the SHA-256 of a text.
func Digest(text string) string { return fmt.Sprintf("%x", sha256.Sum256([]byte(text))) }

// Read notes the data files that a run has read.
func (r *Record) Read(files map[string][]byte) {
	for name, data := range files {
		if r.Data == nil {
			r.Data = map[string]string{}
		}
		r.Data[name] = Digest(string(data))
	}
}

// Files lists the names of the data files in order.
func (r *Record) Files() []string { return slices.Sorted(maps.Keys(r.Data)) }

// Changed lists the data files of which another run read something else.
func (r *Record) Changed(after *Record) []string {
	return slices.DeleteFunc(r.Files(), func(name string) bool { return after.Data[name] == r.Data[name] })
}

// Add notes a shown value; text is how it was shown.
func (r *Record) Add(cell, line int, label string, value any, text string) {
	e := Result{Cell: cell, Line: line, Label: label}
	switch v := value.(type) {
	case *worked.Line:
		return // its result stands beside it
	case units.Quantity:
		e.Number, e.Unit = number(v.SI()), v.Kind().Symbol
	case float64:
		e.Number = number(v)
	case int:
		e.Number = strconv.Itoa(v)
	case interface{ Frames() []frame.Frame }:
		for _, f := range v.Frames() {
			e.columns(f)
		}
	case frame.Source:
		e.columns(v.Frame())
	default:
		e.Text = text
	}
	r.Results = append(r.Results, e)
}

func number(x float64) string { return strconv.FormatFloat(x, 'g', -1, 64) }

func (e *Result) columns(f frame.Frame) {
	for _, c := range f.Columns {
		out := Column{Name: strings.TrimSpace(f.Title + " " + c.Name), Unit: c.Kind.Symbol}
		if c.Texts != nil {
			out.Values = append([]string(nil), c.Texts...)
		}
		for _, v := range c.Values {
			out.Values = append(out.Values, number(v))
		}
		e.Columns = append(e.Columns, out)
	}
}

// Encode writes the record, one result a line group, so that two can be compared by eye.
func (r *Record) Encode() ([]byte, error) {
	text, err := json.MarshalIndent(r, "", " ")
	return append(text, '\n'), err
}

// Decode reads a record.
func Decode(data []byte) (*Record, error) {
	var r Record
	if err := json.Unmarshal(data, &r); err != nil {
		return nil, fmt.Errorf("the record cannot be read: got %v, want what lode run -record writes", err)
	}
	if r.Form != form {
		return nil, fmt.Errorf("the record has another form: got %d, want %d", r.Form, form)
	}
	return &r, nil
}

// Difference is a result that two runs do not share.
type Difference struct {
	Line          int
	Label         string
	Before, After string
}

// Compare lists the results that differ by more than a relative tolerance.
func Compare(before, after *Record, tolerance float64) []Difference {
	waiting := map[string][]Result{}
	for _, e := range after.Results {
		waiting[e.Label] = append(waiting[e.Label], e)
	}
	var list []Difference
	for _, e := range before.Results {
		w := waiting[e.Label]
		if len(w) == 0 {
			list = append(list, Difference{e.Line, e.Label, e.summary(), "no longer shown"})
			continue
		}
		waiting[e.Label] = w[1:]
		list = append(list, e.against(w[0], tolerance)...)
	}
	for _, e := range after.Results {
		if w := waiting[e.Label]; len(w) > 0 && w[0].Line == e.Line && w[0].Cell == e.Cell {
			waiting[e.Label] = w[1:]
			list = append(list, Difference{e.Line, e.Label, "not shown", e.summary()})
		}
	}
	return list
}

// summary writes a result in short.
func (e Result) summary() string {
	switch {
	case e.Number != "":
		return readable(e.Number, e.Unit)
	case e.Columns != nil:
		return fmt.Sprintf("%d columns", len(e.Columns))
	}
	return e.Text
}

func (e Result) against(o Result, tolerance float64) []Difference {
	if len(e.Columns) != len(o.Columns) || e.Unit != o.Unit || !alike(e.Number, o.Number, tolerance) || e.Text != o.Text {
		was, is := e.summary(), o.summary()
		if e.Number != "" && o.Number != "" && e.Unit == o.Unit {
			was, is = apart(e.Number, o.Number, e.Unit)
		}
		return []Difference{{o.Line, e.Label, was, is}}
	}
	var list []Difference
	for i, c := range e.Columns {
		if was, is, differs := c.against(o.Columns[i], tolerance); differs {
			list = append(list, Difference{o.Line, c.Name, was, is})
		}
	}
	return list
}

// against returns the first pair of values that differs.
func (c Column) against(o Column, tolerance float64) (was, is string, differs bool) {
	if c.Name != o.Name || c.Unit != o.Unit || len(c.Values) != len(o.Values) {
		return fmt.Sprintf("%s, %d rows", c.Name, len(c.Values)), fmt.Sprintf("%s, %d rows", o.Name, len(o.Values)), true
	}
	for i, v := range c.Values {
		if !alike(v, o.Values[i], tolerance) {
			was, is := apart(v, o.Values[i], c.Unit)
			return fmt.Sprintf("row %d: %s", i+1, was), fmt.Sprintf("row %d: %s", i+1, is), true
		}
	}
	return "", "", false
}

// apart writes two recorded numbers as people read them, or with as many digits as it takes to tell them apart.
func apart(was, is, unit string) (string, string) {
	if a, b := short(was, unit), short(is, unit); a != b {
		return a, b
	}
	return readable(was, unit), readable(is, unit)
}

// readable writes a recorded number in SI units to ten digits, which show any difference
// that a comparison finds.
func readable(number, unit string) string {
	x, err := strconv.ParseFloat(number, 64)
	if err != nil {
		return number
	}
	return strings.TrimSpace(strconv.FormatFloat(x, 'g', 10, 64) + " " + unit)
}

func alike(a, b string, tolerance float64) bool {
	if a == b {
		return true
	}
	x, err1 := strconv.ParseFloat(a, 64)
	y, err2 := strconv.ParseFloat(b, 64)
	return err1 == nil && err2 == nil && math.Abs(x-y) <= tolerance*max(math.Abs(x), math.Abs(y))
}
