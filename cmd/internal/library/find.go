package library

import (
	"cmp"
	"slices"
	"strings"
	"unicode"

	"lode/engine/check"
)

// This file finds names of the library by plain words, such as gauge or hum.

// How much a word counts by where it stands. A word in the text alone tells little.
const (
	asPart    = 9 // a part of the last name, as Hum of coil.Chain.HumTable
	inName    = 5
	inSummary = 3
	inText    = 1
)

// Find returns the topics that have to do with all of the words, those that fit best first, or
// with most of them where none has to do with all.
func Find(words []string) []Topic {
	type found struct {
		Topic
		words, weight int
	}
	var all []found
	most := 0
	for _, t := range searched() {
		f := found{Topic: t}
		for _, w := range words {
			if len(words) > 1 && slices.Contains(idle, strings.ToLower(w)) {
				continue
			}
			if weight := t.weigh(w); weight > 0 {
				f.words, f.weight = f.words+1, f.weight+weight
			}
		}
		if most = max(most, f.words); f.words > 0 {
			all = append(all, f)
		}
	}
	all = slices.DeleteFunc(all, func(f found) bool { return f.words < most })
	slices.SortStableFunc(all, func(a, b found) int { return cmp.Compare(b.weight, a.weight) })
	topics := make([]Topic, len(all))
	for i, f := range all {
		topics[i] = f.Topic
	}
	return topics
}

// idle words say nothing about what is looked for.
var idle = strings.Fields("a an and are at by do does for from how i in into is it many much my of on or the this to what which with")

// searched lists the topics that are worth finding: all but units, and what every type has.
func searched() []Topic {
	all := slices.Concat(Topics(), rules(), functions())
	return slices.DeleteFunc(all, func(t Topic) bool { return strings.HasSuffix(t.Name, ".String") || strings.HasSuffix(t.Name, ".Frame") })
}

// Meant guesses the name that was meant by one that is spelt much like it, as a hint; "" where none is.
func Meant(name string) string {
	var names []string
	for _, t := range searched() {
		names = append(names, t.Name)
	}
	return check.Meant(name, names)
}

// weigh returns how much a word has to do with a topic; nothing for one that it has nothing to do with.
func (t Topic) weigh(word string) int {
	stem := stem(word)
	last := t.Name[strings.LastIndexByte(t.Name, '.')+1:]
	weight := 0
	switch {
	case slices.ContainsFunc(parts(last), func(p string) bool { return startsLike(p, stem) }):
		weight = asPart
	case slices.ContainsFunc(strings.Fields(alike()[strings.ToLower(word)]), func(n string) bool { return n == last }):
		weight = inName
	case slices.ContainsFunc(parts(t.Name), func(p string) bool { return startsLike(p, stem) }):
		weight = inName
	}
	if mentions(t.Summary, stem) {
		weight += inSummary
	}
	if mentions(t.Text+" "+t.Signature+" "+t.Caution, stem) {
		weight += inText
	}
	return weight
}

// mentions reports whether a text has a word with this stem.
func mentions(text, stem string) bool {
	return slices.ContainsFunc(strings.FieldsFunc(text, noLetter), func(w string) bool { return startsLike(w, stem) })
}

func noLetter(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }

// startsLike reports whether a word is a stem with one of the usual endings.
func startsLike(word, of string) bool { return stem(word) == of }

// stem takes the usual endings off a word: winding, winds and wind are one.
func stem(word string) string {
	word = strings.ToLower(word)
	for _, ending := range []string{"ings", "ing", "pped", "ped", "ed", "ers", "er", "es", "s"} {
		if rest, ok := strings.CutSuffix(word, ending); ok && len(rest) > 2 {
			word = rest
			break
		}
	}
	return strings.TrimSuffix(word, "e")
}

// parts cuts a name into its words: coil.WireLength into coil, Wire and Length.
func parts(name string) []string {
	var parts []string
	start := 0
	for i, r := range name {
		if i > start && (unicode.IsUpper(r) && !unicode.IsUpper(rune(name[i-1])) || r == '.') {
			parts, start = append(parts, strings.Trim(name[start:i], ".")), i
		}
	}
	return append(parts, strings.Trim(name[start:], "."))
}
