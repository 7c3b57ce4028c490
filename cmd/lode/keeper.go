package main

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"sort"
	"strings"
	"time"

	"lode/cmd/internal/session"
)

// keeper knows where a conversation is kept: under the name a person gave it, or, until it
// has one, in the folder for the program's own state, each conversation in a file of its
// own. An experiment stands beside its notebook, as NOTEBOOK.EXPERIMENT.md.
type keeper struct {
	file   string // "" without a name
	folder string
	stem   string // of the file until there is a name
}

const unnamed = "unnamed"

func newKeeper(file string) keeper {
	stem := fmt.Sprintf("%s-%s-%d", unnamed, time.Now().UTC().Format("20060102-150405"), os.Getpid())
	return keeper{file, stateFolder(os.Getenv), stem}
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
	return filepath.Join(k.folder, k.stem+".md")
}

// title is how messages call the notebook.
func (k keeper) title() string {
	if k.file != "" {
		return filepath.Base(k.file)
	}
	return unnamed + ".md"
}

// pathOf returns the file of an experiment.
func (k keeper) pathOf(experiment string) string {
	if experiment == session.First {
		return k.path()
	}
	return withoutExt(k.path()) + "." + experiment + ".md"
}

func withoutExt(p string) string { return strings.TrimSuffix(p, filepath.Ext(p)) }

func (k keeper) pagePath(experiment string) string { return withoutExt(k.pathOf(experiment)) + ".html" }

// save writes an experiment whole, or leaves what was there.
func (k keeper) save(experiment, source string) error {
	if k.file == "" {
		if err := os.MkdirAll(k.folder, 0o700); err != nil {
			return err
		}
		k.clearOut()
	}
	return replace(k.pathOf(experiment), []byte(source))
}

// mostKept is how many conversations without a name are kept.
const mostKept = 20

// clearOut removes the oldest conversations without a name.
func (k keeper) clearOut() {
	for _, p := range k.others()[min(len(k.others()), mostKept):] {
		for _, e := range experimentsBeside(p) {
			_ = os.Remove(e)
		}
		_ = os.Remove(p)
	}
}

// others returns the files of other conversations without a name, the latest first.
func (k keeper) others() []string {
	found, _ := filepath.Glob(filepath.Join(k.folder, unnamed+"-*.md"))
	var list []string
	when := map[string]time.Time{}
	for _, p := range found {
		info, err := os.Stat(p)
		if err == nil && info.Size() > 0 && p != k.path() && !strings.Contains(withoutExt(filepath.Base(p)), ".") {
			list = append(list, p)
			when[p] = info.ModTime()
		}
	}
	sort.Slice(list, func(i, j int) bool { return when[list[i]].After(when[list[j]]) })
	return list
}

// left reports whether a conversation without a name was kept from before.
func (k keeper) left() bool { return len(k.others()) > 0 }

// resumed returns the file of the latest conversation without a name, and its text.
func (k keeper) resumed() (file, source string, err error) {
	others := k.others()
	if len(others) == 0 {
		return "", "", errors.New("resume: no conversation without a name was kept")
	}
	text, err := os.ReadFile(others[0])
	return others[0], string(text), err
}

// experimentsBeside returns the files of a notebook's experiments by their names.
func experimentsBeside(notebook string) map[string]string {
	found, _ := filepath.Glob(withoutExt(notebook) + ".*.md")
	list := map[string]string{}
	for _, p := range found {
		name := strings.TrimPrefix(withoutExt(p), withoutExt(notebook)+".")
		if name != "" && !strings.Contains(name, ".") {
			list[name] = p
		}
	}
	return list
}

// dataFolder is where data files come from: beside the notebook, or, for a conversation
// without a name, where it was begun.
func (k keeper) dataFolder() string {
	if k.file == "" {
		return "."
	}
	return filepath.Dir(k.file)
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
