package watch

import (
	"context"
	"sync"
)

// board holds what the open pages should show, and wakes them when it changes. A page that
// is slow misses what has been replaced meanwhile.
type board struct {
	mu        sync.Mutex
	serial    int // of the newest change
	number    int // of the turn that the page answers
	page      string
	pageAt    int // serial of the page
	fault     string
	listeners map[chan struct{}]bool
}

// sight is what a page has to learn.
type sight struct {
	Serial, Number int
	Page           string // "" if it has not changed
	Fault          string
}

func (b *board) put(number int, page string) {
	b.mu.Lock()
	defer b.mu.Unlock()
	b.serial++
	b.number, b.page, b.pageAt, b.fault = number, page, b.serial, ""
	b.wake()
}

// mark notes what is wrong and reports whether that is news.
func (b *board) mark(fault string) bool {
	b.mu.Lock()
	defer b.mu.Unlock()
	if fault == b.fault {
		return false
	}
	b.serial++
	b.fault = fault
	b.wake()
	return true
}

func (b *board) wake() {
	for l := range b.listeners {
		select {
		case l <- struct{}{}:
		default:
		}
	}
}

// last returns the last good page.
func (b *board) last() string {
	b.mu.Lock()
	defer b.mu.Unlock()
	return b.page
}

// follow hands every change to show until ctx ends.
func (b *board) follow(ctx context.Context, show func(sight) error) {
	l := make(chan struct{}, 1)
	b.mu.Lock()
	b.listeners[l] = true
	b.mu.Unlock()
	defer func() {
		b.mu.Lock()
		delete(b.listeners, l)
		b.mu.Unlock()
	}()
	seen := 0
	for {
		if s, news := b.since(seen); news {
			seen = s.Serial
			if show(s) != nil {
				return
			}
		}
		select {
		case <-ctx.Done():
			return
		case <-l:
		}
	}
}

func (b *board) since(seen int) (sight, bool) {
	b.mu.Lock()
	defer b.mu.Unlock()
	s := sight{Serial: b.serial, Number: b.number, Fault: b.fault}
	if b.pageAt > seen {
		s.Page = b.page
	}
	return s, b.serial > seen
}
