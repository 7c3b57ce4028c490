package check

import (
	"sort"
	"strings"
)

// meant guesses what was meant by a name that nothing has: a unit under another spelling, a
// name of a package without the package, or the names that are spelt most like it.
func (c *checker) meant(name string) string {
	if unit := c.spoken(name); unit != "" {
		return "the unit is written " + unit + " here"
	}
	if hint := didYouMean(name, c.defined()); hint != "" {
		return hint
	}
	if hint := habits[strings.ToLower(name)]; hint != "" {
		return hint
	}
	if found := c.qualifiedAs(name); len(found) > 0 {
		return "did you mean " + strings.Join(found, " or ") + "?"
	}
	return didYouMean(name, c.visible())
}

// habits are words of other languages, and what stands for them in a notebook.
var habits = map[string]string{
	"must": "take it out: a call that may fail is used as if it could not",
	"let":  "x := 5*mm defines a name",
	"null": "did you mean nil?",
	"none": "did you mean nil?",
	"pi":   "did you mean π? without a key for it: math.Pi",
	"ln":   "did you mean log?",
	"sqr":  "did you mean sqrt? the square is pow(x, 2)",
	"e":    "exp(x) is the power of e; 10 million is 1e7",
}

// qualifiedAs returns the names of packages that are the name but for the package and the
// case of letters.
func (c *checker) qualifiedAs(name string) []string {
	var found []string
	for p, pkg := range c.Lib.Packages {
		for _, n := range pkg.Scope().Names() {
			if strings.EqualFold(n, name) && pkg.Scope().Lookup(n).Exported() {
				found = append(found, p+"."+n)
			}
		}
	}
	sort.Strings(found)
	return found[:min(len(found), 3)]
}

// spoken returns the unit that another spelling means, in the singular or the plural.
func (c *checker) spoken(name string) string {
	low := strings.ToLower(name)
	for _, n := range []string{name, low, strings.TrimSuffix(low, "s"), strings.TrimSuffix(low, "es")} {
		if unit := c.Lib.Spoken[n]; unit != "" && (n == name || len(n) > 1) {
			return unit
		}
	}
	return ""
}
