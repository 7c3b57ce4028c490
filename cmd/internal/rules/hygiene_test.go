package rules

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// The patterns are put together from parts, so that this file does not find itself.
var unwanted = []struct {
	pattern *regexp.Regexp
	why     string
}{
	{regexp.MustCompile(`(^|["'\s(=:` + "`" + `])/(` + strings.Join([]string{"work", "root", "tmp", "home", "Users"}, "|") + `)/[A-Za-z0-9_]`), "a path of one machine means nothing on another"},
	{regexp.MustCompile(`[A-Z]:\\` + `Users`), "a path of one machine means nothing on another"},
	{regexp.MustCompile(strings.Join([]string{"goproxy\\.", "proxy\\." + "golang", "sum\\." + "golang", "artifact" + "ory", "registry\\." + "npmjs", "pypi\\." + "org"}, "|")), "where packages come from is a matter of each machine"},
	{regexp.MustCompile("BEGIN [A-Z ]*PRIVATE" + " KEY"), "a secret does not belong into a repository"},
}

// scratch begins the names of the folders in which other tests build exported programs while
// this one runs. Git ignores them.
const scratch = ".export"

func TestHygiene(t *testing.T) {
	err := filepath.WalkDir(root, func(name string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && (d.Name() == ".git" || strings.HasPrefix(d.Name(), scratch)) {
			return filepath.SkipDir
		}
		if d.IsDir() || d.Name() == ".git" || // a file in a linked work tree
			strings.HasSuffix(name, ".export") {
			return nil
		}
		text, err := os.ReadFile(name)
		if err != nil || bytes.IndexByte(text, 0) >= 0 {
			return err
		}
		for i, line := range strings.Split(string(text), "\n") {
			for _, u := range unwanted {
				if m := u.pattern.FindString(line); m != "" {
					t.Errorf("%s:%d: %q: %s", name, i+1, m, u.why)
				}
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}
