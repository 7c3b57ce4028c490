package table

// This file decides how columns are set: one unit for all of a column where that reads well,
// four significant digits without needless zeros, and each number cut at its decimal point
// so that a reader of any kind can align it.

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"lode/units"
	"lode/units/frame"
)

// Grid is a table ready to be set, on the page or in the terminal.
type Grid struct {
	Title string
	Heads []Header
	Rows  [][]Cell
}

// Header is the head of a column. Numeric columns are aligned on the decimal point.
type Header struct {
	Name, Unit string
	Numeric    bool
}

// Cell is one field. A number is cut before its decimal point; Unit is set only where the
// column has no unit in common.
type Cell struct {
	Whole, Fraction, Unit string
}

// Text returns the cell in one piece.
func (c Cell) Text() string {
	text := c.Whole + c.Fraction
	switch {
	case c.Unit == "":
		return text
	case c.Unit == "°":
		return text + c.Unit
	}
	return text + "\u00a0" + c.Unit
}

// Layout sets a frame with its columns side by side.
func Layout(f frame.Frame) Grid {
	g := Grid{Title: f.Title, Rows: make([][]Cell, f.Rows())}
	for _, c := range f.Columns {
		head, cells := column(c, f.Columns)
		g.Heads = append(g.Heads, head)
		for i := range g.Rows {
			cell := Cell{}
			if i < len(cells) {
				cell = cells[i]
			}
			g.Rows[i] = append(g.Rows[i], cell)
		}
	}
	return g
}

// Turned sets a frame with a row for each of its columns but the first, whose cells name the
// variants.
func Turned(f frame.Frame) Grid {
	g := Grid{Title: f.Title, Heads: []Header{{}}}
	if len(f.Columns) == 0 {
		return g
	}
	corner, variants := column(f.Columns[0], nil)
	g.Heads[0].Name = corner.Name
	for _, v := range variants {
		g.Heads = append(g.Heads, Header{Name: v.Text(), Numeric: true})
	}
	g.Heads = append(g.Heads, Header{})
	for _, c := range f.Columns[1:] {
		head, cells := column(c, f.Columns)
		row := append([]Cell{{Whole: head.Name}}, joined(cells)...)
		for len(row) < len(variants)+1 {
			row = append(row, Cell{})
		}
		g.Rows = append(g.Rows, append(row, Cell{Whole: head.Unit}))
	}
	return g
}

// joined leaves numbers uncut: the points of different quantities need not stand in line.
func joined(cells []Cell) []Cell {
	whole := make([]Cell, len(cells))
	for i, c := range cells {
		whole[i] = Cell{Whole: c.Text()}
	}
	return whole
}

// column sets a column of a frame that has others.
func column(c frame.Column, all []frame.Column) (Header, []Cell) {
	head := Header{Name: c.Name}
	if c.Texts != nil {
		cells := make([]Cell, len(c.Texts))
		for i, t := range c.Texts {
			cells[i].Whole = t
		}
		return head, cells
	}
	head.Numeric = true
	step, common := commonStep(model(c, all))
	if common || nothing(c) {
		head.Unit = step.Symbol
		return head, numbers(shown(c, step))
	}
	return head, ownUnits(c)
}

// model returns the column whose unit a column takes: its own, but that of another one of its kind for nothing but
// zeros, whose unit would say nothing and only stand out.
func model(c frame.Column, all []frame.Column) frame.Column {
	if nothing(c) {
		for _, other := range all {
			if other.Texts == nil && other.Kind == c.Kind && !nothing(other) {
				return other
			}
		}
	}
	return c
}

// nothing reports whether a column has no size.
func nothing(c frame.Column) bool {
	return !slices.ContainsFunc(c.Values, func(v float64) bool { return v != 0 && !math.IsNaN(v) && !math.IsInf(v, 0) })
}

// shown counts a column in a unit.
func shown(c frame.Column, step units.Step) []float64 {
	values := make([]float64, len(c.Values))
	for i, v := range c.Values {
		values[i] = c.Kind.In(v, step)
	}
	return values
}

// commonStep chooses the unit of a column: the one that suits the geometric mean of its
// sizes. Where the smallest or the largest value would then be hard to read there is none.
func commonStep(c frame.Column) (step units.Step, ok bool) {
	low, high, logs, n := math.Inf(1), 0.0, 0.0, 0
	for _, v := range c.Values {
		if size := math.Abs(v); size > 0 && !math.IsInf(size, 0) {
			low, high, logs, n = min(low, size), max(high, size), logs+math.Log(size), n+1
		}
	}
	if n == 0 {
		return c.Kind.StepFor(0), true
	}
	step = c.Kind.StepFor(math.Exp(logs / float64(n)))
	if len(c.Kind.Steps()) == 1 {
		return step, true
	}
	return step, low/step.Factor > 9.9e-3 && high/step.Factor < 1e5
}

// numbers writes values to four significant digits, whole numbers in full. Zeros at the end
// stay where the column's other numbers have digits there.
func numbers(values []float64) []Cell {
	cells := make([]Cell, len(values))
	decimals, whole := 0, true
	for _, v := range values {
		whole = whole && (v == math.Trunc(v) && math.Abs(v) < 1e9 || math.IsNaN(v))
	}
	for i, v := range values {
		cells[i] = number(v, whole)
		decimals = max(decimals, len(cells[i].Fraction)-1)
	}
	for i, v := range values {
		cells[i].Fraction += zeros(v, min(decimals, places(v))-max(0, len(cells[i].Fraction)-1), cells[i])
	}
	return cells
}

func number(v float64, whole bool) Cell {
	if math.IsNaN(v) {
		return Cell{}
	}
	text := units.Digits(v, 4)
	if whole {
		text = strconv.FormatFloat(v+0, 'f', -1, 64)
	}
	text = strings.Replace(text, "-", "−", 1)
	if strings.Contains(text, "·") {
		return Cell{Whole: text}
	}
	before, after, found := strings.Cut(text, ".")
	if found {
		after = "." + after
	}
	return Cell{Whole: before, Fraction: after}
}

// places is how many decimals four significant digits have.
func places(v float64) int {
	if v == 0 || math.IsInf(v, 0) || math.IsNaN(v) {
		return 0
	}
	return max(0, 3-int(math.Floor(math.Log10(math.Abs(v))+1e-12)))
}

func zeros(v float64, count int, c Cell) string {
	if count <= 0 || strings.Contains(c.Whole, "·") || math.IsNaN(v) {
		return ""
	}
	text := strings.Repeat("0", count)
	if c.Fraction == "" {
		text = "." + text
	}
	return text
}

func ownUnits(c frame.Column) []Cell {
	cells := make([]Cell, len(c.Values))
	for i, v := range c.Values {
		if math.IsNaN(v) {
			continue
		}
		step := c.Kind.StepFor(v)
		cells[i] = number(c.Kind.In(v, step), false)
		cells[i].Unit = step.Symbol
	}
	return cells
}
