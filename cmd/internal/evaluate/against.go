package evaluate

import (
	"lode/cmd/internal/present"
	"lode/cmd/internal/record"
	"lode/engine"
	"lode/engine/issue"
	"lode/engine/library"
	"lode/render/figure"
	"lode/render/table"
	"lode/units/frame"
)

// This file compares two notebooks: each result that both show, side by side, and the
// curves that both have, in one figure.

// Against names the notebook that a request's own is compared with.
type Against struct {
	Name   string // of the request's own notebook
	Other  string // of the one it is compared with
	Source string
}

// pair is a result that both notebooks show.
type pair struct {
	label string
	a, b  any
}

func (c *child) compare(lib *library.Library, n *engine.Notebook) {
	other := engine.Open(lib, c.File, []byte(c.Against.Source))
	if len(other.Issues) > 0 {
		c.send(Event{Issues: fewer(other.Issues)})
		return
	}
	other.Limits = n.Limits
	a, failed := c.results(n)
	if failed == nil {
		var b []engine.Result
		if b, failed = c.results(other); failed == nil {
			c.pairs(matched(a, b))
			return
		}
	}
	c.fail(*failed)
}

func (c *child) results(n *engine.Notebook) ([]engine.Result, *issue.Issue) {
	var all []engine.Result
	failed := n.Run(c.ctx, func(r engine.Result) {
		if r.Printed == "" && c.ctx.Err() == nil && !minds(r) {
			all = append(all, r)
		}
	})
	return all, failed
}

// matched pairs results of the same label in order.
func matched(a, b []engine.Result) []pair {
	waiting := map[string][]any{}
	for _, r := range b {
		waiting[r.Label] = append(waiting[r.Label], r.Value)
	}
	var pairs []pair
	for _, r := range a {
		if w := waiting[r.Label]; len(w) > 0 {
			waiting[r.Label] = w[1:]
			pairs = append(pairs, pair{r.Label, r.Value, w[0]})
		}
	}
	return pairs
}

func (c *child) pairs(pairs []pair) {
	head := table.Head("Result", c.Against.Name, c.Against.Other, "Change")
	var rows []table.Line
	var curves []frame.Source
	for _, p := range pairs {
		if fs := c.overlay(p); len(fs) > 0 {
			curves = append(curves, fs...)
			continue
		}
		a, b := present.Value(p.label, p.a), present.Value(p.label, p.b)
		if a.Text != "" && b.Text != "" {
			rows = append(rows, table.Row(p.label, a.Text, b.Text, change(p.a, p.b)))
		}
		if a.Table != nil && b.Table != nil {
			rows = append(rows, table.Row(p.label, "table", "table", cells(p)))
		}
	}
	var shown []present.Shown
	if t, err := table.Of(head, rows...); err == nil && len(rows) > 0 {
		shown = append(shown, present.Value("Comparison", t))
	}
	if len(curves) > 0 {
		if f, err := figure.Response(curves...); err == nil {
			shown = append(shown, present.Value("Responses", f))
		}
	}
	if len(shown) == 0 {
		shown = append(shown, present.Printed("the two show no result of the same label"))
	}
	c.pending = shown
	c.flush()
}

// overlay returns the response curves of both results under the names of their notebooks.
func (c *child) overlay(p pair) []frame.Source {
	a, b := curves(p.a), curves(p.b)
	if len(a) == 0 || len(a) != len(b) {
		return nil
	}
	var list []frame.Source
	for i := range a {
		a[i].Title = c.Against.Name + ": " + named(a[i].Title, p.label)
		b[i].Title = c.Against.Other + ": " + named(b[i].Title, p.label)
		list = append(list, a[i], b[i])
	}
	return list
}

func named(title, label string) string {
	if title == "" {
		return label
	}
	return title
}

// curves returns the frequency responses that a value holds.
func curves(v any) []frame.Frame {
	var frames []frame.Frame
	switch v := v.(type) {
	case interface{ Frames() []frame.Frame }:
		frames = v.Frames()
	case frame.Source:
		frames = []frame.Frame{v.Frame()}
	}
	var list []frame.Frame
	for _, f := range frames {
		_, x := f.OfKind("Frequency")
		_, y := f.OfKind("Level")
		if x && y && f.Rows() > 1 {
			list = append(list, f)
		}
	}
	return list
}

// change tells how much b differs from a, where both are numbers of one kind.
func change(a, b any) string {
	x, kindX, ok1 := frame.ValueOf(a)
	y, kindY, ok2 := frame.ValueOf(b)
	switch {
	case !ok1 || !ok2 || kindX.Type != kindY.Type || kindX.Dim != kindY.Dim:
		return ""
	case x == y:
		return "same"
	}
	return record.Step(x, y, kindX.Symbol)
}

// cells tells how two tables differ.
func cells(p pair) string {
	var r record.Record
	r.Add(0, 0, "", p.a, "")
	r.Add(0, 0, "", p.b, "")
	if text := record.Cells(r.Results[0].Columns, r.Results[1].Columns); text != "" {
		return text
	}
	return "same"
}
