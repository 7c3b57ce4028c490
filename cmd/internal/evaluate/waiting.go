package evaluate

import (
	"bufio"
	"context"
	"io"
	"os"
	"os/exec"
	"runtime"
	"sync"

	"lode/engine/issue"
)

// This file keeps a child ready, so that a run need not wait for a process to start.

// Waiting is a child that has started. It takes one request after the other, and reads a notebook
// again only when its text has changed; a child that had to be stopped is not used again.
type Waiting struct {
	tasks chan task
	gone  chan struct{} // closed when there is no child to take a task
	quit  chan struct{}
	once  sync.Once
	stop  context.CancelFunc // of the child while it runs
}

type task struct {
	ctx     context.Context
	request Request
	take    func(Event)
	ended   chan ending
}

// ending is how a run ended, and whether the child can take another.
type ending struct {
	failed *issue.Issue
	fit    bool
}

// Ready starts a child and returns at once.
func Ready() *Waiting {
	ctx, stop := context.WithCancel(context.Background())
	w := &Waiting{tasks: make(chan task), gone: make(chan struct{}), quit: make(chan struct{}), stop: stop}
	go w.hold(ctx)
	return w
}

// Dismiss ends a child that is not needed any more.
func (w *Waiting) Dismiss() { w.once.Do(func() { close(w.quit) }) }

// Run is like the function Run with the child that waits, or with a new one if that is gone.
// It reports whether the child can take another request. The limits of the first request
// hold for all.
func (w *Waiting) Run(ctx context.Context, r Request, take func(Event)) (failed *issue.Issue, fit bool) {
	if i := noText(r); i != nil {
		take(Event{Issues: []issue.Issue{*i}})
		return nil, true
	}
	r.Limits, r.Stay = r.Limits.orDefaults(), true
	limited, cancel := context.WithTimeout(ctx, r.Limits.Time)
	defer cancel()
	t := task{ctx, r, take, make(chan ending, 1)}
	select {
	case w.tasks <- t:
		stop := context.AfterFunc(limited, w.stop)
		end := <-t.ended
		return end.failed, stop() && end.fit
	case <-w.gone:
		r.Stay = false
		return Run(ctx, r, take), false
	}
}

// hold keeps the thread that started the child, since the kernel ends both together.
func (w *Waiting) hold(ctx context.Context) {
	runtime.LockOSThread()
	defer runtime.UnlockOSThread()
	defer w.stop()
	defer close(w.gone)
	self, err := os.Executable()
	if err != nil {
		return
	}
	p := &parent{limited: ctx}
	cmd := p.command(self)
	out, err := cmd.StdoutPipe()
	if err == nil {
		p.orders, err = cmd.StdinPipe()
	}
	if err != nil || cmd.Start() != nil {
		return
	}
	w.work(p, cmd, out)
}

// work gives the child its requests until it is dismissed or comes to harm.
func (w *Waiting) work(p *parent, cmd *exec.Cmd, out io.Reader) {
	var lines *bufio.Scanner
	for {
		select {
		case t := <-w.tasks:
			p.ctx, p.request, p.take, p.at, p.failed, p.done = t.ctx, t.request, t.take, issue.Issue{}, nil, false
			if lines == nil {
				lines = events(out, p.request.Limits)
				go p.send(p.request)
			} else {
				go p.send(message{Next: &t.request})
			}
			p.readLines(lines, out)
			if p.done && p.limited.Err() == nil {
				t.ended <- ending{p.ended(nil), true}
				continue
			}
			_ = p.orders.Close()
			t.ended <- ending{p.ended(cmd.Wait()), false}
			return
		case <-w.quit:
			_ = p.orders.Close()
			_ = cmd.Wait()
			return
		}
	}
}
