package evaluate

import (
	"bytes"
	"compress/gzip"
	"encoding/json"
	"fmt"
	"io"

	"lode/render/page"
)

// This file lets a page carry the data files that its notebook reads, so that whoever is
// sent the page can run the notebook again.

// share is the part of a page's size that data files may take.
const share = 4

// unpacked is how large data files taken out of a page may become.
const unpacked = 16 << 20

// Pack returns data files by name as one compressed block.
func Pack(files map[string][]byte) ([]byte, error) {
	var b bytes.Buffer
	z := gzip.NewWriter(&b)
	if err := json.NewEncoder(z).Encode(files); err != nil {
		return nil, err
	}
	err := z.Close()
	return b.Bytes(), err
}

// Unpack returns the data files that a page carries.
func (e Enclosed) Unpack() (map[string][]byte, error) {
	if len(e.Data) == 0 {
		return nil, nil
	}
	z, err := gzip.NewReader(bytes.NewReader(e.Data))
	if err != nil {
		return nil, fmt.Errorf("the data files in the page cannot be read: %w", err)
	}
	var files map[string][]byte
	if err := json.NewDecoder(io.LimitReader(z, unpacked)).Decode(&files); err != nil {
		return nil, fmt.Errorf("the data files in the page cannot be read: %w", err)
	}
	return files, nil
}

// used returns the data files that the run has read.
func (c *child) used() map[string][]byte {
	files := map[string][]byte{}
	for name, d := range c.fetched {
		if d.Problem == "" {
			files[name] = d.Data
		}
	}
	return files
}

// carried returns the data files for the page, and what the page tells of them.
func (c *child) carried() ([]byte, []page.Entry) {
	files := c.used()
	if len(files) == 0 {
		return nil, nil
	}
	packed, err := Pack(files)
	how := "travels with this page"
	if err != nil || int64(len(packed)) > c.pageSize()/share {
		packed, how = nil, fmt.Sprintf("too large to travel with this page (%d kB together, compressed): send it along", len(packed)/1000)
	}
	var entries []page.Entry
	for _, name := range c.record.Files() {
		entries = append(entries, page.Entry{Name: "data file " + name, Text: how})
	}
	return packed, entries
}
