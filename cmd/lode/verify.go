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
	source, before, err := recorded(file)
	if err != nil {
		f := fileFault(file, err)
		if !errors.Is(err, fs.ErrNotExist) {
			f = text.Fault{File: file, What: "there is nothing to verify against", Got: reason(err), Hint: "lode run -record NOTEBOOK writes a record; a page holds its own"}
		}
		fmt.Fprintln(p.err, p.errStyle.Fault(f))
		return exitFile
	}
	if record.Digest(source) != before.Source {
		fmt.Fprintln(p.out, p.style.Quiet(file+": the notebook was changed since its record was written"))
	}
	var after *record.Record
	r := p.request(file, source)
	r.Turned = before.Knobs
	if code := p.evaluate(r, func(e evaluate.Event) {
		if e.Record != nil {
			after = e.Record
		}
	}); code != exitFine {
		return code
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
	t, err := table.Of(table.Head("line", "result", "recorded", "now"), rows...)
	if err != nil {
		return p.usage(err.Error(), "", "")
	}
	fmt.Fprintf(p.out, "%s: %s moved (by more than %g of the value)\n%s\n", file, count(len(list), "result"), tolerance, p.style.Table(t.Grid()))
	return exitIssues
}

// enclosed is what a page carries: the notebook it was made from and the record of the run.
type enclosed = evaluate.Enclosed

// recorded returns a notebook's text and record, from beside it or from within a page.
func recorded(file string) (string, *record.Record, error) {
	data, err := read(file)
	if err != nil {
		return "", nil, err
	}
	if isPage(file) {
		e, err := opened(data)
		if err != nil {
			return "", nil, err
		}
		return e.Source, e.Record, nil
	}
	kept, err := os.ReadFile(recordPath(file))
	if err != nil {
		return "", nil, fmt.Errorf("no file %s", recordPath(file))
	}
	r, err := record.Decode(kept)
	return string(data), r, err
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

// openPageFile gets the notebook out of a page.
func (p *program) openPageFile(args []string) int {
	var o, file string
	for i := 0; i < len(args); i++ {
		if args[i] == "-o" && i+1 < len(args) {
			i++
			o = args[i]
		} else {
			file = args[i]
		}
	}
	if file == "" {
		return p.usage("open: no page", "a page that lode wrote", "")
	}
	data, err := read(file)
	if err != nil {
		fmt.Fprintln(p.err, p.errStyle.Fault(fileFault(file, err)))
		return exitFile
	}
	e, err := opened(data)
	if err != nil {
		fmt.Fprintln(p.err, p.errStyle.Fault(text.Fault{File: file, What: "no notebook can be taken out of it", Got: err.Error(), Want: "a page that lode wrote"}))
		return exitFile
	}
	if o == "" {
		o = strings.TrimSuffix(file, filepath.Ext(file)) + filepath.Ext(e.File)
	}
	if old, err := os.ReadFile(o); err == nil && string(old) != e.Source {
		return p.usage(o+": there is another file of that name", "another name with -o", "")
	}
	if err := replace(o, []byte(e.Source)); err != nil {
		fmt.Fprintln(p.err, p.errStyle.Fault(text.Fault{File: o, What: "the notebook cannot be written", Got: reason(err)}))
		return exitFile
	}
	fmt.Fprintf(p.out, "Notebook: %s\n", o)
	return exitFine
}
