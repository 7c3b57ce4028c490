package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"slices"
	"strings"

	"lode/cmd/internal/session"
	"lode/engine"
	"lode/render/text"
)

// word is something to say in a conversation that is no code.
type word struct {
	name, arguments, summary string
	run                      func(t *talk, rest string)
}

// words is the one list that the conversation, its help and its completion come from.
func words() []word {
	return []word{
		{"help", "", "list these words", (*talk).listWords},
		{"about", "[NAME]", "explain a name, or find names by words like hum", func(t *talk, rest string) { t.about(strings.Fields(rest)) }},
		{"note", "TEXT", "add prose to the notebook", (*talk).note},
		{"recall", "", "show everything again, from the top", (*talk).recall},
		{"undo", "", "take back the last change", (*talk).undo},
		{"edit", "", "change the whole notebook in your editor ($EDITOR)", (*talk).edit},
		{"fork", "NAME", "begin an experiment, as a copy of the one in hand", (*talk).fork},
		{"take", "NAME", "go over to another experiment", (*talk).takeUp},
		{"compare", "[NAME [NAME]]", "set two experiments side by side", (*talk).compare},
		{"keep", "NAME", "keep the notebook as NAME.md from now on", (*talk).keep},
		{"resume", "", "take up the conversation without a name from before", (*talk).resume},
		{"page", "", "write the page and open it", (*talk).page},
		{"leave", "", "end the conversation; everything is kept", func(t *talk, _ string) { t.over = true }},
	}
}

// word finds out whether an entry is a word and not code: code goes on with an operator, a
// point or a bracket, and a name that the notebook defines is always code.
func (t *talk) word(entry string) (word, string, bool) {
	name, rest, _ := strings.Cut(strings.TrimSpace(entry), " ")
	rest = strings.TrimSpace(rest)
	for _, w := range words() {
		if w.name == name && !strings.ContainsAny(first(rest), "=:+-*/.([<>&|%!,;") && !t.defines(name) {
			return w, rest, true
		}
	}
	return word{}, "", false
}

func (t *talk) isWord(entry string) bool { _, _, ok := t.word(entry); return ok }

func first(s string) string {
	if s == "" {
		return ""
	}
	return s[:1]
}

func (t *talk) defines(name string) bool {
	for _, it := range engine.Outline(t.session.Book()) {
		for _, n := range it.Names {
			if n == name {
				return true
			}
		}
	}
	return false
}

// listWords lists the words; what follows help is explained where it is a word or in the library.
func (t *talk) listWords(rest string) {
	if asked := strings.Fields(rest); len(asked) > 0 && !slices.ContainsFunc(words(), func(w word) bool { return w.name == asked[0] }) {
		t.about(asked)
		return
	}
	for _, w := range words() {
		fmt.Fprintf(t.out, "  %-22s  %s\n", w.name+" "+w.arguments, w.summary)
	}
	fmt.Fprint(t.out, "\nEverything else is a calculation in Go's syntax, with units: 1/(2*π*sqrt(2.2*H*100*pF)).\nDefining a name again replaces the earlier definition and shows what moved.\n")
}

func (t *talk) note(rest string) {
	if rest == "" {
		t.refuse(errors.New("note: no text: want the text behind it"))
		return
	}
	t.session.Note(rest)
	t.save()
}

func (t *talk) recall(string) {
	t.tell(t.evaluate(t.session.Recall), "")
}

func (t *talk) undo(string) {
	any := true
	o := t.evaluate(func(ctx context.Context) session.Outcome {
		var o session.Outcome
		o, any = t.session.Undo(ctx)
		return o
	})
	if !any {
		t.refuse(errors.New("undo: there is nothing to take back"))
		return
	}
	o.Shown = ""
	t.tell(o, "")
	if len(o.Issues) == 0 && len(o.Moved) == 0 {
		fmt.Fprintln(t.out, t.style.Quiet("taken back"))
	}
}

func (t *talk) fork(rest string) {
	if err := t.session.Fork(rest); err != nil {
		t.refuse(err)
		return
	}
	t.save()
}

func (t *talk) takeUp(rest string) {
	if err := t.session.Take(t.experiment(rest)); err != nil {
		t.refuse(err)
		return
	}
	if t.session.Page() == nil {
		o := t.evaluate(t.session.Recall)
		o.Shown = ""
		t.tell(o, "")
	}
}

func (t *talk) compare(rest string) {
	names, problem := t.pair(strings.Fields(rest))
	if problem != nil {
		t.refuse(problem)
		return
	}
	var err error
	o := t.evaluate(func(ctx context.Context) session.Outcome {
		shown, failed, e := t.session.Compare(ctx, names[0], names[1])
		err = e
		o := session.Outcome{Shown: shown}
		if failed != nil {
			o.Issues = append(o.Issues, *failed)
		}
		return o
	})
	if err != nil {
		t.refuse(err)
		return
	}
	t.differ(names[0], names[1])
	t.tell(o, "")
}

// pair returns the two experiments to compare. One alone is compared with the one in hand, none with the first.
func (t *talk) pair(names []string) ([]string, error) {
	for i, name := range names {
		names[i] = t.experiment(name)
	}
	all := t.session.Experiments()
	switch {
	case len(all) < 2:
		return nil, errors.New("compare: there is one experiment only: want a second one, begun with fork NAME")
	case len(names) == 0 && t.session.Now() != session.First:
		return []string{session.First, t.session.Now()}, nil
	case len(names) == 0 && len(all) == 2:
		return all, nil
	case len(names) == 1:
		return t.inOrder(names[0], t.session.Now()), nil
	case len(names) != 2:
		return nil, fmt.Errorf("compare: two experiments are compared: want one or two of %s", strings.Join(all, ", "))
	}
	return names, nil
}

// experiment returns what an experiment is called: the notebook's own name stands for the first one.
func (t *talk) experiment(name string) string {
	if t.files.file != "" && name == withoutExt(t.files.title()) && !slices.Contains(t.session.Experiments(), name) {
		return session.First
	}
	return name
}

// mostDiffering is how many differing lines are shown.
const mostDiffering = 24

// differ shows the lines that only one of two experiments has.
func (t *talk) differ(a, b string) {
	lines := t.session.Differ(a, b)
	if len(lines) == 0 || len(lines) > mostDiffering {
		return
	}
	values := make([]text.Value, len(lines))
	for i, l := range lines {
		values[i] = text.Value{Label: "only in " + l.Experiment, Text: l.Line}
	}
	fmt.Fprintln(t.out, t.style.Values(values...))
}

// inOrder puts the experiment that was begun first in front.
func (t *talk) inOrder(a, b string) []string {
	all := t.session.Experiments()
	if slices.Index(all, a) > slices.Index(all, b) {
		a, b = b, a
	}
	return []string{a, b}
}

func (t *talk) keep(rest string) {
	if err := t.files.rename(rest); err != nil {
		t.refuse(err)
		return
	}
	t.session.Folder = t.files.dataFolder()
	for _, experiment := range t.session.Experiments() {
		t.saveAs(experiment)
	}
	fmt.Fprintln(t.out, t.style.Quiet("kept as "+t.files.path()))
}

func (t *talk) resume(string) {
	file, source, err := t.files.resumed()
	if err != nil {
		t.refuse(err)
		return
	}
	t.experiments(file)
	for _, experiment := range t.session.Experiments()[1:] {
		t.saveAs(experiment)
	}
	t.tell(t.evaluate(func(ctx context.Context) session.Outcome { return t.session.Put(ctx, source) }), "")
}

func (t *talk) page(string) {
	if len(t.session.Page()) == 0 {
		t.refuse(errors.New("page: there is nothing to show yet: want at least one calculation"))
		return
	}
	file := t.files.pagePath(t.session.Now())
	if code := t.write(file, t.session.Page()); code != exitFine {
		t.code = code
		return
	}
	openPage(file)
}

// edit hands the notebook to the person's editor and takes what comes back.
func (t *talk) edit(string) {
	editor := os.Getenv("EDITOR")
	if editor == "" {
		t.refuse(errors.New("edit: no editor is set: want its command in the environment variable EDITOR"))
		return
	}
	source, err := t.edited(editor)
	if err != nil {
		t.refuse(fmt.Errorf("edit: %w", err))
		return
	}
	if source != t.session.Text() {
		t.tell(t.evaluate(func(ctx context.Context) session.Outcome { return t.session.Put(ctx, source) }), "")
	}
}

func (t *talk) edited(editor string) (string, error) {
	f, err := os.CreateTemp("", "notebook-*.md")
	if err != nil {
		return "", err
	}
	defer os.Remove(f.Name())
	if _, err = f.WriteString(t.session.Text()); err != nil {
		return "", err
	}
	if err = f.Close(); err != nil {
		return "", err
	}
	words := strings.Fields(editor)
	cmd := exec.Command(words[0], append(words[1:], f.Name())...)
	cmd.Stdin, cmd.Stdout, cmd.Stderr = os.Stdin, os.Stdout, os.Stderr
	back := t.lines.Suspend()
	err = cmd.Run()
	back()
	if err != nil {
		return "", err
	}
	source, err := os.ReadFile(f.Name())
	return string(source), err
}
