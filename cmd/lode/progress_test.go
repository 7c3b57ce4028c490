package main

import (
	"bytes"
	"context"
	"strings"
	"sync"
	"testing"

	"lode/render/text"
)

// guarded lets the line and the run write at the same time.
type guarded struct {
	mu sync.Mutex
	bytes.Buffer
}

func (g *guarded) Write(b []byte) (int, error) {
	g.mu.Lock()
	defer g.mu.Unlock()
	return g.Buffer.Write(b)
}

// screen plays a terminal of one line: what a carriage return goes back over is replaced.
func screen(written string) string {
	var lines []string
	for _, line := range strings.Split(written, "\n") {
		var cells []rune
		at := 0
		for _, r := range line {
			if r == '\r' {
				at = 0
				continue
			}
			cells = append(cells[:at], append([]rune{r}, cells[min(at+1, len(cells)):]...)...)
			at++
		}
		lines = append(lines, strings.TrimRight(string(cells), " "))
	}
	return strings.Join(lines, "\n")
}

func TestProgress(t *testing.T) {
	file := writeFile(t, "a.md", cell("x := 1\nx\nfor {\n\tx++\n}"))
	for _, live := range []bool{true, false} {
		var out, err guarded
		p := program{ctx: context.Background(), out: &out, err: &err, style: text.Style{Width: 100}, errStyle: text.Style{Width: 60}, live: live}
		if code := p.main([]string{"run", "-time", "1.2", file}); code != exitStopped {
			t.Errorf("got exit code %d", code)
		}
		written := err.String()
		if told := strings.Contains(written, "s  line 6  for {"); told != live {
			t.Errorf("live %t: got %q", live, written)
		}
		if left := screen(written); strings.Contains(left, "line 6") || !strings.HasPrefix(left, file+":6:1: the run takes too long") {
			t.Errorf("live %t: what is left on the screen is %q", live, left)
		}
		if strings.Contains(written, "\x1b") {
			t.Errorf("live %t: escape sequences without colour: %q", live, written)
		}
	}
	var out, err guarded
	p := program{ctx: context.Background(), out: &out, err: &err, live: true}
	if code := p.main([]string{"run", writeFile(t, "b.md", cell("1"))}); code != exitFine || screen(err.String()) != "" {
		t.Errorf("a short run: got exit code %d, and %q is left", code, screen(err.String()))
	}
}
