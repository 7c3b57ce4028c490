package watch

import (
	"fmt"
	"os"
	"path/filepath"
	"sync"
)

// This file looks at the data files that the last run asked for. Unlike the notebook they are
// not read each time: they may be large, and a run reads them anyway.

// data knows the files beside the notebook that a run asked for.
type data struct {
	folder string
	mu     sync.Mutex
	files  map[string]*stamps // by name
}

// stamps tell one state of a file from another.
type stamps struct {
	told string // when a run asked for it
	seen string // at the last look
}

// stamp tells when a file was written and how long it is, "" for one that is not there.
func (d *data) stamp(name string) string {
	info, err := os.Stat(filepath.Join(d.folder, filepath.FromSlash(name)))
	if err != nil {
		return ""
	}
	return fmt.Sprint(info.ModTime().UnixNano(), " ", info.Size(), " ", info.Mode())
}

// asked notes files as a run found them. Those that other runs asked for are kept if the run was cut short.
func (d *data) asked(found map[string]string, cut bool) {
	d.mu.Lock()
	defer d.mu.Unlock()
	if !cut || d.files == nil {
		d.files = map[string]*stamps{}
	}
	for name, stamp := range found {
		d.files[name] = &stamps{told: stamp, seen: stamp}
	}
}

// look reports whether a file is another than the one that was asked for, and stays so from one look to the
// next.
func (d *data) look() bool {
	d.mu.Lock()
	defer d.mu.Unlock()
	changed := false
	for name, s := range d.files {
		now := d.stamp(name)
		if now == s.seen && now != s.told {
			s.told, changed = now, true
		}
		s.seen = now
	}
	return changed
}
