package book

import (
	"strings"
	"testing"
)

const fenced = "```"

var samples = map[string]struct {
	text  string
	cells []string
	lines []int // that the code begins on
}{
	"plain":            {"# T\n\n" + fenced + "go\nx := 1\n" + fenced + "\n\nend\n", []string{"x := 1\n"}, []int{4}},
	"two":              {fenced + "go\na\n" + fenced + "\n" + fenced + "go\nb\nc\n" + fenced, []string{"a\n", "b\nc\n"}, []int{2, 5}},
	"tildes":           {"~~~go\na\n~~~\n", []string{"a\n"}, []int{2}},
	"longer fence":     {"````go\n" + fenced + "\n````\n", []string{fenced + "\n"}, []int{2}},
	"never closed":     {"text\n\n" + fenced + "go\nx\ny", []string{"x\ny\n"}, []int{4}},
	"empty cell":       {fenced + "go\n" + fenced + "\n", []string{""}, []int{2}},
	"windows lines":    {"# T\r\n\r\n" + fenced + "go\r\nx\r\n" + fenced + "\r\n", []string{"x\r\n"}, []int{4}},
	"indented":         {"  " + fenced + "go\n  x\n  " + fenced + "\n", []string{"x\n"}, []int{2}},
	"words behind go":  {fenced + "go working\nx\n" + fenced + "\n", []string{"x\n"}, []int{2}},
	"other languages":  {fenced + "sh\nls\n" + fenced + "\n\n" + fenced + "\nplain\n" + fenced + "\n\n    indented code\n", nil, nil},
	"golang is not go": {fenced + "golang\nx\n" + fenced + "\n", nil, nil},
	"in a list":        {"- item\n\n  " + fenced + "go\n  x\n  " + fenced + "\n", nil, nil},
	"in a comment":     {"<!--\n" + fenced + "go\nx\n" + fenced + "\n-->\n", nil, nil},
	"blank lines":      {fenced + "go\n\n\nx\n\n" + fenced + "\n", []string{"\n\nx\n\n"}, []int{2}},
	"nothing":          {"", nil, nil},
}

func TestParse(t *testing.T) {
	for name, s := range samples {
		b := Parse("a.md", []byte(s.text))
		if b.String() != s.text {
			t.Errorf("%s: got %q back, want %q", name, b.String(), s.text)
		}
		cells := b.Cells()
		if len(cells) != len(s.cells) {
			t.Errorf("%s: got %d cells, want %d", name, len(cells), len(s.cells))
			continue
		}
		for i, c := range cells {
			if c.Code != s.cells[i] || c.Line != s.lines[i] {
				t.Errorf("%s: cell %d: got %q at line %d, want %q at line %d", name, i, c.Code, c.Line, s.cells[i], s.lines[i])
			}
		}
	}
}

func TestProblem(t *testing.T) {
	for text, code := range map[string]string{
		"": "empty", " \n\t\n": "empty", "words\n": "no-cells", "a\xff": "not-text", "a\x00b": "not-text",
		"- item\n\n  " + fenced + "go\n  x\n  " + fenced + "\n": "nested", "> " + fenced + "go\n> x\n> " + fenced + "\n": "nested",
		fenced + "go\nx\n" + fenced + "\n": "",
	} {
		got := ""
		if p := Parse("a.md", []byte(text)).Problem(); p != nil {
			got = p.Code
		}
		if got != code {
			t.Errorf("%q: got issue %q, want %q", text, got, code)
		}
	}
}

func TestTitle(t *testing.T) {
	for text, want := range map[string]string{"# A *fine* `day`\n": "A fine day", "text\n\n## Two\n": "Two", "no heading\n": "a"} {
		if got := Parse("notes/a.md", []byte(text)).Title(); got != want {
			t.Errorf("%q: got title %q, want %q", text, got, want)
		}
	}
}

func TestScript(t *testing.T) {
	b := Parse("a.lode", []byte("# no heading\nx"))
	if len(b.Cells()) != 1 || b.Cells()[0].Code != "# no heading\nx" || b.Cells()[0].Line != 1 {
		t.Errorf("got %+v", b)
	}
}

func TestReplace(t *testing.T) {
	for name, s := range samples {
		if len(s.cells) == 0 {
			continue
		}
		b := Parse("a.md", []byte(s.text))
		last := len(s.cells) - 1
		b.Replace(last, "new := 1\nnew")
		back := Parse("a.md", []byte(b.String()))
		if len(back.Cells()) != len(s.cells) || strings.TrimSpace(back.Cells()[last].Code) != "new := 1\nnew" {
			t.Errorf("%s: after a replacement: %q", name, b.String())
		}
	}
}

func FuzzParse(f *testing.F) {
	for _, s := range samples {
		f.Add(s.text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		b := Parse("a.md", []byte(text))
		if b.String() != text {
			t.Errorf("%q came back as %q", text, b.String())
		}
		for _, c := range b.Cells() {
			if c.Line < 1 || c.Line > strings.Count(text, "\n")+2 {
				t.Errorf("%q: a cell at line %d", text, c.Line)
			}
		}
	})
}
