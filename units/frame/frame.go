// Package frame holds named columns of quantities: the one shape of data that tables,
// figures and exported files share. A producer builds a Frame; a reader finds columns by
// kind or by name and must not assume an order beyond that of Columns.
package frame

import (
	"fmt"
	"math"

	"lode/units"
)

// Column is one named column. Exactly one of Values and Texts is used: Values holds SI
// values of the column's kind, with NaN where there is none.
type Column struct {
	Name   string
	Kind   units.Kind
	Values []float64
	Texts  []string
}

// Len returns the number of rows.
func (c Column) Len() int { return max(len(c.Values), len(c.Texts)) }

// Frame is a list of columns of equal length under one title.
type Frame struct {
	Title   string
	Columns []Column
	Marks   []Mark
}

// Mark is a point of a curve worth naming, such as a resonance: SI values of the first
// column and of the column called Of.
type Mark struct {
	Name string
	Of   string
	X, Y float64
}

// Source is anything that can be laid out as a Frame.
type Source interface{ Frame() Frame }

// Frame makes a Frame a Source.
func (f Frame) Frame() Frame { return f }

// Rows returns the number of rows.
func (f Frame) Rows() int {
	rows := 0
	for _, c := range f.Columns {
		rows = max(rows, c.Len())
	}
	return rows
}

// OfKind returns the first column of values of the named kind of quantity.
func (f Frame) OfKind(typeName string) (Column, bool) {
	for _, c := range f.Columns {
		if c.Texts == nil && c.Kind.Type == typeName {
			return c, true
		}
	}
	return Column{}, false
}

// Named returns the column of that name.
func (f Frame) Named(name string) (Column, bool) {
	for _, c := range f.Columns {
		if c.Name == name {
			return c, true
		}
	}
	return Column{}, false
}

// Of returns a column of values of one kind, given in SI units.
func Of(name string, kind units.Kind, values []float64) Column {
	return Column{Name: name, Kind: kind, Values: values}
}

// Collect makes a column of cells as notebooks give them: quantities, numbers, texts,
// truth values. Cells of one kind stay numbers; anything mixed becomes texts.
func Collect(name string, cells []any) Column {
	column, ok := numbers(name, cells)
	if ok {
		return column
	}
	column = Column{Name: name, Texts: make([]string, len(cells))}
	for i, cell := range cells {
		column.Texts[i] = cellText(cell)
	}
	return column
}

// numbers makes a numeric column, or reports that the cells are not of one kind. A nil cell
// is a gap.
func numbers(name string, cells []any) (Column, bool) {
	column, found := Column{Name: name, Values: make([]float64, len(cells))}, false
	for i, cell := range cells {
		if cell == nil {
			column.Values[i] = math.NaN()
			continue
		}
		value, kind, ok := ValueOf(cell)
		if !ok || found && (kind.Type != column.Kind.Type || kind.Dim != column.Kind.Dim) {
			return column, false
		}
		column.Values[i], column.Kind, found = value, kind, true
	}
	return column, found
}

// ValueOf returns the SI value and the kind of a cell that is a quantity or a number.
func ValueOf(cell any) (float64, units.Kind, bool) {
	switch x := cell.(type) {
	case units.Quantity:
		return x.SI(), x.Kind(), true
	case float64:
		return x, units.Number(), true
	case int:
		return float64(x), units.Number(), true
	}
	return 0, units.Kind{}, false
}

func cellText(cell any) string {
	switch x := cell.(type) {
	case nil:
		return ""
	case bool:
		if x {
			return "yes"
		}
		return "no"
	case float64:
		return units.Digits(x, 4)
	}
	return fmt.Sprint(cell)
}
