package induct

import "math"

// This file holds the potential of a filled piece at points of the plane near it and within it.

// A sight is how a piece is seen from a point: x along and y out of a side; at the angle x, counted from its start, and the
// distance y from the centre of an arc.
type sight struct{ x, y float64 }

func (p *piece) seenFrom(at vec) sight { return p.sightOf(at.minus(p.start), p.middle()) }

// middle is the way out of an arc at its middle.
func (p *piece) middle() vec {
	if !p.arc {
		return p.out
	}
	return direction(p.angle + p.span/2)
}

func (p *piece) sightOf(gap, middle vec) sight {
	if !p.arc {
		return sight{gap.dot(p.along), gap.dot(p.out)}
	}
	return sight{p.span/2 + math.Atan2(middle.cross(gap), middle.dot(gap)), math.Sqrt(gap.dot(gap))}
}

// width is the range of x.
func (p *piece) width() float64 {
	if p.arc {
		return p.span
	}
	return p.length
}

// off is how far a point lies off the filled piece, along it and across.
func (p *piece) off(s sight, w window) (along, across float64) {
	along, across = max(-s.x, s.x-p.width(), 0), max(w.from-s.y, s.y-w.to, 0)
	switch {
	case p.arc && along > math.Pi/2:
		along = s.y
	case p.arc:
		along = s.y * math.Sin(along)
	}
	return along, across
}

// off2 is the square of the distance.
func (p *piece) off2(at vec, w window) float64 {
	along, across := p.off(p.seenFrom(at), w)
	return along*along + across*across
}

// A potentialOf is the potential of a filled piece.
type potentialOf struct {
	k              kernel
	q              *piece
	w              window
	middle         vec
	smooth, digits float64
	along, across  crowd
}

func (e *engine) potentialOf(q *piece, w window, digits float64) potentialOf {
	return potentialOf{k: e.k, q: q, w: w, middle: q.middle(), smooth: e.gapOver(0.6), digits: digits}
}

// at is the component along a tangent, averaged over the depth.
func (f *potentialOf) at(point, tangent vec) float64 {
	gap := point.minus(f.q.start)
	s := f.q.sightOf(gap, f.middle)
	along, across := f.q.off(s, f.w)
	f.fillDepth(s.y, f.peak(along))
	if f.q.arc {
		return f.ofArc(s, f.peak(across), gap, tangent)
	}
	f.along.about(s.x, f.peak(across), 0, f.q.length, f.digits, 3, maxOrder)
	sum := 0.0
	for i, x := range f.along.x[:f.along.n] {
		sum += f.along.w[i] * f.line(s.y, 0, (x-s.x)*(x-s.x))
	}
	return sum * tangent.dot(f.q.along)
}

// peak is how wide the kernel's peak is at a distance.
func (f *potentialOf) peak(off float64) float64 {
	return max(math.Sqrt(off*off+f.smooth*f.smooth), 0.02*f.w.width(), 2e-5*f.w.to, 1e-9)
}

// fillDepth fills the rule across for a point y out of the skeleton.
func (f *potentialOf) fillDepth(y, d float64) {
	c := &f.across
	if f.w.width() == 0 {
		c.n, c.x[0], c.w[0] = 1, f.w.from, 1
	} else {
		c.about(y, d, f.w.from, f.w.to, f.digits, 2, maxOrder)
		c.times(1 / f.w.width())
	}
	if f.q.arc { // whose length grows with the depth
		for i, t := range c.x[:c.n] {
			c.w[i] *= t
		}
	}
}

func (f *potentialOf) ofArc(s sight, d float64, gap, tangent vec) float64 {
	q := f.q
	f.along.about(s.x, f.angle(s.y, d), 0, q.span, f.digits, q.leastOrder(), maxOrder)
	n := f.middle
	if s.y > 0 {
		n = gap.times(1 / s.y) // towards the point
	}
	with, against := n.cross(tangent), n.dot(tangent)
	sum := 0.0
	for i, x := range f.along.x[:f.along.n] {
		sin, cos := math.Sincos((x - s.x) / 2)
		turned := with*(1-2*sin*sin) - 2*against*sin*cos
		sum += f.along.w[i] * turned * f.line(s.y, 4*s.y*sin*sin, 0)
	}
	return sum
}

// angle is that under which a width appears from the centre.
func (f *potentialOf) angle(y, d float64) float64 { return d / max(y, f.w.from, 0.1*f.w.to) }

// line is the sum over the depths t of the kernel at ρ² = (t−y)² + a·t + b.
func (f *potentialOf) line(y, a, b float64) float64 {
	sum, c := 0.0, &f.across
	if s, ok := f.k.(*sheets); ok && s.table != nil {
		return s.table.line(c.x[:c.n], c.w[:c.n], y, a, b)
	}
	for i, t := range c.x[:c.n] {
		sum += c.w[i] * f.k.point((t-y)*(t-y)+a*t+b)
	}
	return sum
}
