package evaluate

import (
	"lode/cmd/internal/present"
	"lode/engine"
	"lode/render/page"
)

// This file writes a served page while the notebook still runs: figures are drawn on one processor while
// the next are computed on another.

// printing is a page that is being written.
type printing struct {
	press *page.Press
	jobs  chan job
	done  chan struct{}
}

// job is a result to write: its cell from one, its place in it and how many figures stand before it.
type job struct {
	cell, index, figures int
	result               page.Result
}

// mostJobs is how many results may wait; those beyond are written with the page.
const mostJobs = 1000

// begun begins the page of a run.
func begun(press *page.Press, n *engine.Notebook) *printing {
	press.Begin(present.Document(n.Book, make([][]present.Shown, len(n.Book.Cells())), nil, nil))
	p := &printing{press, make(chan job, mostJobs), make(chan struct{})}
	go func() {
		defer close(p.done)
		for j := range p.jobs {
			_ = press.Prepare(j.cell, j.index, j.figures, j.result) // what fails fails again with the page
		}
	}()
	return p
}

// take takes the last of the results of a cell, from zero, unless it is text that may go on.
func (p *printing) take(cell int, shown []present.Shown) {
	last := len(shown) - 1
	if shown[last].Printed() {
		return
	}
	j := job{cell: cell + 1, index: last, result: shown[last].Page()}
	for _, s := range shown[:last] {
		if s.Figure != nil {
			j.figures++
		}
	}
	select {
	case p.jobs <- j:
	default:
	}
}

// end waits until what was taken is written.
func (p *printing) end() {
	close(p.jobs)
	<-p.done
}
