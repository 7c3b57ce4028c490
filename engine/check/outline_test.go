package check

import "testing"

func TestIncomplete(t *testing.T) {
	for code, want := range map[string]bool{
		"x := (3": true, "x := 3": false, "func f() {": true, "for i := range 3 {\nfmt.Println(i)": true, "x := 3 +": true, "f(1,": true, "x := ) 3": false, "a.": true, "table.Of(\n\ttable.Head(\"a\"),\n": true, "x := `a": true, "if x {\n}": false, "3 3": false,
	} {
		if got := Incomplete(code); got != want {
			t.Errorf("%q: got %v, want %v", code, got, want)
		}
	}
}
