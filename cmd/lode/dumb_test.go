//go:build linux

package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"os/exec"
	"strings"
	"testing"
	"time"

	"golang.org/x/sys/unix"
)

// This file holds conversations on a terminal that can do nothing, and reads every byte that is sent to it.

// openPair makes a terminal: what is written to it is read from keys, and the other way round.
func openPair(t *testing.T) (keys, tty *os.File) {
	t.Helper()
	keys, err := os.OpenFile("/dev/ptmx", os.O_RDWR|unix.O_NOCTTY, 0)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = keys.Close() })
	number, err := unix.IoctlGetInt(int(keys.Fd()), unix.TIOCGPTN)
	if err == nil {
		err = unix.IoctlSetPointerInt(int(keys.Fd()), unix.TIOCSPTLCK, 0)
	}
	if err == nil {
		tty, err = os.OpenFile(fmt.Sprintf("/dev/pts/%d", number), os.O_RDWR|unix.O_NOCTTY, 0)
	}
	if err == nil {
		err = unix.IoctlSetWinsize(int(tty.Fd()), unix.TIOCSWINSZ, &unix.Winsize{Row: 24, Col: 80})
	}
	if err != nil {
		t.Fatal(err)
	}
	return keys, tty
}

// onTerminal types into the command and returns what the terminal got, what went to the second stream if that
// stands apart, and the exit code.
func onTerminal(t *testing.T, term, typed string, apart bool, args ...string) (screen, complaints string, code int) {
	t.Helper()
	keys, tty := openPair(t)
	cmd := exec.Command(os.Args[0], args...)
	cmd.Env = append(os.Environ(), asCommand+"="+withArguments, "XDG_STATE_HOME="+t.TempDir(), "TERM="+term, "NO_COLOR=")
	cmd.Dir = t.TempDir()
	var second bytes.Buffer
	cmd.Stdin, cmd.Stdout, cmd.Stderr = tty, tty, tty
	if apart {
		cmd.Stderr = &second
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	_ = tty.Close()
	got := make(chan string, 1)
	go func() { all, _ := io.ReadAll(keys); got <- string(all) }() // ends with an error when nobody holds the terminal
	if _, err := io.WriteString(keys, typed); err != nil {
		t.Fatal(err)
	}
	end := time.AfterFunc(time.Minute, func() { _ = cmd.Process.Kill() })
	defer end.Stop()
	_ = cmd.Wait()
	return strings.ReplaceAll(<-got, "\r\n", "\n"), second.String(), cmd.ProcessState.ExitCode()
}

const endOfInput = "\x04" // Ctrl-D

func TestDumbTerminal(t *testing.T) {
	typed := "x := 3*mm\nx\n1*mm + 1*kΩ\nfunc f() int {\nreturn 1\n}\nf()\nfork b\nx := 4*mm\nundo\nwird\n" + endOfInput
	screen, complaints, code := onTerminal(t, "dumb", typed, true)
	if code != exitFine {
		t.Errorf("exit code %d", code)
	}
	if at := strings.IndexFunc(screen+complaints, func(r rune) bool { return r < ' ' && r != '\n' || r == 0x7f || r == '∿' || r == '┊' }); at >= 0 {
		t.Errorf("codes from byte %d of %q", at, screen+complaints)
	}
	shown := []string{"lode. Write calculations; help lists the words.\n", "x ·· 3 mm\n", "f() ·· 1\n", "replaces x\nwhat moved\nx ·· 3 mm → 4 mm  (+33.3 %)\n", "x ·· 4 mm → 3 mm  (-25.0 %)\n"}
	for _, want := range append(shown, "~ ", ": ", "b ~ ") {
		if !strings.Contains(screen, want) {
			t.Errorf("the terminal got\n%s\nwant %q in it", screen, want)
		}
	}
	for _, want := range []string{"+: the two sides have different dimensions\n", "wird: no such name\n", "hint  did you mean wire?\n"} {
		if strings.Count(complaints, want) != 1 || strings.Contains(screen, want) {
			t.Errorf("complaints are\n%s\nwant %q in it, once, and not in\n%s", complaints, want, screen)
		}
	}
	if n := strings.Count(screen, "~ "); n != 10 {
		t.Errorf("%d prompts in\n%s\nwant one for each entry and one for the end", n, screen)
	}
}

// TestDumbRun wants no codes and nothing written over from a run, one that takes its time and stops, and one that
// ends well. A terminal that can do more gets both.
func TestDumbRun(t *testing.T) {
	slow, quick := writeFile(t, "a.md", cell("for {\n}")), writeFile(t, "b.md", cell("3*mm"))
	for term, wanted := range map[string]bool{"dumb": false, "xterm-256color": true} {
		screen, _, code := onTerminal(t, term, "", false, "run", "-time", "1.5", slow)
		if code != exitStopped || strings.Contains(screen, "\x1b") != wanted || strings.Contains(screen, "\r") != wanted {
			t.Errorf("TERM=%s: exit code %d and %q", term, code, screen)
		}
		if screen, _, code = onTerminal(t, term, "", false, "run", quick); code != exitFine || strings.Contains(screen, "\x1b") != wanted {
			t.Errorf("TERM=%s: exit code %d and %q", term, code, screen)
		}
	}
}
