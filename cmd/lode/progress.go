package main

import (
	"context"
	"fmt"
	"io"
	"strings"
	"sync"
	"time"

	"lode/cmd/internal/evaluate"
	"lode/engine/issue"
	"lode/render/table"
)

// This file tells, on a terminal, where a run is that takes its time: one line that is
// written over and taken away again.

const (
	silence  = 500 * time.Millisecond // a run shorter than this tells nothing
	interval = 200 * time.Millisecond
)

// progress is the line. The zero value, for outputs that are no terminal, writes nothing.
type progress struct {
	out   io.Writer
	width int
	quiet func(string) string

	mu    sync.Mutex
	began time.Time
	at    issue.Issue
	part  float64 // of what runs there
	shown int     // columns that the line takes now
	over  chan struct{}
}

// follow begins to watch a run.
func (p *program) follow() *progress {
	if !p.live {
		return &progress{}
	}
	l := &progress{out: p.err, width: max(p.errStyle.Width, 40), quiet: p.errStyle.Quiet, began: time.Now(), over: make(chan struct{})}
	go l.tick()
	return l
}

// followed is evaluate.Run with that line.
func (p *program) followed(ctx context.Context, r evaluate.Request, take func(evaluate.Event)) *issue.Issue {
	line := p.follow()
	defer line.end()
	return evaluate.Run(ctx, r, func(e evaluate.Event) {
		if !line.follows(e) {
			line.clear()
			take(e)
		}
	})
}

func (l *progress) tick() {
	time.Sleep(silence)
	for {
		l.draw()
		select {
		case <-l.over:
			return
		case <-time.After(interval):
		}
	}
}

// follows notes the statement that runs now, or how far the library is with it, and reports
// whether the event was such a one.
func (l *progress) follows(e evaluate.Event) bool {
	l.mu.Lock()
	defer l.mu.Unlock()
	switch {
	case e.At != nil:
		l.at, l.part = *e.At, 0
	case e.Part > 0:
		l.part = e.Part
	default:
		return false
	}
	return true
}

func (l *progress) draw() {
	l.mu.Lock()
	defer l.mu.Unlock()
	select {
	case <-l.over:
		return
	default:
	}
	l.wipe()
	text := fmt.Sprintf("%.0f s", time.Since(l.began).Seconds())
	if l.part > 0 {
		text += fmt.Sprintf("  %2.0f %%", 100*l.part)
	}
	if l.at.Line > 0 {
		text += fmt.Sprintf("  line %d  %s", l.at.Line, strings.TrimSpace(l.at.Source))
	}
	text = cut(text, l.width-1)
	fmt.Fprint(l.out, l.quiet(text))
	l.shown = table.Width(text)
}

// clear takes the line away before something else is written.
func (l *progress) clear() {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.wipe()
}

func (l *progress) wipe() {
	if l.shown > 0 {
		fmt.Fprint(l.out, "\r"+strings.Repeat(" ", l.shown)+"\r")
		l.shown = 0
	}
}

// end takes the line away for good.
func (l *progress) end() {
	if l.over == nil {
		return
	}
	l.mu.Lock()
	defer l.mu.Unlock()
	close(l.over)
	l.wipe()
}

// cut shortens a text to a number of columns.
func cut(text string, width int) string {
	letters := []rune(text)
	if len(letters) > 4*width {
		letters = letters[:4*width]
	}
	for len(letters) > 0 && table.Width(string(letters)) > width {
		letters = letters[:len(letters)-1]
	}
	return string(letters)
}
