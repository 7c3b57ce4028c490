package present_test

import (
	"testing"

	"lode/cmd/internal/present"
	"lode/render/text"
)

// TestPrintedGoesOn wants what is printed in pieces to stand in one line, as a plain program
// prints it, and other results to stand between.
func TestPrintedGoesOn(t *testing.T) {
	var list, other []present.Shown
	for _, piece := range []string{"0 ", "1 ", "2\n", "third"} {
		s := present.Printed(piece)
		list, other = present.Behind(list, s), present.Behind(other, s)
	}
	list = present.Behind(list, present.Value("n", 3))
	list = present.Behind(list, present.Printed("last\n"))
	if got, want := present.Terminal(text.Style{}, list), "0 1 2\nthird\nn ·· 3\nlast"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	if got, want := present.Terminal(text.Style{}, other), "0 1 2\nthird"; got != want {
		t.Errorf("a second list: got %q, want %q", got, want)
	}
	if got := list[0].Page().Lines; got != "0 1 2\nthird" {
		t.Errorf("on the page: got %q", got)
	}
}
