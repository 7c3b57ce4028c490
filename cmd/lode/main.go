// Command lode checks and runs notebooks for people who wind electromagnetic pickups by
// hand, and writes each as one HTML page.
package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"os/signal"
	"strings"
	"syscall"

	"golang.org/x/term"

	"lode/cmd/internal/evaluate"
	"lode/render/text"
)

// Exit codes.
const (
	exitFine    = 0 // everything worked
	exitIssues  = 1 // the notebook does not check; nothing was run
	exitUsage   = 2 // the command line is wrong
	exitStopped = 3 // the notebook stopped while running
	exitFile    = 4 // a file cannot be read or written
)

func main() {
	if evaluate.IsChild(os.Args) {
		if err := evaluate.Serve(os.Stdin, os.Stdout); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
		return
	}
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	p := program{ctx: ctx, out: os.Stdout, err: os.Stderr, style: style(os.Stdout), errStyle: style(os.Stderr)}
	p.live = term.IsTerminal(int(os.Stderr.Fd())) && os.Getenv("TERM") != "dumb"
	os.Exit(p.main(os.Args[1:]))
}

// program is one call of the command.
type program struct {
	ctx             context.Context
	out, err        io.Writer
	style, errStyle text.Style
	live            bool // errors go to a terminal on which a line can be written over
}

// style returns how to write to a file that may be a terminal.
func style(f *os.File) text.Style {
	width, _, err := term.GetSize(int(f.Fd()))
	return text.For(err == nil, width, os.Getenv)
}

// command is one word that may stand behind lode.
type command struct {
	name, arguments, summary, help string
	run                            func(p *program, args []string) int
}

// commands is the one list that running, help and documentation come from.
func commands() []command {
	return []command{
		{"run", "[OPTION...] NOTEBOOK", "check a notebook, run it from the top and write its page", runHelp, (*program).run},
		{"watch", "NOTEBOOK", "serve a notebook's page and keep it in step with the file and its knobs", watchHelp, (*program).watch},
		{"check", "NOTEBOOK", "check a notebook without running it", checkHelp, (*program).check},
		{"verify", "[-tolerance T] FILE...", "run notebooks or pages again and tell what moved since their records", verifyHelp, (*program).verify},
		{"open", "PAGE [-o NOTEBOOK]", "get the notebook back out of a page", openHelp, (*program).openPageFile},
		{"export", "NOTEBOOK [-o FILE]", "write a notebook as a plain Go program", exportHelp, (*program).export},
		{"about", "[NAME]", "explain a name of the library, or find names by words such as hum", aboutHelp, (*program).about},
		{"help", "[COMMAND]", "explain a command", "", (*program).help},
	}
}

func (p *program) main(args []string) int {
	if len(args) == 0 {
		return p.converse("")
	}
	for _, c := range commands() {
		if c.name == args[0] {
			return c.run(p, args[1:])
		}
	}
	if args[0] == "-h" || args[0] == "--help" {
		return p.help(nil)
	}
	if len(args) == 1 && !strings.HasPrefix(args[0], "-") && strings.Contains(args[0], ".") {
		return p.converse(args[0])
	}
	return p.usage(fmt.Sprintf("%s: no such command", args[0]), "one of "+commandNames()+", or a notebook", "lode help explains them")
}
