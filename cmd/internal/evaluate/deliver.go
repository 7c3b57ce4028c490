package evaluate

import (
	"errors"
	"fmt"
	"path/filepath"

	"lode/stdlib/data/folder"
)

// This file carries data files from the parent, which may open them, to the child, which
// may not.

// deliver reads a data file for the child. The parent alone decides which folder it comes
// from.
func (p *parent) deliver(name string) *delivery {
	if data, ok := p.request.Data[name]; ok {
		return &delivery{Data: data}
	}
	from := p.request.Folder
	if from == "" {
		from = filepath.Dir(p.request.File)
	}
	data, err := folder.Read(from, name)
	if err != nil {
		return &delivery{Problem: err.Error()}
	}
	return &delivery{Data: data}
}

// fetch asks the parent for a data file, once for each name.
func (c *child) fetch(name string) ([]byte, error) {
	if len(name) > wide {
		return nil, fmt.Errorf("data file: the name is too long: got %d bytes, want at most %d", len(name), wide)
	}
	if _, ok := c.fetched[name]; !ok {
		c.send(Event{Wants: &name})
		c.fetched[name] = <-c.files
	}
	if d := c.fetched[name]; d.Problem != "" {
		return nil, errors.New(d.Problem)
	}
	return c.fetched[name].Data, nil
}
