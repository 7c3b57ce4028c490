package page

import (
	"regexp"
	"strings"
	"testing"
)

func TestCodeKeepsItsText(t *testing.T) {
	for _, source := range []string{"", "x := 1 // a < b\ny", "`raw\n  text`", "\"open", "π*R+µ", "a ; b", "#!$ \\", "x\n\n\n  y\r\n", "'", "/* never closed"} {
		text := regexp.MustCompile(`<[^>]*>`).ReplaceAllString(string(code(source)), "")
		text = strings.NewReplacer("&lt;", "<", "&gt;", ">", "&#34;", `"`, "&#39;", "'", "&amp;", "&").Replace(text)
		if want := strings.TrimRight(clean(source), "\n"); text != want {
			t.Errorf("%q came out as %q", source, text)
		}
	}
}
