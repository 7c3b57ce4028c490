package page

import (
	"crypto/sha256"
	"encoding/base64"
	"flag"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the golden files anew")

func written(t testing.TB, d Document) string {
	t.Helper()
	var b strings.Builder
	if err := Write(&b, d); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestGolden(t *testing.T) {
	got := written(t, sample(t))
	path := filepath.Join("testdata", "sample.html")
	if *update {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil || string(want) != got {
		t.Errorf("the sample page differs from %s (%v); look at it and run with -update", path, err)
	}
	t.Logf("sample page with five figures: %d bytes", len(got))
	if len(got) > 300_000 {
		t.Errorf("the page takes %d bytes, want 300000", len(got))
	}
}

// The policy names the style sheet by its digest, or the browser would drop it.
func TestPolicyFitsStyle(t *testing.T) {
	page := written(t, sample(t))
	style := regexp.MustCompile(`(?s)<style>(.*?)</style>`).FindStringSubmatch(page)
	if style == nil {
		t.Fatal("no style sheet")
	}
	sum := sha256.Sum256([]byte(style[1]))
	digest := strings.ReplaceAll(base64.StdEncoding.EncodeToString(sum[:]), "+", "&#43;")
	if !strings.Contains(page, "style-src &#39;sha256-"+digest) {
		t.Error("the policy's digest is not that of the style sheet")
	}
	if strings.Contains(page, " style=") {
		t.Error("an inline style, which the policy forbids")
	}
}

func TestNothingFromOutside(t *testing.T) {
	page := written(t, sample(t))
	for _, bad := range []string{"src=\"http", "url(", "@import", "<link", "<script", "<iframe", "<object", "xlink:href", "javascript:"} {
		if strings.Contains(strings.ToLower(page), bad) {
			t.Errorf("the page contains %q", bad)
		}
	}
}

func TestIdsAreUnique(t *testing.T) {
	page := written(t, sample(t))
	seen := map[string]bool{}
	for _, m := range regexp.MustCompile(` id="([^"]*)"`).FindAllStringSubmatch(page, -1) {
		if seen[m[1]] {
			t.Errorf("id %q twice", m[1])
		}
		seen[m[1]] = true
	}
	for _, m := range regexp.MustCompile(` (?:aria-labelledby|aria-describedby)="([^"]*)"`).FindAllStringSubmatch(page, -1) {
		for _, id := range strings.Fields(m[1]) {
			if !seen[id] {
				t.Errorf("%q is referred to and missing", id)
			}
		}
	}
}

func TestHeadingsInOrder(t *testing.T) {
	page := written(t, sample(t))
	last, ones := 0, 0
	for _, m := range regexp.MustCompile(`<h([1-6])`).FindAllStringSubmatch(page, -1) {
		level := int(m[1][0] - '0')
		if level > last+1 {
			t.Errorf("heading of level %d after %d", level, last)
		}
		if last = level; level == 1 {
			ones++
		}
	}
	if ones != 1 {
		t.Errorf("%d headings of the first level, want 1", ones)
	}
}

// Whatever a notebook writes, wherever, arrives as text.
func TestEscaped(t *testing.T) {
	evil := `"><img src=x onerror=alert(1)><script>alert(2)</script>'`
	g := sample(t)
	for i := range g.Methods {
		g.Methods[i] = Method{evil, evil, evil, evil, evil, evil}
	}
	d := Document{Title: evil, Lang: `en" onload="x`, Methods: g.Methods, Record: []Entry{{evil, evil}}, Blocks: []Block{
		Prose{evil + "\n\n" + evil + "\n\n[a](data:text/html,x) <javascript:alert(3)> [b](\"onclick=) ![c](data:image/svg+xml;base64,AAAA)\n\n<div onclick=x>\n" + evil + "\n</div>"},
		Cell{Source: evil, Results: []Result{{Label: evil, Value: evil}, {Label: evil, Lines: evil}}, Fault: &Fault{Place: evil, What: evil, Source: evil, Start: 1, End: 400, Got: evil, Want: evil, Hint: evil}},
		Cautions{{evil, evil}}, Fault{What: evil, Start: -4},
	}}
	page := written(t, d)
	for _, bad := range []string{"<img", "<script", " onerror=alert(1)>", "<div onclick", `href="javascript`, `href="data`, `lang="en" onload`} {
		if strings.Contains(page, bad) {
			t.Errorf("%s came through", bad)
		}
	}
}

func TestCodeKeepsItsText(t *testing.T) {
	for _, source := range []string{"", "x := 1 // a < b\ny", "`raw\n  text`", "\"open", "π*R+µ", "a ; b", "#!$ \\", "x\n\n\n  y\r\n", "'", "/* never closed"} {
		text := regexp.MustCompile(`<[^>]*>`).ReplaceAllString(string(code(source)), "")
		text = strings.NewReplacer("&lt;", "<", "&gt;", ">", "&#34;", `"`, "&#39;", "'", "&amp;", "&").Replace(text)
		if want := strings.TrimRight(clean(source), "\n"); text != want {
			t.Errorf("%q came out as %q", source, text)
		}
	}
}
