package evaluate

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"io"
	"os"
	"os/exec"
	"runtime"
	"sync"
	"time"
	"unicode/utf8"

	"lode/engine/book"
	"lode/engine/issue"
)

// Word is the argument that makes the program a child.
const Word = "evaluate-child"

// IsChild reports whether the program was started to be a child.
func IsChild(args []string) bool { return len(args) == 2 && args[1] == Word }

// patience is the time from asking the child to stop until it is killed.
const patience = 40 * time.Millisecond

// Run starts a child for the request and hands its events to take as they come. It returns
// the issue that ended the run early, if one did: of the notebook, a limit, or a stop from ctx.
func Run(ctx context.Context, r Request, take func(Event)) *issue.Issue {
	if i := noText(r); i != nil {
		take(Event{Issues: []issue.Issue{*i}})
		return nil
	}
	r.Limits = r.Limits.orDefaults()
	limited, cancel := context.WithTimeout(ctx, r.Limits.Time)
	defer cancel()
	p := &parent{ctx: ctx, limited: limited, request: r, take: take}
	return p.ended(p.run())
}

// noText refuses bytes that would not reach the child as they are.
func noText(r Request) *issue.Issue {
	texts := []string{r.Source}
	if r.Against != nil {
		texts = append(texts, r.Against.Source)
	}
	for _, text := range texts {
		if !utf8.ValidString(text) {
			return book.Book{File: r.File, Parts: []book.Part{{Text: text}}}.Problem()
		}
	}
	return nil
}

type parent struct {
	ctx, limited context.Context
	request      Request
	take         func(Event)
	at           issue.Issue
	failed       *issue.Issue
	done         bool
	complaint    bytes.Buffer // what the child's runtime says when it dies

	sending sync.Mutex
	orders  io.WriteCloser
}

// run starts the child, reads what it says and waits for its end. The thread is held, since
// the kernel ends the child together with the thread that started it.
func (p *parent) run() error {
	runtime.LockOSThread()
	defer runtime.UnlockOSThread()
	self, err := os.Executable()
	if err != nil {
		return err
	}
	cmd := p.command(self)
	out, err := cmd.StdoutPipe()
	if err == nil {
		p.orders, err = cmd.StdinPipe()
	}
	if err != nil {
		return err
	}
	if err := cmd.Start(); err != nil {
		return err
	}
	go p.send(p.request)
	p.read(out)
	if p.done { // what is left of the child is its end, which nobody needs to wait for
		go func() { _ = cmd.Wait() }()
		return nil
	}
	return cmd.Wait()
}

// command is the child with nothing of the parent's environment.
func (p *parent) command(self string) *exec.Cmd {
	cmd := exec.CommandContext(p.limited, self, Word)
	cmd.Env = []string{"GOTRACEBACK=none", "GOMAXPROCS=2", "GOGC=off"}
	cmd.Stderr = &limitedWriter{&p.complaint, 4096}
	cmd.Cancel = func() error { go p.send(message{Stop: true}); return nil }
	cmd.WaitDelay = patience
	detach(cmd)
	return cmd
}

// send writes to the child; one that does not read any more is killed soon enough.
func (p *parent) send(v any) {
	p.sending.Lock()
	defer p.sending.Unlock()
	_ = json.NewEncoder(p.orders).Encode(v)
}

// read takes events until the child closes its end or says that it is done.
func (p *parent) read(out io.Reader) { p.readLines(events(out, p.request.Limits), out) }

// events reads a line at a time. An event holds at most the page, written in four characters
// for three bytes.
func events(out io.Reader, l Limits) *bufio.Scanner {
	lines := bufio.NewScanner(out)
	lines.Buffer(make([]byte, 64<<10), int(2*pages*l.Output)+1<<20)
	return lines
}

func (p *parent) readLines(lines *bufio.Scanner, out io.Reader) {
	for lines.Scan() {
		var e Event
		if json.Unmarshal(lines.Bytes(), &e) != nil {
			break
		}
		p.event(e)
		if e.Done {
			return
		}
	}
	_, _ = io.Copy(io.Discard, out)
}

func (p *parent) event(e Event) {
	p.take(e) // whoever looks after data files looks before they are read
	switch {
	case e.At != nil:
		p.at = *e.At
	case e.Failed != nil:
		p.failed = e.Failed
	case e.Wants != nil:
		p.send(message{File: p.deliver(*e.Wants)})
	case e.Done:
		p.done = true
	}
}

// ended decides what to tell of a child's end.
func (p *parent) ended(err error) *issue.Issue {
	switch {
	case p.failed != nil && p.failed.Code == issue.Stopped:
		return p.stopped(*p.failed)
	case p.failed != nil || p.done:
		return p.failed
	case err == nil:
		err = errors.New("the child ended early")
	}
	return p.died(err)
}
