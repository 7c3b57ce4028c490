package evaluate

import (
	"context"
	"os"
	"runtime"
	"sync"

	"lode/engine/issue"
)

// This file keeps a child ready, so that a run need not wait for a process to start.

// Waiting is a child that has started and waits for its one request.
type Waiting struct {
	tasks chan task
	gone  chan struct{} // closed when there is no child to take a task
	quit  chan struct{}
	once  sync.Once
	stop  context.CancelFunc // of the child once it runs
}

type task struct {
	ctx     context.Context
	request Request
	take    func(Event)
	ended   chan *issue.Issue
}

// Ready starts a child and returns at once.
func Ready() *Waiting {
	ctx, stop := context.WithCancel(context.Background())
	w := &Waiting{tasks: make(chan task), gone: make(chan struct{}), quit: make(chan struct{}), stop: stop}
	go w.hold(ctx)
	return w
}

// Dismiss ends a child that is not needed.
func (w *Waiting) Dismiss() { w.once.Do(func() { close(w.quit) }) }

// Run is like the function Run with the child that waits. A second call starts one anew.
func (w *Waiting) Run(ctx context.Context, r Request, take func(Event)) *issue.Issue {
	r.Limits = r.Limits.orDefaults()
	limited, cancel := context.WithTimeout(ctx, r.Limits.Time)
	defer cancel()
	t := task{ctx, r, take, make(chan *issue.Issue, 1)}
	select {
	case w.tasks <- t:
		defer context.AfterFunc(limited, w.stop)()
		return <-t.ended
	case <-w.gone:
		return Run(ctx, r, take)
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
	select {
	case t := <-w.tasks:
		p.ctx, p.request, p.take = t.ctx, t.request, t.take
		go p.send(p.request)
		p.read(out)
		t.ended <- p.ended(cmd.Wait())
	case <-w.quit:
		_ = p.orders.Close()
		_ = cmd.Wait()
	}
}
