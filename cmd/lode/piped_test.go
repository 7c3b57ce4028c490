package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// This file holds conversations that come from a pipe: nobody sees a prompt, and a program may read what is told.

// said is how a conversation from a pipe went.
type said struct {
	out, err string
	code     int
	kept     string // the notebook afterwards
}

// say pipes entries into the command, in a folder of its own. Settings are NAME=VALUE.
func say(t *testing.T, entries string, args []string, settings ...string) said {
	t.Helper()
	folder := t.TempDir()
	cmd := exec.Command(os.Args[0], args...)
	cmd.Env = append(os.Environ(), asCommand+"="+withArguments, "XDG_STATE_HOME="+folder, "TERM=xterm-256color", "COLORTERM=truecolor", "EDITOR=")
	cmd.Env = append(cmd.Env, settings...)
	cmd.Dir, cmd.Stdin = folder, strings.NewReader(entries)
	var out, complaint bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &complaint
	if err := cmd.Run(); err != nil && cmd.ProcessState == nil {
		t.Fatal(err)
	}
	s := said{out: out.String(), err: complaint.String(), code: cmd.ProcessState.ExitCode()}
	if files, _ := filepath.Glob(filepath.Join(folder, "lode", "unnamed-*.md")); len(files) > 0 {
		kept, _ := os.ReadFile(files[0])
		s.kept = string(kept)
	}
	return s
}

// pipedTalks are conversations with all that is to be seen on the first stream, pieces of the second, and the code.
var pipedTalks = map[string]struct {
	entries, out string
	errs         []string
	code         int
}{
	"results":             {"x := 3*mm\nx + 1*mm\n", "x + 1*mm ·· 4 mm\n", nil, exitFine},
	"no line break":       {"3*mm\n4*mm", "3*mm ·· 3 mm\n4*mm ·· 4 mm\n", nil, exitFine},
	"line breaks of DOS":  {"3*mm\r\n4*mm\r\n", "3*mm ·· 3 mm\n4*mm ·· 4 mm\n", nil, exitFine},
	"nothing":             {"", "", nil, exitFine},
	"blank lines":         {"\n  \n\n", "", nil, exitFine},
	"several lines":       {"func f(x units.Length) units.Length {\n\treturn 2*x\n}\nf(3*mm)\n", "f(3*mm) ·· 6 mm\n", nil, exitFine},
	"leave":               {"3*mm\nleave\n4*mm\n1 +* 2\n", "3*mm ·· 3 mm\n", nil, exitFine},
	"what moved":          {"x := 3*mm\nx\nx := 4*mm\n", "x ·· 3 mm\nreplaces x\nwhat moved\nx ·· 3 mm → 4 mm  (+33.3 %)\n", nil, exitFine},
	"does not check":      {"1*mm + 1*kΩ\n3*mm\n", "3*mm ·· 3 mm\n", []string{"+: the two sides have different dimensions\n", "    1*mm + 1*kΩ\n    ^^^^^^^^^^^\n"}, exitStopped},
	"stops":               {"wire.AWG(99)\n3*mm\n", "3*mm ·· 3 mm\n", []string{"AWG gauge: not in the table\n", "  got   AWG 99\n"}, exitStopped},
	"never ends":          {"func f(n int) int {\n\treturn f(n+1) + 1\n}\nf(0)\n3*mm\n", "3*mm ·· 3 mm\n", []string{"the depth is used up"}, exitStopped},
	"incomplete":          {"3*mm\nx := (3*mm", "3*mm ·· 3 mm\n", []string{"syntax: "}, exitStopped},
	"a word without use":  {"undo\nkeep\nnote\nedit\ntake b\npage\n", "", []string{"undo: there is nothing to take back\n", "keep: no name\n", "note: no text\n", "edit: no editor is set\n", "b: no such experiment\n", "page: there is nothing to show yet\n"}, exitStopped},
	"an escape character": {"\x1b[31m3*mm\n4*mm\n", "4*mm ·· 4 mm\n", []string{"a character that cannot be seen\n", "U+001B"}, exitStopped},
	"no text":             {"3*mm\x00\xff\n4*mm\n", "4*mm ·· 4 mm\n", []string{"the file is not text\n"}, exitStopped},
	"an endless line":     {strings.Repeat("x", 1<<21) + "\n4*mm\n", "4*mm ·· 4 mm\n", []string{"the line is too long\n"}, exitStopped},
}

func TestPipedConversation(t *testing.T) {
	for name, c := range pipedTalks {
		t.Run(name, func(t *testing.T) {
			s := say(t, c.entries, nil)
			if s.code != c.code || s.out != c.out {
				t.Errorf("exit code %d and\n%q\nwant %d and\n%q", s.code, s.out, c.code, c.out)
			}
			if len(c.errs) == 0 && s.err != "" {
				t.Errorf("complaints %q", s.err)
			}
			for _, want := range c.errs {
				if strings.Count(s.err, want) != 1 {
					t.Errorf("got\n%s\nwant %q in it, once", s.err, want)
				}
			}
			if found := strings.IndexAny(s.out+s.err, "\x1b\r\a\b∿┊"); found >= 0 {
				t.Errorf("codes or prompts from byte %d of %q", found, s.out+s.err)
			}
		})
	}
}

// TestPipedKeepsTheLast wants refused definitions to leave results, and the kept notebook, as they were.
func TestPipedKeepsTheLast(t *testing.T) {
	for _, bad := range []string{"x := 4*kΩ + 1*mm", "x := wire.AWG(99)", "x := (4*mm", "x := y", "x := []int{}[3]"} {
		s := say(t, "x := 3*mm\n2*x\n"+bad+"\n\n3*x\n", nil)
		if want := "2*x ·· 6 mm\n3*x ·· 9 mm\n"; s.out != want || s.code != exitStopped {
			t.Errorf("%s: exit code %d and\n%s\nwant %d and\n%s", bad, s.code, s.out, exitStopped, want)
		}
		if strings.Contains(s.kept, bad) || !strings.Contains(s.kept, "x := 3*mm\n") || !strings.Contains(s.kept, "3*x\n") {
			t.Errorf("%s: kept\n%s", bad, s.kept)
		}
		if file := writeFile(t, "a.md", s.kept); s.kept != "" {
			if out, err, code := call("run", file); code != exitFine || !strings.Contains(out, "3*x ·· 9 mm") {
				t.Errorf("%s: what was kept runs with exit code %d\n%s%s", bad, code, out, err)
			}
		}
	}
}

// TestPipedIntoANotebook wants its results first, then those of the entries, which it keeps.
func TestPipedIntoANotebook(t *testing.T) {
	file := writeFile(t, "a.md", cell("x := 3*mm\nx"))
	s := say(t, "x := 5*mm\nx + 2*mm\n", []string{file})
	if want := "x ·· 3 mm\nreplaces x\nwhat moved\nx ·· 3 mm → 5 mm  (+66.7 %)\nx + 2*mm ·· 7 mm\n"; s.code != exitFine || s.out != want || s.err != "" {
		t.Errorf("exit code %d, complaints %q and\n%s\nwant\n%s", s.code, s.err, s.out, want)
	}
	if now, _ := os.ReadFile(file); !strings.Contains(string(now), "x := 5*mm\nx\n") || !strings.Contains(string(now), "x + 2*mm\n") {
		t.Errorf("kept\n%s", now)
	}
	if s := say(t, "3*mm\n", []string{file + ".none.md"}); s.code != exitFile || s.out != "" || !strings.Contains(s.err, "there is no such file") {
		t.Errorf("a file that is not there: exit code %d, %q, %q", s.code, s.out, s.err)
	}
}

// TestPipedCannotBeKept wants results all the same, and an exit code that tells.
func TestPipedCannotBeKept(t *testing.T) {
	state := writeFile(t, "state", "a file, no folder")
	s := say(t, "3*mm\n", nil, "XDG_STATE_HOME="+state)
	if s.code != exitFile || s.out != "3*mm ·· 3 mm\n" || strings.Count(s.err, "the notebook cannot be kept") != 1 {
		t.Errorf("exit code %d, %q, %q", s.code, s.out, s.err)
	}
}
