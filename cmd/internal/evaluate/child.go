package evaluate

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"path/filepath"
	"runtime"
	"runtime/debug"
	"strconv"

	"lode/cmd/internal/library"
	"lode/cmd/internal/present"
	"lode/cmd/internal/record"
	"lode/engine"
	"lode/engine/issue"
	"lode/render/page"
	"lode/render/text"
	"lode/units"
)

// deepest is how much stack one goroutine of the child may take.
const deepest = 256 << 20

// Serve is the child: it reads one request and writes events until it is done.
func Serve(in io.Reader, out io.Writer) error {
	var r Request
	if err := json.NewDecoder(in).Decode(&r); err != nil {
		return err
	}
	r.Limits = r.Limits.orDefaults()
	debug.SetMaxStack(deepest)
	if err := confine(r.Limits); err != nil {
		return err
	}
	c := &child{Request: r, out: bufio.NewWriter(out), style: text.Style{Width: r.Width, Colour: r.Colour}}
	if err := c.serve(); err != nil {
		return err
	}
	c.send(Event{Done: true})
	return c.out.Flush()
}

type child struct {
	Request
	out     *bufio.Writer
	style   text.Style
	shown   [][]present.Shown
	pending []present.Shown
	values  []Value
	cell    int
	output  int64
	stop    context.CancelCauseFunc
	record  *record.Record
}

func (c *child) send(e Event) {
	line, err := json.Marshal(e)
	if err != nil {
		line, _ = json.Marshal(Event{Failed: &issue.Issue{What: "a result cannot be told", Got: err.Error()}})
	}
	c.out.Write(append(line, '\n'))
	c.out.Flush()
}

func (c *child) serve() error {
	lib, err := library.Load()
	if err != nil {
		return err
	}
	n := engine.Open(lib, c.File, []byte(c.Source))
	if len(n.Issues) > 0 {
		c.send(Event{Issues: n.Issues})
		return nil
	}
	if c.Check {
		return nil
	}
	if c.Against != nil {
		c.compare(lib, n)
		return nil
	}
	c.run(n)
	return nil
}

func (c *child) run(n *engine.Notebook) {
	c.shown = make([][]present.Shown, len(n.Book.Cells()))
	c.record = record.New(present.Version(), runtime.Version(), c.Source)
	ctx, stop := context.WithCancelCause(context.Background())
	defer stop(nil)
	c.stop = stop
	n.At = func(i issue.Issue) { c.send(Event{At: &i}) }
	failed := n.Run(ctx, c.result)
	c.flush()
	if cause := context.Cause(ctx); failed != nil && cause != nil && cause != context.Canceled {
		failed.Code, failed.What, failed.Got, failed.Want, failed.Hint = "output-limit", "the notebook prints too much", "more than "+size(c.Limits.Output), "less output", "show a table of fewer rows, or raise the limit with -output"
	}
	if failed != nil {
		c.send(Event{Failed: failed})
		return
	}
	c.send(Event{Record: c.record})
	if c.Page {
		c.page(n)
	}
}

func size(bytes int64) string { return fmt.Sprintf("%d MiB", bytes>>20) }

func (c *child) page(n *engine.Notebook) {
	html, err := c.html(n)
	if err != nil {
		c.send(Event{Failed: &issue.Issue{Code: "page", What: "the page cannot be made", Got: err.Error(), Place: issue.Place{File: c.File}}})
		return
	}
	c.send(Event{Page: html})
}

// html makes the page, with the notebook and the record of the run in it.
func (c *child) html(n *engine.Notebook) ([]byte, error) {
	var b bytes.Buffer
	if err := page.Write(&b, present.Document(n.Book, c.shown, n.Called())); err != nil {
		return nil, err
	}
	return page.Attach(b.Bytes(), Enclosed{File: filepath.Base(c.File), Source: c.Source, Record: c.record})
}

// result takes one result of the run.
func (c *child) result(e engine.Result) {
	if e.Cell != c.cell {
		c.flush()
		c.cell = e.Cell
	}
	s := present.Printed(e.Printed)
	if e.Printed == "" {
		s = present.Value(e.Label, e.Value)
		c.values = append(c.values, value(e, s))
		c.record.Add(e.Cell, e.Line, e.Label, e.Value, s.Text)
	}
	if c.output += int64(len(s.Text) + len(s.Label) + 16); c.output > c.Limits.Output {
		c.stop(fmt.Errorf("output limit"))
		return
	}
	c.pending = append(c.pending, s)
	c.shown[e.Cell] = append(c.shown[e.Cell], s)
}

func value(e engine.Result, s present.Shown) Value {
	v := Value{Label: e.Label, Line: e.Line, Text: s.Text}
	switch x := e.Value.(type) {
	case units.Quantity:
		v.Number, v.Unit = strconv.FormatFloat(x.SI(), 'g', -1, 64), x.Kind().Symbol
	case float64:
		v.Number = strconv.FormatFloat(x, 'g', -1, 64)
	case int:
		v.Number = strconv.Itoa(x)
	}
	if v.Text == "" {
		v.Text = present.Terminal(text.Style{}, []present.Shown{s})
	}
	return v
}

// flush sends what the current cell has given so far.
func (c *child) flush() {
	if len(c.pending) > 0 {
		c.send(Event{Shown: &Shown{Cell: c.cell, Terminal: present.Terminal(c.style, c.pending), Values: c.values}})
		c.pending, c.values = nil, nil
	}
}
