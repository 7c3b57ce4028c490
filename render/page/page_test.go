package page_test

import (
	"crypto/sha256"
	"encoding/base64"
	"flag"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"lode/render/internal/sample"
	"lode/render/page"
)

var update = flag.Bool("update", false, "write the golden files anew")

func written(t testing.TB, d page.Document) string {
	t.Helper()
	var b strings.Builder
	if err := page.Write(&b, d); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestGolden(t *testing.T) {
	got := written(t, sample.Document())
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
	t.Logf("sample page with eight figures: %d bytes", len(got))
	if len(got) > 300_000 {
		t.Errorf("the page takes %d bytes, want 300000", len(got))
	}
}

// The policy names style sheet and script by their digests, or the browser would drop them.
func TestPolicyFits(t *testing.T) {
	html := written(t, sample.Document())
	for _, part := range []string{"style", "script"} {
		text := regexp.MustCompile("(?s)<"+part+">(.*?)</"+part+">").FindAllStringSubmatch(html, -1)
		if len(text) != 1 {
			t.Fatalf("%d elements %s, want 1", len(text), part)
		}
		sum := sha256.Sum256([]byte(text[0][1]))
		digest := strings.ReplaceAll(base64.StdEncoding.EncodeToString(sum[:]), "+", "&#43;")
		if !strings.Contains(html, part+"-src &#39;sha256-"+digest) {
			t.Errorf("the policy's digest is not that of the %s", part)
		}
	}
	if strings.Contains(html, " style=") {
		t.Error("an inline style, which the policy forbids")
	}
	if plain := written(t, page.Document{}); strings.Contains(plain, "script") {
		t.Error("a page without figures has a script")
	}
}

func TestNothingFromOutside(t *testing.T) {
	html := written(t, sample.Document())
	for _, bad := range []string{"src=\"http", "url(", "@import", "<link", "<script src", "fetch(", "<iframe", "<object", "xlink:href", "javascript:"} {
		if strings.Contains(strings.ToLower(html), bad) {
			t.Errorf("the page contains %q", bad)
		}
	}
}

func TestIdsAreUnique(t *testing.T) {
	html := written(t, sample.Document())
	seen := map[string]bool{}
	for _, m := range regexp.MustCompile(` id="([^"]*)"`).FindAllStringSubmatch(html, -1) {
		if seen[m[1]] {
			t.Errorf("id %q twice", m[1])
		}
		seen[m[1]] = true
	}
	for _, m := range regexp.MustCompile(` (?:aria-labelledby|aria-describedby)="([^"]*)"`).FindAllStringSubmatch(html, -1) {
		for _, id := range strings.Fields(m[1]) {
			if !seen[id] {
				t.Errorf("%q is referred to and missing", id)
			}
		}
	}
}

func TestHeadingsInOrder(t *testing.T) {
	html := written(t, sample.Document())
	last, ones := 0, 0
	for _, m := range regexp.MustCompile(`<h([1-6])`).FindAllStringSubmatch(html, -1) {
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
	g := sample.Document()
	for i := range g.Methods {
		g.Methods[i] = page.Method{Name: evil, What: evil, Source: evil, Valid: evil, Accuracy: evil, Caution: evil}
	}
	d := page.Document{Title: evil, Lang: `en" onload="x`, Methods: g.Methods, Record: []page.Entry{{Name: evil, Text: evil}}, Blocks: []page.Block{
		page.Prose{Source: evil + "\n\n" + evil + "\n\n[a](data:text/html,x) <javascript:alert(3)> [b](\"onclick=) ![c](data:image/svg+xml;base64,AAAA)\n\n<div onclick=x>\n" + evil + "\n</div>"},
		page.Cell{Source: evil, Results: []page.Result{{Label: evil, Value: evil}, {Label: evil, Lines: evil}}, Fault: &page.Fault{Place: evil, What: evil, Source: evil, Start: 1, End: 400, Got: evil, Want: evil, Hint: evil}},
		page.Cautions{{Name: evil, Text: evil}}, page.Fault{What: evil, Start: -4},
	}}
	html := written(t, d)
	for _, bad := range []string{"<img", "<script>alert", " onerror=alert(1)>", "<div onclick", `href="javascript`, `href="data`, `lang="en" onload`} {
		if strings.Contains(html, bad) {
			t.Errorf("%s came through", bad)
		}
	}
}

func BenchmarkPage(b *testing.B) {
	d := sample.Document()
	for b.Loop() {
		written(b, d)
	}
}
