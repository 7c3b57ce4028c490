package evaluate

import "path/filepath"

// deliver reads a data file for the child.
func (p *parent) deliver(name string) *delivery {
	folder := p.request.Folder
	if folder == "" {
		folder = filepath.Dir(p.request.File)
	}
	return &delivery{Problem: folder + name + ": not there yet"}
}
