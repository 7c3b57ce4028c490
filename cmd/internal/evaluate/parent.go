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
	"strings"
	"time"

	"lode/engine/issue"
)

// Word is the argument that makes the program a child.
const Word = "evaluate-child"

// IsChild reports whether the program was started to be a child.
func IsChild(args []string) bool { return len(args) == 2 && args[1] == Word }

// longest is the size of one event that the parent still reads.
const longest = 64 << 20

// Run starts a child for the request and hands its events to take as they come. It returns
// the issue that ended the run early, if one did: of the notebook, a limit, or a stop from ctx.
func Run(ctx context.Context, r Request, take func(Event)) *issue.Issue {
	r.Limits = r.Limits.orDefaults()
	limited, cancel := context.WithTimeout(ctx, r.Limits.Time)
	defer cancel()
	p := &parent{ctx: ctx, limited: limited, request: r, take: take}
	if err := p.run(); err != nil {
		return p.ended(err)
	}
	return p.failed
}

type parent struct {
	ctx, limited context.Context
	request      Request
	take         func(Event)
	at           issue.Issue
	failed       *issue.Issue
	done         bool
	complaint    bytes.Buffer // what the child's runtime says when it dies
}

func (p *parent) run() error {
	self, err := os.Executable()
	if err != nil {
		return err
	}
	request, err := json.Marshal(p.request)
	if err != nil {
		return err
	}
	cmd := exec.CommandContext(p.limited, self, Word)
	cmd.Env = []string{"GOTRACEBACK=none", "GOMAXPROCS=2"}
	cmd.Stdin = bytes.NewReader(request)
	cmd.Stderr = &limitedWriter{&p.complaint, 4096}
	cmd.WaitDelay = 100 * time.Millisecond
	detach(cmd)
	out, err := cmd.StdoutPipe()
	if err != nil {
		return err
	}
	if err := cmd.Start(); err != nil {
		return err
	}
	p.read(out)
	err = cmd.Wait()
	if p.done {
		return nil
	}
	if err == nil {
		err = errors.New("the child ended early")
	}
	return err
}

// read takes events until the child closes its end or says that it is done.
func (p *parent) read(out io.Reader) {
	lines := bufio.NewScanner(out)
	lines.Buffer(make([]byte, 64<<10), longest)
	for lines.Scan() {
		var e Event
		if json.Unmarshal(lines.Bytes(), &e) != nil {
			return
		}
		switch {
		case e.At != nil:
			p.at = *e.At
		case e.Failed != nil:
			p.failed = e.Failed
		case e.Done:
			p.done = true
		}
		p.take(e)
	}
}

// ended words the end of a child that did not come to its own.
func (p *parent) ended(err error) *issue.Issue {
	i := p.at
	if i.File == "" {
		i.File = p.request.File
	}
	complaint := p.complaint.String()
	switch {
	case p.ctx.Err() != nil:
		i.Code, i.What = "stopped", "stopped here"
	case p.limited.Err() != nil:
		i.Code, i.What, i.Got = "time-limit", "the run takes too long", "more than "+p.request.Limits.Time.String()
		i.Want, i.Hint = "an end", "a loop that never ends? Otherwise raise the limit with -time"
	case strings.Contains(complaint, "out of memory") || strings.Contains(complaint, "cannot allocate"):
		i.Code, i.What, i.Got = "memory-limit", "the run needs too much memory", "more than "+size(p.request.Limits.Memory)
		i.Want, i.Hint = "less memory", "a slice that grows without end? Otherwise raise the limit with -memory"
	case strings.Contains(complaint, "stack exceeds") || strings.Contains(complaint, "stack overflow"):
		i.Code, i.What, i.Want = "depth-limit", "functions call each other without end", "calls that end"
	default:
		i.Code, i.What, i.Got = "crashed", "the evaluation ended unexpectedly", strings.TrimSpace(err.Error()+"; "+firstLine(complaint))
		i.Hint = "nothing of yours is lost; this is a fault of lode"
	}
	return &i
}

func firstLine(s string) string {
	line, _, _ := strings.Cut(strings.TrimSpace(s), "\n")
	return line
}

// limitedWriter keeps the first bytes of what is written to it.
type limitedWriter struct {
	to   *bytes.Buffer
	left int
}

func (w *limitedWriter) Write(b []byte) (int, error) {
	n := min(len(b), w.left)
	w.to.Write(b[:n])
	w.left -= n
	return len(b), nil
}
