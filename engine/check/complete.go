package check

import (
	"go/ast"
	"go/types"
	"sort"
	"strings"
	"unicode"
	"unicode/utf8"

	"lode/engine/book"
	"lode/engine/library"
)

// This file finds what a person may be about to write.

// Complete returns what could stand in place of the last word of line, which stands behind
// the book's cells: start is the byte where that word begins. Candidates that fit the
// argument of a call come first, then the others, each group sorted.
func Complete(lib *library.Library, b book.Book, line string) (start int, candidates []string) {
	start = wordStart(line)
	word := line[start:]
	if strings.HasSuffix(line[:start], ".") {
		return start, matching(word, members(lib, b, operandBefore(line[:start-1])))
	}
	open := openBracket(line[:start])
	if open >= 0 && line[open] == '{' {
		if fields := fieldsOf(lib, b, operandBefore(line[:open])); len(fields) > 0 && atKey(line[open+1:start]) {
			return start, matching(word, fields)
		}
	}
	p := inspect(lib, b, "")
	names := p.names()
	if open < 0 || line[open] != '(' {
		return start, matching(word, sortedNames(names))
	}
	want := parameter(lib, b, operandBefore(line[:open]), commas(line[open+1:start]))
	fitting := matching(word, p.fitting(names, want, true))
	if word == "" && len(fitting) > 0 {
		return start, fitting
	}
	return start, append(fitting, matching(word, p.fitting(names, want, false))...)
}

// wordStart returns where the name at the end of line begins.
func wordStart(line string) int {
	for i := len(line); i > 0; {
		r, size := utf8.DecodeLastRuneInString(line[:i])
		if r != '_' && !unicode.IsLetter(r) && !unicode.IsDigit(r) {
			return i
		}
		i -= size
	}
	return 0
}

// operandBefore returns the operand that text ends in: names, points, calls and indexes.
func operandBefore(text string) string {
	i := len(text)
	for i > 0 {
		r, size := utf8.DecodeLastRuneInString(text[:i])
		switch {
		case r == ')' || r == ']':
			if i = matchingOpen(text[:i]); i < 0 {
				return ""
			}
		case r == '_' || r == '.' || unicode.IsLetter(r) || unicode.IsDigit(r):
			i -= size
		default:
			return text[i:]
		}
	}
	return text[i:]
}

// matchingOpen returns where the bracket that text ends with was opened.
func matchingOpen(text string) int {
	depth := 0
	for i := len(text) - 1; i >= 0; i-- {
		switch text[i] {
		case ')', ']', '}':
			depth++
		case '(', '[', '{':
			if depth--; depth == 0 {
				return i
			}
		}
	}
	return -1
}

// openBracket returns the innermost bracket that is still open at the end of text.
func openBracket(text string) int {
	depth := 0
	for i := len(text) - 1; i >= 0; i-- {
		switch text[i] {
		case ')', ']', '}':
			depth++
		case '(', '[', '{':
			if depth--; depth < 0 {
				return i
			}
		}
	}
	return -1
}

// commas counts the commas of text outside of brackets.
func commas(text string) int {
	n, depth := 0, 0
	for _, r := range text {
		switch r {
		case '(', '[', '{':
			depth++
		case ')', ']', '}':
			depth--
		case ',':
			if depth == 0 {
				n++
			}
		}
	}
	return n
}

// atKey reports whether a literal's next thing is a field's name.
func atKey(text string) bool {
	last := strings.TrimSpace(text[strings.LastIndexByte(text, ',')+1:])
	return last == ""
}

// inspect checks the book with an expression behind it and ignores issues.
func inspect(lib *library.Library, b book.Book, expr string) *checker {
	b.Parts = append(append([]book.Part(nil), b.Parts...), book.Part{Cell: &book.Cell{Code: expr, Line: 1}})
	c := newChecker(lib, b)
	c.split()
	c.declareAhead()
	for _, chunk := range c.Chunks {
		c.chunk(chunk)
	}
	return c
}

// last returns what is known of the expression behind the book's cells.
func (c *checker) last() Typed {
	if len(c.Chunks) == 0 {
		return Typed{}
	}
	stmts := c.Chunks[len(c.Chunks)-1].Stmts
	if len(stmts) != 1 {
		return Typed{}
	}
	s, ok := stmts[0].(*ast.ExprStmt)
	if !ok {
		return Typed{}
	}
	return c.Exprs[s.X]
}

// members lists what may follow a point behind expr.
func members(lib *library.Library, b book.Book, expr string) []string {
	if p := lib.Packages[expr]; p != nil {
		return exported(p)
	}
	x := inspect(lib, b, expr).last()
	if x.Type == nil || x.Mode != Value {
		return nil
	}
	t := x.Type
	if tuple, ok := t.(*types.Tuple); ok && tuple.Len() > 0 {
		t = tuple.At(0).Type()
	}
	names := memberNames(t)
	sort.Strings(names)
	return names
}

func exported(p *types.Package) []string {
	var names []string
	for _, n := range p.Scope().Names() {
		if ast.IsExported(n) && !hidden(p, n) {
			names = append(names, n)
		}
	}
	return names
}

// fieldsOf lists the fields of a struct type as they stand in a literal.
func fieldsOf(lib *library.Library, b book.Book, expr string) []string {
	if expr == "" {
		return nil
	}
	x := inspect(lib, b, expr).last()
	if x.Mode != Type {
		return nil
	}
	s, ok := x.Type.Underlying().(*types.Struct)
	if !ok {
		return nil
	}
	var names []string
	for f := range s.Fields() {
		if f.Exported() || f.Pkg().Path() == NotebookPath {
			names = append(names, f.Name()+": ")
		}
	}
	return names
}

// parameter returns the type of a callee's parameter, or nil.
func parameter(lib *library.Library, b book.Book, callee string, index int) types.Type {
	if callee == "" {
		return nil
	}
	x := inspect(lib, b, callee).last()
	if x.Type == nil || x.Mode != Value {
		return nil
	}
	sig, ok := x.Type.Underlying().(*types.Signature)
	if !ok || sig.Params().Len() == 0 || index >= sig.Params().Len() && !sig.Variadic() {
		return nil
	}
	return paramType(sig, min(index, sig.Params().Len()-1), false)
}

// names returns what is in scope behind the book, with the type of each value.
func (c *checker) names() map[string]types.Type {
	names := map[string]types.Type{}
	for n, e := range c.top.names {
		names[n] = e.object.Type()
	}
	for n, u := range c.Lib.Units {
		names[n] = u.Type
		if u.Call != "" {
			names[n] = c.Lib.Quantity.Scope().Lookup(u.Call).Type()
		}
	}
	for n := range functions {
		names[n] = nil
	}
	for n := range c.Lib.Packages {
		names[n] = nil
	}
	return names
}

func sortedNames(names map[string]types.Type) []string {
	var list []string
	for n := range names {
		list = append(list, n)
	}
	sort.Strings(list)
	return list
}

// fitting returns the names whose values may (or may not) be given where want is wanted.
func (c *checker) fitting(names map[string]types.Type, want types.Type, fit bool) []string {
	var list []string
	for _, n := range sortedNames(names) {
		if c.fits(names[n], want) == fit {
			list = append(list, n)
		}
	}
	return list
}

func (c *checker) fits(t, want types.Type) bool {
	if t == nil || want == nil {
		return false
	}
	if f, ok := t.(*types.Signature); ok && f.Results().Len() > 0 {
		t = f.Results().At(0).Type()
	}
	q, ok := c.World.Quantity(t)
	w, wanted := c.World.Quantity(want)
	if wanted { // a plain number is nowhere given for a quantity
		return ok && wanted && q.Form == w.Form && q.Vector.Same(w.Vector)
	}
	return types.AssignableTo(t, want) && !(types.IsInterface(want) && want.Underlying().(*types.Interface).Empty())
}

func matching(word string, names []string) []string {
	var list []string
	for _, n := range names {
		if strings.HasPrefix(n, word) {
			list = append(list, n)
		}
	}
	return list
}
