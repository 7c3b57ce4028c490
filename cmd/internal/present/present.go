// Package present turns the values that a notebook shows into what a terminal and a page
// can take. It is the only place that knows both the engine's results and the renderers.
package present

import (
	"fmt"
	"strings"

	"lode/engine"
	"lode/engine/worked"
	"lode/render/formula"
	"lode/render/page"
	"lode/render/table"
	"lode/render/text"
	"lode/units/frame"
)

// Shown is one value in a form that no longer needs the interpreter.
type Shown struct {
	Label  string
	Text   string       // a quantity, a number, a text
	Table  *table.Grid  // instead of Text
	Figure page.Drawing // instead of Text

	Line    int              // of the notebook that made it
	From    []page.Origin    // the names it came from
	Minds   []string         // what a value or a call warns of
	Working *formula.Working // how a result came about

	alone   bool             // there are Minds and nothing else
	printed *strings.Builder // what was printed, instead of Text
}

// Result presents a result of a run with the way that led to it.
func Result(r engine.Result) Shown {
	if r.Printed != "" {
		return Printed(r.Printed)
	}
	s := Value(r.Label, r.Value)
	s.Line = r.Line
	for _, o := range r.From {
		s.From = append(s.From, page.Origin{Name: o.Name, Line: o.Line})
	}
	return s
}

// Printed presents text that a notebook prints.
func Printed(text string) Shown {
	var b strings.Builder
	b.WriteString(text)
	return Shown{printed: &b}
}

// Behind puts a value behind others; what is printed goes on where the last print ended.
func Behind(list []Shown, s Shown) []Shown {
	last := len(list) - 1
	switch {
	case s.printed == nil:
		return append(list, s)
	case last >= 0 && list[last].printed != nil:
		list[last].printed.WriteString(s.printed.String())
		return list
	}
	return append(list, Printed(s.printed.String())) // another list may go on with its own
}

// Printed reports whether s is text that was printed, which may go on.
func (s Shown) Printed() bool { return s.printed != nil }

// lines is a printed text without the end of its last line.
func (s Shown) lines() string { return strings.TrimSuffix(s.printed.String(), "\n") }

// longestTable is how many rows a value may have that is shown as a table without having
// been made one; a sweep of hundreds of points is better told in a line.
const longestTable = 40

// longestFrame is how many rows of plain named columns are shown, which are nothing but a table.
const longestFrame = 400

// Value presents a shown value under its label.
func Value(label string, v any) Shown {
	s := Shown{Label: label}
	switch v := v.(type) {
	case engine.Minds:
		s.Label, s.alone, s.Minds = "", true, v.Texts()
	case *worked.Line:
		w := working(*v)
		s.Working, s.Text = &w, w.Text()
	case page.Drawing:
		s.Figure = v
	case table.Table:
		g := v.Grid()
		s.Table = &g
	case frame.Source:
		s.source(v)
	default:
		s.Text = words(v)
	}
	return s
}

func (s *Shown) source(v frame.Source) {
	f, longest := v.Frame(), longestTable
	if _, plain := v.(frame.Frame); plain {
		longest = longestFrame
	}
	if f.Rows() <= longest && len(f.Columns) > 0 {
		if t, err := table.From(v); err == nil {
			g := t.Grid()
			s.Table = &g
			return
		}
	}
	s.Text = words(v)
}

// Terminal writes shown values as a terminal shows them, plain values in line.
func Terminal(style text.Style, shown []Shown) string {
	var parts []string
	var values []text.Value
	flush := func() {
		if len(values) > 0 {
			parts = append(parts, style.Values(values...))
			values = nil
		}
	}
	for _, s := range shown {
		if s.alone {
			flush()
		} else if s.Table == nil && s.Figure == nil && s.Working == nil && s.printed == nil {
			values = append(values, text.Value{Label: s.Label, Text: s.Text})
		} else {
			flush()
			parts = append(parts, s.block(style))
		}
		if len(s.Minds) > 0 {
			flush()
			parts = append(parts, style.Plain("  mind: "+strings.Join(s.Minds, "\n  mind: ")))
		}
	}
	flush()
	return strings.Join(parts, "\n")
}

func (s Shown) block(style text.Style) string {
	if s.printed != nil {
		return style.Plain(s.lines())
	}
	if s.Working != nil {
		return style.Plain("  " + strings.ReplaceAll(s.Text, "\n", "\n  "))
	}
	if s.Table != nil {
		g := *s.Table
		if g.Title == "" {
			g.Title = s.Label
		}
		return style.Table(g) + "\n"
	}
	if c, ok := s.Figure.(text.Chart); ok {
		return style.Chart(c) + "\n"
	}
	told := s.Figure.Title()
	if d, ok := s.Figure.(fmt.Stringer); ok {
		told = d.String()
	}
	return style.Values(text.Value{Label: s.Label, Text: told})
}

// Page turns a shown value into a result of a page.
func (s Shown) Page() page.Result {
	r := page.Result{Label: s.Label, Line: s.Line, From: s.From, Minds: s.Minds, Alone: s.alone, Table: s.Table, Figure: s.Figure}
	if s.Working != nil {
		r.Formula = s.Working.MathML()
		return r
	}
	switch {
	case s.printed != nil:
		r.Lines = s.lines()
	case strings.Contains(s.Text, "\n"):
		r.Lines = s.Text
	default:
		r.Value = s.Text
	}
	return r
}
