package main

import (
	"fmt"
	"strings"

	"lode/cmd/internal/watch"
	"lode/engine/issue"
	"lode/render/text"
)

const watchHelp = `Serves the notebook's page to this machine alone, under an address that is new each time, and
opens it in the browser. The notebook runs again with every save, of itself or of a data file
that it reads, and with every turn of a knob on the page. Where it does not check or stops, the
last good page stays and the issue stands above it. Pages that are open side by side show the
same, knobs included. Ctrl-C ends it.`

// watch serves the page of a notebook until it is stopped.
func (p *program) watch(args []string) int {
	if len(args) != 1 || strings.HasPrefix(args[0], "-") {
		return p.usage("watch: one notebook is wanted", "lode watch NOTEBOOK", "")
	}
	if _, code := p.source(args[0]); code != exitFine {
		return code
	}
	pool := &watch.Pool{}
	defer pool.Close()
	w := watch.Watch{File: args[0], Run: pool.Run,
		Tell: p.tellWatched,
		Ready: func(address string) {
			fmt.Fprintf(p.out, "%s is served at\n\n  %s\n\nuntil Ctrl-C ends it.\n", args[0], address)
			openPage(address)
		}}
	if err := w.Serve(p.ctx); err != nil {
		fmt.Fprintln(p.err, p.errStyle.Fault(text.Fault{What: "the page cannot be served", Got: err.Error()}))
		return exitFile
	}
	fmt.Fprintln(p.out)
	return exitFine
}

// tellWatched writes what is wrong with a notebook that is watched, or that nothing is any more.
func (p *program) tellWatched(list []issue.Issue) {
	if len(list) == 0 {
		fmt.Fprintln(p.err, "Mended: the page is in step again.")
	} else {
		p.issues(list)
	}
	fmt.Fprintln(p.err)
}
