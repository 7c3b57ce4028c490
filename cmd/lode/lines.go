package main

import (
	"bufio"
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"unicode/utf8"

	"github.com/peterh/liner"
	"golang.org/x/term"

	"lode/cmd/internal/library"
	"lode/engine"
	elibrary "lode/engine/library"
)

// This file reads entries: by the line editor on a terminal, plainly elsewhere. It is the
// only place that knows the line editor.

// openLines chooses where entries come from.
func openLines(t *talk) lines {
	if !term.IsTerminal(int(os.Stdin.Fd())) {
		return &piped{in: bufio.NewReader(os.Stdin)}
	}
	if liner.TerminalSupported() && term.IsTerminal(int(os.Stdout.Fd())) {
		return newEditor(t)
	}
	return &plain{piped{in: bufio.NewReader(os.Stdin)}, t}
}

// piped reads entries from a file or a pipe, without prompts.
type piped struct{ in *bufio.Reader }

func (p *piped) Line(string) (string, error) {
	line, err := p.in.ReadString('\n')
	if err == io.EOF && line != "" {
		err = nil
	}
	return strings.TrimRight(line, "\r\n"), err
}

func (p *piped) Remember(string) {}
func (p *piped) Suspend() func() { return func() {} }
func (p *piped) Close()          {}

// plain asks on a terminal that cannot do more.
type plain struct {
	piped
	t *talk
}

func (p *plain) Line(ask string) (string, error) {
	_, _ = io.WriteString(p.t.out, strings.NewReplacer("∿", "~", "┊", ":").Replace(ask))
	return p.piped.Line(ask)
}

// editor is the line editor with history and completion.
type editor struct {
	*liner.State
	t       *talk
	lib     *elibrary.Library
	written []string // lines of the entry so far
}

func newEditor(t *talk) *editor {
	e := &editor{State: liner.NewLiner(), t: t}
	e.SetCtrlCAborts(true)
	e.SetMultiLineMode(true)
	e.SetTabCompletionStyle(liner.TabPrints)
	e.SetWordCompleter(e.complete)
	if f, err := os.Open(e.historyFile()); err == nil {
		_, _ = e.ReadHistory(f)
		_ = f.Close()
	}
	return e
}

func (e *editor) historyFile() string { return filepath.Join(e.t.files.folder, "history") }

// lineBreak stands for a line break in the history, so that a whole entry is recalled as
// one line.
const lineBreak = "↵"

func (e *editor) Line(ask string) (string, error) {
	if ask != carryOn {
		e.written = nil
	}
	line, err := e.Prompt(ask)
	if errors.Is(err, liner.ErrPromptAborted) {
		return "", errDropped
	}
	line = strings.ReplaceAll(line, lineBreak, "\n")
	e.written = append(e.written, line)
	return line, err
}

func (e *editor) Remember(entry string) {
	e.AppendHistory(strings.ReplaceAll(entry, "\n", lineBreak))
	if os.MkdirAll(e.t.files.folder, 0o700) != nil {
		return
	}
	if f, err := os.OpenFile(e.historyFile(), os.O_CREATE|os.O_WRONLY|os.O_TRUNC, 0o600); err == nil {
		_, _ = e.WriteHistory(f)
		_ = f.Close()
	}
}

// Suspend restores the terminal for another program and takes it up again.
func (e *editor) Suspend() func() {
	_ = e.State.Close()
	return func() {
		fresh := newEditor(e.t)
		e.State = fresh.State
	}
}

func (e *editor) Close() { _ = e.State.Close() }

// complete offers what could stand where the cursor is.
func (e *editor) complete(line string, pos int) (head string, candidates []string, tail string) {
	before, after := string([]rune(line)[:pos]), string([]rune(line)[pos:])
	defer func() {
		if recover() != nil {
			head, candidates, tail = before, nil, after
		}
	}()
	if e.lib == nil {
		e.lib, _ = library.Load()
	}
	context := strings.Join(append(e.written, before), "\n")
	start, names := engine.Complete(e.lib, e.t.session.Book(), context)
	if len(e.written) == 0 && !strings.ContainsAny(before, " (.") {
		names = append(wordsBeginning(before), names...)
	}
	typed := utf8.RuneCountInString(context[start:])
	runes := []rune(before)
	return string(runes[:max(0, len(runes)-typed)]), names, after
}

func wordsBeginning(s string) []string {
	var names []string
	for _, w := range words() {
		if strings.HasPrefix(w.name, s) && s != "" {
			names = append(names, w.name)
		}
	}
	return names
}
