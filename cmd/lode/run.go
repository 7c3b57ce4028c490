package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"lode/cmd/internal/library"
	"lode/cmd/internal/present"
	"lode/engine"
	"lode/engine/issue"
	"lode/render/page"
	"lode/render/text"
)

// largest is the size of a notebook that is still read.
const largest = 4 << 20

func (p *program) run(args []string) int {
	file, output, code := p.runArguments(args)
	if code != exitFine {
		return code
	}
	n, code := p.open(file)
	if code != exitFine {
		return code
	}
	r := &running{program: p, shown: make([][]present.Shown, len(n.Book.Cells()))}
	failed := n.Run(p.ctx, r.result)
	r.flush()
	if failed != nil {
		p.issues([]issue.Issue{*failed})
		fmt.Fprintln(p.err, "\nThe run stopped there. No page was written.")
		return exitStopped
	}
	return p.write(output, present.Document(n.Book, r.shown, n.Called()))
}

// runArguments reads the arguments of run; flags may stand anywhere.
func (p *program) runArguments(args []string) (file, output string, code int) {
	for i := 0; i < len(args); i++ {
		switch {
		case args[i] == "-o" && i+1 < len(args):
			output = args[i+1]
			i++
		case args[i] == "-o":
			return "", "", p.usage("-o: no file", "the page's file name behind -o", "")
		case strings.HasPrefix(args[i], "-") && args[i] != "-":
			return "", "", p.usage(args[i]+": no such option of run", "-o PAGE", "")
		case file != "":
			return "", "", p.usage("run: more than one notebook", "one notebook", "")
		default:
			file = args[i]
		}
	}
	if file == "" {
		return "", "", p.usage("run: no notebook", "the file name of a notebook", "lode run notebooks/first-rewind.md")
	}
	if output == "" {
		output = strings.TrimSuffix(file, filepath.Ext(file)) + ".html"
	}
	if filepath.Clean(output) == filepath.Clean(file) {
		return "", "", p.usage("-o: the page would replace the notebook", "another file name", "")
	}
	return file, output, exitFine
}

func (p *program) check(args []string) int {
	if len(args) != 1 {
		return p.usage("check: one notebook is wanted", "lode check NOTEBOOK", "")
	}
	n, code := p.open(args[0])
	if code == exitFine {
		cells := len(n.Book.Cells())
		fmt.Fprintf(p.out, "%s: %s checked, no issues\n", args[0], count(cells, "cell"))
	}
	return code
}

// open reads and checks a notebook and tells its issues.
func (p *program) open(file string) (*engine.Notebook, int) {
	source, err := read(file)
	if err != nil {
		fmt.Fprintln(p.err, p.errStyle.Fault(fileFault(file, err)))
		return nil, exitFile
	}
	lib, err := library.Load()
	if err != nil {
		fmt.Fprintln(p.err, p.errStyle.Fault(text.Fault{What: "the library does not load", Got: err.Error()}))
		return nil, exitFile
	}
	n := engine.Open(lib, file, source)
	if len(n.Issues) == 0 {
		return n, exitFine
	}
	p.issues(n.Issues)
	fmt.Fprintf(p.err, "\n%s. Nothing was run.\n", count(len(n.Issues), "issue"))
	return nil, exitIssues
}

func count(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

var errTooLarge = errors.New("larger than 4 MB")

func read(file string) ([]byte, error) {
	info, err := os.Stat(file)
	switch {
	case err != nil:
		return nil, err
	case info.IsDir():
		return nil, errors.New("it is a folder")
	case info.Size() > largest:
		return nil, errTooLarge
	}
	return os.ReadFile(file)
}

// fileFault words a failure to read.
func fileFault(file string, err error) text.Fault {
	f := text.Fault{File: file, What: "the notebook cannot be read", Got: err.Error(), Want: "a text file"}
	var path *fs.PathError
	switch {
	case errors.Is(err, fs.ErrNotExist):
		f.What, f.Got = "there is no such file", ""
		f.Want = "the file name of a notebook"
		f.Hint = similar(file)
	case errors.As(err, &path):
		f.Got = path.Err.Error()
	}
	return f
}

// similar names the notebooks in the folder where one was not found.
func similar(file string) string {
	found, _ := filepath.Glob(filepath.Join(filepath.Dir(file), "*.md"))
	if len(found) == 0 {
		return ""
	}
	return "there is " + strings.Join(found[:min(len(found), 3)], ", ")
}

func (p *program) issues(list []issue.Issue) {
	for i, one := range list {
		if i > 0 {
			fmt.Fprintln(p.err)
		}
		fmt.Fprintln(p.err, p.errStyle.Fault(present.Fault(one)))
	}
}

// write writes the page beside its place and then moves it there.
func (p *program) write(output string, d page.Document) int {
	var b bytes.Buffer
	err := page.Write(&b, d)
	if err == nil {
		err = replace(output, b.Bytes())
	}
	if err != nil {
		fmt.Fprintln(p.err, p.errStyle.Fault(text.Fault{File: output, What: "the page cannot be written", Got: err.Error(), Want: "a folder that can be written to"}))
		return exitFile
	}
	fmt.Fprintf(p.out, "\nPage: %s\n", output)
	return exitFine
}

// replace puts a whole new file in the place of an old one, or leaves the old one.
func replace(name string, data []byte) error {
	f, err := os.CreateTemp(filepath.Dir(name), "."+filepath.Base(name)+".*")
	if err != nil {
		return err
	}
	defer os.Remove(f.Name())
	_, err = f.Write(data)
	if closing := f.Close(); err == nil {
		err = closing
	}
	if err == nil {
		err = os.Chmod(f.Name(), 0o644)
	}
	if err == nil {
		err = os.Rename(f.Name(), name)
	}
	return err
}

// running prints results as cells end and keeps them for the page.
type running struct {
	*program
	shown   [][]present.Shown
	pending []present.Shown
	cell    int
}

func (r *running) result(e engine.Result) {
	if e.Cell != r.cell {
		r.flush()
		r.cell = e.Cell
	}
	s := present.Shown{Text: strings.TrimSuffix(e.Printed, "\n")}
	if e.Printed == "" {
		s = present.Value(e.Label, e.Value)
	}
	r.pending = append(r.pending, s)
	r.shown[e.Cell] = append(r.shown[e.Cell], s)
}

func (r *running) flush() {
	if len(r.pending) > 0 {
		fmt.Fprintln(r.out, present.Terminal(r.style, r.pending))
		r.pending = nil
	}
}
