package main

import (
	"bytes"
	"context"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"lode/cmd/internal/evaluate"
	"lode/cmd/internal/library"
	"lode/engine/book"
	"lode/render/text"
)

var update = flag.Bool("update", false, "write expected outputs anew")

// withArguments makes the test binary be the command with the arguments it is given.
const withArguments = "with arguments"

// TestMain lets the test binary be the child that it starts.
func TestMain(m *testing.M) {
	if evaluate.IsChild(os.Args) {
		if err := evaluate.Serve(os.Stdin, os.Stdout); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
		return
	}
	if os.Getenv(asCommand) != "" {
		if os.Getenv(asCommand) != withArguments {
			os.Args = os.Args[:1]
		}
		main()
		return
	}
	os.Exit(m.Run())
}

// call runs the command and returns what it prints.
func call(args ...string) (out, err string, code int) {
	var o, e bytes.Buffer
	p := program{ctx: context.Background(), out: &o, err: &e, style: text.Style{Width: 100}, errStyle: text.Style{Width: 100}}
	code = p.main(args)
	return o.String(), e.String(), code
}

// write makes a file in a new folder.
func writeFile(t *testing.T, name, content string) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(file, []byte(content), 0o644); err != nil {
		t.Fatal(err)
	}
	return file
}

func cell(code string) string { return "# Trial\n\n```go\n" + code + "\n```\n" }

func TestBadInput(t *testing.T) {
	folder := t.TempDir()
	for _, c := range []struct {
		name, file, content string
		code                int
		want                []string
	}{
		{"missing", "", "", exitFile, []string{"there is no such file"}},
		{"binary", "junk.md", "\x7fELF\x00\x01\xff", exitIssues, []string{"the file is not text"}},
		{"empty", "empty.md", " \n", exitIssues, []string{"the notebook is empty"}},
		{"prose only", "prose.md", "# Only words\n", exitIssues, []string{"the notebook has no cells", "```go"}},
		{"syntax", "a.md", cell("x := (3"), exitIssues, []string{"a.md:4:8: syntax", "^"}},
		{"dimension", "a.md", cell("r := 3*kΩ\nl := 2*H\nr + l"), exitIssues, []string{"a.md:6:1: +: the two sides have different dimensions", "resistance (Ω)", "inductance (H)"}},
		{"type", "a.md", cell("x := \"a\" * 2"), exitIssues, []string{"a.md:4:6"}},
		{"gauge", "a.md", cell("wire.AWG(99)"), exitStopped, []string{"a.md:4:1: ", "99", "No page was written"}},
		{"fit", "a.md", cell("b := coil.Round{CoreDiameter: 10*mm, Height: 4*mm, FlangeDiameter: 14*mm}\n\ncoil.Wind(b, wire.AWG(42), 9000)"), exitStopped, []string{"a.md:6:1: ", "9000 turns", "do not fit", "turns of this wire fit"}},
		{"unit", "a.md", cell("coil.Round{CoreDiameter: 10, Height: 4*mm}"), exitIssues, []string{"a.md:4:26: ", "10*"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			file := filepath.Join(folder, c.name, "none.md")
			if c.file != "" {
				file = writeFile(t, c.file, c.content)
			}
			page := strings.TrimSuffix(file, ".md") + ".html"
			if c.file != "" {
				if err := os.WriteFile(page, []byte("an earlier page"), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			_, err, code := call("run", file)
			if code != c.code {
				t.Errorf("exit code: got %d, want %d\n%s", code, c.code, err)
			}
			for _, w := range c.want {
				if !strings.Contains(err, w) {
					t.Errorf("got\n%s\nwant %q in it", err, w)
				}
			}
			if old, readErr := os.ReadFile(page); c.file != "" && (readErr != nil || string(old) != "an earlier page") {
				t.Errorf("the earlier page is gone: %v", readErr)
			}
		})
	}
	if _, err, code := call("run", folder); code != exitFile || !strings.Contains(err, "folder") {
		t.Errorf("a folder: code %d, %s", code, err)
	}
}

func TestUsage(t *testing.T) {
	file := writeFile(t, "a.md", cell("3*mm"))
	for _, args := range [][]string{
		{"fly"}, {"run"}, {"run", "-x", file}, {"run", "-o"}, {"run", file, file}, {"run", "-o", file, file}, {"run", "-time", "soon", file},
		{"run", "-memory", "0", file}, {"check"}, {"about", "coil.Wimd"}, {"help", "fly"},
	} {
		if _, err, code := call(args...); code != exitUsage || err == "" {
			t.Errorf("lode %v: got exit code %d and %q, want %d and a message", args, code, err, exitUsage)
		}
	}
}

func TestPageIsWritten(t *testing.T) {
	file := writeFile(t, "a.md", cell("3*mm + 1*inch"))
	page := filepath.Join(t.TempDir(), "other.html")
	out, err, code := call("run", file, "-o", page)
	if code != exitFine || !strings.Contains(out, "28.4 mm") {
		t.Fatalf("got %d, %s, %s", code, out, err)
	}
	html, readErr := os.ReadFile(page)
	if readErr != nil || !bytes.Contains(html, []byte("28.4")) {
		t.Errorf("the page does not hold the result: %v", readErr)
	}
	if _, _, code := call("run", file, "-o", filepath.Join(page, "no", "folder.html")); code != exitFile {
		t.Errorf("an unwritable page: got exit code %d, want %d", code, exitFile)
	}
}

// TestLimits runs notebooks that never end or want too much; each has to end in an issue at
// its line, in a process of its own.
func TestLimits(t *testing.T) {
	for _, c := range []struct{ name, code, want string }{
		{"endless loop", "x := 1\nfor {\n\tx++\n}", "a.md:5:1"},
		{"growing slice", "xs := []int{}\nfor {\n\txs = append(xs, xs...)\n\txs = append(xs, 1)\n}", "a.md:5:1"},
		{"huge slice", "xs := make([]float64, 1<<42)\nxs[3]", "a.md:4:1"},
		{"endless recursion", "func f(n int) int {\n\treturn f(n+1) + 1\n}\nf(0)", "a.md:"},
		{"endless output", "for {\n\tfmt.Println(\"again and again and again\")\n}", "a.md:5:2"},
	} {
		t.Run(c.name, func(t *testing.T) {
			file := writeFile(t, "a.md", cell(c.code))
			_, err, code := call("run", "-time", "2", "-memory", "256", "-output", "1", file)
			if code != exitStopped || !strings.Contains(err, c.want) {
				t.Errorf("got exit code %d and\n%s\nwant %d and %q", code, err, exitStopped, c.want)
			}
		})
	}
}

// TestNotebooks runs every notebook that ships, twice, and compares with what it showed
// when it was last looked at.
func TestNotebooks(t *testing.T) {
	files, _ := filepath.Glob("../../notebooks/*.md")
	if len(files) == 0 {
		t.Fatal("no notebooks found")
	}
	for _, file := range files {
		t.Run(filepath.Base(file), func(t *testing.T) {
			pages := [2]string{filepath.Join(t.TempDir(), "1.html"), filepath.Join(t.TempDir(), "2.html")}
			var outs [2]string
			for i, page := range pages {
				out, err, code := call("run", file, "-o", page)
				if code != exitFine {
					t.Fatalf("exit code %d\n%s", code, err)
				}
				outs[i] = strings.ReplaceAll(out, page, "PAGE")
			}
			if outs[0] != outs[1] || !same(t, pages[0], pages[1]) {
				t.Error("two runs differ")
			}
			golden(t, filepath.Join("../../testdata/notebooks", strings.TrimSuffix(filepath.Base(file), ".md")+".txt"), outs[0])
		})
	}
}

func same(t *testing.T, a, b string) bool {
	x, err1 := os.ReadFile(a)
	y, err2 := os.ReadFile(b)
	if err1 != nil || err2 != nil {
		t.Fatal(err1, err2)
	}
	if len(x) > 300<<10 {
		t.Errorf("the page has %d bytes, want at most 300 KB", len(x))
	}
	return bytes.Equal(x, y)
}

// golden compares with a file, or writes it with -update.
func golden(t *testing.T, file, got string) {
	t.Helper()
	if *update {
		if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("%s differs; go test ./cmd/lode -update writes it anew\ngot:\n%s\nwant:\n%s", file, got, want)
	}
}

var inner = regexp.MustCompile("(?s)````md\n(.*?)````")

// TestReadme runs the notebook that the README holds, and its cells.
func TestReadme(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	found := inner.FindAllSubmatch(readme, -1)
	if len(found) == 0 {
		t.Fatal("the README shows no notebook")
	}
	for _, m := range found {
		if _, err, code := call("run", writeFile(t, "mine.md", string(m[1]))); code != exitFine {
			t.Errorf("exit code %d\n%s", code, err)
		}
	}
	if len(book.Parse("README.md", readme).Cells()) > 0 {
		if _, err, code := call("check", "../../README.md"); code != exitFine {
			t.Errorf("the README's cells: %s", err)
		}
	}
}

// TestPageIsNoNotebook wants the way back to the notebook told where a page is given in its place.
func TestPageIsNoNotebook(t *testing.T) {
	file := writeFile(t, "a.html", "<!DOCTYPE html>")
	for _, args := range [][]string{{"run", file}, {"check", file}, {file}, {"export", file}, {"watch", file}} {
		if _, err, code := call(args...); code != exitFile || !strings.Contains(err, "this is a page") || !strings.Contains(err, "lode open") {
			t.Errorf("%v: got %d\n%s", args, code, err)
		}
	}
}

func TestAbout(t *testing.T) {
	out, _, code := call("about", "coil.Wind")
	if code != exitFine || !strings.Contains(out, "coil.Wind(") || !strings.Contains(out, "source: ") {
		t.Errorf("got %d\n%s", code, out)
	}
	for words, want := range map[string]string{"gauge": "wire.Identify", "Hum": "coil.Chain.Correction", "build sheet": "coil.Winding.BuildSheet", "what is drilled": "coil.Flange"} {
		if out, _, code := call(append([]string{"about"}, strings.Fields(words)...)...); code != exitFine || !strings.Contains(out, "  "+want+" ") {
			t.Errorf("about %s: got %d\n%s\nwant %s among the names", words, code, out, want)
		}
	}
	if _, err, code := call("about", "coil.Wnd"); code != exitUsage || !strings.Contains(err, "did you mean coil.Wind?") {
		t.Errorf("got %d\n%s\nwant the name that was meant", code, err)
	}
	if out, _, _ := call("about", "piezo.Element"); !strings.Contains(out, "\n  piezo.Element.VoltagePerNewton\n") {
		t.Errorf("got\n%s\nwant a name that fills its column on a line of its own", out)
	}
	if out, _, _ := call("about"); !strings.Contains(out, "  wire") {
		t.Errorf("got\n%s\nwant the packages", out)
	}
	if out, _, _ := call("help", "run"); !strings.Contains(out, "-memory") {
		t.Errorf("got\n%s\nwant the options", out)
	}
}

// TestAboutFits wants the help of every name within the terminal, but for code.
func TestAboutFits(t *testing.T) {
	for _, topic := range library.Topics() {
		out, _, _ := call("about", topic.Name)
		for _, line := range strings.Split(out, "\n") {
			if utf8.RuneCountInString(line) > 100 && !strings.HasPrefix(line, "    ") && !strings.HasPrefix(line, "  "+topic.Name) {
				t.Errorf("%s: %d columns: %s", topic.Name, utf8.RuneCountInString(line), line)
			}
		}
	}
}

func TestRecords(t *testing.T) {
	code := "w := wire.AWG(42)\n\nw.Bare()\nc := coil.Wind(coil.Round{CoreDiameter: 10*mm, Height: 8*mm, FlangeDiameter: 24*mm}, w, 3000)\nc.Inductance()\nc"
	file := writeFile(t, "a.md", cell(code))
	if _, err, exit := call("run", "-record", file); exit != exitFine {
		t.Fatal(err)
	}
	page := strings.TrimSuffix(file, ".md") + ".html"
	if out, err, exit := call("verify", file, page); exit != exitFine || strings.Count(out, "the same") != 2 {
		t.Errorf("verify: exit code %d, %s%s", exit, out, err)
	}
	out := filepath.Join(t.TempDir(), "back.md")
	if _, err, exit := call("open", page, "-o", out); exit != exitFine {
		t.Errorf("open: %s", err)
	}
	back, _ := os.ReadFile(out)
	if string(back) != cell(code) {
		t.Errorf("open gave back %q", back)
	}
	if err := os.WriteFile(file, []byte(cell(strings.Replace(code, "3000", "3001", 1))), 0o644); err != nil {
		t.Fatal(err)
	}
	if out, _, exit := call("verify", file); exit != exitIssues || !strings.Contains(out, "c.Inductance()") || strings.Contains(out, "w.Bare()") {
		t.Errorf("a changed notebook: exit code %d\n%s", exit, out)
	}
	if _, _, exit := call("verify", writeFile(t, "b.md", cell("3"))); exit != exitFile {
		t.Errorf("without a record: exit code %d, want %d", exit, exitFile)
	}
	if _, _, exit := call("open", writeFile(t, "b.html", "<p>other page</p>")); exit != exitFile {
		t.Errorf("a page of another kind: exit code %d, want %d", exit, exitFile)
	}
}

// TestRecordsThatShip verifies every record in the notebooks folder.
func TestRecordsThatShip(t *testing.T) {
	files, _ := filepath.Glob("../../notebooks/*.md")
	for _, file := range files {
		if out, err, exit := call("verify", file); exit != exitFine {
			t.Errorf("%s: exit code %d; lode run -record writes it anew\n%s%s", file, exit, out, err)
		}
	}
}

// TestCallsAreTold wants a failure within functions to name every line that led there.
func TestCallsAreTold(t *testing.T) {
	code := "func pick(list []units.Length, i int) units.Length {\n\treturn list[i]\n}\nfunc twice(i int) units.Length {\n\tx := pick([]units.Length{1*mm}, i)\n\treturn 2*x\n}\ntwice(0)\ntwice(3)"
	_, err, exit := call("run", writeFile(t, "a.md", cell(code)))
	for _, want := range []string{"a.md:5:2: index", "from  line 8: x := pick([]units.Length{1*mm}, i)\n        line 12: twice(3)\n"} {
		if exit != exitStopped || !strings.Contains(err, want) {
			t.Errorf("exit code %d, want %q in\n%s", exit, want, err)
		}
	}
}

// TestStopNamesTheLoop wants the loop that ran and the way to it, whether a budget or the time
// is over.
func TestStopNamesTheLoop(t *testing.T) {
	file := writeFile(t, "a.md", cell("func spin(n int) float64 {\n\tx := 0.0\n\tfor range n {\n\t\tx += 1.5\n\t}\n\treturn x\n}\nfunc outer(n int) float64 {\n\treturn spin(n) + 1\n}\nouter(2000000000)"))
	for _, option := range []string{"-steps 100000", "-time 3"} {
		_, err, exit := call(append(append([]string{"run"}, strings.Fields(option)...), file)...)
		if want := "from  line 12: return spin(n) + 1\n        line 14: outer(2000000000)\n"; exit != exitStopped || !strings.Contains(err, "a.md:6:2: ") || !strings.Contains(err, want) {
			t.Errorf("%s: exit code %d, want line 6 and %q in\n%s", option, exit, want, err)
		}
	}
}

// TestWarningsAreTold wants a definition that leaves a range to say so, once, in the terminal and
// on the page.
func TestWarningsAreTold(t *testing.T) {
	file := writeFile(t, "a.md", cell("t := transformer.Nameplate{Primary: 150*ohm, Secondary: 15*kΩ, LowCorner: 20*Hz, HighCorner: 30*kHz}.Model()\nt.Ratio\nt"))
	out, err, exit := call("run", file)
	if want := "mind: t: a step-up of 1 to 10"; exit != exitFine || strings.Count(out, "a step-up of 1 to 10") != 1 || !strings.Contains(out, want) {
		t.Errorf("exit code %d, want %q once in\n%s%s", exit, want, out, err)
	}
	page, _ := os.ReadFile(strings.TrimSuffix(file, ".md") + ".html")
	if strings.Count(string(page), `<p class="mind">`) != 1 {
		t.Error("the page does not tell it once")
	}
}
