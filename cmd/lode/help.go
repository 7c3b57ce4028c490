package main

import (
	"fmt"
	"io"
	"strings"

	"lode/render/text"
)

const runHelp = `Checks the notebook; if there is an issue, tells it and runs nothing. Then runs the cells
from the top, prints each shown result, and writes the page: NOTEBOOK.html beside the
notebook, or the file given with -o. The page is written whole or not at all; a run that
fails leaves an earlier page as it was. Ctrl-C stops a run and tells its line.

A notebook runs in a process of its own, without access to network, clock, environment or
other programs. Of files it reads only data beside it: .csv, .tsv and .txt in its folder or
below. Steps and depth end a run at the same place on every machine; time, memory and output
are bounded besides. On Linux the kernel enforces all that for the process, too. On macOS it
keeps the process from opening anything, and on Windows nothing but the language does; on
both the memory limit is asked of the runtime and not enforced by the system.`

const checkHelp = `Checks names, types and physical dimensions in all cells and tells every issue.`

const verifyHelp = `Runs each notebook again and compares every result with its record: the file NOTEBOOK.record
that lode run -record wrote, or for a page what it carries. Results may differ by a relative
1e-9 unless -tolerance says otherwise. Exit code 1 and a table of what moved if any differs.`

const openHelp = `Writes the notebook that a page was made from beside the page, or to the file given with -o,
and the data files that it reads beside it. Files that hold something else are never replaced.`

const exportHelp = `Writes a Go program that uses the same library and prints the same shown results, numbers to
the last digit. It builds inside of this module: put it into a folder of its own there.`

const aboutHelp = `Tells what a package, function, type or method of the library does, with its units, range,
accuracy and source. Plain words, such as gauge or build sheet, list the names that have to do
with them. Without a name it lists the packages.`

const exitHelp = `Exit codes: 0 it worked; 1 the notebook has issues and was not run; 2 wrong use of the
command; 3 the notebook stopped while running; 4 a file cannot be read or written.`

func commandNames() string {
	var names []string
	for _, c := range commands() {
		names = append(names, c.name)
	}
	return strings.Join(names, ", ")
}

// overview tells what the program is for and lists its commands.
func (p *program) overview(w io.Writer) {
	fmt.Fprint(w, "lode runs notebooks of calculations for hand-wound pickups.\n\n")
	list := append([]command{{arguments: "[NOTEBOOK]", summary: "explore in a conversation, with a notebook or from nothing"}}, commands()...)
	width := 0
	for _, c := range list {
		width = max(width, len(c.call()))
	}
	for _, c := range list {
		fmt.Fprintf(w, "  %-*s  %s\n", width, c.call(), c.summary)
	}
	fmt.Fprint(w, "\n"+exitHelp+"\n")
}

// call writes how a command is called.
func (c command) call() string {
	if c.name == "" {
		return "lode " + c.arguments
	}
	return "lode " + c.name + " " + c.arguments
}

func (p *program) help(args []string) int {
	if len(args) == 0 {
		p.overview(p.out)
		return exitFine
	}
	for _, c := range commands() {
		if c.name == args[0] {
			fmt.Fprintf(p.out, "lode %s %s\n  %s\n", c.name, c.arguments, c.summary)
			if c.help != "" {
				fmt.Fprint(p.out, "\n"+c.help+"\n")
			}
			if c.name == "run" {
				fmt.Fprint(p.out, "\n"+optionsText())
			}
			return exitFine
		}
	}
	return p.usage(fmt.Sprintf("%s: no such command", args[0]), "one of "+commandNames(), "")
}

// usage reports a wrong command line.
func (p *program) usage(what, want, hint string) int {
	fmt.Fprintln(p.err, p.errStyle.Fault(text.Fault{What: what, Want: want, Hint: hint}))
	return exitUsage
}
