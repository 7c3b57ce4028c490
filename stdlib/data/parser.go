package data

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"

	"lode/units"
	"lode/units/frame"
)

// This file turns the text of a data file into columns.

const (
	mostColumns = 64
	mostRows    = 100_000
)

// parser reads one file. A place is the line and the character where a cell begins.
type parser struct {
	name    string
	reader  *csv.Reader
	heads   []head
	columns []frame.Column
	places  [][]place // by row and column, kept until the kinds of the columns are known
	cells   [][]string
}

type place struct{ line, column int }

// fault words what is wrong at a place of the file.
func (p *parser) fault(at place, format string, arguments ...any) error {
	return fmt.Errorf("%s:%d:%d: "+format, append([]any{p.name, at.line, at.column}, arguments...)...)
}

func (p *parser) sheet(text string) error {
	text, err := p.readable(text)
	if err != nil {
		return err
	}
	p.reader = csv.NewReader(strings.NewReader(text))
	p.reader.Comma, p.reader.Comment, p.reader.TrimLeadingSpace = separator(text), '#', true
	if err := p.rows(); err != nil {
		return err
	}
	for c, h := range p.heads {
		column, err := p.column(c, h)
		if err != nil {
			return err
		}
		p.columns = append(p.columns, column)
	}
	return nil
}

// readable refuses what is no text, and takes off the mark that some programs begin it with.
func (p *parser) readable(text string) (string, error) {
	text = strings.TrimPrefix(text, "\ufeff")
	switch {
	case strings.HasPrefix(text, "\xff\xfe") || strings.HasPrefix(text, "\xfe\xff"):
		return "", fmt.Errorf("%s: the text is written in UTF-16: want UTF-8\nhint: save the file anew, with the encoding UTF-8", p.name)
	case !utf8.ValidString(text):
		return "", fmt.Errorf("%s:%d:1: the line is not UTF-8 text\nhint: save the file anew, with the encoding UTF-8", p.name, invalidLine(text))
	case strings.ContainsRune(text, 0):
		return "", fmt.Errorf("%s: the file is no text", p.name)
	}
	return text, nil
}

func invalidLine(text string) int {
	for i, line := range strings.Split(text, "\n") {
		if !utf8.ValidString(line) {
			return i + 1
		}
	}
	return 1
}

// separator is the one of tab, semicolon and comma that the head holds, looked for in that
// order: a semicolon is used where commas stand within cells.
func separator(text string) rune {
	for line := range strings.Lines(text) {
		if strings.HasPrefix(line, "#") || strings.TrimSpace(line) == "" {
			continue
		}
		for _, r := range "\t;" {
			if strings.ContainsRune(line, r) {
				return r
			}
		}
		break
	}
	return ','
}

// rows reads the head and the cells.
func (p *parser) rows() error {
	for {
		record, err := p.reader.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		var broken *csv.ParseError
		if errors.As(err, &broken) && !errors.Is(err, csv.ErrFieldCount) {
			return p.fault(place{broken.Line, max(broken.Column, 1)}, "the quotation marks do not fit together: got %v", broken.Err)
		}
		places := make([]place, len(record))
		for i := range record {
			places[i].line, places[i].column = p.reader.FieldPos(i)
		}
		if err := p.row(record, places); err != nil {
			return err
		}
	}
	if p.heads == nil {
		return fmt.Errorf("%s: the file is empty: want a head such as frequency Hz, level dB, and rows below it", p.name)
	}
	return nil
}

func (p *parser) row(record []string, places []place) error {
	switch {
	case p.heads == nil:
		return p.head(record, places)
	case len(record) != len(p.heads):
		return p.fault(places[0], "the row has another number of cells than the head: got %d, want %d", len(record), len(p.heads))
	case len(p.cells) == mostRows:
		return p.fault(places[0], "the file has too many rows: want at most %d", mostRows)
	}
	p.cells, p.places = append(p.cells, record), append(p.places, places)
	return nil
}

// column reads one column as numbers, or as texts where its head has no unit and a cell is
// no number.
func (p *parser) column(c int, h head) (frame.Column, error) {
	column := frame.Column{Name: h.name, Kind: h.kind, Values: make([]float64, len(p.cells))}
	for r, row := range p.cells {
		cell := strings.TrimSpace(row[c])
		value, err := number(cell, h.unit)
		if err != nil && h.unit == "" && !decimalComma.MatchString(cell) {
			return p.texts(c, h), nil
		}
		if err != nil {
			return column, p.fault(p.places[r][c], "%s: %w", h.name, err)
		}
		column.Values[r] = value
	}
	return column, nil
}

func (p *parser) texts(c int, h head) frame.Column {
	column := frame.Column{Name: h.name, Texts: make([]string, len(p.cells))}
	for r, row := range p.cells {
		column.Texts[r] = strings.TrimSpace(row[c])
	}
	return column
}

// decimalComma is a number as some countries and their programs write it.
var decimalComma = regexp.MustCompile(`^[-+−]?\d*,\d+$`)

// number reads a cell in the unit of its column.
func number(cell, unit string) (float64, error) {
	if cell == "" {
		return math.NaN(), nil
	}
	if decimalComma.MatchString(cell) {
		return 0, fmt.Errorf("decimal comma: got %q, want a point", cell)
	}
	if _, err := strconv.ParseFloat(strings.ReplaceAll(cell, "−", "-"), 64); errors.Is(err, strconv.ErrSyntax) {
		return 0, fmt.Errorf("this is no number: got %q, want digits; the unit stands in the head", cell)
	}
	if unit == percent {
		value, err := number(cell, "")
		return value / 100, err
	}
	p, err := units.Parse(cell + " " + unit)
	if err != nil {
		return 0, fmt.Errorf("this is no number: got %q, want a finite decimal number", cell)
	}
	return p.Value, nil
}
