package page

import (
	"fmt"
	"strings"
	"testing"

	"lode/render/table"
)

// many is a table of a number of columns with five digits each.
func many(t *testing.T, columns int) *table.Grid {
	t.Helper()
	var heads []string
	var cells []any
	for i := range columns {
		heads, cells = append(heads, fmt.Sprint("c", i)), append(cells, 12345+i)
	}
	of, err := table.Of(table.Head(heads...), table.Row(cells...))
	if err != nil {
		t.Fatal(err)
	}
	g := of.Grid()
	return &g
}

// TestCrowdedTables wants tables to be set smaller on paper only where they need it.
func TestCrowdedTables(t *testing.T) {
	for columns, want := range map[int]string{2: " easy", 10: " easy", 12: " many", 16: " many", 18: " most", 30: " most"} {
		if got := crowd(many(t, columns)); got != want {
			t.Errorf("%d columns: got %q, want %q", columns, got, want)
		}
	}
	g := many(t, 8)
	if g.Heads[0], g.Rows[0][0] = (table.Header{Name: "Wire"}), (table.Cell{Whole: "AWG 42, single build"}); crowd(g) != " easy" {
		t.Errorf("eight columns, one of a few words: got %q, want room", crowd(g))
	}
	g = many(t, 9)
	for c := range 5 {
		g.Heads[c], g.Rows[0][c] = table.Header{Name: "Wire"}, table.Cell{Whole: "AWG 42, single build"}
	}
	if got := crowd(g); got != "" {
		t.Errorf("five columns of a few words among nine: got %q, want the words broken", got)
	}
	g = many(t, 4)
	for c := range 4 {
		g.Heads[c], g.Rows[0][c] = table.Header{Name: "Quantity"}, table.Cell{Whole: "racetrack, core 74 mm by 7 mm, 7 mm high"}
	}
	if got := crowd(g); got != "" { // four columns of 18 digits and the space between them are 79, the paper holds 70
		t.Errorf("four columns of many words: got %q, want the words broken", got)
	}
	g = many(t, 2)
	g.Heads[0].Name = strings.Repeat("words of a title ", 40)
	if got := crowd(g); got != " easy" {
		t.Errorf("a title of many words: got %q", got)
	}
	g.Heads[0].Name = strings.Repeat("x", 200)
	if got := crowd(g); got != " easy" || !long(g.Heads[0].Name) || long("a few short words") {
		t.Errorf("a word to be broken: got %q", got)
	}
}

// TestBriefCode wants long code, and long lines of it, not to stay together at any price.
func TestBriefCode(t *testing.T) {
	for code, want := range map[string]bool{"": true, strings.Repeat("x\n", 16): true, strings.Repeat("x\n", 17): false, strings.Repeat("x", 90*15): true, strings.Repeat("x", 90*16): false} {
		if brief(code) != want {
			t.Errorf("%.10q of %d letters: got %v", code, len(code), !want)
		}
	}
}
