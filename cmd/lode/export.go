package main

import (
	"fmt"
	"path/filepath"

	"lode/cmd/internal/library"
	"lode/engine"
	"lode/render/text"
)

// export writes a notebook as a Go program.
func (p *program) export(args []string) int {
	file, folder := "", ""
	for i := 0; i < len(args); i++ {
		if args[i] == "-o" && i+1 < len(args) {
			i++
			folder = args[i]
		} else {
			file = args[i]
		}
	}
	if file == "" {
		return p.usage("export: no notebook", "lode export NOTEBOOK [-o FILE]", "")
	}
	source, code := p.source(file)
	if code != exitFine {
		return code
	}
	lib, err := library.Load()
	if err != nil {
		return p.cannotExport(file, err)
	}
	n := engine.Open(lib, file, []byte(source))
	if len(n.Issues) > 0 {
		p.issues(n.Issues)
		return exitIssues
	}
	program, err := n.Export()
	if err != nil {
		return p.cannotExport(file, err)
	}
	if folder == "" {
		_, err = p.out.Write(program)
	} else if err = replace(folder, program); err == nil {
		fmt.Fprintf(p.out, "Program: %s\n", filepath.Clean(folder))
	}
	if err != nil {
		return p.cannotExport(folder, err)
	}
	return exitFine
}

func (p *program) cannotExport(file string, err error) int {
	fmt.Fprintln(p.err, p.errStyle.Fault(text.Fault{File: file, What: "the program cannot be written", Got: reason(err)}))
	return exitFile
}
