package watch

import (
	"context"
	"slices"
	"sync"

	"lode/render/page"
)

// board holds what the open pages should show, and wakes them when it changes. A page that
// is slow misses what has been replaced meanwhile.
type board struct {
	mu        sync.Mutex
	serial    int // of the newest change
	turn      turn
	pieces    page.Pieces // of the last good page
	wholeAt   int         // serial of the text around the elements
	changedAt []int       // serial of each element
	fault     string
	listeners map[chan struct{}]bool
}

// sight is what a page has to learn.
type sight struct {
	Serial  int
	Number  int               // of the turn that the page answers, as the page that was turned counts
	Order   int               // of that turn among those of all pages
	Values  map[string]string // where the knobs stand
	Page    *page.Pieces      `json:",omitempty"` // where another text stands around the elements
	Changed map[int]string    `json:",omitempty"` // else the elements that are not as they were
	Fault   string
}

// put puts up the page that answers a turn, and reports whether that ends a fault.
func (b *board) put(t turn, p page.Pieces) (mended bool) {
	b.mu.Lock()
	defer b.mu.Unlock()
	b.serial++
	if len(p.Elements) != len(b.changedAt) || !slices.Equal(p.Around, b.pieces.Around) {
		b.wholeAt, b.changedAt = b.serial, make([]int, len(p.Elements))
	}
	for i, text := range p.Elements {
		if b.wholeAt == b.serial || text != b.pieces.Elements[i] {
			b.changedAt[i] = b.serial
		}
	}
	mended = b.fault != ""
	b.turn, b.pieces, b.fault = t, p, ""
	b.wake()
	return mended
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

// last returns the last good page, "" if there is none.
func (b *board) last() string {
	b.mu.Lock()
	defer b.mu.Unlock()
	return b.pieces.String()
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
	s := sight{Serial: b.serial, Number: b.turn.Number, Order: b.turn.order, Values: b.turn.Values, Fault: b.fault}
	if b.wholeAt > seen {
		whole := page.Pieces{Around: b.pieces.Around, Elements: slices.Clone(b.pieces.Elements)}
		s.Page = &whole
		return s, true
	}
	for i, at := range b.changedAt {
		if at > seen {
			if s.Changed == nil {
				s.Changed = map[int]string{}
			}
			s.Changed[i] = b.pieces.Elements[i]
		}
	}
	return s, b.serial > seen
}
