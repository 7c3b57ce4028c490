package page

import (
	"strings"
	"testing"
)

func TestAttach(t *testing.T) {
	html := []byte("<html><body><p>x</p></body></html>\n")
	want := map[string]string{"source": "a </script><script>alert(1)</script> <!-- b"}
	out, err := Attach(html, want)
	if err != nil {
		t.Fatal(err)
	}
	if strings.Count(string(out), "<script") != 1 {
		t.Errorf("the data broke out of its block: %s", out)
	}
	got := map[string]string{}
	if ok, err := Attached(out, &got); !ok || err != nil || got["source"] != want["source"] {
		t.Errorf("got %v, %v, %v; want %v", got, ok, err, want)
	}
	if ok, _ := Attached(html, &got); ok {
		t.Error("found data in a page without any")
	}
	if _, err := Attach([]byte("no page"), want); err == nil {
		t.Error("attached data to text that is no page")
	}
}
