package check

import (
	"slices"
	"strings"
	"unicode/utf8"
)

// Meant names the candidates that are spelt most like a name, as a hint; "" where none is alike.
func Meant(name string, candidates []string) string { return didYouMean(name, candidates) }

// didYouMean names the candidates that are spelt most like name.
func didYouMean(name string, candidates []string) string {
	var best []string
	limit := (1 + utf8.RuneCountInString(name)) / 3
	for _, c := range candidates {
		if slices.Contains(best, c) {
			continue
		}
		switch d := distance(strings.ToLower(name), strings.ToLower(c)); {
		case d < limit:
			best, limit = []string{c}, d
		case d == limit && len(best) < 3 && d < utf8.RuneCountInString(name):
			best = append(best, c)
		}
	}
	if len(best) == 0 {
		return ""
	}
	return "did you mean " + strings.Join(best, " or ") + "?"
}

// distance counts the insertions, deletions, replacements and swaps of neighbours that
// turn a into b (restricted Damerau-Levenshtein distance).
func distance(a, b string) int {
	s, t := []rune(a), []rune(b)
	rows := make([][]int, len(s)+1)
	for i := range rows {
		rows[i] = make([]int, len(t)+1)
		rows[i][0] = i
	}
	for j := range t {
		rows[0][j+1] = j + 1
	}
	for i := range s {
		for j := range t {
			rows[i+1][j+1] = step(rows, s, t, i, j)
		}
	}
	return rows[len(s)][len(t)]
}

func step(rows [][]int, s, t []rune, i, j int) int {
	cost := 1
	if s[i] == t[j] {
		cost = 0
	}
	d := min(rows[i][j]+cost, rows[i][j+1]+1, rows[i+1][j]+1)
	if i > 0 && j > 0 && s[i] == t[j-1] && s[i-1] == t[j] {
		d = min(d, rows[i-1][j-1]+1)
	}
	return d
}
