package evaluate_test

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"net"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"strings"
	"syscall"
	"testing"
	"time"

	"lode/cmd/internal/evaluate"
)

// This file makes sure of the second wall: that a child could not reach outside even if a
// notebook found its way out of the language.

// probeWord makes the test binary confine itself and try.
const probeWord = "probe"

// probe prints what a confined process could still do.
func probe() {
	before, _ := os.Open(os.Args[0])
	if err := evaluate.Confine(); err != nil {
		fmt.Println("confine:", err)
		return
	}
	for what, try := range map[string]func() error{
		"open a file":     func() error { _, err := os.Open(os.Args[0]); return err },
		"list a folder":   func() error { _, err := os.ReadDir("."); return err },
		"write a file":    func() error { return os.WriteFile("escaped", []byte("x"), 0o600) },
		"remove a file":   func() error { return os.Remove("nothing") },
		"make a folder":   func() error { return os.Mkdir("escaped", 0o700) },
		"dial":            func() error { _, err := net.DialTimeout("tcp", "127.0.0.1:9", time.Second); return err },
		"listen":          func() error { _, err := net.Listen("tcp", "127.0.0.1:0"); return err },
		"make a pipe":     func() error { _, _, err := os.Pipe(); return err },
		"start a program": func() error { return exec.Command(os.Args[0], probeWord).Run() },
		"write to a file that is open": func() error {
			_, err := before.Write([]byte("x"))
			return err
		},
	} {
		if err := try(); err == nil {
			fmt.Println("it can", what)
		} else if errors.Is(err, fs.ErrNotExist) {
			fmt.Println("it can see files:", err)
		}
	}
	if _, err := net.Dial("unix", "nothing"); runtime.GOOS == "linux" && !errors.Is(err, syscall.EPERM) && (runtime.GOARCH == "amd64" || runtime.GOARCH == "arm64") {
		fmt.Println("the kernel does not refuse a socket:", err)
	}
	allocated := make([]byte, 32<<20)
	for i := range allocated {
		allocated[i] = 1
	}
	done := make(chan bool)
	for range 20 {
		go func() { runtime.LockOSThread(); time.Sleep(time.Millisecond); done <- true }()
	}
	for range 20 {
		<-done
	}
	runtime.GC()
	fmt.Println("end")
}

func TestConfined(t *testing.T) {
	if runtime.GOOS == "windows" {
		return // nothing is promised there
	}
	cmd := exec.Command(os.Args[0], probeWord)
	cmd.Dir = t.TempDir()
	out, err := cmd.CombinedOutput()
	if string(out) != "end\n" {
		t.Errorf("got %v\n%s", err, out)
	}
	if left, _ := filepath.Glob(filepath.Join(cmd.Dir, "*")); len(left) > 0 {
		t.Errorf("it left %v", left)
	}
}

// outside matches the calls by which a process reaches outside.
var outside = regexp.MustCompile(`\b(open|openat|openat2|creat|socket|socketpair|connect|bind|listen|accept4?|sendto|sendmsg|fork|vfork|execve|execveat|unlink|unlinkat|rename|renameat2?|mkdir|mkdirat|link|linkat|symlink|symlinkat|chmod|fchmodat|truncate|ptrace|kill|mount|getdents64|stat|statx|readlink|readlinkat)\(`)

// own are the files that the runtime reads before the child begins.
var own = regexp.MustCompile(`"(/proc/self/|/sys/|/proc/stat|/etc/ld\.so|/lib)`)

// TestTrace looks at the system calls of children with attacks, from outside.
func TestTrace(t *testing.T) {
	if os.Getenv("LODE_OUTSIDE") != "1" {
		t.Skip("LODE_OUTSIDE=1 runs the tests that need outside tools")
	}
	folder := dangerous(t)
	for _, name := range []string{"callbacks.txt", "escape.txt", "files.txt", "text.txt"} {
		for i, a := range cases(t, filepath.Join(attacks, name)) {
			if name == "files.txt" && i < 8 || i%8 == 0 {
				t.Run(a.name, func(t *testing.T) { trace(t, a, folder) })
			}
		}
	}
}

// trace runs a child under strace and reads what it called after it was given the request.
func trace(t *testing.T, a attack, folder string) {
	file := filepath.Join(t.TempDir(), "trace")
	cmd := exec.Command("strace", "-f", "-qq", "-o", file, os.Args[0], evaluate.Word)
	cmd.Env = []string{"LODE_CANARY=" + canary}
	in, err := cmd.StdinPipe()
	if err != nil {
		t.Fatal(err)
	}
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal("strace is needed: ", err)
	}
	done := attend(t, a, folder, in, out)
	_ = in.Close()
	_ = cmd.Wait()
	if !done {
		t.Fatal("the child did not come to its end")
	}
	reached(t, file)
}

// attend gives the request and refuses every file, until the child is done.
func attend(t *testing.T, a attack, folder string, in io.Writer, out io.Reader) bool {
	t.Helper()
	tell := json.NewEncoder(in)
	if err := tell.Encode(evaluate.Request{File: "attack.md", Folder: folder, Source: a.text, Limits: a.limits, Page: true}); err != nil {
		t.Fatal(err)
	}
	events := json.NewDecoder(out)
	for {
		var e evaluate.Event
		if err := events.Decode(&e); err != nil {
			return false
		}
		if e.Wants != nil {
			_ = tell.Encode(map[string]any{"File": map[string]string{"Problem": "there is none"}})
		}
		if e.Done {
			return true
		}
	}
}

// reached reports calls to the outside: any behind the seal, and before it all but starting
// and what the runtime reads.
func reached(t *testing.T, file string) {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	sealed, calls := false, 0
	for i, line := range strings.Split(string(text), "\n") {
		calls++
		if strings.Contains(line, "seccomp(SECCOMP_SET_MODE_FILTER") {
			sealed = true
			continue
		}
		started := strings.Contains(line, "clone") && strings.Contains(line, "flags=") && !strings.Contains(line, "CLONE_THREAD")
		if !started && !outside.MatchString(line) || strings.Contains(line, "resumed>") {
			continue
		}
		if sealed || i > 0 && !own.MatchString(line) {
			t.Errorf("the child reaches outside: %.200s", line)
		}
	}
	if !sealed || calls < 100 {
		t.Errorf("the trace does not show a sealed child (%d calls)", calls)
	}
}

// TestEnds makes sure that a child comes to its end when the parent wants it, wherever it
// is, and that it tells the line.
func TestEnds(t *testing.T) {
	for name, code := range map[string]string{
		"a loop":                      "x := 1\nfor {\n\tx++\n}",
		"a function":                  "func f() {\n\tfor {\n\t}\n}\nf()",
		"a callback":                  "xs := make([]int, 100)\nsort.Slice(xs, func(i, j int) bool { for { } })",
		"the library":                 "xs := make([]int, 1<<24)\nfor {\n\tsort.Ints(xs)\n}",
		"a long text":                 "strings.Repeat(strings.Repeat(\"x\", 1000), 1000)\nfor {\n\tfmt.Sprint(1)\n}",
		"waiting for no data":         "for {\n\tdata.Read(\"absent.csv\")\n}",
		"printing to nobody":          "for {\n\tfmt.Print(\"\")\n}",
		"a library call that is long": "strconv.FormatFloat(0.1, 'f', 1<<29, 64)",
	} {
		t.Run(name, func(t *testing.T) {
			ctx, stop := context.WithCancel(context.Background())
			defer stop()
			source := "```go\n" + code + "\n```\n"
			begun := false
			failed := evaluate.Run(ctx, evaluate.Request{File: "a.md", Source: source}, func(e evaluate.Event) {
				if e.At != nil && !begun && strings.Contains(source, e.At.Source) {
					begun = true
					time.AfterFunc(100*time.Millisecond, stop)
				}
			})
			if name == "waiting for no data" {
				if failed == nil || failed.Code != "failed" {
					t.Errorf("got %v", failed)
				}
				return
			}
			if failed == nil || failed.Code != "stopped" || failed.Line < 2 {
				t.Errorf("got %v, want a stop at a line", failed)
			}
		})
	}
}

// parentWord makes the test binary a parent whose child never ends.
const parentWord = "parent"
