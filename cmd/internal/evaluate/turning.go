package evaluate

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"strings"
	"time"

	"lode/cmd/internal/present"
	"lode/engine"
	"lode/engine/book"
	"lode/engine/issue"
	"lode/render/page"
)

// This file turns knobs: to where a request wants them, and, for a page that is shared,
// through positions that are computed beforehand, one run each.
//
// How many positions a page gets is decided by a list of plans, from fine to coarse: the
// first one that fits into the time and keeps the page within its size is taken. One knob
// has 17 positions. Two have every combination of nine. With more, or where combinations
// are too large, each knob has nine positions with the others at the notebook's values.

// DefaultPageSize is the size in bytes that positions of knobs may bring a page to.
const DefaultPageSize = 300_000

// longestTurning is the time that positions may take together; a third of the time limit if
// that is less.
const longestTurning = 20 * time.Second

// liveStops is how many stops a knob has on a page that is served.
const liveStops = 101

// plan is a number of stops for each knob, in all combinations or one knob at a time.
type plan struct {
	stops    int
	combined bool
}

func plans(knobs int) []plan {
	switch knobs {
	case 1:
		return []plan{{17, true}, {9, true}, {5, true}, {3, true}}
	case 2:
		return []plan{{9, true}, {5, true}, {9, false}, {5, false}, {3, false}}
	}
	return []plan{{9, false}, {5, false}, {3, false}}
}

// runs is how many runs a plan takes, at most.
func (p plan) runs(knobs int) int {
	n := 1
	for range knobs {
		n *= p.stops
	}
	if !p.combined {
		n = knobs * (p.stops - 1)
	}
	return n
}

func (p plan) note() string {
	if p.combined {
		return "The positions were computed with the page."
	}
	return "The positions were computed with the page, for one knob at a time: turning one puts the others back."
}

// turn sets the knobs of a notebook as the request wants. A page that is served goes on
// where a knob has gone or got other bounds.
func (c *child) turn(n *engine.Notebook) *issue.Issue {
	n.Turned = map[string]float64{}
	for name, value := range c.Turned {
		k, ok := knobNamed(n, name)
		switch {
		case ok && present.Allowed(k, value) == nil:
			n.Turned[name] = value
		case !c.Live && ok:
			return present.Allowed(k, value)
		case !c.Live:
			return c.noKnob(n, name)
		}
	}
	for _, setting := range c.Knobs {
		name, text, _ := strings.Cut(setting, "=")
		k, ok := knobNamed(n, strings.TrimSpace(name))
		if !ok {
			return c.noKnob(n, name)
		}
		value, failed := present.Turned(k, text)
		if failed != nil {
			return failed
		}
		if _, moved := c.Turned[k.Name]; !moved {
			n.Turned[k.Name] = value
		}
	}
	return nil
}

func knobNamed(n *engine.Notebook, name string) (engine.Knob, bool) {
	for _, k := range n.Knobs() {
		if k.Name == name {
			return k, true
		}
	}
	return engine.Knob{}, false
}

func (c *child) noKnob(n *engine.Notebook, name string) *issue.Issue {
	i := &issue.Issue{Place: issue.Place{File: c.File}, Code: "knob-value", What: "the notebook has no such knob", Got: strings.TrimSpace(name)}
	var names []string
	for _, k := range n.Knobs() {
		names = append(names, k.Name)
	}
	if i.Want = "one of " + strings.Join(names, ", "); len(names) == 0 {
		i.Want, i.Hint = "a notebook with knobs", `knob("turns", 6800, 5000, 9000) in a cell makes one`
	}
	return i
}

// standing notes where the knobs stand in the record of the run.
func (c *child) standing(n *engine.Notebook) {
	for _, k := range n.Knobs() {
		if c.record.Knobs == nil {
			c.record.Knobs = map[string]float64{}
		}
		c.record.Knobs[k.Name] = now(n, k)
	}
}

func now(n *engine.Notebook, k engine.Knob) float64 {
	if x, ok := n.Turned[k.Name]; ok {
		return x
	}
	return k.Value
}

// document is the page of a run as far as it does not turn.
func (c *child) document(n *engine.Notebook) page.Document {
	d := present.Document(n.Book, c.shown, n.Called(), c.left)
	for _, k := range n.Knobs() {
		d.Record = append(d.Record, page.Entry{Name: "knob " + k.Name, Text: present.Amount(k, now(n, k))})
	}
	return d
}

// served sends the page of a notebook whose knobs turn where it is served.
func (c *child) served(n *engine.Notebook) {
	d := c.document(n)
	d.Turning = &page.Turning{Knobs: laid(n, liveStops), Live: true}
	pieces, err := c.printing.press.Pieces(d)
	if err == nil && int64(pieces.Len()) > pages*c.Limits.Output {
		err = errOutput
	}
	if err != nil {
		c.noPage(err)
		return
	}
	c.send(Event{Served: &pieces})
}

// html makes the page, with the notebook and the record of the run in it, and with as many
// positions of its knobs as fit.
func (c *child) html(n *engine.Notebook) ([]byte, error) {
	d, knobs := c.document(n), n.Knobs()
	if len(knobs) == 0 {
		return c.write(d)
	}
	limit := c.pageSize()
	t := turner{n: n, knobs: knobs, known: map[string][]page.Cell{}, ends: time.Now().Add(min(longestTurning, c.Limits.Time/3))}
	for _, p := range plans(len(knobs)) {
		if !t.affords(p, c.took) {
			continue
		}
		var ok bool
		if d.Turning, ok = t.turning(p); !ok {
			break
		}
		html, err := c.write(d)
		if err != nil && !errors.Is(err, errOutput) || err == nil && int64(len(html)) <= limit {
			return html, err
		}
	}
	d.Turning = &page.Turning{Knobs: laid(n, 3), Note: fmt.Sprintf("Positions to turn them here would make the page larger than %d kB, or take too long; the program turns them, and its option -page-size allows more.", limit/1000)}
	return c.write(d)
}

// pageSize is what positions of knobs may bring the page to.
func (c *child) pageSize() int64 {
	if c.PageSize > 0 {
		return c.PageSize
	}
	return DefaultPageSize
}

func (c *child) write(d page.Document) ([]byte, error) {
	data, entries := c.carried()
	d.Record = append(d.Record[:len(d.Record):len(d.Record)], entries...)
	b := sheet{left: pages * c.Limits.Output}
	if err := page.Write(&b, d); err != nil {
		return nil, err
	}
	return page.Attach(b.Bytes(), Enclosed{File: filepath.Base(c.File), Source: c.Source, Record: c.record, Data: data})
}

// laid lays out the knobs of a notebook with a number of stops each.
func laid(n *engine.Notebook, count int) []page.Knob {
	var list []page.Knob
	for _, k := range n.Knobs() {
		list = append(list, present.Knob(k, present.Stops(k, count), now(n, k)))
	}
	return list
}

// turner runs a notebook at many positions.
type turner struct {
	n     *engine.Notebook
	knobs []engine.Knob
	known map[string][]page.Cell // by the values
	ends  time.Time
}

func (t *turner) affords(p plan, one time.Duration) bool {
	return time.Now().Add(time.Duration(p.runs(len(t.knobs))) * one).Before(t.ends)
}

// turning computes the positions of a plan; ok is false where time ran out.
func (t *turner) turning(p plan) (turning *page.Turning, ok bool) {
	turning = &page.Turning{Note: p.note()}
	var stops [][]float64
	var base []int
	for _, k := range t.knobs {
		s := present.Stops(k, p.stops)
		if x := now(t.n, k); x != k.Value {
			s = inserted(s, x)
		}
		knob := present.Knob(k, s, now(t.n, k))
		stops, base = append(stops, s), append(base, knob.At)
		turning.Knobs = append(turning.Knobs, knob)
	}
	if len(t.knobs) == 1 {
		turning.Note = fmt.Sprintf("Its %d positions were computed with the page.", len(stops[0]))
	}
	for _, at := range positions(stops, base, p.combined) {
		if time.Now().After(t.ends) {
			return nil, false
		}
		turning.Positions = append(turning.Positions, page.Position{Stops: at, Cells: t.cells(stops, at)})
	}
	return turning, true
}

// inserted puts a value among stops in order.
func inserted(stops []float64, x float64) []float64 {
	var list []float64
	for i, s := range stops {
		if x < s && (i == 0 || x > stops[i-1]) {
			list = append(list, x)
		}
		list = append(list, s)
	}
	return list
}

// positions lists the stops of all knobs for each position but the page's own, which needs
// no data but must be found.
func positions(stops [][]float64, base []int, combined bool) [][]int {
	all := [][]int{append([]int(nil), base...)}
	if !combined {
		for i := range stops {
			for j := range stops[i] {
				if j != base[i] {
					at := append([]int(nil), base...)
					at[i] = j
					all = append(all, at)
				}
			}
		}
		return all
	}
	all = [][]int{nil}
	for i := range stops {
		var longer [][]int
		for _, at := range all {
			for j := range stops[i] {
				longer = append(longer, append(append([]int(nil), at...), j))
			}
		}
		all = longer
	}
	return all
}

// cellAt returns the number of the cell that holds a line.
func cellAt(cells []*book.Cell, line int) int {
	at := 0
	for i, c := range cells {
		if c.Line <= line {
			at = i
		}
	}
	return at
}

// cells runs the notebook at one position.
func (t *turner) cells(stops [][]float64, at []int) []page.Cell {
	turned := map[string]float64{}
	for i, k := range t.knobs {
		turned[k.Name] = stops[i][at[i]]
	}
	key := fmt.Sprint(turned)
	if cells, ok := t.known[key]; ok {
		return cells
	}
	n := *t.n
	n.Turned, n.At = turned, nil
	shown := make([][]present.Shown, len(n.Book.Cells()))
	ctx, stop := context.WithDeadline(context.Background(), t.ends)
	defer stop()
	failed := n.Run(ctx, func(r engine.Result) { shown[r.Cell] = present.Behind(shown[r.Cell], present.Result(r)) })
	cells := present.Cells(n.Book, shown)
	if failed != nil {
		f := present.PageFault(*failed)
		cells[cellAt(n.Book.Cells(), failed.Line)].Fault = &f
	}
	t.known[key] = cells
	return cells
}
