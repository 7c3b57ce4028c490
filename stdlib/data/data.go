// Package data reads measurements from text files beside the notebook: columns of
// quantities under a head that names each with its unit.
//
// A file has a head and rows, with cells separated by commas, semicolons or tabs. Lines
// that begin with # are remarks. A cell of the head is a name and a unit:
//
//	frequency Hz, level (dB), note
//	82.4,  -3.1, open string
//	164.8, -2.9,
//
// A cell left empty is a gap. A column without a unit holds plain numbers, or texts if one
// of its cells is no number. Numbers are written with a decimal point.
package data

import (
	"fmt"
	"math"
	"strings"

	"lode/stdlib/data/folder"
	"lode/units/frame"
)

// Sheet holds the columns of one file.
type Sheet struct {
	name    string
	columns []frame.Column
}

// Read reads a data file in the notebook's folder or below it: a .csv, .tsv or .txt file of
// at most 4 MiB, with at most 64 columns and 100000 rows. A name outside the folder, a link that
// leads out of it, and hidden files are refused.
//
// Example: data.Read("measured.csv")
func Read(name string) (Sheet, error) {
	text, err := folder.Read(".", name)
	if err != nil {
		return Sheet{}, err
	}
	return Parse(name, string(text))
}

// Parse reads the text of a data file as Read does; the name stands in front of messages
// and becomes the title of the sheet.
//
// Example: data.Parse("bench", "frequency Hz, level dB\n82.4, -3.1")
func Parse(name, text string) (Sheet, error) {
	p := &parser{name: name}
	if err := p.sheet(text); err != nil {
		return Sheet{}, err
	}
	return Sheet{name, p.columns}, nil
}

// Rows returns the number of rows.
func (s Sheet) Rows() int { return s.Frame().Rows() }

// Names returns the names of the columns, without their units, in the order of the file.
func (s Sheet) Names() []string {
	var names []string
	for _, c := range s.columns {
		names = append(names, c.Name)
	}
	return names
}

// Frame lays the sheet out for tables and figures; a gap is NaN.
func (s Sheet) Frame() frame.Frame { return frame.Frame{Title: s.name, Columns: s.columns} }

// String tells the size of the sheet and its columns.
func (s Sheet) String() string {
	var columns []string
	for _, c := range s.columns {
		text := c.Name
		if c.Kind.Symbol != "" {
			text += " in " + c.Kind.Symbol
		}
		columns = append(columns, text)
	}
	return fmt.Sprintf("%s: %d rows of %s", s.name, s.Rows(), strings.Join(columns, ", "))
}

// Filled returns the sheet without the rows that have a gap among their numbers.
func (s Sheet) Filled() Sheet {
	out := Sheet{name: s.name}
	for _, c := range s.columns {
		short := frame.Column{Name: c.Name, Kind: c.Kind}
		for row := range s.Rows() {
			switch {
			case s.gap(row):
			case c.Texts != nil:
				short.Texts = append(short.Texts, c.Texts[row])
			default:
				short.Values = append(short.Values, c.Values[row])
			}
		}
		out.columns = append(out.columns, short)
	}
	return out
}

func (s Sheet) gap(row int) bool {
	for _, c := range s.columns {
		if c.Texts == nil && math.IsNaN(c.Values[row]) {
			return true
		}
	}
	return false
}
