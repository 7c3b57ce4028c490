package main

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"

	"lode/cmd/internal/session"
)

// keeper knows where a conversation is kept: under the name a person gave it, or, until it
// has one, in the folder for the program's own state.
type keeper struct {
	file   string // "" without a name
	folder string
}

// stateFolder is where conversations without a name and the history live.
func stateFolder(environment func(string) string) string {
	if s := environment("XDG_STATE_HOME"); s != "" {
		return filepath.Join(s, "lode")
	}
	if home, err := os.UserHomeDir(); err == nil {
		return filepath.Join(home, ".local", "state", "lode")
	}
	return filepath.Join(os.TempDir(), "lode")
}

// path returns the file of the first experiment.
func (k keeper) path() string {
	if k.file != "" {
		return k.file
	}
	return filepath.Join(k.folder, "unnamed.md")
}

// pathOf returns the file of an experiment.
func (k keeper) pathOf(experiment string) string {
	if experiment == session.First {
		return k.path()
	}
	ext := filepath.Ext(k.path())
	return strings.TrimSuffix(k.path(), ext) + "-" + experiment + ext
}

func (k keeper) pagePath(experiment string) string {
	p := k.pathOf(experiment)
	return strings.TrimSuffix(p, filepath.Ext(p)) + ".html"
}

// save writes an experiment whole, or leaves what was there.
func (k keeper) save(experiment, source string) error {
	p := k.pathOf(experiment)
	if k.file == "" {
		if err := os.MkdirAll(k.folder, 0o700); err != nil {
			return err
		}
		k.setAside(p, source)
	}
	return replace(p, []byte(source))
}

// setAside moves the unnamed conversation from before out of the way of a new one that
// does not continue it.
func (k keeper) setAside(p, source string) {
	old, err := os.ReadFile(p)
	if err == nil && !related(string(old), source) {
		_ = os.Rename(p, filepath.Join(k.folder, "before.md"))
	}
}

// related reports whether one text may have come from the other by an entry or an undo.
func related(old, source string) bool {
	n := min(len(old), len(source), 40)
	return old[:n] == source[:n]
}

// left reports whether a conversation without a name was kept from before.
func (k keeper) left() bool { _, err := k.resumed(); return err == nil }

// resumed returns the text of the conversation without a name that was kept from before.
func (k keeper) resumed() (string, error) {
	for _, name := range []string{"unnamed.md", "before.md"} {
		if source, err := os.ReadFile(filepath.Join(k.folder, name)); err == nil && len(source) > 0 {
			return string(source), nil
		}
	}
	return "", errors.New("resume: no conversation without a name was kept")
}

// rename gives the conversation a name.
func (k *keeper) rename(name string) error {
	if name == "" {
		return errors.New("keep: no name: want a name such as rewind")
	}
	if filepath.Ext(name) == "" {
		name += ".md"
	}
	if filepath.Ext(name) != ".md" {
		return fmt.Errorf("keep: %s: a notebook is kept as Markdown: want a name that ends in .md", name)
	}
	if _, err := os.Stat(name); err == nil && name != k.file {
		return fmt.Errorf("keep: %s: there is a file of that name: want another one, or lode %s to go on with that", name, name)
	}
	k.file = name
	return nil
}

// openPage shows a page in the browser, where the system knows one.
func openPage(file string) {
	opener := map[string]string{"linux": "xdg-open", "darwin": "open", "windows": "explorer"}[runtime.GOOS]
	if path, err := exec.LookPath(opener); opener != "" && err == nil {
		cmd := exec.Command(path, file)
		if cmd.Start() == nil {
			go func() { _ = cmd.Wait() }()
		}
	}
}
