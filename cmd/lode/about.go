package main

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"lode/cmd/internal/library"
)

func (p *program) about(args []string) int {
	if len(args) == 0 {
		p.listTopics("")
		p.entry(library.Language()[0])
		return exitFine
	}
	for _, t := range slices.Concat(library.Topics(), library.Language()) {
		if len(args) == 1 && t.Name == args[0] {
			p.topic(t.Complete())
			p.listTopics(t.Name + ".")
			return exitFine
		}
	}
	return p.find(args)
}

// mostFound is how many names are listed for plain words.
const mostFound = 12

// find lists the names that have to do with plain words.
func (p *program) find(words []string) int {
	found := library.Find(words)
	said := strings.Join(words, " ")
	if len(found) == 0 {
		return p.usage(said+": no such name in the library", "a name such as coil.Wind, or what it is about, such as gauge or hum",
			cmp.Or(library.Meant(said), "about without a name lists the packages"))
	}
	more := ""
	if len(found) > mostFound {
		more = fmt.Sprintf(", the closest of %d", len(found))
		found = found[:mostFound]
	}
	fmt.Fprintf(p.out, "Names that have to do with %s%s:\n", said, more)
	for _, t := range found {
		p.entry(t)
	}
	return exitFine
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
	if len(t.Name)+3 > room {
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
