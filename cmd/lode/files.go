package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"lode/render/text"
)

// largest is the size of a notebook that is still read.
const largest = 4 << 20

// source reads a notebook's text.
func (p *program) source(file string) (string, int) {
	text, err := read(file)
	if err != nil {
		fmt.Fprintln(p.err, p.errStyle.Fault(fileFault(file, err)))
		return "", exitFile
	}
	if isPage(file) {
		fmt.Fprintln(p.err, p.errStyle.Fault(pageFault(file)))
		return "", exitFile
	}
	return string(text), exitFine
}

func read(file string) ([]byte, error) {
	info, err := os.Stat(file)
	switch {
	case err != nil:
		return nil, err
	case info.IsDir():
		return nil, errors.New("a folder")
	case !info.Mode().IsRegular():
		return nil, errors.New("something that is no ordinary file")
	case info.Size() > largest:
		return nil, fmt.Errorf("%d MB", info.Size()>>20)
	}
	return os.ReadFile(file)
}

// pageFault tells how the notebook comes out of a page.
func pageFault(file string) text.Fault {
	return text.Fault{File: file, What: "this is a page", Want: "a notebook", Hint: "lode open " + file + " writes the notebook of a page beside it"}
}

// fileFault words a failure to read.
func fileFault(file string, err error) text.Fault {
	f := text.Fault{File: file, What: "the notebook cannot be read", Got: reason(err), Want: "a text file of at most 4 MB"}
	if errors.Is(err, fs.ErrNotExist) {
		f.What, f.Got, f.Want, f.Hint = "there is no such file", "", "the file name of a notebook", similar(file)
	}
	return f
}

// reason is what the system says without the path, which stands in front already.
func reason(err error) string {
	var path *fs.PathError
	var link *os.LinkError
	switch {
	case errors.As(err, &path):
		return path.Err.Error()
	case errors.As(err, &link):
		return link.Err.Error()
	}
	return err.Error()
}

// similar names the notebooks in the folder where one was not found.
func similar(file string) string {
	found, _ := filepath.Glob(filepath.Join(filepath.Dir(file), "*.md"))
	if len(found) == 0 {
		return ""
	}
	return "there is " + strings.Join(found[:min(len(found), 3)], ", ")
}

// replace puts a whole new file in the place of an old one, or leaves the old one.
func replace(name string, data []byte) error {
	if info, err := os.Stat(name); err == nil && !info.Mode().IsRegular() {
		return errors.New("something that is no ordinary file")
	}
	f, err := os.CreateTemp(filepath.Dir(name), "."+filepath.Base(name)+".*")
	if err != nil {
		return err
	}
	defer os.Remove(f.Name())
	if _, err = f.Write(data); err == nil {
		err = f.Sync() // a power cut must not leave an empty file under the name
	}
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
