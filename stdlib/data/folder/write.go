package folder

import (
	"bytes"
	"fmt"
	"os"
	"path"
)

// Write puts a data file into the folder under a name that Read would take, makes the
// folders on its way, and never replaces a file that holds something else.
func Write(folder, name string, data []byte) error {
	if err := allowed(name); err != nil {
		return err
	}
	root, err := os.OpenRoot(folder)
	if err != nil {
		return fmt.Errorf("data file %q: the folder cannot be opened", name)
	}
	defer root.Close()
	if old, err := root.ReadFile(name); err == nil && bytes.Equal(old, data) {
		return nil
	}
	if err := root.MkdirAll(path.Dir(name), 0o755); err != nil {
		return fmt.Errorf("data file %q: its folder cannot be made", name)
	}
	return create(root, name, data)
}

func create(root *os.Root, name string, data []byte) error {
	f, err := root.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		if _, there := root.Lstat(name); there == nil {
			return fmt.Errorf("data file %q: there is another file of that name", name)
		}
		return fmt.Errorf("data file %q: it cannot be written", name)
	}
	_, err = f.Write(data)
	if closing := f.Close(); err == nil {
		err = closing
	}
	if err != nil {
		_ = root.Remove(name)
		return fmt.Errorf("data file %q: it cannot be written", name)
	}
	return nil
}
