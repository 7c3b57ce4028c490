package induct

import "math"

// This file turns a core into pieces. Every convex outline with rounded corners is the
// parallel curve of a convex polygon, its skeleton, at some distance T: sides move out by
// T, corners become arcs of radius T about the skeleton's corners. A winding is a skeleton
// and a range of T. A circle's skeleton is a point, a racetrack's a line, a rounded
// rectangle's a rectangle.

// A window is the range of T that the build fills.
type window struct{ from, to float64 }

func (w window) width() float64 { return w.to - w.from }

type vec struct{ x, y float64 }

func (a vec) plus(b vec) vec               { return vec{a.x + b.x, a.y + b.y} }
func (a vec) minus(b vec) vec              { return vec{a.x - b.x, a.y - b.y} }
func (a vec) times(k float64) vec          { return vec{a.x * k, a.y * k} }
func (a vec) dot(b vec) float64            { return a.x*b.x + a.y*b.y }
func (a vec) cross(b vec) float64          { return a.x*b.y - a.y*b.x }
func (a vec) length() float64              { return math.Hypot(a.x, a.y) }
func direction(angle float64) vec          { s, c := math.Sincos(angle); return vec{c, s} }
func (a vec) isNear(b vec, t float64) bool { return a.minus(b).length() <= t }

// A piece is one side (arc false) or one corner of a skeleton.
type piece struct {
	arc    bool
	start  vec     // side: first point; arc: centre
	along  vec     // side: unit tangent
	out    vec     // side: unit outward normal
	length float64 // side: length
	angle  float64 // arc: angle of the first normal
	span   float64 // arc: angle turned
}

// frame returns the point of the skeleton, the outward normal and the tangent at fraction x of
// the piece.
func (p *piece) frame(x float64) (base, out, tangent vec) {
	if !p.arc {
		return p.start.plus(p.along.times(x * p.length)), p.out, p.along
	}
	n := direction(p.angle + x*p.span)
	return p.start, n, vec{-n.y, n.x}
}

// at returns the point and tangent at fraction x of the piece, T outside the skeleton.
func (p *piece) at(x, t float64) (point, tangent vec) {
	base, out, tangent := p.frame(x)
	return base.plus(out.times(t)), tangent
}

// sees is where fraction x of another piece lies from side p: at distance T of that one, (x0+xt·T, y0+yt·T) along and out of p.
// cos is that of the angle between both.
func (p *piece) sees(other *piece, x float64) (x0, xt, y0, yt, cos float64) {
	base, out, tangent := other.frame(x)
	gap := base.minus(p.start)
	return gap.dot(p.along), out.dot(p.along), gap.dot(p.out), out.dot(p.out), tangent.dot(p.along)
}

// extent is the length of the piece at distance T.
func (p *piece) extent(t float64) float64 {
	if p.arc {
		return p.span * t
	}
	return p.length
}

// skeletonPieces cuts a counter-clockwise convex polygon: corner 0, side 0 (from corner 0 to
// corner 1), corner 1 and so on. One point gives a full circle, two a racetrack.
func skeletonPieces(corners []vec) []piece {
	n := len(corners)
	if n == 1 {
		return []piece{{arc: true, start: corners[0], span: 2 * math.Pi}}
	}
	pieces := make([]piece, 0, 2*n)
	for i, c := range corners {
		in := c.minus(corners[(i+n-1)%n])
		out := corners[(i+1)%n].minus(c)
		turn := math.Atan2(in.cross(out), in.dot(out))
		if n == 2 {
			turn = math.Pi
		}
		size := out.length()
		e := out.times(1 / size)
		pieces = append(pieces,
			piece{arc: true, start: c, angle: math.Atan2(-in.x, in.y), span: turn},
			piece{start: c, along: e, out: vec{e.y, -e.x}, length: size})
	}
	return pieces
}

// rectangleSkeleton is the polygon of a rounded rectangle with straight sides a and b.
func rectangleSkeleton(a, b float64) []vec {
	switch {
	case a == 0 && b == 0:
		return []vec{{}}
	case b == 0:
		return []vec{{-a / 2, 0}, {a / 2, 0}}
	case a == 0:
		return []vec{{0, -b / 2}, {0, b / 2}}
	}
	return []vec{{-a / 2, -b / 2}, {a / 2, -b / 2}, {a / 2, b / 2}, {-a / 2, b / 2}}
}

// quarters cuts any rounded rectangle into four quarter arcs and four sides, some
// perhaps of no length: the form in which two different shapes share their symmetry.
func quarters(a, b float64) []piece {
	corners := [4]vec{{-a / 2, -b / 2}, {a / 2, -b / 2}, {a / 2, b / 2}, {-a / 2, b / 2}}
	pieces := make([]piece, 0, 8)
	for i, c := range corners {
		e := [4]vec{{1, 0}, {0, 1}, {-1, 0}, {0, -1}}[i]
		pieces = append(pieces,
			piece{arc: true, start: c, angle: math.Pi * (1 + float64(i)/2), span: math.Pi / 2},
			piece{start: c, along: e, out: vec{e.y, -e.x}, length: [2]float64{a, b}[i%2]})
	}
	return pieces
}

// moved turns and shifts pieces in their plane.
func moved(pieces []piece, turn float64, shift vec) []piece {
	ex := direction(turn)
	spin := func(v vec) vec { return vec{v.x*ex.x - v.y*ex.y, v.x*ex.y + v.y*ex.x} }
	list := make([]piece, len(pieces))
	for i, p := range pieces {
		p.start = spin(p.start).plus(shift)
		p.along, p.out, p.angle = spin(p.along), spin(p.out), p.angle+turn
		list[i] = p
	}
	return list
}
