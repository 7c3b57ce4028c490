package check

import (
	"go/ast"
	"go/token"
	"slices"
	"sort"
	"strings"

	"lode/engine/issue"
)

// This file ties syntax trees to places and makes issues.

// Span returns the bytes of the chunk's text that a node covers.
func (c *Chunk) Span(n ast.Node) (from, to int) {
	clip := func(p token.Pos) int {
		return min(max(c.file.Offset(p)-c.head, 0), len(c.Text))
	}
	return clip(n.Pos()), clip(n.End())
}

// SourceText returns the text of a node.
func (c *Chunk) SourceText(n ast.Node) string {
	from, to := c.Span(n)
	return c.Text[from:to]
}

// ChunkOf returns the chunk that a position lies in.
func (p *Program) ChunkOf(pos token.Pos) *Chunk {
	i := sort.Search(len(p.Chunks), func(i int) bool { return token.Pos(p.Chunks[i].file.Base()+p.Chunks[i].file.Size()) >= pos })
	return p.Chunks[min(i, len(p.Chunks)-1)]
}

// PlaceOf returns the place of a node.
func (p *Program) PlaceOf(n ast.Node) issue.Place {
	chunk := p.ChunkOf(n.Pos())
	from, to := chunk.Span(n)
	return p.place(chunk, from, to)
}

// PlaceIn returns the place of a range of bytes of a chunk's text.
func (p *Program) PlaceIn(chunk *Chunk, from, to int) issue.Place { return p.place(chunk, from, to) }

// text returns the source of a node, shortened where it is long.
func (c *checker) text(n ast.Node) string {
	s := []rune(c.ChunkOf(n.Pos()).SourceText(n))
	for i, r := range s {
		if r == '\n' {
			return string(s[:i]) + "…"
		}
	}
	if len(s) > 40 {
		return string(s[:38]) + "…"
	}
	return string(s)
}

// report adds an issue at a node.
func (c *checker) report(n ast.Node, code, what, got, want, hint string) Typed {
	place := c.PlaceOf(n)
	if about := c.ChunkOf(n.Pos()).inWords; about != "" {
		hint = strings.Join(slices.DeleteFunc([]string{hint, about}, func(s string) bool { return s == "" }), "; ")
	}
	c.add(issue.Issue{
		Place: place, Code: code, What: what, Got: got, Want: want, Hint: hint,
		Source: c.sourceLine(c.ChunkOf(n.Pos()), place.Line),
	})
	return Typed{}
}

// add keeps an issue unless the same place has one already.
func (c *checker) add(i issue.Issue) {
	for _, other := range c.issues {
		if other.Place == i.Place {
			return
		}
	}
	c.issues = append(c.issues, i)
}
