package evaluate

import (
	"bytes"
	"strings"

	"lode/engine/issue"
)

// This file words the ends of runs that the notebook itself did not bring about.

// Codes of issues that end a run from outside.
const (
	TimeLimit   = "time-limit"
	MemoryLimit = "memory-limit"
	OutputLimit = "output-limit"
	DepthLimit  = "depth-limit" // of the child's stack; the budget of depth comes first
	Crashed     = "crashed"     // a fault of ours
)

// stopped words the end of a run that was asked to stop, at the place where it was.
func (p *parent) stopped(i issue.Issue) *issue.Issue {
	i.Code, i.What, i.Got, i.Want, i.Hint = issue.Stopped, "stopped here", "", "", ""
	if p.ctx.Err() == nil {
		i.Code, i.What, i.Got = TimeLimit, "the run takes too long", "more than "+p.request.Limits.Time.String()
		i.Want, i.Hint = "an end", "a loop that never ends? Otherwise raise the limit with -time"
	}
	return &i
}

// died words the end of a child that did not come to its own. All that is known is the
// statement of the top level that it was at.
func (p *parent) died(err error) *issue.Issue {
	i := p.at
	if i.File == "" {
		i.File = p.request.File
	}
	complaint := p.complaint.String()
	switch {
	case p.limited.Err() != nil:
		return p.stopped(i)
	case outOfMemory(complaint):
		i.Code, i.What, i.Got = MemoryLimit, "the run needs too much memory", "more than "+size(p.request.Limits.Memory)
		i.Want, i.Hint = "less memory", "a slice that grows without end? Otherwise raise the limit with -memory"
	case strings.Contains(complaint, "stack exceeds") || strings.Contains(complaint, "stack overflow"):
		i.Code, i.What, i.Want = DepthLimit, "functions call each other without end", "calls that end"
	default:
		i.Code, i.What, i.Got = Crashed, "the evaluation ended unexpectedly", strings.TrimSpace(err.Error()+"; "+firstLine(complaint))
		i.Hint = "nothing of yours is lost; this is a fault of lode"
	}
	return &i
}

// outOfMemory reports whether the child's runtime says that it got no memory: for its heap,
// or for the stack of a thread, which the C library words by the name of the error EAGAIN. Where
// what it needs for collecting garbage is refused, the runtime steps on nothing and says so
// first of all; a notebook, which has no pointers of its own making, cannot bring that about.
func outOfMemory(complaint string) bool {
	if strings.HasPrefix(complaint, "SIGSEGV: segmentation violation") {
		return true
	}
	for _, words := range []string{"out of memory", "cannot allocate", "pthread_create failed: Resource temporarily unavailable", "failed to create new OS thread"} {
		if strings.Contains(complaint, words) {
			return true
		}
	}
	return false
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
