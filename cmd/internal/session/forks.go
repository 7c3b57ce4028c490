package session

import (
	"context"
	"fmt"
	"strings"

	"lode/cmd/internal/evaluate"
	"lode/engine/issue"
)

// Fork begins an experiment under a name, as a copy of the one in hand.
func (s *Session) Fork(name string) error {
	if err := s.mayName(name); err != nil {
		return err
	}
	now := s.current()
	s.experiments[name] = &experiment{text: now.text, values: now.values, page: now.page}
	s.order = append(s.order, name)
	s.now = name
	return nil
}

func (s *Session) mayName(name string) error {
	switch {
	case name == "" || strings.ContainsAny(name, " /\\.\t"):
		return fmt.Errorf("%q: no name for an experiment: want letters and digits without spaces, points and slashes", name)
	case s.experiments[name] != nil:
		return fmt.Errorf("%s: there is an experiment of that name: want a new name, or take %s", name, name)
	}
	return nil
}

// Add puts in an experiment that was kept from before, unless there is one of that name.
func (s *Session) Add(name, text string) {
	if s.mayName(name) == nil {
		s.experiments[name] = &experiment{text: text}
		s.order = append(s.order, name)
	}
}

// TextOf returns the notebook of an experiment.
func (s *Session) TextOf(name string) string {
	if e := s.experiments[name]; e != nil {
		return e.text
	}
	return ""
}

// Take goes over to another experiment.
func (s *Session) Take(name string) error {
	if s.experiments[name] == nil {
		return s.unknown(name)
	}
	s.now = name
	return nil
}

func (s *Session) unknown(name string) error {
	return fmt.Errorf("%s: no such experiment: want one of %s", name, strings.Join(s.order, ", "))
}

// Compare sets the results of two experiments side by side.
func (s *Session) Compare(ctx context.Context, a, b string) (string, *issue.Issue, error) {
	for _, name := range []string{a, b} {
		if s.experiments[name] == nil {
			return "", nil, s.unknown(name)
		}
	}
	r := evaluate.Request{
		File: s.file, Folder: s.Folder, Source: s.experiments[a].text, Width: s.Width, Colour: s.Colour, Limits: s.Limits,
		Against: &evaluate.Against{Name: a, Other: b, Source: s.experiments[b].text},
	}
	var shown []string
	failed := s.run(ctx, r, func(e evaluate.Event) {
		if e.Shown != nil {
			shown = append(shown, e.Shown.Terminal)
		}
		if len(e.Issues) > 0 {
			shown = append(shown, e.Issues[0].Error())
		}
	})
	return strings.Join(shown, "\n"), failed, nil
}
