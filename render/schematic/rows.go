package schematic

import "lode/units/ladder"

// This file breaks a ladder into rows and sets them below each other.

// row is a part of a ladder that is drawn in one line.
type row struct {
	steps               []ladder.Step
	width, above, below float64
	entry, exit         bool // it goes on from, or in, another row
}

// margin is the room around everything, stub the wire at a row's broken ends.
const (
	margin = 6
	stub   = 22
)

// rowsOf fills rows from the left. What ends the circuit stays with what comes before it.
func rowsOf(steps []ladder.Step, width float64) []row {
	var rows []row
	current := row{}
	for i, s := range steps {
		c := columnOf(s)
		if len(current.steps) > 0 && s.Way != ladder.Terminal && current.width+needs(steps[i:])+2*margin > width {
			current.exit = true
			current.width += stub
			rows = append(rows, current)
			current = row{entry: true, width: stub, above: line + 6}
		}
		current.steps = append(current.steps, s)
		current.width += c.width
		current.above, current.below = max(current.above, c.above), max(current.below, c.below)
	}
	rows = append(rows, current)
	for i := range rows {
		if rows[i].exit {
			rows[i].above = max(rows[i].above, line+6)
		}
		rows[i].below = max(rows[i].below, 2*half)
	}
	return rows
}

// needs is the room that the first of steps needs to stand in a row that others may break off from.
func needs(steps []ladder.Step) float64 {
	width := columnOf(steps[0]).width
	if len(steps) == 1 {
		return width
	}
	if steps[1].Way == ladder.Terminal {
		return width + columnOf(steps[1]).width
	}
	return width + stub
}

func (d Drawing) draw(width float64) *pen {
	p := &pen{width: width}
	y := float64(margin)
	for i, r := range rowsOf(d.ladder.Steps, width) {
		p.width = max(p.width, r.width+2*margin)
		top := y + max(r.above, 4)
		foot := top + r.below + 6
		p.row(r, i, top, foot)
		y = foot + 30
	}
	p.height = y
	return p
}

// row draws one row; ground joins the places where columns touch it.
func (p *pen) row(r row, number int, top, foot float64) {
	x := float64(margin)
	var touches []float64
	if r.entry {
		p.broken(number-1, x+4, x+stub, top, foot)
		touches = append(touches, x+4+3.5)
		x += stub
	}
	for i, s := range r.steps {
		found := p.step(s, x, top, foot, i == 0 && !r.entry)
		touches = append(touches, found...)
		x += columnOf(s).width
		if s.Way == ladder.Terminal {
			touches = append(touches, p.join(columnOf(s).width, i == 0 && !r.entry, x, top))
		}
	}
	if r.exit {
		p.broken(number, x+stub-4, x, top, foot)
		touches = append(touches, x+stub-4-3.5)
	}
	p.ground(touches, foot)
}

// join draws the signal's wire between a terminal and what is beside it in its column, which ends at
// right, and returns where ground ends.
func (p *pen) join(width float64, first bool, right, top float64) float64 {
	middle := right - width/2
	if first {
		p.wire(middle+3.5, top, right, top)
		return middle + 3.5
	}
	p.wire(right-width, top, middle-3.5, top)
	return middle - 3.5
}

// broken draws the end of a row that goes on elsewhere, with a letter.
func (p *pen) broken(number int, at, to, top, foot float64) {
	name := string(rune('A' + number%26))
	edge := at + 3.5
	if to < at {
		edge = at - 3.5
	}
	p.ring(at, top)
	p.wire(edge, top, to, top)
	p.ring(at, foot)
	p.text(name, "", at, top-5-letter, true)
}

// ground draws the wire below and its symbol.
func (p *pen) ground(touches []float64, foot float64) {
	if len(touches) == 0 {
		return
	}
	left, right := touches[0], touches[0]
	for _, x := range touches {
		left, right = min(left, x), max(right, x)
	}
	p.wire(left, foot, right, foot)
	for _, x := range touches {
		if x > left && x < right {
			p.dot(x, foot)
		}
	}
	x := left + min(8, (right-left)/2)
	p.dot(x, foot)
	p.wire(x, foot, x, foot+8)
	p.body(x-8, foot+8, x+8, foot+17)
	for i, w := range [...]float64{8, 5, 2} {
		y := foot + 8 + 4*float64(i)
		path(&p.lines, "M", x-w, y, "L", x+w, y)
	}
}
