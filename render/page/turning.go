package page

import (
	"bytes"
	"compress/gzip"
	_ "embed"
	"encoding/base64"
	"encoding/json"
	"html/template"
)

// This file writes what a reader may turn. A page from disk carries positions that were
// computed beforehand: for each the results that differ from those on the page, packed.

//go:embed turning.js
var turning string

//go:embed live.js
var live string

// Turning is what a reader may turn: on the page itself, or through the program that serves
// it.
type Turning struct {
	Knobs     []Knob
	Note      string // how far the positions go
	Positions []Position
	Live      bool // the program that serves the page answers
}

// Knob is a value to turn.
type Knob struct {
	Name  string
	Stops []string // its values as texts, from low to high
	At    int      // which of them the page shows
	Base  int      // which of them is the notebook's own
	Exact []string // the same values for the program that serves the page
}

// Position is what the cells show with each knob at the stop of that number. The cells are
// those of the document in order.
type Position struct {
	Stops []int
	Cells []Cell
}

// Last returns the number of the highest stop.
func (k Knob) Last() int { return len(k.Stops) - 1 }

// Text returns the value that the page shows.
func (k Knob) Text() string { return k.Stops[k.At] }

// Range returns the lowest and the highest value.
func (k Knob) Range() string { return k.Stops[0] + " to " + k.Stops[len(k.Stops)-1] }

// JSON returns a list of texts for the page's script.
func (k Knob) JSON() (string, error) {
	text, err := json.Marshal(k.Stops)
	return string(text), err
}

// ExactJSON returns the exact values for the page's script.
func (k Knob) ExactJSON() (string, error) {
	text, err := json.Marshal(k.Exact)
	return string(text), err
}

// pieces is what the page's script reads: the distinct pieces, and for each position the
// pieces of the cells that differ from the page.
type pieces struct {
	Pieces []template.HTML
	At     map[string]map[int][]int
}

// positions packs the positions, or returns nothing if there are none.
func (p *writer) positions(base []cellView) (template.JS, error) {
	t := p.document.Turning
	if t == nil || len(t.Positions) == 0 {
		return "", nil
	}
	pack := packing{number: map[template.HTML]int{}, table: pieces{At: map[string]map[int][]int{}}}
	// One cell after the other, so that what is alike lies close together.
	for _, c := range base {
		for _, pos := range t.Positions {
			if c.Number > len(pos.Cells) {
				continue
			}
			shown, err := p.results(pos.Cells[c.Number-1], c.Number)
			if err != nil {
				return "", err
			}
			pack.add(pos.Stops, c, shown)
		}
	}
	return pack.text()
}

type packing struct {
	number map[template.HTML]int
	table  pieces
}

func (k *packing) add(stops []int, base cellView, shown []template.HTML) {
	same := len(shown) == len(base.Shown)
	for i := range shown {
		same = same && shown[i] == base.Shown[i]
	}
	key, _ := json.Marshal(stops)
	if k.table.At[string(key)] == nil {
		k.table.At[string(key)] = map[int][]int{}
	}
	if same {
		return
	}
	list := []int{}
	for i, s := range shown {
		if i < len(base.Shown) && s == base.Shown[i] {
			list = append(list, -1) // as on the page
			continue
		}
		n, ok := k.number[s]
		if !ok {
			n = len(k.table.Pieces)
			k.number[s] = n
			k.table.Pieces = append(k.table.Pieces, s)
		}
		list = append(list, n)
	}
	k.table.At[string(key)][base.Number] = list
}

// text packs the table for a script: JSON, gzip, base64.
func (k *packing) text() (template.JS, error) {
	plain, err := json.Marshal(k.table)
	if err != nil {
		return "", err
	}
	var b bytes.Buffer
	z, err := gzip.NewWriterLevel(&b, gzip.BestCompression)
	if err != nil {
		return "", err
	}
	if _, err = z.Write(plain); err == nil {
		err = z.Close()
	}
	return template.JS(`"` + base64.StdEncoding.EncodeToString(b.Bytes()) + `"`), err
}
