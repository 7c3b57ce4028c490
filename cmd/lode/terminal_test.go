//go:build linux

package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"
)

// This file drives the command in a real terminal, which tmux plays.

// terminal is one terminal with a shell in a folder of its own.
type terminal struct {
	t      *testing.T
	socket string
}

const (
	patience = 15 * time.Second
	glance   = 40 * time.Millisecond
)

// openTerminal starts a shell that finds lode. Settings are NAME=VALUE.
func openTerminal(t *testing.T, columns, rows string, folder string, settings []string) *terminal {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	bin := filepath.Join(t.TempDir(), "bin")
	script := fmt.Sprintf("#!/bin/sh\n%s='%s' exec '%s' \"$@\"\n", asCommand, withArguments, self)
	if err = os.MkdirAll(bin, 0o755); err == nil {
		err = os.WriteFile(filepath.Join(bin, "lode"), []byte(script), 0o755)
	}
	if err != nil {
		t.Fatal(err)
	}
	x := &terminal{t, filepath.Join(t.TempDir(), "tmux")}
	shell := []string{"env", "-i", "HOME=" + folder, "PATH=" + bin + ":" + os.Getenv("PATH"), "TERM=screen-256color", "LANG=C.UTF-8", "PS1=$ "}
	shell = append(append(shell, settings...), "sh")
	args := append([]string{"-f", "/dev/null", "new-session", "-d", "-x", columns, "-y", rows, "-c", folder}, shell...)
	x.tmux(args...)
	t.Cleanup(func() { _ = exec.Command("tmux", "-S", x.socket, "kill-server").Run() })
	x.ready()
	return x
}

func (x *terminal) tmux(args ...string) string {
	x.t.Helper()
	cmd := exec.Command("tmux", append([]string{"-u", "-S", x.socket}, args...)...)
	out, err := cmd.CombinedOutput()
	if err != nil {
		x.t.Fatalf("tmux %v: %v\n%s", args, err, out)
	}
	return string(out)
}

// screen returns what is in sight, without the blank lines at its end.
func (x *terminal) screen() string { return strings.TrimRight(x.tmux("capture-pane", "-p"), "\n ") }

// cursorLine returns the text in front of the cursor.
func (x *terminal) cursorLine() string {
	at := strings.Fields(x.tmux("display-message", "-p", "#{cursor_x} #{cursor_y}"))
	var column, row int
	fmt.Sscan(at[0], &column)
	fmt.Sscan(at[1], &row)
	lines := strings.Split(x.tmux("capture-pane", "-p"), "\n")
	line := []rune(lines[row] + strings.Repeat(" ", column))
	return string(line[:column])
}

// ready waits until a prompt waits for input.
func (x *terminal) ready() {
	x.until(func() bool {
		line := x.cursorLine()
		for _, p := range []string{"$ ", prompt, carryOn, "~ ", ": "} {
			if line == p || p == prompt && strings.HasSuffix(line, " "+prompt) {
				return true
			}
		}
		return false
	})
}

// still waits until the screen no longer changes.
func (x *terminal) still() {
	was := ""
	x.until(func() bool {
		is := x.screen()
		defer func() { was = is }()
		return is == was
	})
}

// until asks twice in a row, so that a moment in passing does not count.
func (x *terminal) until(settled func() bool) bool {
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(glance) {
		if settled() {
			if time.Sleep(glance); settled() {
				return true
			}
		}
	}
	return false
}

// kill ends what the shell runs as a power cut would, and starts a new shell.
func (x *terminal) kill() {
	x.t.Helper()
	shell := strings.TrimSpace(x.tmux("display-message", "-p", "#{pane_pid}"))
	children, err := os.ReadFile("/proc/" + shell + "/task/" + shell + "/children")
	if err != nil || len(strings.Fields(string(children))) == 0 {
		x.t.Fatalf("nothing runs in the shell: %v", err)
	}
	for _, child := range strings.Fields(string(children)) {
		if pid, err := strconv.Atoi(child); err == nil {
			_ = syscall.Kill(pid, syscall.SIGKILL)
		}
	}
	x.tmux("respawn-pane", "-k")
	x.ready()
}

func (x *terminal) enter(line string) {
	if line != "" {
		x.tmux("send-keys", "-l", "--", line)
	}
	x.tmux("send-keys", "Enter")
}
