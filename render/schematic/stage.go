package schematic

import "lode/units/ladder"

// This file lays out and draws steps: columns between the signal's wire above and ground below.

// column is the room of a step: its width, and how far it reaches above and below the signal's wire.
type column struct{ width, above, below float64 }

// gap is the least distance of two columns.
const gap = 12

func columnOf(s ladder.Step) column {
	name := labelWidth(s.Name, s.Value)
	switch s.Way {
	case ladder.Along:
		r := measure(s.Branch, false)
		return column{r.length + gap, r.before, r.after}
	case ladder.Down:
		r := measure(s.Branch, true)
		return column{r.before + r.after + gap, 0, r.length}
	case ladder.Divider, ladder.Backwards:
		r := measure(s.Branch, false)
		return column{dividerWidth(s), r.before, wiper(s) + 46}
	case ladder.Transformer:
		return column{2*thick + coreGap + 6 + name + gap, 0, 2*half + 16}
	case ladder.Amplifier:
		f := measure(s.Branch, false)
		if len(s.Branch.Parts()) == 0 {
			return column{max(52, name) + gap, 22, 28 + labelHeight(s.Name, s.Value)}
		}
		return column{max(64, name, f.length+2*bus) + gap, 30 + f.after + f.before, 28 + labelHeight(s.Name, s.Value)}
	}
	return column{max(24, name) + gap, labelHeight(s.Name, s.Value) + 6, 0}
}

// step draws s in its column from x on, the signal's wire at top and ground at foot; leads says that nothing comes
// before it. It returns where the column touches ground, from left to right.
func (p *pen) step(s ladder.Step, x, top, foot float64, leads bool) []float64 {
	c := columnOf(s)
	switch s.Way {
	case ladder.Along:
		p.branch(s.Branch, x, top, c.width, false)
	case ladder.Down:
		axis := x + measure(s.Branch, true).before
		if leads {
			p.wire(axis, top, x+c.width, top)
		} else {
			p.wire(x, top, x+c.width, top)
			p.dot(axis, top)
		}
		p.branch(s.Branch, axis, top, foot-top, true)
		return []float64{axis}
	case ladder.Divider, ladder.Backwards:
		return p.divider(s, x, top, foot)
	case ladder.Transformer:
		return p.transformer(s, x, top, foot)
	case ladder.Amplifier:
		p.amplifier(s, x, top, c)
	default:
		return p.terminal(s, x, top, foot, c)
	}
	return nil
}

// reach is how far the wiper's wire stands from the track.
func reach(s ladder.Step) float64 { return max(30, measure(s.Branch, false).length) }

// wiper is how far below the signal's wire the wiper stands.
func wiper(s ladder.Step) float64 { return max(half, measure(s.Branch, false).after+12) + 8 }

func dividerWidth(s ladder.Step) float64 {
	name := thick + 5 + labelWidth(s.Name, s.Value)
	if s.Way == ladder.Backwards {
		return thick + reach(s) + name + gap
	}
	return thick + max(reach(s), name) + gap
}

// divider draws a potentiometer.
func (p *pen) divider(s ladder.Step, x, top, foot float64) []float64 {
	end, y := x+dividerWidth(s), top+wiper(s)
	track, slider, sign := x+thick, x+thick+reach(s), 1.0
	if s.Way == ladder.Backwards {
		track, slider, sign = slider, track, -1
	}
	p.wire(x, top, min(track, slider), top)
	p.wire(max(track, slider), top, end, top)
	p.wire(track, top, track, y-half)
	turtle{p, track, y, true}.draw(ladder.Resistor)
	p.wire(track, y+half, track, foot)
	p.wire(slider, top, slider, y)
	p.wire(track+sign*12, y, slider, y)
	tip := turtle{p, track + sign*5.5, y, false}
	tip.tip(0, 0, sign, 0)
	if len(s.Branch.Parts()) > 0 {
		p.dot(track, top)
		p.dot(slider, top)
		p.branch(s.Branch, min(track, slider), top, reach(s), false)
	}
	p.label(s.Name, s.Value, track+thick+5, y+8, false)
	return []float64{track}
}

// coreGap is the distance of the two windings of a transformer.
const coreGap = 26

func (p *pen) transformer(s ladder.Step, x, top, foot float64) []float64 {
	left := x + thick
	right := left + coreGap
	y := (top + foot) / 2
	p.wire(x, top, left, top)
	p.wire(right, top, x+columnOf(s).width, top)
	for _, axis := range [...]float64{left, right} {
		p.wire(axis, top, axis, y-half)
		p.wire(axis, y+half, axis, foot)
	}
	turtle{p, left, y, true}.draw(ladder.Inductor)
	mirrored := turtle{p, right, y, true}
	mirrored.winding()
	for _, core := range [...]float64{-2, 2} {
		path(&p.lines, "M", (left+right)/2+core, y-18, "L", (left+right)/2+core, y+18)
	}
	p.dot(left-6, y-17)
	p.dot(right+6, y-17)
	p.label(s.Name, s.Value, right+thick+5, y-labelHeight(s.Name, s.Value)/2+1, false)
	return []float64{left, right}
}

// winding is an inductor with its bows to the other side.
func (t turtle) winding() {
	t.lead(16)
	t.body(16, 5)
	x, y := t.at(-16, 0)
	path(&t.pen.lines, "M", x, y)
	for i := range 4 {
		x, y = t.at(-8+8*float64(i), 0)
		path(&t.pen.lines, "A4 4 0 0 0 ", x, y)
	}
}

func (p *pen) amplifier(s ladder.Step, x, top float64, c column) {
	left := x + (c.width-40)/2
	p.wire(x, top, left, top)
	p.wire(left+40, top, x+c.width, top)
	p.body(left, top-22, left+40, top+22)
	path(&p.lines, "M", left, top-22, "L", left+40, top, "L", left, top+22, "z")
	p.label(s.Name, s.Value, x+c.width/2, top+27, true)
	if f := measure(s.Branch, false); len(s.Branch.Parts()) > 0 {
		p.feedback(s.Branch, x+bus, x+c.width-bus, top, 30+f.after)
	}
}

// feedback draws a branch from the output back to the input, above.
func (p *pen) feedback(b ladder.Branch, left, right, top, above float64) {
	for _, x := range [...]float64{left, right} {
		p.wire(x, top-above, x, top)
		p.dot(x, top)
	}
	p.branch(b, left, top-above, right-left, false)
}

// terminal draws a pair of open ends, one at the signal and one at ground.
func (p *pen) terminal(s ladder.Step, x, top, foot float64, c column) []float64 {
	middle := x + c.width/2
	p.ring(middle, top)
	p.ring(middle, foot)
	p.label(s.Name, s.Value, middle, top-6-labelHeight(s.Name, s.Value), true)
	return nil
}
