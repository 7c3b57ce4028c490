package schematic

import "lode/units/ladder"

// This file lays out and draws branches. A branch across has room above and below its wire, a
// branch down has room left and right of it; both are drawn between two points at any distance
// of at least its length.

// room is what a branch takes up: its length along the wire, and to both sides of it. Before is above a
// branch across and left of a branch down.
type room struct{ length, before, after float64 }

// bus is how far the wires that join parallel branches stand off, apart the least distance of two branches.
const (
	bus   = 9
	apart = 8
)

func measure(b ladder.Branch, down bool) room {
	switch {
	case b.Symbol != "":
		return partRoom(b, down)
	case len(b.Parallel) > 0:
		return parallelRoom(b, down)
	}
	var r room
	for _, inner := range b.Series {
		s := measure(inner, down)
		r = room{r.length + s.length, max(r.before, s.before), max(r.after, s.after)}
	}
	return r
}

func partRoom(b ladder.Branch, down bool) room {
	if down {
		r := room{length: 2 * half, before: thick, after: thick}
		if w := labelWidth(b.Name, b.Value); w > 0 {
			r.after = thick + 5 + w
		}
		return r
	}
	return room{length: max(2*half, labelWidth(b.Name, b.Value)+apart), before: thick + 3 + labelHeight(b.Name, b.Value), after: thick}
}

func parallelRoom(b ladder.Branch, down bool) room {
	r := measure(b.Parallel[0], down)
	for _, inner := range b.Parallel[1:] {
		s := measure(inner, down)
		r.length = max(r.length, s.length)
		r.after += apart + s.before + s.after
	}
	r.length += 2 * bus
	return r
}

// branch draws b with its wire starting at x, y over a length.
func (p *pen) branch(b ladder.Branch, x, y, length float64, down bool) {
	lead := (length - measure(b, down).length) / 2
	forward := func(by float64) (float64, float64) {
		if down {
			return x, y + by
		}
		return x + by, y
	}
	ahead := func(by float64) {
		x2, y2 := forward(by)
		p.wire(x, y, x2, y2)
		x, y = x2, y2
	}
	ahead(lead)
	switch {
	case b.Symbol != "":
		p.part(b, x, y, down)
		x, y = forward(measure(b, down).length)
	case len(b.Parallel) > 0:
		p.parallel(b, x, y, down)
		x, y = forward(measure(b, down).length)
	}
	for _, inner := range b.Series {
		l := measure(inner, down).length
		p.branch(inner, x, y, l, down)
		x, y = forward(l)
	}
	ahead(lead)
}

func (p *pen) part(b ladder.Branch, x, y float64, down bool) {
	r := partRoom(b, down)
	if down {
		turtle{p, x, y + half, true}.draw(b.Symbol)
		p.label(b.Name, b.Value, x+thick+5, y+half-labelHeight(b.Name, b.Value)/2+1, false)
		return
	}
	middle := x + r.length/2
	p.wire(x, y, middle-half, y)
	p.wire(middle+half, y, x+r.length, y)
	turtle{p, middle, y, false}.draw(b.Symbol)
	p.label(b.Name, b.Value, middle, y-r.before, true)
}

func (p *pen) parallel(b ladder.Branch, x, y float64, down bool) {
	length, side := measure(b, down).length, 0.0
	if !down {
		p.wire(x, y, x+bus, y)
		p.wire(x+length-bus, y, x+length, y)
		x += bus
	} else {
		p.wire(x, y, x, y+bus)
		p.wire(x, y+length-bus, x, y+length)
		y += bus
	}
	last := 0.0
	for i, inner := range b.Parallel {
		s := measure(inner, down)
		if i > 0 {
			side += apart + s.before
			p.ends(x, y, length-2*bus, last, side, down)
			last = side
		}
		if down {
			p.branch(inner, x+side, y, length-2*bus, true)
		} else {
			p.branch(inner, x, y+side, length-2*bus, false)
		}
		side += s.after
	}
}

// ends joins the ends of a branch with those of the one beside it.
func (p *pen) ends(x, y, length, from, to float64, down bool) {
	for _, at := range [...]float64{0, length} {
		if down {
			p.wire(x+from, y+at, x+to, y+at)
			p.dot(x+from, y+at)
			continue
		}
		p.wire(x+at, y+from, x+at, y+to)
		p.dot(x+at, y+from)
	}
}
