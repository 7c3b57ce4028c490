package main

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"lode/render/text"
	"lode/stdlib/data/folder"
)

// openPageFile gets the notebook out of a page.
func (p *program) openPageFile(args []string) int {
	var o, file string
	for i := 0; i < len(args); i++ {
		if args[i] == "-o" && i+1 < len(args) {
			i++
			o = args[i]
		} else {
			file = args[i]
		}
	}
	if file == "" {
		return p.usage("open: no page", "a page that lode wrote", "")
	}
	data, err := read(file)
	if err != nil {
		fmt.Fprintln(p.err, p.errStyle.Fault(fileFault(file, err)))
		return exitFile
	}
	e, err := opened(data)
	if err != nil {
		fmt.Fprintln(p.err, p.errStyle.Fault(text.Fault{File: file, What: "no notebook can be taken out of it", Got: err.Error(), Want: "a page that lode wrote"}))
		return exitFile
	}
	if o == "" {
		o = strings.TrimSuffix(file, filepath.Ext(file)) + filepath.Ext(e.File)
	}
	return p.unwrap(e, o)
}

// unwrap writes a notebook that a page carries, and beside it the data files that it reads.
func (p *program) unwrap(e enclosed, o string) int {
	if old, err := os.ReadFile(o); err == nil && string(old) != e.Source {
		return p.usage(o+": there is another file of that name", "another name with -o", "")
	}
	data, err := e.Unpack()
	if err == nil {
		err = p.unwrapData(filepath.Dir(o), data)
	}
	if err != nil {
		fmt.Fprintln(p.err, p.errStyle.Fault(text.Fault{File: o, What: "its data cannot be written", Got: err.Error(), Hint: "give the notebook a folder of its own with -o"}))
		return exitFile
	}
	if err := replace(o, []byte(e.Source)); err != nil {
		fmt.Fprintln(p.err, p.errStyle.Fault(text.Fault{File: o, What: "the notebook cannot be written", Got: reason(err)}))
		return exitFile
	}
	fmt.Fprintf(p.out, "Notebook: %s\n", o)
	return exitFine
}

func (p *program) unwrapData(dir string, files map[string][]byte) error {
	for _, name := range slices.Sorted(maps.Keys(files)) {
		if err := folder.Write(dir, name, files[name]); err != nil {
			return err
		}
		fmt.Fprintf(p.out, "Data: %s\n", filepath.Join(dir, filepath.FromSlash(name)))
	}
	return nil
}
