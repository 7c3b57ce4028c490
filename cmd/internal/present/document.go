package present

import (
	"crypto/sha256"
	"fmt"
	"runtime/debug"
	"strings"
	"unicode"
	"unicode/utf8"

	"lode/cmd/internal/library"
	"lode/engine/book"
	"lode/render/page"
)

// Document lays out the page of a run: shown holds, for each cell, what it showed, and left, for each
// function of the library, where a call of it left its range.
func Document(b book.Book, shown [][]Shown, called map[string]bool, left map[string][]string) page.Document {
	d := page.Document{Title: b.Title(), Record: record(b)}
	var c page.Cautions
	if len(called) > 0 { // reading the topics takes milliseconds
		topics := library.Topics()
		d.Methods, c = methods(topics, called, left), cautions(topics, called)
	}
	cell := 0
	for _, part := range b.Parts {
		if part.Cell == nil {
			if strings.TrimSpace(part.Text) != "" {
				d.Blocks = append(d.Blocks, page.Prose{Source: part.Text})
			}
			continue
		}
		if cell == 0 && len(c) > 0 {
			d.Blocks = append(d.Blocks, c) // in front of the work, where they are read in time
		}
		d.Blocks = append(d.Blocks, pageCell(part.Cell, shown[cell]))
		cell++
	}
	return d
}

// Cells lays out what each cell showed.
func Cells(b book.Book, shown [][]Shown) []page.Cell {
	var cells []page.Cell
	for i, c := range b.Cells() {
		cells = append(cells, pageCell(c, shown[i]))
	}
	return cells
}

func pageCell(c *book.Cell, shown []Shown) page.Cell {
	out := page.Cell{Source: strings.TrimRight(c.Code, "\n"), Line: c.Line}
	for _, s := range shown {
		out.Results = append(out.Results, s.Page())
	}
	return out
}

// methods lists the sources of what the cells called, and whatever left its range.
func methods(topics []library.Topic, called map[string]bool, left map[string][]string) []page.Method {
	var list []page.Method
	for _, t := range topics {
		if called[t.Name] && t.Source != "" || len(left[t.Name]) > 0 {
			list = append(list, page.Method{Name: t.Name, What: t.Summary, Source: t.Source, Valid: t.Valid, Minds: left[t.Name], Accuracy: t.Accuracy})
		}
	}
	return list
}

// cautions lists what the calls make relevant, each text once.
func cautions(topics []library.Topic, called map[string]bool) page.Cautions {
	var list page.Cautions
	seen := map[string]bool{}
	for _, t := range topics {
		if called[t.Name] && t.Caution != "" && !seen[t.Caution] {
			seen[t.Caution] = true
			list = append(list, page.Entry{Name: t.Name, Text: sentence(t.Caution)})
		}
	}
	return list
}

// sentence begins a text with a capital letter.
func sentence(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(first)) + text[size:]
}

// record tells what the page was made from.
func record(b book.Book) []page.Entry {
	return []page.Entry{
		{Name: "lode", Text: Version()},
		{Name: "notebook", Text: b.File},
		{Name: "SHA-256 of the notebook", Text: fmt.Sprintf("%x", sha256.Sum256([]byte(b.String())))},
	}
}

// Version returns the version of the program.
func Version() string {
	if info, ok := debug.ReadBuildInfo(); ok && info.Main.Version != "" && info.Main.Version != "(devel)" {
		return info.Main.Version
	}
	return "development version"
}
