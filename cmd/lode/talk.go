package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"maps"
	"os"
	"os/signal"
	"slices"
	"strings"

	"lode/cmd/internal/present"
	"lode/cmd/internal/session"
	"lode/engine"
	"lode/engine/issue"
	"lode/render/text"
)

// This file holds the conversation: entries are read, judged, evaluated and told.

// talk is one conversation.
type talk struct {
	*program
	session *session.Session
	lines   lines
	files   keeper
	over    bool
	code    int // how it ends where nobody watches: an entry was not taken, or a file not written
}

// lines is where entries come from.
type lines interface {
	// Line asks for a line. It returns io.EOF at the end and errDropped where the person
	// dropped what was written.
	Line(prompt string) (string, error)
	// Remember puts a whole entry into the history.
	Remember(entry string)
	// Suspend gives the terminal to another program until the returned function is called.
	Suspend() func()
	Close()
}

var errDropped = errors.New("dropped")

const (
	prompt     = "∿ "
	carryOn    = "┊ "
	maxEntries = 1 << 20 // bytes of one entry
)

// converse opens a notebook, or an empty one, as a conversation.
func (p *program) converse(file string) int {
	files := newKeeper(file)
	source := ""
	if file != "" {
		s, code := p.source(file)
		if code != exitFine {
			return code
		}
		source = s
	}
	t := &talk{program: p, files: files}
	t.session = session.New(p.followed, files.title(), source)
	t.session.Folder = files.dataFolder()
	t.lines = openLines(t)
	defer t.lines.Close()
	t.greet(file)
	t.loop()
	if t.interactive() {
		return exitFine
	}
	return t.code
}

// greet shows what a notebook that was opened holds, or how to begin.
func (t *talk) greet(file string) {
	if file != "" {
		t.experiments(file)
		t.tell(t.evaluate(t.session.Recall), "")
		return
	}
	if !t.interactive() {
		return
	}
	fmt.Fprintln(t.out, "lode. Write calculations; help lists the words.")
	if t.files.left() {
		fmt.Fprintln(t.out, "A conversation without a name was kept from before: resume takes it up.")
	}
}

// experiments takes up the experiments that are kept beside a notebook.
func (t *talk) experiments(notebook string) {
	beside := experimentsBeside(notebook)
	names := slices.Sorted(maps.Keys(beside))
	for _, name := range names {
		if source, err := read(beside[name]); err == nil {
			t.session.Add(name, string(source))
		}
	}
	if len(names) > 0 {
		fmt.Fprintln(t.out, t.style.Quiet("experiments: "+strings.Join(names, ", ")))
	}
}

func (t *talk) interactive() bool { _, piped := t.lines.(*piped); return !piped }

func (t *talk) loop() {
	for !t.over {
		entry, err := t.entry()
		switch {
		case errors.Is(err, errDropped):
		case err != nil:
			if t.interactive() {
				fmt.Fprintln(t.out)
			}
			return
		case strings.TrimSpace(entry) != "":
			t.lines.Remember(entry)
			t.judge(entry)
		}
	}
}

// entry reads lines until they make a whole entry. An empty line ends one that never
// becomes whole.
func (t *talk) entry() (string, error) {
	ask := prompt
	if now := t.session.Now(); now != session.First {
		ask = now + " " + prompt
	}
	entry, err := t.lines.Line(ask)
	if err != nil {
		return "", err
	}
	for !t.isWord(entry) && len(entry) < maxEntries && engine.Incomplete(entry) {
		next, err := t.lines.Line(carryOn)
		if errors.Is(err, io.EOF) || err == nil && strings.TrimSpace(next) == "" {
			break
		}
		if err != nil {
			return "", err
		}
		entry += "\n" + next
	}
	return entry, nil
}

// judge tells words from code.
func (t *talk) judge(entry string) {
	if w, rest, ok := t.word(entry); ok {
		w.run(t, rest)
		return
	}
	t.tell(t.evaluate(func(ctx context.Context) session.Outcome { return t.session.Enter(ctx, entry) }), entry)
}

// evaluate runs f so that Ctrl-C stops it and the conversation goes on.
func (t *talk) evaluate(f func(ctx context.Context) session.Outcome) session.Outcome {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	t.session.Width, t.session.Colour = t.style.Width, t.style.Colour
	out := f(ctx)
	if out.Taken {
		t.save()
	}
	return out
}

// save keeps the notebook; what cannot be kept is told once an entry.
func (t *talk) save() {
	t.saveAs(t.session.Now())
}

func (t *talk) saveAs(experiment string) {
	if err := t.files.save(experiment, t.session.TextOf(experiment)); err != nil {
		t.code = exitFile
		t.fault(text.Fault{What: "the notebook cannot be kept", Got: reason(err), Hint: "keep NAME writes it elsewhere"})
	}
}

// tell writes what an entry led to.
func (t *talk) tell(o session.Outcome, entry string) {
	for _, i := range o.Issues {
		t.fault(t.placed(i, entry))
		t.code = max(t.code, exitStopped)
	}
	if len(o.Issues) > 0 {
		if len(o.Replaced) > 0 {
			fmt.Fprintln(t.err, t.errStyle.Quiet("not taken: "+strings.Join(o.Replaced, ", ")+" as before"))
		}
		return
	}
	if o.Shown != "" {
		fmt.Fprintln(t.out, strings.TrimRight(o.Shown, "\n"))
	}
	if len(o.Replaced) > 0 {
		fmt.Fprintln(t.out, t.style.Quiet("replaces "+strings.Join(o.Replaced, ", ")))
	}
	t.moved(o.Moved)
}

// moved writes results that came out differently than before.
func (t *talk) moved(changes []session.Change) {
	if len(changes) == 0 {
		return
	}
	list := make([]text.Change, len(changes))
	for i, c := range changes {
		after := c.After
		if c.Relative != "" {
			after += "  (" + c.Relative + ")"
		}
		if c.Before != "" {
			after = oneLine(after)
		}
		list[i] = text.Change{Label: oneLine(c.Label), Before: oneLine(c.Before), After: after}
	}
	fmt.Fprintln(t.out, t.style.Quiet("what moved"))
	fmt.Fprintln(t.out, t.style.Changes(list...))
}

// oneLine shortens a text to its first line.
func oneLine(s string) string {
	first, _, more := strings.Cut(s, "\n")
	if letters := []rune(first); len(letters) > 60 {
		first, more = string(letters[:58]), true
	}
	if more {
		return first + "…"
	}
	return first
}

// placed draws an issue of the entry itself without a place, since the line is in sight,
// and one elsewhere with its line in the notebook.
func (t *talk) placed(i issue.Issue, entry string) text.Fault {
	f := present.Fault(i)
	if f.Source != "" && strings.Contains(entry, strings.TrimSpace(f.Source)) {
		f.File = ""
	}
	return f
}

func (t *talk) fault(f text.Fault) { fmt.Fprintln(t.err, t.errStyle.Fault(f)) }

// refuse tells that a word was used wrongly.
func (t *talk) refuse(err error) {
	t.code = max(t.code, exitStopped)
	what, want, _ := strings.Cut(err.Error(), ": want ")
	t.fault(text.Fault{What: what, Want: want})
}
