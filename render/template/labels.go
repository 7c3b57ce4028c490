package template

import (
	"math"
	"strconv"
)

// This file finds places for the numbers of holes: near their hole, clear of lines, other holes and other numbers.

// label is a number and the box around it on the sheet.
type label struct {
	text          string
	middle        point
	width, height float64
}

// clearance is the distance that a number keeps from lines, and digit the width and height of a digit.
const (
	clearance   = 0.35
	digitWidth  = 0.62 * letter
	digitHeight = 0.74 * letter
)

// labels places the numbers of all holes.
func (t Template) labels() []label {
	p := pen{layout: t.sheet}
	parts := p.lying(t.parts)
	var placed []label
	for _, h := range holes(t.parts) {
		best, most := label{}, math.Inf(-1)
		for _, l := range p.candidates(h) {
			room := apart(l, placed)
			if room > most {
				room = min(room, p.room(l, parts, most))
			}
			if room > most+1e-9 {
				best, most = l, room
			}
			if most >= clearance {
				break
			}
		}
		placed = append(placed, best)
	}
	return placed
}

// lying returns the parts with their hulls as they lie on the sheet.
func (p pen) lying(parts []part) []part {
	list := make([]part, len(parts))
	for i, one := range parts {
		one.points = around(one.points)
		for j, at := range one.points {
			one.points[j] = p.at(at)
		}
		list[i] = one
	}
	return list
}

// candidates are the places around a hole, the nearest first and those to the upper right before others.
func (p pen) candidates(h part) []label {
	c, r, text := p.at(h.points[0]), h.diameter/2, strconv.Itoa(h.number)
	width, height := digitWidth*float64(len(text)), digitHeight
	var all []label
	for away := 0.45; away < 8; away += 0.25 {
		for _, degrees := range [...]float64{45, 135, -45, -135, 65, 115, -65, -115, 80, 100, -80, -100} {
			sin, cos := math.Sincos(degrees * math.Pi / 180)
			d := r + away + (math.Abs(cos)*width+math.Abs(sin)*height)/2
			all = append(all, label{text, point{c.x + d*cos, c.y - d*sin}, width, height})
		}
	}
	return all
}

// room is how far a label stays from all lines of a drawing whose parts lie on the sheet, or something that is
// not above floor if it is not above that.
func (p pen) room(l label, parts []part, floor float64) float64 {
	origin := p.at(point{})
	least := min(math.Abs(l.middle.x-origin.x)-l.width/2, math.Abs(l.middle.y-origin.y)-l.height/2)
	spread, half := l.spread(), math.Hypot(l.width, l.height)/2
	for _, part := range parts {
		if least <= floor {
			break
		}
		if part.gap(l.middle)-half < least { // else no point of the label can be nearer
			for _, at := range spread {
				least = min(least, part.gap(at))
			}
		}
		if part.work == "drill" { // its cross
			least = min(least, beside(l, part.points[0], part.diameter/2+0.8))
		}
	}
	return least
}

// gap is how far a point is from the line of a part; within a hole it is negative.
func (p part) gap(at point) float64 {
	gap := toHull(at, p.points) - p.diameter/2
	if p.work == "drill" {
		return gap
	}
	return math.Abs(gap)
}

// beside is how far a label stays from a cross with arms of a length.
func beside(l label, c point, arm float64) float64 {
	dx, dy := math.Abs(l.middle.x-c.x), math.Abs(l.middle.y-c.y)
	across := math.Hypot(max(0, dx-l.width/2-arm), max(0, dy-l.height/2))
	upright := math.Hypot(max(0, dx-l.width/2), max(0, dy-l.height/2-arm))
	return min(across, upright)
}

// spread returns points all over a label, close enough together that no line slips between them unnoticed.
func (l label) spread() []point {
	const steps = 6
	var all []point
	for i := 0; i <= steps; i++ {
		for j := 0; j <= steps; j++ {
			all = append(all, point{l.middle.x + l.width*(float64(i)/steps-0.5), l.middle.y + l.height*(float64(j)/steps-0.5)})
		}
	}
	return all
}

// apart is how far a label stays from others.
func apart(l label, others []label) float64 {
	least := math.Inf(1)
	for _, o := range others {
		dx, dy := math.Abs(l.middle.x-o.middle.x)-(l.width+o.width)/2, math.Abs(l.middle.y-o.middle.y)-(l.height+o.height)/2
		least = min(least, max(dx, dy))
	}
	return least
}

// toHull returns the distance of a point to a convex hull; within the hull it is negative.
func toHull(at point, hull []point) float64 {
	least, left, right := math.Inf(1), 0, 0
	for i, a := range hull {
		b := hull[(i+1)%len(hull)]
		least = min(least, toSide(at, a, b))
		if side := (b.x-a.x)*(at.y-a.y) - (b.y-a.y)*(at.x-a.x); side > 0 {
			left++
		} else if side < 0 {
			right++
		}
	}
	if len(hull) > 2 && (left == 0 || right == 0) {
		return -least
	}
	return least
}

// toSide returns the distance of a point to a straight line between two others.
func toSide(at, a, b point) float64 {
	dx, dy := b.x-a.x, b.y-a.y
	share := 0.0
	if long := dx*dx + dy*dy; long > 0 {
		share = max(0, min(1, ((at.x-a.x)*dx+(at.y-a.y)*dy)/long))
	}
	return math.Hypot(at.x-a.x-share*dx, at.y-a.y-share*dy)
}
