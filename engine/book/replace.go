package book

import "strings"

// Replace puts other code into a cell, its fence and indentation kept.
func (b *Book) Replace(cell int, code string) {
	for i, p := range b.Parts {
		if p.Cell == nil {
			continue
		}
		if cell == 0 {
			b.Parts = append([]Part(nil), b.Parts...)
			b.Parts[i] = p.with(code)
			return
		}
		cell--
	}
}

// with returns the part with other code between its fences.
func (p Part) with(code string) Part {
	c := *p.Cell
	lines := strings.SplitAfter(p.Text, "\n")
	if !strings.HasSuffix(code, "\n") && code != "" {
		code += "\n"
	}
	old := strings.Count(c.Code, "\n")
	if old > 0 && c.Indent > 0 {
		indent := strings.Repeat(" ", c.Indent)
		code = indent + strings.ReplaceAll(strings.TrimSuffix(code, "\n"), "\n", "\n"+indent) + "\n"
	}
	if p.Text == c.Code {
		p.Text = code
	} else {
		p.Text = lines[0] + code + strings.Join(lines[min(1+old, len(lines)):], "")
	}
	c.Code = code
	p.Cell = &c
	return p
}
