package check

import (
	"fmt"
	"go/ast"
	"go/types"
	"strings"
	"unicode"
	"unicode/utf8"

	"lode/engine/book"
	"lode/engine/issue"
)

// This file refuses code that is not what it looks like, and code that is deeper or longer
// than anything a person writes: the checker and the interpreter go down with the depth of
// a statement, so it is bounded before they see it.

const (
	deepest   = 250     // brackets within brackets
	longest   = 1 << 15 // bytes of a line
	levels    = 1000    // of a syntax tree; a sum of n terms has n
	manyWords = 1 << 24 // of a value that is not behind a pointer or a slice
	longText  = 1 << 20 // bytes of a constant string
)

// readable refuses what stands in a cell's code whatever it means.
func (c *checker) readable(cell *book.Cell) bool {
	whole := &Chunk{Cell: cell, Text: cell.Code}
	start := 0
	for line := range strings.Lines(cell.Code) {
		text := strings.TrimSuffix(strings.TrimSuffix(line, "\n"), "\r")
		if len(text) > longest {
			c.stopAt(whole, start, 1, "long-line", "the line is too long", fmt.Sprintf("%d bytes", len(text)), fmt.Sprintf("at most %d", longest), "break it at commas, or read data from a file")
			return false
		}
		if at := strings.IndexFunc(text, unseen); at >= 0 {
			r, size := utf8.DecodeRuneInString(text[at:])
			c.stopAt(whole, start+at, size, "hidden-character", "a character that cannot be seen", fmt.Sprintf("%U", r), "code that does what it shows",
				"take it out; within a string write "+escape(r))
			return false
		}
		start += len(line)
	}
	return true
}

func escape(r rune) string { return strings.Trim(fmt.Sprintf("%+q", r), "'") }

// unseen reports control characters, and those that turn the direction of text or take no
// room, so that code reads differently than it runs (N. Boucher and R. Anderson, Trojan
// Source: Invisible Vulnerabilities, 32nd USENIX Security Symposium, 2023). The joiners
// that some scripts and pictures are written with may stay.
func unseen(r rune) bool {
	const joiners = "\u200c\u200d"
	return unicode.IsControl(r) && r != '\t' || unicode.Is(unicode.Cf, r) && !strings.ContainsRune(joiners, r) || r == '\u2028' || r == '\u2029'
}

// stopAt reports an issue at a range of bytes of a chunk's text.
func (c *checker) stopAt(chunk *Chunk, at, size int, code, what, got, want, hint string) {
	i := issue.Issue{Place: c.placeAt(chunk, at, at+size), Code: code, What: what, Got: got, Want: want, Hint: hint}
	i.Source = c.sourceLine(chunk, i.Line)
	c.add(i)
}

func (c *checker) tooNested(chunk *Chunk, at int) {
	c.stopAt(chunk, at, 1, "too-nested", "the statement is nested too deeply", "", fmt.Sprintf("at most %d brackets within each other, and %d parts", deepest, levels), "give parts of it names of their own")
}

// sound refuses trees that are too deep and names that look like others.
func (c *checker) sound(chunk *Chunk, f *ast.File) bool {
	depth, fine := 0, true
	ast.Inspect(f, func(n ast.Node) bool {
		switch n := n.(type) {
		case nil:
			depth--
			return false
		case *ast.Ident:
			fine = c.clear(n) && fine
		}
		if depth++; depth > levels && fine {
			c.tooNested(chunk, 0)
			fine = false
		}
		if !fine {
			depth--
		}
		return fine
	})
	return fine
}

// lookalikes are letters that most typefaces draw like Latin ones: a small part of the
// table in Unicode Technical Standard 39, Unicode Security Mechanisms, of which Greek small
// letters that formulas use (ν, ρ, κ and others) are left out on purpose.
const (
	lookalikes = "аеорсухіјѕһԁԛԝАВЕКМНОРСТУХІЈЅԌΑΒΕΖΗΙΚΜΝΟΡΤΥΧο"
	theirLatin = "aeopcyxijshdqwABEKMHOPCTYXIJSGABEZHIKMNOPTYXo"
)

// clear refuses a name that could be taken for another one: a style of letters, or letters
// that look Latin among nothing but Latin ones.
func (c *checker) clear(id *ast.Ident) bool {
	if strings.IndexFunc(id.Name, func(r rune) bool { return r > unicode.MaxASCII }) < 0 {
		return true
	}
	var latin strings.Builder
	strange := false
	for _, r := range id.Name {
		i := strings.IndexRune(lookalikes, r)
		switch {
		case i >= 0:
			r, strange = []rune(theirLatin)[utf8.RuneCountInString(lookalikes[:i])], true
		case styled(r):
			c.report(id, "confusable", id.Name+": a name in a style of letters", letters(id.Name), "plain letters", "")
			return false
		case unicode.IsLetter(r) && !unicode.In(r, unicode.Latin, unicode.Greek):
			return true // a letter that only another script has shows what the name is
		}
		latin.WriteRune(r)
	}
	if strange {
		c.report(id, "confusable", id.Name+": a name of letters that look like others", letters(id.Name), "letters of one kind", "in Latin letters: "+latin.String())
	}
	return !strange
}

// styled reports letters that are others in bold, italic, wide or other forms.
func styled(r rune) bool {
	return r >= 0x1d400 && r < 0x1d800 || r >= 0xff00 && r < 0xfff0 || r >= 0x2100 && r < 0x2150 && r != 'Ω'
}

// letters names the letters of a name that are not ASCII.
func letters(name string) string {
	var list []string
	for _, r := range name {
		if r > unicode.MaxASCII && len(list) < 3 {
			list = append(list, fmt.Sprintf("%c (%U)", r, r))
		}
	}
	return strings.Join(list, ", ")
}

// weight returns how many machine words a value of the type takes where it stands, as far
// as bound.
func weight(t types.Type, known map[types.Type]int64) int64 {
	const bound = 1 << 40
	if n, ok := known[t]; ok || t == nil {
		return n
	}
	n := int64(1)
	switch u := t.(type) {
	case *types.Named:
		known[t] = 1 // until it is known: a type that holds itself is refused elsewhere
		n = weight(u.Underlying(), known)
	case *types.Array:
		if n = weight(u.Elem(), known); u.Len() > 0 {
			n = min(max(n, 1), bound/u.Len()) * u.Len()
		}
	case *types.Struct:
		for f := range u.Fields() {
			n = min(n+weight(f.Type(), known), bound)
		}
	}
	known[t] = n
	return n
}

// small refuses a type whose values alone would fill the memory.
func (c *checker) small(e ast.Expr, t types.Type) Typed {
	if weight(t, map[types.Type]int64{}) > manyWords {
		return c.report(e, "size", c.text(e)+": the values are too large", c.text(e), fmt.Sprintf("at most %d numbers in one", manyWords), "use slices, which are as long as they have to be")
	}
	return Typed{Mode: Type, Type: t}
}
