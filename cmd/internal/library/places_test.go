package library_test

import (
	"context"
	"testing"

	"lode/engine"
)

// TestPlacesOfLists wants a place that is not there to be told with the places that are, wherever a list stands in a statement.
func TestPlacesOfLists(t *testing.T) {
	lib := load(t)
	for _, c := range []struct{ cell, got, want string }{
		{"l := []int{}\nl[0]", "0", "a list that is not empty"},
		{"l := []int{4}\ni := -1\nl[i]", "-1", "0, the only place"},
		{"l := []float64{1, 2}\ni := 1\nl[i-3] = 4", "-2", "0 to 1"},
		{"l := []units.Length{1*mm, 2*mm}\nvar i uint8 = 200\nl[i] + 1*mm", "200", "0 to 1"},
		{"s := \"abc\"\nn := 9\ns[n]", "9", "0 to 2"},
		{"s := \"abc\"\nn := 9\ns[1:n]", "9", "0 to 3"},
		{"l := []int{1, 2, 3}\nk := 4\nl[k:]", "4", "0 to 3"},
		{"l := [][]int{{1, 2}, {3}}\nfor i := range 2 {\n\tfor j := range 2 {\n\t\tl[i][j]++\n\t}\n}", "1", "0, the only place"},
		{"p := &[3]int{1, 2, 3}\nk := 3\np[k]", "3", "0 to 2"},
		{"l := []int{1, 2}\nl[1], l[2] = 3, 4", "2", "0 to 1"},
		{"l := []int{1, 2}\nk := 5\nfmt.Println(\n\tl[0],\n\tl[k],\n)", "5", "0 to 1"},
		{"m := map[string][]int{\"a\": {1}}\nm[\"b\"][0]", "0", "a list that is not empty"},
		{"func pick[E any](x []E, n int) E { return x[n] }\npick([]int{1}, 2)", "2", "0, the only place"},
		{"l := []int{1, 2}\nn := int(knob(\"n\", 4, 0, 9))\nl[n]", "4", "0 to 1"},
		{"f := func() []int { return []int{1} }\nk := 3\nf()[k]", "a place that is not there", "0 to below the length"},
		{"l := []int{1, 2, 3}\na, b := 2, 1\nl[a:b]", "a bound beyond the end, or the upper one below the lower", "bounds within the list, the lower one first"},
	} {
		n := engine.Open(lib, "notes.md", []byte("```go\n"+c.cell+"\n```\n"))
		if len(n.Issues) > 0 {
			t.Errorf("%s\n%v", c.cell, n.Issues)
			continue
		}
		failed := n.Run(context.Background(), func(engine.Result) {})
		if failed == nil || failed.Got != c.got || failed.Want != c.want {
			t.Errorf("%s\n%v, want got %s, want %s", c.cell, failed, c.got, c.want)
		}
	}
}
