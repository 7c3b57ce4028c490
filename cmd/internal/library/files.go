package library

import (
	"fmt"
	"reflect"

	"lode/engine/library"
	"lode/stdlib/data"
)

// This file decides where data files of notebooks come from. A compiled program reads them
// from its folder; a notebook is handed them by whoever runs it.

// Files lets the notebooks of a library read data files through read, which answers with
// the content of the file of that name.
func Files(lib *library.Library, read func(name string) ([]byte, error)) {
	lib.Symbols["lode/stdlib/data"]["Read"] = reflect.ValueOf(func(name string) (data.Sheet, error) {
		text, err := read(name)
		if err != nil {
			return data.Sheet{}, err
		}
		return data.Parse(name, string(text))
	})
}

// nowhere is where files come from as long as nobody gives them.
func nowhere(name string) ([]byte, error) {
	return nil, fmt.Errorf("data file %q: this notebook runs where no files can be read", name)
}
