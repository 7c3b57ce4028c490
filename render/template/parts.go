package template

import (
	"fmt"
	"math"
	"strings"

	"lode/units/frame"
)

// This file reads the parts of a plate. From here on lengths are in millimetres.

type point struct{ x, y float64 }

// part is the convex hull of points, grown by half its diameter.
type part struct {
	name, work string
	points     []point
	diameter   float64
	number     int // of a hole, from 1
}

// works are what can be done to a part.
var works = [...]string{"cut", "mark", "drill"}

const mostHoles = 60

func read(f frame.Frame) ([]part, error) {
	if f.Rows() == 0 {
		return nil, fmt.Errorf("template.Draw: nothing to draw: got no rows, want a row for each hole and corner")
	}
	texts, lengths, err := sorted(f)
	if err != nil {
		return nil, err
	}
	var parts []part
	drilled := 0
	for i := range f.Rows() {
		p, err := row(texts, lengths, i)
		if err != nil {
			return nil, err
		}
		if n := len(parts) - 1; p.work != "drill" && n >= 0 && parts[n].name == p.name && parts[n].work == p.work && parts[n].diameter == p.diameter {
			parts[n].points = append(parts[n].points, p.points[0])
			continue
		}
		if p.work == "drill" {
			drilled++
			p.number = drilled
		}
		parts = append(parts, p)
	}
	if drilled > mostHoles {
		return nil, fmt.Errorf("template.Draw: too many holes: got %d, want at most %d", drilled, mostHoles)
	}
	return parts, nil
}

// sorted finds the two columns of texts and the three of lengths.
func sorted(f frame.Frame) (texts, lengths []frame.Column, err error) {
	var names []string
	for _, c := range f.Columns {
		names = append(names, c.Name)
		switch {
		case c.Texts != nil:
			texts = append(texts, c)
		case c.Kind.Type == "Length":
			lengths = append(lengths, c)
		}
	}
	if len(texts) < 2 || len(lengths) < 3 {
		return nil, nil, fmt.Errorf("template.Draw: a column is missing: got %q, want two of texts (part, work) and three of length (x, y, diameter)", strings.Join(names, ", "))
	}
	return texts, lengths, nil
}

func row(texts, lengths []frame.Column, i int) (part, error) {
	p := part{name: texts[0].Texts[i], work: texts[1].Texts[i]}
	known := false
	for _, w := range works {
		known = known || w == p.work
	}
	if !known {
		return p, fmt.Errorf("template.Draw: row %d: unknown work: got %q, want %s", i+1, p.work, strings.Join(works[:], ", "))
	}
	x, y, d := 1000*lengths[0].Values[i], 1000*lengths[1].Values[i], 1000*lengths[2].Values[i]
	if !(math.Abs(x) < 1e4 && math.Abs(y) < 1e4 && d >= 0 && d < 1e4) || p.work == "drill" && d == 0 {
		return p, fmt.Errorf("template.Draw: row %d (%s): out of range: got x %g mm, y %g mm, diameter %g mm, want finite places and a diameter above 0", i+1, p.name, x, y, d)
	}
	p.points, p.diameter = []point{{x, y}}, d
	return p, nil
}

func holes(parts []part) []part {
	var list []part
	for _, p := range parts {
		if p.work == "drill" {
			list = append(list, p)
		}
	}
	return list
}

// extent returns the corners of the box around the parts.
func extent(parts []part) (low, high point) {
	low, high = point{math.Inf(1), math.Inf(1)}, point{math.Inf(-1), math.Inf(-1)}
	for _, p := range parts {
		r := p.diameter / 2
		for _, at := range p.points {
			low = point{min(low.x, at.x-r), min(low.y, at.y-r)}
			high = point{max(high.x, at.x+r), max(high.y, at.y+r)}
		}
	}
	return low, high
}
