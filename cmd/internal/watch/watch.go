// Package watch serves the page of a notebook to this machine alone, and keeps it in step:
// each save, of the notebook or of a data file it reads, and each turn of a knob runs it again, and what comes out is pushed to
// the open page. Where a run fails, the last good page stays and the failure stands above it.
package watch

import (
	"context"
	"fmt"
	"net"
	"net/http"
	"path/filepath"
	"strings"
	"sync"
	"time"

	"lode/cmd/internal/evaluate"
	"lode/cmd/internal/present"
	"lode/engine/issue"
	"lode/render/page"
)

// Evaluator runs a request.
type Evaluator func(ctx context.Context, r evaluate.Request, take func(evaluate.Event)) *issue.Issue

// Watch is a notebook that is being watched.
type Watch struct {
	File   string
	Run    Evaluator
	Tell   func([]issue.Issue) // takes what is wrong with the notebook, nothing once that is mended; nil to be silent
	Ready  func(address string)
	Limits evaluate.Limits

	running context.Context
	turns   chan turn
	turning sync.Mutex
	order   int // of the last turn
	board   board
	data    *data
}

// turn is where a person wants the knobs.
type turn struct {
	Number int
	Values map[string]string // exact numbers in SI units

	order int // among the turns of all pages
}

// Serve watches until ctx ends. Ready is told the address once pages can be had.
func (w *Watch) Serve(ctx context.Context) error {
	listener, err := net.Listen("tcp4", "127.0.0.1:0")
	if err != nil {
		return err
	}
	d, err := newDoor(listener.Addr().String())
	if err != nil {
		return err
	}
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	w.running, w.turns = ctx, make(chan turn, 16)
	w.data = &data{folder: filepath.Dir(w.File)}
	w.board.listeners = map[chan struct{}]bool{}
	server := &http.Server{Handler: d.guard(w.routes(d)), ReadHeaderTimeout: 5 * time.Second, BaseContext: func(net.Listener) context.Context { return ctx }}
	go func() {
		<-ctx.Done()
		_ = server.Close()
	}()
	done := make(chan struct{})
	go func() {
		defer close(done)
		w.loop(ctx, poll(ctx, w.File, w.data))
	}()
	if w.Ready != nil {
		w.Ready(d.address())
	}
	err = server.Serve(listener)
	stop()
	<-done
	if err == http.ErrServerClosed {
		return nil
	}
	return err
}

// grace is how long a run goes on when there is something newer to run: a page that is
// nearly done is worth more during a long move than one that is always begun anew.
const grace = 300 * time.Millisecond

// hand is the run in hand.
type hand struct {
	end   chan struct{} // closed when it has ended; nil if there is none
	stop  context.CancelFunc
	began time.Time
	cut   bool // asked to stop
}

func (w *Watch) start(ctx context.Context, s save, t turn) hand {
	running, stop := context.WithCancel(ctx)
	h := hand{end: make(chan struct{}), stop: stop, began: time.Now()}
	go func() {
		defer close(h.end)
		w.once(running, s, t)
	}()
	return h
}

// late tells when a run in hand has to make room for a newer one.
func (h hand) late() <-chan time.Time {
	if h.end == nil || h.cut {
		return nil
	}
	return time.After(grace - time.Since(h.began))
}

// loop decides what runs: the newest text with the newest position of the knobs.
func (w *Watch) loop(ctx context.Context, saves <-chan save) {
	var now save
	var want turn
	var run hand
	due, known := false, false
	for {
		if due && known && run.end == nil {
			run, due = w.start(ctx, now, want), false
		}
		var late <-chan time.Time
		if due {
			late = run.late()
		}
		select {
		case <-ctx.Done():
			if run.end != nil {
				<-run.end
				run.stop()
			}
			return
		case s := <-saves:
			if s.again {
				due = true
				continue
			}
			if known = s.problem == nil; !known {
				w.trouble([]issue.Issue{*s.problem})
				continue
			}
			now, due = s, true
		case want = <-w.turns:
			due = true
		case <-late:
			run.stop()
			run.cut = true
		case <-run.end:
			run.stop()
			run = hand{}
		}
	}
}

// once runs the notebook and puts up what comes out.
func (w *Watch) once(ctx context.Context, s save, t turn) {
	r := evaluate.Request{File: w.File, Source: s.text, Live: true, Turned: t.numbers(), Limits: w.Limits}
	var issues []issue.Issue
	var served *page.Pieces
	found := map[string]string{}
	failed := w.Run(ctx, r, func(e evaluate.Event) {
		issues = append(issues, e.Issues...)
		if e.Served != nil {
			served = e.Served
		}
		if e.Wants != nil && filepath.IsLocal(filepath.FromSlash(*e.Wants)) {
			found[*e.Wants] = w.data.stamp(*e.Wants)
		}
	})
	w.data.asked(found, ctx.Err() != nil)
	switch {
	case ctx.Err() != nil: // there is something newer
	case failed != nil:
		w.trouble(append(issues, *failed))
	case len(issues) > 0:
		w.trouble(issues)
	case served != nil:
		if w.board.put(t, *served) && w.Tell != nil {
			w.Tell(nil)
		}
	}
}

// numbers reads the values; what is no number is left out.
func (t turn) numbers() map[string]float64 {
	values := map[string]float64{}
	for name, text := range t.Values {
		var x float64
		if _, err := fmt.Sscan(text, &x); err == nil {
			values[name] = x
		}
	}
	return values
}

// mostIssues is how many issues a page shows at once.
const mostIssues = 5

// trouble puts up what is wrong, above the last good page.
func (w *Watch) trouble(issues []issue.Issue) {
	var b strings.Builder
	for i, one := range issues[:min(len(issues), mostIssues)] {
		if err := page.WriteFault(&b, present.PageFault(one)); err != nil || i == mostIssues {
			break
		}
	}
	if w.board.mark(b.String()) && w.Tell != nil {
		w.Tell(issues)
	}
}
