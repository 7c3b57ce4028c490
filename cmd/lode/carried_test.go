package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// This file tests that a page takes the data files of its notebook along.

const measured = "frequency Hz, level (dB)\n100, 0.1\n5000, 9.1\n8000, -3.0\n"

// withData runs a notebook that reads a data file and returns the page's name.
func withData(t *testing.T, data string) string {
	t.Helper()
	dir := t.TempDir()
	if err := os.MkdirAll(filepath.Join(dir, "bench"), 0o755); err != nil {
		t.Fatal(err)
	}
	put(t, filepath.Join(dir, "bench", "sweep.csv"), data)
	put(t, filepath.Join(dir, "n.md"), cell("s := data.Read(\"bench/sweep.csv\")\ns.Rows()\nlevels := s.Levels(\"level\")\nlevels[1]"))
	if _, err, exit := call("run", "-record", filepath.Join(dir, "n.md")); exit != exitFine {
		t.Fatal(err)
	}
	return filepath.Join(dir, "n.html")
}

func put(t *testing.T, file, text string) {
	t.Helper()
	if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

// sent copies a page to where nothing else is.
func sent(t *testing.T, page string) string {
	t.Helper()
	html, err := os.ReadFile(page)
	if err != nil {
		t.Fatal(err)
	}
	to := filepath.Join(t.TempDir(), "sent.html")
	put(t, to, string(html))
	return to
}

func TestPageTakesDataAlong(t *testing.T) {
	page := sent(t, withData(t, measured))
	if out, err, exit := call("verify", page); exit != exitFine || !strings.Contains(out, "2 results the same") {
		t.Errorf("exit code %d, %s%s", exit, out, err)
	}
	if _, err, exit := call("open", page); exit != exitFine {
		t.Fatal(err)
	}
	data := filepath.Join(filepath.Dir(page), "bench", "sweep.csv")
	if back, _ := os.ReadFile(data); string(back) != measured {
		t.Errorf("got back %q", back)
	}
	put(t, data, "something else\n")
	if _, err, exit := call("open", page, "-o", filepath.Join(filepath.Dir(page), "second.md")); exit != exitFile || !strings.Contains(err, "another file of that name") {
		t.Errorf("over other data: exit code %d, %s", exit, err)
	}
	if back, _ := os.ReadFile(data); string(back) != "something else\n" {
		t.Errorf("the other data became %q", back)
	}
}

func TestChangedDataIsTold(t *testing.T) {
	page := withData(t, measured)
	put(t, filepath.Join(filepath.Dir(page), "bench", "sweep.csv"), strings.Replace(measured, "9.1", "9.2", 1))
	notebook := strings.TrimSuffix(page, ".html") + ".md"
	if out, _, exit := call("verify", notebook); exit != exitIssues || !strings.Contains(out, "bench/sweep.csv was changed") || !strings.Contains(out, "9.2 dB") {
		t.Errorf("exit code %d\n%s", exit, out)
	}
	if out, _, exit := call("verify", page); exit != exitFine {
		t.Errorf("the page holds its own data: exit code %d\n%s", exit, out)
	}
}

// TestLargeDataStaysBehind wants a page to stay small, and to say what is not in it.
func TestLargeDataStaysBehind(t *testing.T) {
	var b strings.Builder
	b.WriteString("frequency Hz, level (dB)\n")
	x := uint64(1)
	for range 60000 {
		x = x*6364136223846793005 + 1442695040888963407
		b.WriteString(strings.Join([]string{digits(x >> 40), digits(x >> 33)}, ", ") + "\n")
	}
	page := withData(t, b.String())
	html, _ := os.ReadFile(page)
	if len(html) > 300_000 || !strings.Contains(string(html), "send it along") {
		t.Errorf("a page of %d bytes, want it to stay small and to tell of the file that is not in it", len(html))
	}
}

func digits(x uint64) string {
	text := ""
	for range 6 {
		text, x = string(rune('0'+x%10))+text, x/10
	}
	return "1" + text
}
