package formula

import (
	"strings"
	"testing"
)

// total adds up a number of equal terms.
func total(terms int) Node {
	n := Number("100", "pF")
	for i := 1; i < terms; i++ {
		if i%3 == 0 {
			n = Difference(n, Number("100", "pF"))
			continue
		}
		n = Sum(n, Number("100", "pF"))
	}
	return n
}

// TestLongSumsAreBroken wants every term once and in order, in lines of a limited width.
func TestLongSumsAreBroken(t *testing.T) {
	for terms, lines := range map[int]int{1: 1, 6: 1, 12: 2, 40: 6} {
		got := total(terms).lines()
		var all strings.Builder
		for _, l := range got {
			if all.WriteString(l.markup); l.width > line {
				t.Errorf("%d terms: a line of %.1f em, want at most %d", terms, l.width, line)
			}
		}
		if len(got) != lines || strings.Count(all.String(), "<mn>100</mn>") != terms || strings.Count(all.String(), ">−<") != (terms-1)/3 {
			t.Errorf("%d terms: %d lines, want %d\n%s", terms, len(got), lines, all.String())
		}
	}
}

// TestWideWorkings wants what cannot be broken to be marked for paper.
func TestWideWorkings(t *testing.T) {
	for terms, want := range map[int]string{3: "<math displaystyle=\"true\">", 10: ` class="wide">`, 30: ` class="widest">`} {
		w := Working{Name: "f", Formula: Root(total(terms)), Result: "1"}
		if got := string(w.MathML()); !strings.Contains(got, want) {
			t.Errorf("%d terms under a root: got %.80s, want %s", terms, got, want)
		}
	}
	w := Working{Name: "a", Formula: Number("1", ""), Result: "1", With: []Working{{Name: "b", Formula: Root(total(30)), Result: "2"}}}
	if got := string(w.MathML()); !strings.Contains(got, ` class="widest">`) {
		t.Errorf("within a function: got %.80s", got)
	}
	if a, b := Quotient(total(5), total(5)).width(), total(5).width(); a > b+1 {
		t.Errorf("a fraction is %.1f em wide, its parts %.1f em", a, b)
	}
}
