package main

import (
	"bytes"
	"os"
	"os/exec"
	"regexp"
	"strings"
	"testing"
)

// TestMain of this package lets its binary be a child; in the same way this lets it be the
// whole command, for tests that need a process of its own.
const asCommand = "LODE_TEST_AS_COMMAND"

var conversation = regexp.MustCompile("(?s)```\n(" + prompt + ".*?)```")

// TestReadmeConversation says what the README's conversation says, and compares the answers.
func TestReadmeConversation(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	m := conversation.FindSubmatch(readme)
	if m == nil {
		t.Fatal("the README shows no conversation")
	}
	var said, answers []string
	for _, line := range strings.Split(strings.TrimRight(string(m[1]), "\n"), "\n") {
		if entry, ok := strings.CutPrefix(line, prompt); ok {
			said = append(said, entry)
		} else {
			answers = append(answers, line)
		}
	}
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), asCommand+"=1", "XDG_STATE_HOME="+t.TempDir())
	cmd.Stdin = strings.NewReader(strings.Join(said, "\n") + "\n")
	var out, complaint bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &complaint
	if err := cmd.Run(); err != nil {
		t.Fatal(err, complaint.String())
	}
	if got, want := strings.TrimRight(out.String(), "\n"), strings.Join(answers, "\n"); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}
