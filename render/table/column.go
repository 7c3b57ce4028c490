package table

import (
	"fmt"
	"slices"

	"lode/units"
	"lode/units/frame"
)

// Number is a quantity of any kind, or a plain number.
type Number interface{ ~float64 }

// Column makes a column of a list of quantities of one kind, or of plain numbers.
//
// Example: table.Columns(table.Column("height", []units.Length{8*mm, 11*mm}), table.Column("factor", []float64{1, 1.2}))
func Column[Q Number](name string, values []Q) frame.Column {
	plain := make([]float64, len(values))
	for i, v := range values {
		plain[i] = float64(v)
	}
	return ColumnNumbers(name, plain, kindOf[Q]())
}

// ColumnNumbers is Column on plain numbers of the kind q.
func ColumnNumbers(name string, values []float64, q units.Kind) frame.Column {
	return frame.Of(name, q, slices.Clone(values))
}

// ColumnOf makes a column of what a function gives for each value of a list.
//
// Example: table.ColumnOf("area", []units.Length{8*mm, 11*mm}, func(d units.Length) units.Area { return π / 4 * d * d })
func ColumnOf[X, Y Number](name string, list []X, f func(X) Y) (frame.Column, error) {
	plain := make([]float64, len(list))
	for i, v := range list {
		plain[i] = float64(v)
	}
	var of func(float64) float64
	if f != nil {
		of = func(x float64) float64 { return float64(f(X(x))) }
	}
	return ColumnOfNumbers(name, plain, of, kindOf[X](), kindOf[Y]())
}

// ColumnOfNumbers is ColumnOf on plain numbers of the kinds x and y.
func ColumnOfNumbers(name string, list []float64, f func(float64) float64, _, y units.Kind) (frame.Column, error) {
	if f == nil {
		return frame.Column{}, fmt.Errorf("table.ColumnOf: the function: got nil, want one to call")
	}
	values := make([]float64, len(list))
	for i, v := range list {
		values[i] = f(v)
	}
	return frame.Of(name, y, values), nil
}

// Texts makes a column of texts.
//
// Example: table.Columns(table.Texts("coil", []string{"neck", "bridge"}), table.Column("turns", []float64{7200, 8000}))
func Texts(name string, texts []string) frame.Column {
	return frame.Column{Name: name, Texts: slices.Clone(texts)}
}

// Columns makes a table of columns of the same length.
//
// Example: table.Columns(table.Column("height", []units.Length{8*mm, 11*mm}), table.Column("factor", []float64{1, 1.2}))
func Columns(columns ...frame.Column) (Table, error) {
	if len(columns) == 0 {
		return Table{}, fmt.Errorf("table.Columns: no column: got 0, want one or more, such as table.Column(\"height\", heights)")
	}
	for _, c := range columns[1:] {
		if c.Len() != columns[0].Len() {
			return Table{}, fmt.Errorf("table.Columns: column %q: got %d rows, want %d as in %q", c.Name, c.Len(), columns[0].Len(), columns[0].Name)
		}
	}
	return Table{frame: frame.Frame{Columns: columns}}, nil
}

func kindOf[Q Number]() units.Kind {
	var q Q
	if known, ok := any(q).(units.Quantity); ok {
		return known.Kind()
	}
	return units.Number()
}
