package page

import (
	"go/scanner"
	"go/token"
	"html/template"
	"strings"
)

// code sets Go source with a few quiet tints: comments, texts and numbers. What the scanner
// does not know is set plainly.
func code(source string) template.HTML {
	source = strings.TrimRight(clean(source), "\n")
	files := token.NewFileSet()
	file := files.AddFile("", files.Base(), len(source))
	var s scanner.Scanner
	s.Init(file, []byte(source), nil, scanner.ScanComments)
	var b strings.Builder
	done := 0
	for {
		pos, kind, literal := s.Scan()
		if kind == token.EOF {
			break
		}
		class, start := tint(kind), file.Offset(pos)
		if class == "" || start < done || !strings.HasPrefix(source[start:], literal) {
			continue
		}
		template.HTMLEscape(&b, []byte(source[done:start]))
		b.WriteString(`<span class="` + class + `">`)
		template.HTMLEscape(&b, []byte(literal))
		b.WriteString("</span>")
		done = start + len(literal)
	}
	template.HTMLEscape(&b, []byte(source[done:]))
	return template.HTML(b.String())
}

func tint(kind token.Token) string {
	switch {
	case kind == token.COMMENT:
		return "remark"
	case kind == token.STRING, kind == token.CHAR:
		return "words"
	case kind == token.INT, kind == token.FLOAT, kind == token.IMAG:
		return "figures"
	case kind.IsKeyword():
		return "keyword"
	}
	return ""
}
