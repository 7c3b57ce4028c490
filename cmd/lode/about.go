package main

import (
	"fmt"
	"slices"
	"strings"

	"lode/cmd/internal/library"
)

func (p *program) about(args []string) int {
	if len(args) > 1 {
		return p.usage("about: more than one name", "one name, such as coil.Wind", "")
	}
	if len(args) == 0 {
		p.listTopics("")
		p.entry(library.Language()[0])
		return exitFine
	}
	for _, t := range slices.Concat(library.Topics(), library.Language()) {
		if t.Name == args[0] {
			p.topic(t.Complete())
			p.listTopics(t.Name + ".")
			return exitFine
		}
	}
	return p.usage(args[0]+": no such name in the library", "a name such as coil or coil.Wind", "lode about lists the packages")
}

// listTopics lists the names directly below a prefix.
func (p *program) listTopics(prefix string) {
	for _, t := range library.Topics() {
		rest, ok := strings.CutPrefix(t.Name, prefix)
		if ok && rest != "" && !strings.Contains(rest, ".") {
			p.entry(t)
		}
	}
}

func (p *program) entry(t library.Topic) { fmt.Fprintf(p.out, "  %-28s  %s\n", t.Name, t.Summary) }

func (p *program) topic(t library.Topic) {
	fmt.Fprintf(p.out, "%s\n\n%s\n", t.Signature, t.Summary)
	if t.Text != "" {
		fmt.Fprintf(p.out, "\n%s\n", t.Text)
	}
	for _, part := range [][2]string{{"source", t.Source}, {"valid", t.Valid}, {"accuracy", t.Accuracy}, {"caution", t.Caution}, {"example", t.Example}} {
		if part[1] != "" {
			fmt.Fprintf(p.out, "\n%s: %s\n", part[0], part[1])
		}
	}
	fmt.Fprintln(p.out)
}
