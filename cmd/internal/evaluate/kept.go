package evaluate

import (
	"lode/cmd/internal/library"
	"lode/engine"
	elibrary "lode/engine/library"
	"lode/render/page"
)

// kept is what a child keeps from one request to the next: the library, and the notebook as it was read
// last, which need not be read again when only a knob has turned.
type kept struct {
	lib          *elibrary.Library
	run          *child // which asks for data files
	file, source string
	notebook     *engine.Notebook
	press        *page.Press
}

func newKept(lib *elibrary.Library) *kept {
	k := &kept{lib: lib, press: page.NewPress()}
	library.Files(lib, func(name string) ([]byte, error) { return k.run.fetch(name) })
	return k
}

// open reads the notebook of a request.
func (k *kept) open(c *child) *engine.Notebook {
	k.run = c
	if k.notebook == nil || k.file != c.File || k.source != c.Source {
		k.file, k.source, k.notebook = c.File, c.Source, engine.Open(k.lib, c.File, []byte(c.Source))
	}
	n := *k.notebook
	return &n
}
