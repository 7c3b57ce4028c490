//go:build linux

package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// This file plays the conversations in testdata/conversations. Each is a text file:
//
//	# what it shows
//	terminal 80 24          columns and rows
//	setting NAME=VALUE      in the environment
//	file NAME               followed by its text
//	type TEXT               and the Enter key; waits for the next prompt
//	start TEXT              the same without waiting
//	press KEY...            by the names tmux has for keys
//	pause DURATION
//	kill                    what runs in the shell, without warning; opens a new shell
//	screen                  followed by all that is in sight then
//
// Lines of texts and screens stand behind a bar.

type step struct {
	verb, rest string
	block      []string
}

func readSteps(source string) []step {
	var steps []step
	for line := range strings.Lines(source) {
		line = strings.TrimRight(line, "\n")
		if text, ok := strings.CutPrefix(line, "|"); ok && len(steps) > 0 {
			last := &steps[len(steps)-1]
			last.block = append(last.block, strings.TrimPrefix(text, " "))
			continue
		}
		verb, rest, _ := strings.Cut(line, " ")
		steps = append(steps, step{verb: verb, rest: rest})
	}
	return steps
}

func writeSteps(steps []step) string {
	var b strings.Builder
	for _, s := range steps {
		b.WriteString(strings.TrimRight(s.verb+" "+s.rest, " ") + "\n")
		for _, line := range s.block {
			b.WriteString(strings.TrimRight("| "+line, " ") + "\n")
		}
	}
	return b.String()
}

func outside(t *testing.T, tool string) {
	t.Helper()
	if os.Getenv("LODE_OUTSIDE") == "" {
		t.Skip("needs " + tool + "; runs with LODE_OUTSIDE=1")
	}
	if _, err := exec.LookPath(tool); err != nil {
		t.Fatalf("%s is missing", tool)
	}
}

func TestConversations(t *testing.T) {
	outside(t, "tmux")
	files, _ := filepath.Glob("testdata/conversations/*.txt")
	if len(files) < 20 {
		t.Errorf("%d conversations, want at least 20", len(files))
	}
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".txt"), func(t *testing.T) {
			t.Parallel()
			source, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			steps := readSteps(string(source))
			play(t, steps)
			if *update && !t.Failed() {
				if err := os.WriteFile(file, []byte(writeSteps(steps)), 0o644); err != nil {
					t.Fatal(err)
				}
			}
		})
	}
}

// play goes through a conversation. With -update it puts in the screens that it sees.
func play(t *testing.T, steps []step) {
	folder := t.TempDir()
	columns, rows := "80", "24"
	var settings []string
	var x *terminal
	screens := 0
	for i := range steps {
		s := &steps[i]
		switch s.verb {
		case "", "#":
			continue
		case "terminal":
			columns, rows, _ = strings.Cut(s.rest, " ")
			continue
		case "setting":
			settings = append(settings, s.rest)
			continue
		case "file":
			if err := os.WriteFile(filepath.Join(folder, s.rest), []byte(strings.Join(s.block, "\n")+"\n"), 0o755); err != nil {
				t.Fatal(err)
			}
			continue
		}
		if x == nil {
			x = openTerminal(t, columns, rows, folder, settings)
		}
		if s.verb == "screen" {
			screens++
		}
		x.step(s)
		if t.Failed() {
			return
		}
	}
	if screens == 0 {
		t.Error("no screen is looked at")
	}
}

func (x *terminal) step(s *step) {
	x.t.Helper()
	switch s.verb {
	case "type":
		x.enter(s.rest)
		x.ready()
	case "start":
		x.enter(s.rest)
	case "press":
		x.tmux(append([]string{"send-keys"}, strings.Fields(s.rest)...)...)
		x.still()
	case "pause":
		d, err := time.ParseDuration(s.rest)
		if err != nil {
			x.t.Fatal(err)
		}
		time.Sleep(d)
	case "kill":
		x.kill()
	case "screen":
		x.look(s)
	default:
		x.t.Fatalf("%s: no such step", s.verb)
	}
}

// look compares the screen with the one that is expected.
func (x *terminal) look(s *step) {
	x.t.Helper()
	if *update {
		x.still()
		s.block = strings.Split(x.screen(), "\n")
		return
	}
	want := strings.TrimRight(strings.Join(s.block, "\n"), "\n ")
	if !x.until(func() bool { return x.screen() == want }) {
		x.t.Errorf("the screen is\n%s\n\nwant\n%s", x.screen(), want)
	}
}
