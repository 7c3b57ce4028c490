package page

// This file renders prose. Headings continue the page's order, links may only lead to the
// web, to mail or within the page, pictures must be inside the page, and raw HTML is shown
// as the text it is.

import (
	"bytes"
	"fmt"
	"html/template"
	"regexp"
	"strings"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"
)

// text sets a piece of prose, or takes it over from the last page where all prose is the same.
func (p *writer) text(source string) (template.HTML, error) {
	if p.press == nil {
		return p.prose(source)
	}
	p.set++
	if p.set <= len(p.press.set) {
		return p.press.set[p.set-1], nil
	}
	html, err := p.prose(source)
	p.press.set = append(p.press.set, html)
	return html, err
}

func (p *writer) prose(source string) (template.HTML, error) {
	md := goldmark.New(
		goldmark.WithParserOptions(parser.WithASTTransformers(util.Prioritized(transformer{p}, 100))),
		goldmark.WithRendererOptions(renderer.WithNodeRenderers(util.Prioritized(rawAsText{}, 10))),
	)
	var out bytes.Buffer
	err := md.Convert([]byte(clean(source)), &out)
	return template.HTML(out.String()), err
}

type transformer struct{ *writer }

// Transform walks the parsed prose and repairs what may not stand on the page.
func (t transformer) Transform(document *ast.Document, reader text.Reader, _ parser.Context) {
	var gone []ast.Node
	_ = ast.Walk(document, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		if !entering {
			return ast.WalkContinue, nil
		}
		switch n := n.(type) {
		case *ast.Heading:
			if t.isTitle(n, reader.Source()) {
				gone = append(gone, n)
				return ast.WalkSkipChildren, nil
			}
			t.order(n)
		case *ast.Link:
			if !allowedLink(string(n.Destination)) {
				gone = append(gone, n)
			}
		case *ast.AutoLink:
			if n.AutoLinkType == ast.AutoLinkURL && !allowedLink(string(n.URL(reader.Source()))) {
				gone = append(gone, n)
			}
		case *ast.Image:
			if !allowedImage(string(n.Destination)) {
				gone = append(gone, n)
			}
		}
		return ast.WalkContinue, nil
	})
	for _, n := range gone {
		replace(n, reader.Source())
	}
}

// isTitle reports whether a heading repeats the page's title, which stands above already.
func (t transformer) isTitle(n *ast.Heading, source []byte) bool {
	if t.titled || n.Level != 1 || words(n, source) != strings.TrimSpace(t.document.Title) {
		return false
	}
	t.titled = true
	return true
}

// order makes room for the title as the only heading of the first level and lets no level
// be left out.
func (t transformer) order(n *ast.Heading) {
	n.Level = min(max(n.Level, 2), max(t.heading, 1)+1, 6)
	t.heading = n.Level
	t.sections++
	n.SetAttributeString("id", []byte(fmt.Sprintf("section-%d", t.sections)))
}

// replace puts a node's text in its place, and nothing in the place of a title.
func replace(n ast.Node, source []byte) {
	parent := n.Parent()
	switch n := n.(type) {
	case *ast.Heading:
		parent.RemoveChild(parent, n)
		return
	case *ast.AutoLink:
		label := ast.NewString(n.Label(source))
		parent.ReplaceChild(parent, n, label)
		return
	}
	for child := n.FirstChild(); child != nil; {
		next := child.NextSibling()
		parent.InsertBefore(parent, n, child)
		child = next
	}
	parent.RemoveChild(parent, n)
}

func words(n ast.Node, source []byte) string {
	var b strings.Builder
	for child := n.FirstChild(); child != nil; child = child.NextSibling() {
		if t, ok := child.(*ast.Text); ok {
			b.Write(t.Segment.Value(source))
			continue
		}
		b.WriteString(words(child, source))
	}
	return b.String()
}

var (
	linkForm  = regexp.MustCompile(`(?i)^(https?://|mailto:|#)`)
	imageForm = regexp.MustCompile(`(?i)^data:image/(png|jpeg|gif|webp);base64,[a-z0-9+/=]+$`)
)

func allowedLink(to string) bool    { return linkForm.MatchString(to) }
func allowedImage(from string) bool { return imageForm.MatchString(from) }

// rawAsText renders HTML in prose as text.
type rawAsText struct{}

func (rawAsText) RegisterFuncs(r renderer.NodeRendererFuncRegisterer) {
	r.Register(ast.KindRawHTML, rawInline)
	r.Register(ast.KindHTMLBlock, rawBlock)
}

func rawInline(w util.BufWriter, source []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	if entering {
		segments := n.(*ast.RawHTML).Segments
		for i := range segments.Len() {
			segment := segments.At(i)
			template.HTMLEscape(w, segment.Value(source))
		}
	}
	return ast.WalkSkipChildren, nil
}

func rawBlock(w util.BufWriter, source []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	block := n.(*ast.HTMLBlock)
	if !entering {
		return ast.WalkContinue, nil
	}
	_, _ = w.WriteString("<p>")
	lines := block.Lines()
	for i := range lines.Len() {
		segment := lines.At(i)
		template.HTMLEscape(w, segment.Value(source))
	}
	if block.HasClosure() {
		template.HTMLEscape(w, block.ClosureLine.Value(source))
	}
	_, _ = w.WriteString("</p>\n")
	return ast.WalkSkipChildren, nil
}

// clean drops control characters and marks that turn the direction of writing.
func clean(text string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' && r != '\n' && r != '\t' || r >= 0x7f && r < 0xa0 || r >= 0x202a && r <= 0x202e || r >= 0x2066 && r <= 0x2069 {
			return -1
		}
		return r
	}, text)
}
