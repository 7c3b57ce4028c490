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

// entry is a line of a list of names.
func (p *program) entry(t library.Topic) {
	const room = 32
	lead := fmt.Sprintf("  %-*s", room-2, t.Name)
	if len(lead) > room {
		fmt.Fprintln(p.out, lead)
		lead = strings.Repeat(" ", room)
	}
	for _, line := range p.style.Wrap(t.Summary, room) {
		fmt.Fprintln(p.out, lead+line)
		lead = strings.Repeat(" ", room)
	}
}

func (p *program) topic(t library.Topic) {
	for _, line := range p.style.Wrap(t.Signature, 0) {
		fmt.Fprintln(p.out, line)
	}
	p.prose(t.Summary)
	p.prose(t.Text)
	for _, part := range [][2]string{{"source", t.Source}, {"valid", t.Valid}, {"accuracy", t.Accuracy}, {"caution", t.Caution}} {
		if part[1] != "" {
			p.prose(part[0] + ": " + part[1])
		}
	}
	if t.Example != "" {
		p.prose("example:")
		p.code(t.Example)
	}
	fmt.Fprintln(p.out)
}

// prose writes paragraphs as wide as the terminal; those that are indented are code, and
// lines that begin with a dash stay lines.
func (p *program) prose(text string) {
	for _, paragraph := range strings.Split(text, "\n\n") {
		switch {
		case paragraph == "":
			continue
		case strings.HasPrefix(paragraph, "\t"):
			fmt.Fprintln(p.out)
			p.code(strings.ReplaceAll(strings.TrimPrefix(paragraph, "\t"), "\n\t", "\n"))
			continue
		case !strings.Contains(paragraph, "\n- "):
			paragraph = strings.ReplaceAll(paragraph, "\n", " ")
		}
		fmt.Fprintln(p.out)
		for _, line := range p.style.Wrap(paragraph, 0) {
			fmt.Fprintln(p.out, line)
		}
	}
}

// code writes lines as they are, a little to the right.
func (p *program) code(text string) {
	for _, line := range strings.Split(text, "\n") {
		fmt.Fprintln(p.out, strings.TrimRight("    "+line, " "))
	}
}
