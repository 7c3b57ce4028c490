// Package folder reads data files from one folder and from nowhere else: no parent folder,
// no link that leads out, no device, nothing hidden, nothing large. It is for programs
// that run notebooks; notebooks themselves use package data.
package folder

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"strings"
)

// Largest is the size of a data file that is still read.
const Largest = 4 << 20

// endings are what the names of data files end in.
const endings = ".csv .tsv .txt"

// Read returns the content of a data file in the folder. The name may lead into folders
// within it and is written with slashes on every system.
func Read(folder, name string) ([]byte, error) {
	if err := allowed(name); err != nil {
		return nil, err
	}
	root, err := os.OpenRoot(folder)
	if err != nil {
		return nil, fmt.Errorf("data file %q: the notebook's folder cannot be read", name)
	}
	defer root.Close()
	if err := written(root, name); err != nil {
		return nil, err
	}
	return read(root, name)
}

// allowed judges the name alone.
func allowed(name string) error {
	refuse := func(why string) error {
		return fmt.Errorf("data file: %s: got %q, want a name such as measured.csv, in the notebook's folder or below", why, name)
	}
	switch {
	case strings.ContainsFunc(name, func(r rune) bool { return r < ' ' || strings.ContainsRune("\\:*?\"<>|\x7f", r) }):
		return refuse("the name holds a character that not every system allows")
	case !fs.ValidPath(name) || name == ".":
		return refuse("the name leads out of the notebook's folder or is no name")
	case strings.HasPrefix(name, ".") || strings.Contains(name, "/."):
		return refuse("hidden files are not read")
	case !strings.Contains(" "+endings+" ", " "+path.Ext(name)+" "):
		return refuse("only files that end in " + strings.ReplaceAll(endings, " ", ", ") + " are read")
	}
	return nil
}

// written makes sure that every part of the name is spelt as in the folder, so that a
// notebook finds its data on systems that tell small letters from capitals, too.
func written(root *os.Root, name string) error {
	at := "."
	for _, part := range strings.Split(name, "/") {
		entries, err := fs.ReadDir(root.FS(), at)
		if err != nil {
			return reworded(name, err)
		}
		if err := listed(entries, part, name); err != nil {
			return err
		}
		at = path.Join(at, part)
	}
	return nil
}

func listed(entries []fs.DirEntry, part, name string) error {
	hint := ""
	for _, e := range entries {
		if e.Name() == part {
			return nil
		}
		if strings.EqualFold(e.Name(), part) {
			hint = fmt.Sprintf("\nhint: there is %q; small letters and capitals differ", e.Name())
		}
	}
	return fmt.Errorf("data file %q: there is no such file beside the notebook%s", name, hint)
}

// read opens only what is an ordinary file before and after: opening a pipe would wait for
// its other end.
func read(root *os.Root, name string) ([]byte, error) {
	info, err := root.Stat(name)
	if err == nil {
		err = ordinary(info)
	}
	if err != nil {
		return nil, reworded(name, err)
	}
	f, err := root.Open(name)
	if err != nil {
		return nil, reworded(name, err)
	}
	defer f.Close()
	if info, err = f.Stat(); err == nil {
		err = ordinary(info)
	}
	if err != nil {
		return nil, reworded(name, err)
	}
	text, err := io.ReadAll(io.LimitReader(f, Largest+1))
	if err == nil && len(text) > Largest {
		err = errLarge
	}
	if err != nil {
		return nil, reworded(name, err)
	}
	return text, nil
}

var (
	errFolder  = errors.New("it is a folder")
	errSpecial = errors.New("it is no ordinary file")
	errLarge   = fmt.Errorf("it is too large: want at most %d MiB", Largest>>20)
)

func ordinary(info fs.FileInfo) error {
	switch {
	case info.IsDir():
		return errFolder
	case !info.Mode().IsRegular():
		return errSpecial
	case info.Size() > Largest:
		return errLarge
	}
	return nil
}

// reworded tells no more of the system than a notebook may know.
func reworded(name string, err error) error {
	what := "it cannot be read, or it leads out of the notebook's folder"
	switch {
	case errors.Is(err, errFolder) || errors.Is(err, errSpecial) || errors.Is(err, errLarge):
		what = err.Error()
	case errors.Is(err, fs.ErrNotExist):
		what = "there is no such file beside the notebook"
	}
	return fmt.Errorf("data file %q: %s", name, what)
}
