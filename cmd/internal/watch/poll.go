package watch

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"time"

	"lode/engine/issue"
)

// This file looks at the notebook's file, and at its data files, again and again. It reads the text each time, so
// that it does not matter how an editor saves: in place, or by renaming another file; and
// it waits until a text stays the same from one look to the next, since a save may be seen
// half done.

const (
	every    = 40 * time.Millisecond
	patience = 8       // looks until a file that is not there counts as gone
	largest  = 4 << 20 // of a notebook
)

// save is a text that the file holds now, or why it cannot be read; or that the same text has
// other data beside it.
type save struct {
	text    string
	problem *issue.Issue
	again   bool
}

// poll tells each change until ctx ends; the first one is the text as it is.
func poll(ctx context.Context, file string, beside *data) <-chan save {
	saves := make(chan save)
	go func() {
		ticks := time.NewTicker(every)
		defer ticks.Stop()
		l := looker{file: file}
		for {
			s, news := l.look()
			if !news && beside.look() {
				s, news = save{again: true}, true
			}
			if news {
				select {
				case saves <- s:
				case <-ctx.Done():
					return
				}
			}
			select {
			case <-ticks.C:
			case <-ctx.Done():
				return
			}
		}
	}()
	return saves
}

// looker remembers what was told and what was seen last.
type looker struct {
	file    string
	told    *string // nil before anything was told, and while the file is gone
	seen    *string
	missing int
}

func (l *looker) look() (save, bool) {
	text, err := read(l.file)
	if err != nil {
		l.seen = nil
		l.missing++
		if l.missing != patience && !(l.missing == 1 && l.told == nil) {
			return save{}, false
		}
		l.told = nil
		return save{problem: &issue.Issue{Place: issue.Place{File: l.file}, Code: issue.Unreadable, What: "the notebook cannot be read", Got: err.Error(), Hint: "it runs again as soon as the file is back"}}, true
	}
	l.missing = 0
	first := l.told == nil && l.seen == nil
	steady := l.seen != nil && *l.seen == text
	l.seen = &text
	if !first && !steady || l.told != nil && *l.told == text {
		return save{}, false
	}
	l.told = &text
	return save{text: text}, true
}

func read(file string) (string, error) {
	info, err := os.Stat(file)
	if err != nil {
		return "", unpathed(err)
	}
	if !info.Mode().IsRegular() {
		return "", errNoFile
	}
	if info.Size() > largest {
		return "", errLarge
	}
	data, err := os.ReadFile(file)
	return string(data), unpathed(err)
}

var (
	errNoFile = errors.New("something that is no ordinary file")
	errLarge  = errors.New("more than 4 MB")
)

// unpathed takes the path off an error, which stands in front already.
func unpathed(err error) error {
	var p *fs.PathError
	if errors.As(err, &p) {
		return p.Err
	}
	return err
}
