package units

import (
	"strings"
	"unicode"
)

// Unit is a unit with a name of its own.
type Unit struct {
	Const    string // name of its Go constant in this package
	Type     string // name of its kind's Go type
	Factor   float64
	symbols  string
	textOnly string
}

// Units returns all units with a name of their own.
func Units() []Unit { return append([]Unit(nil), named[:]...) }

// Symbols returns the spellings that are in scope in notebooks, the best first.
func (u Unit) Symbols() []string { return strings.Fields(u.symbols) }

// Spellings returns every spelling that parsed text may use.
func (u Unit) Spellings() []string { return append(u.Symbols(), strings.Fields(u.textOnly)...) }

// Shown returns the spelling for a formula: the standard symbol, also where that is no name
// of a notebook.
func (u Unit) Shown() string {
	first := u.Symbols()[0]
	for _, s := range strings.Fields(u.textOnly) {
		plain := strings.IndexFunc(first, func(r rune) bool { return r > unicode.MaxASCII }) < 0
		if plain && (len(s) < len(first) || strings.ContainsAny(s, "/²³°")) {
			return s
		}
	}
	return first
}
