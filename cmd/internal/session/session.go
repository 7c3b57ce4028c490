// Package session is a conversation's memory: a notebook that grows entry by entry and is
// evaluated from the top each time, so that what is shown is always the result of what is
// written. It touches no terminal and no file.
package session

import (
	"context"
	"strings"

	"lode/cmd/internal/evaluate"
	"lode/engine"
	"lode/engine/book"
	"lode/engine/issue"
)

// Evaluator runs a request; evaluate.Run is one.
type Evaluator func(ctx context.Context, r evaluate.Request, take func(evaluate.Event)) *issue.Issue

// Session is a conversation.
type Session struct {
	Width  int
	Colour bool
	Limits evaluate.Limits
	Folder string // where data files come from

	run         Evaluator
	file        string // for messages
	now         string // the experiment in hand
	experiments map[string]*experiment
	order       []string // names in the order they were begun
}

// experiment is one line of thought: its text, what it was before each change, and the
// values of its last run.
type experiment struct {
	text   string
	past   []string
	values []evaluate.Value
	page   []byte
}

// First is the name of the experiment that a conversation begins with.
const First = "first"

// New begins a conversation with the text of a notebook, which may be empty.
func New(run Evaluator, file, text string) *Session {
	return &Session{run: run, file: file, now: First, experiments: map[string]*experiment{First: {text: text}}, order: []string{First}}
}

// Text returns the notebook of the experiment in hand.
func (s *Session) Text() string { return s.current().text }

// Now returns the name of the experiment in hand.
func (s *Session) Now() string { return s.now }

// Experiments returns the names of all experiments in the order they were begun.
func (s *Session) Experiments() []string { return append([]string(nil), s.order...) }

// Page returns the page of the last evaluation.
func (s *Session) Page() []byte { return s.current().page }

// Book returns the notebook in parts.
func (s *Session) Book() book.Book { return book.Parse(s.file, []byte(s.Text())) }

func (s *Session) current() *experiment { return s.experiments[s.now] }

// Outcome is what an entry led to.
type Outcome struct {
	Taken    bool          // whether the notebook now holds the entry
	Shown    string        // what the entry showed, for the terminal
	Moved    []Change      // results that came out differently than before
	Replaced []string      // names whose earlier definition the entry took the place of
	Issues   []issue.Issue // why it was not taken
}

// Enter adds code to the notebook. A statement that defines a name anew takes the place of
// the statement that defined it; everything else goes to the end. What the new definition
// needs and stands below it moves up. If the notebook that results does not check or stops, it
// stays as it was.
func (s *Session) Enter(ctx context.Context, code string) Outcome {
	text, replaced := merge(s.Book(), code)
	out := s.ordered(ctx, text)
	out.Replaced = replaced
	return out
}

// Put takes a whole new text for the notebook, as an editor gives it.
func (s *Session) Put(ctx context.Context, text string) Outcome { return s.try(ctx, text, 0) }

// Note adds prose to the notebook.
func (s *Session) Note(prose string) {
	s.accept(appendBlock(s.Text(), strings.TrimSpace(prose)), s.current().values)
}

// Undo takes back the last change. It reports whether there was one.
func (s *Session) Undo(ctx context.Context) (Outcome, bool) {
	e := s.current()
	if len(e.past) == 0 {
		return Outcome{}, false
	}
	text := e.past[len(e.past)-1]
	past := e.past[:len(e.past)-1]
	out := s.try(ctx, text, 0)
	if out.Taken {
		e.past = past
	}
	return out, true
}

// Recall evaluates the notebook as it is and returns everything it shows.
func (s *Session) Recall(ctx context.Context) Outcome {
	text := s.Text()
	out := s.try(ctx, text, 0)
	if out.Taken && len(s.current().past) > 0 {
		s.current().past = s.current().past[:len(s.current().past)-1]
	}
	return out
}

// try evaluates a text and accepts it if it runs to its end. Results from a cell on are shown.
func (s *Session) try(ctx context.Context, text string, from int) Outcome {
	r := evaluate.Request{File: s.file, Folder: s.Folder, Source: text, Width: s.Width, Colour: s.Colour, Limits: s.Limits, Page: true}
	t := trial{from: from}
	if hasCells(text, s.file) {
		if failed := s.run(ctx, r, t.take); failed != nil {
			t.out.Issues = append(t.out.Issues, *failed)
		}
	}
	if len(t.out.Issues) > 0 {
		t.out.Shown = ""
		return t.out
	}
	t.out.Taken = true
	t.out.Shown = strings.Join(t.shown, "\n")
	t.out.Moved = moved(s.current().values, t.values)
	s.accept(text, t.values)
	s.current().page = t.page
	return t.out
}

func hasCells(text, file string) bool { return len(book.Parse(file, []byte(text)).Cells()) > 0 }

func (s *Session) accept(text string, values []evaluate.Value) {
	e := s.current()
	if text != e.text {
		e.past = append(e.past, e.text)
	}
	e.text, e.values = text, values
}

// trial collects the events of one evaluation.
type trial struct {
	from   int // the first cell whose results are shown
	out    Outcome
	shown  []string
	values []evaluate.Value
	page   []byte
}

func (t *trial) take(e evaluate.Event) {
	t.out.Issues = append(t.out.Issues, e.Issues...)
	if e.Page != nil {
		t.page = e.Page
	}
	if e.Shown != nil {
		t.values = append(t.values, e.Shown.Values...)
		if e.Shown.Cell >= t.from {
			t.shown = append(t.shown, e.Shown.Terminal)
		}
	}
}

// merge puts code into a book.
func merge(b book.Book, code string) (text string, replaced []string) {
	entry := book.Book{File: "entry.lode", Parts: []book.Part{{Cell: &book.Cell{Code: code, Line: 1}}}}
	rest := code
	items := engine.Outline(entry)
	for i := len(items) - 1; i >= 0; i-- {
		it := items[i]
		if names := replaceIn(&b, it.Names, code[it.From:it.To]); len(names) > 0 {
			replaced = append(names, replaced...)
			rest = rest[:it.From] + rest[it.To:]
		}
	}
	text = b.String()
	if strings.Trim(rest, " \t\n;") != "" {
		text = appendBlock(text, "```go\n"+strings.TrimRight(strings.TrimLeft(rest, "\n"), " \t\n;")+"\n```")
	}
	return text, replaced
}

// replaceIn puts statement in the place of the one that defines any of the names.
func replaceIn(b *book.Book, names []string, statement string) []string {
	for _, it := range engine.Outline(*b) {
		if common := shared(it.Names, names); len(common) > 0 {
			cells := b.Cells()
			old := cells[it.Cell].Code
			b.Replace(it.Cell, old[:it.From]+strings.TrimSpace(statement)+old[it.To:])
			return common
		}
	}
	return nil
}

func shared(a, b []string) []string {
	var common []string
	for _, x := range a {
		for _, y := range b {
			if x == y {
				common = append(common, x)
			}
		}
	}
	return common
}

// appendBlock adds a block of Markdown behind a text.
func appendBlock(text, block string) string {
	text = strings.TrimRight(text, "\n")
	if text != "" {
		text += "\n\n"
	}
	return text + block + "\n"
}
