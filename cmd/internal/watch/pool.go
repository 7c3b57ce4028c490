package watch

import (
	"context"
	"sync"

	"lode/cmd/internal/evaluate"
	"lode/engine/issue"
)

// Pool keeps children ready, so that a run begins at once.
type Pool struct {
	mu     sync.Mutex
	ready  []*evaluate.Waiting
	closed bool
}

// spares is how many children wait: one to run next, one should the next be cut short.
const spares = 2

// Run runs a request in a child that is ready.
func (p *Pool) Run(ctx context.Context, r evaluate.Request, take func(evaluate.Event)) *issue.Issue {
	p.fill()
	child := p.take()
	if child == nil {
		return evaluate.Run(ctx, r, take)
	}
	failed, fit := child.Run(ctx, r, take)
	p.giveBack(child, fit)
	p.fill()
	return failed
}

func (p *Pool) fill() {
	p.mu.Lock()
	defer p.mu.Unlock()
	for !p.closed && len(p.ready) < spares {
		p.ready = append(p.ready, evaluate.Ready())
	}
}

func (p *Pool) take() *evaluate.Waiting {
	p.mu.Lock()
	defer p.mu.Unlock()
	if len(p.ready) == 0 {
		return nil
	}
	child := p.ready[0]
	p.ready = p.ready[1:]
	return child
}

// giveBack puts a child that is fit at the front of the line: it is warm.
func (p *Pool) giveBack(child *evaluate.Waiting, fit bool) {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.closed || !fit {
		child.Dismiss()
		return
	}
	p.ready = append([]*evaluate.Waiting{child}, p.ready...)
}

// Close lets the children go.
func (p *Pool) Close() {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.closed = true
	for _, child := range p.ready {
		child.Dismiss()
	}
	p.ready = nil
}
