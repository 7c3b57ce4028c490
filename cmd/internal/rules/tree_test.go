package rules

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strings"
	"testing"
)

const root = "../../.."

// source is one Go file of the repository.
type source struct {
	Name    string // from the top, with slashes
	Package string // folder from the top
	Test    bool
	File    *ast.File
	Fset    *token.FileSet
}

// sources parses every Go file of the repository but those in testdata.
func sources(t *testing.T) []source {
	t.Helper()
	var all []source
	err := filepath.WalkDir(root, func(name string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && (d.Name() == "testdata" || name != root && strings.HasPrefix(d.Name(), ".") && d.Name() != "..") {
			return filepath.SkipDir
		}
		if d.IsDir() || !strings.HasSuffix(name, ".go") {
			return nil
		}
		fset := token.NewFileSet()
		f, err := parser.ParseFile(fset, name, nil, 0)
		if err != nil {
			return err
		}
		short := filepath.ToSlash(strings.TrimPrefix(name, root+string(filepath.Separator)))
		all = append(all, source{short, path.Dir(short), strings.HasSuffix(short, "_test.go"), f, fset})
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(all) < 50 {
		t.Fatalf("found %d files only: the walk is broken", len(all))
	}
	return all
}

// under reports whether a package lies in one of the folders.
func under(pkg string, folders ...string) bool {
	for _, f := range folders {
		if pkg == f || strings.HasPrefix(pkg, f+"/") {
			return true
		}
	}
	return false
}

func TestTop(t *testing.T) {
	allowed := " cmd engine stdlib units notebooks render testdata go.mod go.sum README.md DEVELOPERS.md LICENSE "
	entries, err := os.ReadDir(root)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if name := e.Name(); !strings.HasPrefix(name, ".") && !strings.Contains(allowed, " "+name+" ") && !ignored(name) {
			t.Errorf("%s lies at the top of the repository: only%sand files that begin with a dot belong there, so that a reader sees the picture at once", name, allowed)
		}
	}
}

// ignored names what a build may leave at the top.
func ignored(name string) bool {
	return name == "lode" || strings.HasSuffix(name, ".test") || strings.HasSuffix(name, ".prof")
}

func TestPackageNames(t *testing.T) {
	for _, s := range sources(t) {
		switch name := strings.TrimSuffix(s.File.Name.Name, "_test"); name {
		case "util", "utils", "common", "helper", "helpers", "misc", "base":
			t.Errorf("%s: a package called %s says nothing about what it holds: name the thing", s.Name, name)
		}
	}
}
