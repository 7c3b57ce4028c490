// Package table puts variants side by side and shows any named columns as a table.
//
//	table.Of(
//		table.Head("variant", "turns", "resistance"),
//		table.Row("as found", 8000, before.Resistance()),
//		table.Row("rewound", 9200, after.Resistance()),
//	)
//
// A column of quantities is shown in one unit, which stands in its head. Transposed turns
// the table round, so that each row is one quantity with a unit of its own.
package table

import (
	"fmt"
	"reflect"

	"lode/units"
	"lode/units/frame"
)

// Line is the head of a table or one of its rows.
type Line struct {
	cells []any
	head  bool
}

// Head names the columns.
func Head(names ...string) Line {
	l := Line{head: true}
	for _, n := range names {
		l.cells = append(l.cells, n)
	}
	return l
}

// Row is one row of quantities, numbers, texts or truth values; nil leaves a gap.
func Row(cells ...any) Line { return Line{cells: cells} }

// Table is a finished table.
type Table struct {
	frame  frame.Frame
	turned bool
}

// Of makes a table of a head and rows of the same length.
//
// Example: table.Of(table.Head("variant", "turns"), table.Row("as found", 8000))
func Of(head Line, rows ...Line) (Table, error) {
	if !head.head || len(head.cells) == 0 {
		return Table{}, fmt.Errorf("table.Of: no head: got %d cells of a row first, want table.Head with a name for each column", len(head.cells))
	}
	for i, r := range rows {
		if r.head {
			return Table{}, fmt.Errorf("table.Of: line %d: got a second head, want table.Row", i+1)
		}
		if len(r.cells) != len(head.cells) {
			return Table{}, fmt.Errorf("table.Of: row %d: got %d cells, want %d, one for each of %s\nhint: nil leaves a gap", i+1, len(r.cells), len(head.cells), names(head))
		}
	}
	var f frame.Frame
	for c, name := range head.cells {
		column := make([]any, len(rows))
		for i, r := range rows {
			column[i] = plain(r.cells[c])
		}
		f.Columns = append(f.Columns, frame.Collect(name.(string), column))
	}
	return Table{frame: f}, nil
}

func names(head Line) string {
	text := ""
	for i, n := range head.cells {
		if i > 0 {
			text += ", "
		}
		text += n.(string)
	}
	return text
}

// plain turns every kind of number without a unit into float64 and a nil pointer into nil,
// so that columns of mixed Go types stay numbers.
func plain(cell any) any {
	if _, ok := cell.(units.Quantity); ok || cell == nil {
		return cell
	}
	if _, ok := cell.(fmt.Stringer); ok {
		return cell
	}
	switch v := reflect.ValueOf(cell); {
	case v.CanInt():
		return float64(v.Int())
	case v.CanUint():
		return float64(v.Uint())
	case v.CanFloat():
		return v.Float()
	}
	return cell
}

// From shows anything with named columns as a table.
func From(source frame.Source) (Table, error) {
	if source == nil {
		return Table{}, fmt.Errorf("table.From: nothing to show: got nil, want a result with columns")
	}
	return Table{frame: source.Frame()}, nil
}

// Frame returns the table's columns.
func (t Table) Frame() frame.Frame { return t.frame }

// Titled returns the table under a title.
func (t Table) Titled(title string) Table {
	t.frame.Title = title
	return t
}

// Transposed returns the table turned round: a column for each row, named by its first cell,
// and a row for each column, with its unit.
func (t Table) Transposed() Table {
	t.turned = !t.turned
	return t
}

// Grid returns the table as it is to be set.
func (t Table) Grid() Grid {
	if t.turned {
		return Turned(t.frame)
	}
	return Layout(t.frame)
}

// String writes the table as plain lines.
func (t Table) String() string { return t.Grid().String() }
