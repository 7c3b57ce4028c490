package folder

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// beside makes a notebook's folder in a larger one that holds a secret.
func beside(t *testing.T) string {
	t.Helper()
	outer := t.TempDir()
	inner := filepath.Join(outer, "notebook")
	if err := os.MkdirAll(filepath.Join(inner, "bench", "folder.csv"), 0o755); err != nil {
		t.Fatal(err)
	}
	for name, text := range map[string]string{
		"../secret.csv": "secret", "measured.csv": "f Hz\n1\n", "bench/second.tsv": "x\n", ".hidden.csv": "hidden", "notes.md": "#", "Case.csv": "c",
		"large.csv": strings.Repeat("1\n", Largest/2+1), "most.csv": strings.Repeat("1\n", Largest/2),
	} {
		if err := os.WriteFile(filepath.Join(inner, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return inner
}

func TestRead(t *testing.T) {
	folder := beside(t)
	for name, want := range map[string]string{"measured.csv": "f Hz\n1\n", "bench/second.tsv": "x\n"} {
		if text, err := Read(folder, name); err != nil || string(text) != want {
			t.Errorf("%s: got %q, %v", name, text, err)
		}
	}
	if text, err := Read(folder, "most.csv"); err != nil || len(text) != Largest {
		t.Errorf("the largest file: got %d bytes, %v", len(text), err)
	}
}

func TestRefusals(t *testing.T) {
	folder := beside(t)
	for name, want := range map[string]string{
		"":                                   "leads out",
		".":                                  "leads out",
		"..":                                 "leads out",
		"../secret.csv":                      "leads out",
		"bench/../../secret.csv":             "leads out",
		"bench/../measured.csv":              "leads out",
		"./measured.csv":                     "leads out",
		"bench//second.tsv":                  "leads out",
		folder + "/measured.csv":             "leads out",
		`..\secret.csv`:                      "character",
		`C:\measured.csv`:                    "character",
		"measured.csv:stream.csv":            "character",
		"measured.csv\x00.csv":               "character",
		"measured\n.csv":                     "character",
		"~/measured.csv":                     "there is no such file",
		".hidden.csv":                        "hidden",
		"bench/.hidden/x.csv":                "hidden",
		"notes.md":                           "that end in .csv, .tsv, .txt",
		"measured":                           "that end in",
		"measured.csv/":                      "leads out",
		"measured.csv/x.csv":                 "there is no such file|it cannot be read",
		"absent.csv":                         "there is no such file",
		"case.csv":                           `hint: there is "Case.csv"`,
		"bench/folder.csv":                   "it is a folder",
		"large.csv":                          "too large",
		"\xff\xfe.csv":                       "leads out",
		strings.Repeat("x/", 2000) + "x.csv": "there is no such file",
	} {
		text, err := Read(folder, name)
		if err == nil {
			t.Errorf("%q: got %q, want %s", name, text, want)
			continue
		}
		found := false
		for _, w := range strings.Split(want, "|") {
			found = found || strings.Contains(err.Error(), w)
		}
		if !found || strings.Contains(err.Error(), folder) && !strings.Contains(name, folder) {
			t.Errorf("%q: got %v, want %s and nothing of the system", name, err, want)
		}
	}
}

// TestWrite wants what Write puts down to be what Read gives back, and nothing replaced,
// left or reached outside.
func TestWrite(t *testing.T) {
	folder := beside(t)
	for _, name := range []string{"new.csv", "far/below/new.txt", "measured.csv"} {
		if err := Write(folder, name, []byte("f Hz\n1\n")); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if text, err := Read(folder, name); err != nil || string(text) != "f Hz\n1\n" {
			t.Errorf("%s: got back %q, %v", name, text, err)
		}
	}
	if err := os.Symlink(filepath.Join(folder, ".."), filepath.Join(folder, "out")); err != nil {
		t.Skip(err)
	}
	for _, name := range []string{"bench/second.tsv", "../secret.csv", "../fresh.csv", ".hidden.csv", "notes.md", "out/fresh.csv", "out/secret.csv", "a\\b.csv"} {
		if err := Write(folder, name, []byte("other")); err == nil {
			t.Errorf("%s: written, want it refused", name)
		}
	}
	if text, _ := os.ReadFile(filepath.Join(folder, "..", "secret.csv")); string(text) != "secret" {
		t.Errorf("the secret became %q", text)
	}
	if _, err := os.Lstat(filepath.Join(folder, "..", "fresh.csv")); err == nil {
		t.Error("a file was made outside of the folder")
	}
}
