package evaluate_test

import (
	"bufio"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"
)

// TestOrphan kills a parent that gets no chance to end its child.
func TestOrphan(t *testing.T) {
	cmd := exec.Command(os.Args[0], parentWord)
	out, err := cmd.StdoutPipe()
	if err == nil {
		err = cmd.Start()
	}
	if err != nil {
		t.Fatal(err)
	}
	if line, err := bufio.NewReader(out).ReadString('\n'); line != "at\n" {
		t.Fatalf("got %q, %v", line, err)
	}
	children := childrenOf(cmd.Process.Pid)
	if len(children) != 1 {
		t.Fatalf("the parent has children %v, want one", children)
	}
	_ = cmd.Process.Kill()
	_ = cmd.Wait()
	for range 100 {
		if !lives(children[0]) {
			return
		}
		time.Sleep(50 * time.Millisecond)
	}
	t.Error("the child lives on")
}

// childrenOf finds processes by the parent that their status names.
func childrenOf(pid int) []string {
	var found []string
	names, _ := filepath.Glob("/proc/[0-9]*/status")
	for _, name := range names {
		if text, err := os.ReadFile(name); err == nil && strings.Contains(string(text), "\nPPid:\t"+strconv.Itoa(pid)+"\n") {
			found = append(found, name)
		}
	}
	return found
}

// lives reports whether a process still runs; one that ended may wait to be taken away.
func lives(status string) bool {
	text, err := os.ReadFile(status)
	return err == nil && !strings.Contains(string(text), "\nState:\tZ")
}
