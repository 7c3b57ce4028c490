package main

import (
	"fmt"
	"strings"

	"lode/cmd/internal/evaluate"
	"lode/cmd/internal/present"
	"lode/cmd/internal/record"
	"lode/engine/issue"
	"lode/render/text"
)

func (p *program) run(args []string) int {
	o, code := p.readOptions(args)
	if code != exitFine {
		return code
	}
	source, code := p.source(o.file)
	if code != exitFine {
		return code
	}
	r := p.request(o.file, source)
	r.Limits, r.Page, r.Knobs, r.PageSize = o.limits, true, o.knobs, o.size
	var page []byte
	var kept *record.Record
	code = p.evaluate(r, func(e evaluate.Event) {
		if e.Record != nil {
			kept = e.Record
		}
		if e.Shown != nil {
			fmt.Fprintln(p.out, e.Shown.Terminal)
		}
		if e.Page != nil {
			page = e.Page
		}
	})
	if code != exitFine {
		return code
	}
	if code = p.write(o.page, page); code == exitFine && o.record {
		code = p.writeRecord(recordPath(o.file), kept)
	}
	return code
}

// writeRecord puts the record of a run beside its notebook.
func (p *program) writeRecord(file string, r *record.Record) int {
	data, err := r.Encode()
	if err == nil {
		err = replace(file, data)
	}
	if err != nil {
		fmt.Fprintln(p.err, p.errStyle.Fault(text.Fault{File: file, What: "the record cannot be written", Got: reason(err)}))
		return exitFile
	}
	fmt.Fprintf(p.out, "Record: %s\n", file)
	return exitFine
}

func (p *program) check(args []string) int {
	if len(args) != 1 || strings.HasPrefix(args[0], "-") {
		return p.usage("check: one notebook is wanted", "lode check NOTEBOOK", "")
	}
	source, code := p.source(args[0])
	if code != exitFine {
		return code
	}
	r := p.request(args[0], source)
	r.Check = true
	if code = p.evaluate(r, func(evaluate.Event) {}); code == exitFine {
		fmt.Fprintf(p.out, "%s: no issues\n", args[0])
	}
	return code
}

func (p *program) request(file, source string) evaluate.Request {
	return evaluate.Request{File: file, Source: source, Width: p.style.Width, Colour: p.style.Colour}
}

// evaluate runs a request in a child and tells how it ended.
func (p *program) evaluate(r evaluate.Request, take func(evaluate.Event)) int {
	code := exitFine
	failed := p.followed(p.ctx, r, func(e evaluate.Event) {
		if len(e.Issues) > 0 {
			p.issues(e.Issues)
			fmt.Fprintf(p.err, "\n%s. Nothing was run.\n", count(len(e.Issues), "issue"))
			code = exitIssues
		}
		take(e)
	})
	if failed == nil {
		return code
	}
	p.issues([]issue.Issue{*failed})
	fmt.Fprintln(p.err, "\nThe run stopped there. No page was written.")
	return exitStopped
}

func count(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

func (p *program) issues(list []issue.Issue) {
	for i, one := range list {
		if i > 0 {
			fmt.Fprintln(p.err)
		}
		fmt.Fprintln(p.err, p.errStyle.Fault(present.Fault(one)))
	}
}

// write puts the page in its place.
func (p *program) write(file string, page []byte) int {
	if err := replace(file, page); err != nil {
		fmt.Fprintln(p.err, p.errStyle.Fault(text.Fault{File: file, What: "the page cannot be written", Got: reason(err), Want: "a file name in a folder that can be written to"}))
		return exitFile
	}
	fmt.Fprintf(p.out, "\nPage: %s\n", file)
	return exitFine
}
