package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"

	"lode/cmd/internal/evaluate"
	"lode/cmd/internal/record"
	"lode/render/page"
	"lode/render/table"
	"lode/render/text"
)

// This file holds the records of runs: verifying them, and getting a notebook back out of
// its page.

// steady is the relative difference that two runs may show: far above the rounding of
// another processor, far below anything a person could measure.
const steady = 1e-9

func recordPath(file string) string { return strings.TrimSuffix(file, filepath.Ext(file)) + ".record" }

// verify runs notebooks again and compares with their records.
func (p *program) verify(args []string) int {
	tolerance := steady
	if len(args) > 1 && args[0] == "-tolerance" {
		x, err := strconv.ParseFloat(args[1], 64)
		if err != nil || !(x >= 0 && x < 1) {
			return p.usage(fmt.Sprintf("-tolerance: got %q", args[1]), "a relative difference such as 1e-6", "")
		}
		tolerance, args = x, args[2:]
	}
	if len(args) == 0 {
		return p.usage("verify: no notebook", "one or more notebooks or pages", "lode verify notebooks/first-rewind.md")
	}
	code := exitFine
	for _, file := range args {
		code = max(code, p.verifyOne(file, tolerance))
	}
	return code
}

func (p *program) verifyOne(file string, tolerance float64) int {
	kept, err := recorded(file)
	if err != nil {
		f := fileFault(file, err)
		if !errors.Is(err, fs.ErrNotExist) {
			f = text.Fault{File: file, What: "there is nothing to verify against", Got: reason(err), Hint: "lode run -record NOTEBOOK writes a record; a page holds its own"}
		}
		fmt.Fprintln(p.err, p.errStyle.Fault(f))
		return exitFile
	}
	before := kept.record
	if record.Digest(kept.source) != before.Source {
		fmt.Fprintln(p.out, p.style.Quiet(file+": the notebook was changed since its record was written"))
	}
	var after *record.Record
	r := p.request(file, kept.source)
	r.Turned, r.Data = before.Knobs, kept.data
	if code := p.evaluate(r, func(e evaluate.Event) {
		if e.Record != nil {
			after = e.Record
		}
	}); code != exitFine {
		return code
	}
	for _, name := range before.Changed(after) {
		fmt.Fprintln(p.out, p.style.Quiet(file+": the data file "+name+" was changed since the record was written"))
	}
	return p.differences(file, record.Compare(before, after, tolerance), len(before.Results), tolerance)
}

// differences tells what moved.
func (p *program) differences(file string, list []record.Difference, results int, tolerance float64) int {
	if len(list) == 0 {
		fmt.Fprintf(p.out, "%s: %s the same (to %g of each value)\n", file, count(results, "result"), tolerance)
		return exitFine
	}
	var rows []table.Line
	for _, d := range list {
		rows = append(rows, table.Row(strconv.Itoa(d.Line), oneLine(d.Label), d.Before, d.After))
	}
	t, err := table.Of(table.Head("Line", "Result", "Recorded", "Now"), rows...)
	if err != nil {
		return p.usage(err.Error(), "", "")
	}
	fmt.Fprintf(p.out, "%s: %s moved (by more than %g of the value)\n%s\n", file, count(len(list), "result"), tolerance, p.style.Table(t.Grid()))
	return exitIssues
}

// enclosed is what a page carries: the notebook it was made from and the record of the run.
type enclosed = evaluate.Enclosed

// kept is a notebook with the record of a run.
type kept struct {
	source string
	record *record.Record
	data   map[string][]byte // the data files that a page carries
}

// recorded returns a notebook and its record, from beside it or from within a page.
func recorded(file string) (kept, error) {
	data, err := read(file)
	if err != nil {
		return kept{}, err
	}
	if isPage(file) {
		return unwrapped(data)
	}
	text, err := os.ReadFile(recordPath(file))
	if err != nil {
		return kept{}, fmt.Errorf("no file %s", recordPath(file))
	}
	r, err := record.Decode(text)
	return kept{source: string(data), record: r}, err
}

func unwrapped(html []byte) (kept, error) {
	e, err := opened(html)
	if err != nil {
		return kept{}, err
	}
	data, err := e.Unpack()
	return kept{e.Source, e.Record, data}, err
}

func isPage(file string) bool { ext := filepath.Ext(file); return ext == ".html" || ext == ".htm" }

func opened(html []byte) (enclosed, error) {
	var e enclosed
	ok, err := page.Attached(html, &e)
	if err != nil {
		return e, err
	}
	if !ok || e.Record == nil {
		return e, errors.New("a page without a notebook in it")
	}
	return e, nil
}
