package evaluate

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"runtime"
	"runtime/debug"
	"strconv"
	"sync"
	"time"

	"lode/cmd/internal/library"
	"lode/cmd/internal/present"
	"lode/cmd/internal/record"
	"lode/engine"
	"lode/engine/issue"
	elibrary "lode/engine/library"
	"lode/engine/run"
	"lode/render/text"
	"lode/units"
)

// deepest is how much stack one goroutine of the child may take.
const deepest = 256 << 20

// stays is the processor time of a child that takes one request after the other; each is
// stopped by the parent when its own time is over.
const stays = 24 * time.Hour

// Serve is the child: it reads one request and writes events until it is done.
func Serve(in io.Reader, out io.Writer) error {
	orders := json.NewDecoder(in)
	var r Request
	if err := orders.Decode(&r); err != nil {
		return err
	}
	lib, err := needed(r)
	if err != nil {
		return err
	}
	debug.SetGCPercent(rubbish(r)) // off until here: what a start allocates stays
	runtime.GC()                   // takes what it needs while there is memory: without it the runtime fails
	debug.SetMaxStack(deepest)
	limits := r.Limits.orDefaults()
	if r.Stay {
		limits.Time = stays
	}
	if err := confine(limits); err != nil {
		return err
	}
	w := bufio.NewWriter(out)
	c, k := newChild(r, w), newKept(lib)
	p := &post{child: c, next: make(chan Request, 1)}
	go p.listen(orders)
	for {
		c.serve(k)
		if c.send(Event{Done: true}); !c.Stay {
			return nil
		}
		c = newChild(<-p.next, w)
		p.handTo(c)
	}
}

// rubbish is how much memory may be given up, in percent of what is in use, before it is collected. Runs of a
// child that stays are waited for, and most of them then need no collection.
func rubbish(r Request) int {
	if r.Stay {
		return 400
	}
	return 100
}

// needed is the library for one request; a child that stays does not know what comes.
func needed(r Request) (*elibrary.Library, error) {
	if r.Stay || r.Against != nil {
		return library.Load()
	}
	return library.LoadFor(r.Source)
}

func newChild(r Request, out *bufio.Writer) *child {
	r.Limits = r.Limits.orDefaults()
	c := &child{Request: r, out: out, style: text.Style{Width: r.Width, Colour: r.Colour}, files: make(chan delivery), fetched: map[string]delivery{}, left: map[string][]string{}}
	c.ctx, c.stop = context.WithCancelCause(context.Background())
	return c
}

// post hands what the parent sends to the run in hand.
type post struct {
	mu    sync.Mutex
	child *child
	next  chan Request
}

func (p *post) handTo(c *child) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.child = c
}

func (p *post) run() *child {
	p.mu.Lock()
	defer p.mu.Unlock()
	return p.child
}

type child struct {
	Request
	ctx    context.Context
	stop   context.CancelCauseFunc
	output int64
	style  text.Style

	files   chan delivery
	fetched map[string]delivery // by name; used by the running notebook alone

	left map[string][]string // warnings that were told, by the function of the library

	telling  sync.Mutex // a run that was stopped may still show something
	told     bool       // how the run ended; nothing is shown behind it
	shown    [][]present.Shown
	pending  []present.Shown
	waiting  int // bytes of pending
	values   []Value
	cell     int
	record   *record.Record
	printing *printing     // of a served page
	took     time.Duration // of the run

	sending sync.Mutex
	out     *bufio.Writer
}

// listen takes what the parent sends while the notebook runs. A child whose parent is gone
// ends.
func (p *post) listen(orders *json.Decoder) {
	for {
		var m message
		if orders.Decode(&m) != nil {
			os.Exit(1)
		}
		switch {
		case m.Stop:
			p.run().stop(context.Canceled)
		case m.File != nil:
			p.run().files <- *m.File
		case m.Next != nil:
			p.next <- *m.Next
		}
	}
}

func (c *child) send(e Event) {
	line, err := encoded(e)
	if err != nil {
		line, _ = encoded(Event{Failed: &issue.Issue{Code: Crashed, What: "a result cannot be told", Got: err.Error()}})
	}
	c.sending.Lock()
	defer c.sending.Unlock()
	c.out.Write(line)
	c.out.Flush()
}

// encoded writes an event as a line of JSON, HTML as it is.
func encoded(e Event) ([]byte, error) {
	var b bytes.Buffer
	j := json.NewEncoder(&b)
	j.SetEscapeHTML(false)
	err := j.Encode(e)
	return b.Bytes(), err
}

func (c *child) serve(k *kept) {
	n := k.open(c)
	if len(n.Issues) > 0 && !c.Stay { // with all that hints may name
		if whole, err := library.Load(); err == nil {
			k = newKept(whole)
			n = k.open(c)
		}
	}
	if len(n.Issues) > 0 {
		c.send(Event{Issues: fewer(n.Issues)})
		return
	}
	if i := c.turn(n); i != nil {
		c.send(Event{Issues: []issue.Issue{shorter(*i)}})
		return
	}
	n.Limits = run.Limits{Steps: c.Limits.Steps, Depth: c.Limits.Depth}
	switch {
	case c.Check:
	case c.Against != nil:
		c.compare(k.lib, n)
	case c.Live:
		c.printing = begun(k.press, n)
		c.run(n)
	default:
		c.run(n)
	}
}

// errOutput is why a run stops that shows too much.
var errOutput = errors.New("output limit")

func (c *child) run(n *engine.Notebook) {
	c.shown = make([][]present.Shown, len(n.Book.Cells()))
	c.record = record.New(present.Version(), runtime.Version(), c.Source)
	c.standing(n)
	began := time.Now()
	n.At = func(i issue.Issue) { i = shorter(i); c.send(Event{At: &i}) }
	n.Part = c.part(began)
	failed := n.Run(c.ctx, c.result)
	c.took = time.Since(began)
	c.telling.Lock()
	defer c.telling.Unlock()
	c.told = true
	if c.printing != nil {
		c.printing.end()
	}
	c.flush()
	switch {
	case failed != nil && context.Cause(c.ctx) == errOutput:
		c.fail(c.tooMuch(*failed))
	case failed != nil:
		c.fail(*failed)
	case c.Live:
		c.served(n)
	default:
		c.record.Read(c.used())
		c.send(Event{Record: c.record})
		c.page(n)
	}
}

// often is the least time between two tellings of how far a calculation is.
const often = 100 * time.Millisecond

// part tells the parent how far a calculation of the library is, now and then.
func (c *child) part(last time.Time) func(part float64) {
	return func(part float64) {
		if part > 0 && time.Since(last) > often {
			last = time.Now()
			c.send(Event{Part: part})
		}
	}
}

func (c *child) fail(i issue.Issue) {
	i = shorter(i)
	c.send(Event{Failed: &i})
}

func (c *child) tooMuch(i issue.Issue) issue.Issue {
	i.Code, i.What, i.Got, i.Want, i.Hint = OutputLimit, "the notebook shows too much", "more than "+size(c.Limits.Output), "less output", "show a table of fewer rows, or raise the limit with -output"
	return i
}

func size(bytes int64) string { return fmt.Sprintf("%d MiB", bytes>>20) }

func (c *child) page(n *engine.Notebook) {
	if !c.Page {
		return
	}
	html, err := c.html(n)
	if err != nil {
		c.noPage(err)
		return
	}
	c.send(Event{Page: html})
}

// noPage tells why there is no page.
func (c *child) noPage(err error) {
	at := issue.Place{File: c.File}
	if errors.Is(err, errOutput) {
		c.fail(c.tooMuch(issue.Issue{Place: at}))
		return
	}
	c.fail(issue.Issue{Code: Crashed, What: "the page cannot be made", Got: err.Error(), Place: at})
}

// pages is how many times the limit of output the page may be long, mark-up included.
const pages = 8

// sheet is a buffer that does not grow without end.
type sheet struct {
	bytes.Buffer
	left int64
}

func (s *sheet) Write(b []byte) (int, error) {
	if s.left -= int64(len(b)); s.left < 0 {
		return 0, errOutput
	}
	return s.Buffer.Write(b)
}

// WriteString keeps the promise of Write.
func (s *sheet) WriteString(text string) (int, error) { return s.Write([]byte(text)) }

// result takes one result of the run.
func (c *child) result(e engine.Result) {
	c.telling.Lock()
	defer c.telling.Unlock()
	if c.told || context.Cause(c.ctx) == errOutput {
		return
	}
	if e.Cell != c.cell || c.waiting > 1<<20 {
		c.flush()
		c.cell = e.Cell
	}
	s := present.Result(e)
	long := len(s.Text) + len(e.Printed) + len(s.Label) + 16
	if c.output += int64(long); c.output > c.Limits.Output {
		c.stop(errOutput)
		return
	}
	m, warns := e.Value.(engine.Minds)
	if warns {
		c.left[m.Of] = append(c.left[m.Of], m.Texts()...)
	}
	c.shown[e.Cell] = present.Behind(c.shown[e.Cell], s)
	if c.printing != nil { // whoever looks at the page takes nothing else
		c.printing.take(e.Cell, c.shown[e.Cell])
		return
	}
	if e.Printed == "" && s.Working == nil && !warns {
		c.record.Add(e.Cell, e.Line, e.Label, e.Value, s.Text)
		c.values = append(c.values, c.value(e, s))
	}
	c.waiting += long
	c.pending = present.Behind(c.pending, s)
}

func minds(e engine.Result) bool {
	_, ok := e.Value.(engine.Minds)
	return ok
}

// value is a result for comparing runs; its cells are those that were recorded last.
func (c *child) value(e engine.Result, s present.Shown) Value {
	v := Value{Label: e.Label, Line: e.Line, Text: s.Text}
	if n := len(c.record.Results); n > 0 && (s.Table != nil || s.Figure != nil) {
		v.Columns = c.record.Results[n-1].Columns
	}
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
		c.pending, c.values, c.waiting = nil, nil, 0
	}
}
