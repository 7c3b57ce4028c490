package induct

import (
	"math"

	"lode/stdlib/pace"
)

// This file holds the mutual inductance of two windings in any position.
//
// With parallel axes the integral over both heights stays a closed form in the plane, and
// the pairs of pieces are summed as for a common axis, only without its symmetry. With
// tilted axes the vector potential of the second winding is integrated along the turns of the
// first: over its build, its height and its outline.

// Pair is the mutual inductance in henry of winding b, placed in the coordinates of winding a,
// with winding a, and an estimate of the error in henry. It is negative where the
// windings oppose each other. The windows must not overlap; that is not checked.
func Pair(a, b Section, na, nb float64, place Placement) (mutual, err float64) {
	return climbOver(defaultLevel, defaultLevel, 0, na*nb, pairAt(a, b, place))
}

// PairValue is the mutual inductance that Pair returns, without the estimate of the error.
func PairValue(a, b Section, na, nb float64, place Placement) float64 {
	value, _ := pairAt(a, b, place)(defaultLevel)
	return na * nb * value
}

// PairPart is PairValue for a part of a whole: the smaller its share, the less exact it has to be.
func PairPart(a, b Section, na, nb float64, place Placement, share float64) float64 {
	value, _ := pairAt(a, b, place)(levelFor(share))
	return na * nb * value
}

// PairTo is Pair to a relative accuracy between 1e-3 and 1e-7.
func PairTo(a, b Section, na, nb float64, place Placement, relative float64) (mutual, err float64) {
	return climbOver(defaultLevel, topLevel, relative, na*nb, pairAt(a, b, place))
}

// pairAt is the mutual inductance of one turn with one turn at a level, and how large the parts are of which it is made.
func pairAt(a, b Section, place Placement) func(level int) (value, parts float64) {
	axis := place.vector([3]float64{0, 0, 1})
	switch level := math.Hypot(axis[0], axis[1]) < 1e-12; {
	case level && place.isCoaxial(a, b):
		coaxial := coaxialAt(a, b, place.Shift[2])
		return alone(func(level int) float64 { return math.Copysign(coaxial(level), axis[2]) })
	case level:
		return parallelAt(a, b, place, axis[2])
	}
	return alone(tiltedAt(a, b, place))
}

// alone takes a value as its only part.
func alone(at func(level int) float64) func(level int) (value, parts float64) {
	return func(level int) (float64, float64) {
		value := at(level)
		return value, math.Abs(value)
	}
}

// isCoaxial reports whether parallel coils share their axis and the directions of their sides.
func (p Placement) isCoaxial(a, b Section) bool {
	x := p.vector([3]float64{1, 0, 0})
	aligned := math.Abs(x[1]) < 1e-12 || a.isCircle() || b.isCircle()
	return aligned && math.Hypot(p.Shift[0], p.Shift[1]) <= 1e-12*(a.CoreLength+b.CoreLength)
}

func (s Section) isCircle() bool {
	a, b := s.straights()
	return a == 0 && b == 0
}

// partsShare is how much the errors of the parts cancel.
const partsShare = 0.15

// parallelAt turns a coil that is upside down the right way up and changes the sign instead: a
// rounded rectangle is its own mirror image.
func parallelAt(a, b Section, place Placement, up float64) func(level int) (value, parts float64) {
	wa, wb := a.winding(), b.winding()
	x := place.vector([3]float64{1, 0, 0})
	wa.pieces = quarters(a.straights())
	wb.pieces = moved(quarters(b.straights()), math.Atan2(x[1], x[0]), vec{place.Shift[0], place.Shift[1]})
	small := 1e-12 * (wa.size + wb.size)
	tasks := parallelTasks(math.Abs(place.Shift[0]) <= small, math.Abs(place.Shift[1]) <= small, math.Abs(x[1]) < 1e-12)
	aside := math.Hypot(place.Shift[0], place.Shift[1])
	return func(level int) (value, parts float64) {
		value, parts = wa.withParts(wb, false, aside, place.Shift[2], level, tasks)
		return math.Copysign(1, up) * value, max(math.Abs(value), partsShare*parts)
	}
}

func tiltedAt(a, b Section, place Placement) func(level int) float64 {
	back := place.inverse()
	return func(level int) float64 {
		wa, wb := a.winding(), b.winding()
		digits := 4 + 2*float64(level) + lostDigits(math.Sqrt(dot(place.Shift, place.Shift)), wa.size, wb.size)
		line := turnsLine{winding: wa, digits: digits, place: back}
		line.pieces = quarters(a.straights())
		src := newSource(wb, digits+1)
		src.pieces = quarters(b.straights())
		return Mu0 / (4 * math.Pi) * line.through(&src)
	}
}

// A turnsLine is the winding along whose turns a potential is integrated, with its place in
// the coordinates of the source.
type turnsLine struct {
	winding
	digits float64
	place  Placement
}

// through is the flux linkage of one turn with a source of one ampere-turn, in µ0/4π.
func (l *turnsLine) through(src *source) float64 {
	sum := 0.0
	for i := range pace.Of(len(l.pieces)) {
		p := &l.pieces[i]
		if p.arc || p.length > 0 {
			sum += l.along(p, src)
		}
	}
	return sum
}

// along integrates over one piece, its build and the height. The averages over both windows
// smooth the integrand, so the windows count as further apart than they are.
func (l *turnsLine) along(p *piece, src *source) float64 {
	smoothing := 0.2 * min(max(src.height, src.window.width()), max(l.height, l.window.width()))
	far := l.nearest(p, src) + smoothing
	build, height := gauss(1), gauss(1)
	if c := l.window.width(); c > 0 {
		build = gauss(orderFor(c, far, l.digits, 2, 12))
	}
	if l.height > 0 {
		height = gauss(orderFor(l.height, far, l.digits, 2, 12))
	}
	least := 3
	if p.arc {
		least = p.leastOrder()
	}
	around := gauss(orderFor(p.extent(l.window.to), far, l.digits, least, maxOrder))
	sum := 0.0
	for i, y := range build.x {
		t := l.window.from + y*l.window.width()
		for j, h := range height.x {
			z := (h - 0.5) * l.height
			sum += build.w[i] * height.w[j] * p.extent(t) * l.ring(p, t, z, around, src)
		}
	}
	return sum
}

// ring is the mean of A·T along a piece.
func (l *turnsLine) ring(p *piece, t, z float64, around rule, src *source) float64 {
	sum := 0.0
	for k, x := range around.x {
		at, tangent := p.at(x, t)
		point := l.place.point([3]float64{at.x, at.y, z})
		along := l.place.vector([3]float64{tangent.x, tangent.y, 0})
		a := src.potential(vec{point[0], point[1]}, point[2])
		sum += around.w[k] * (a.x*along[0] + a.y*along[1])
	}
	return sum
}

// nearest is the least distance from the source of samples of a piece's window.
func (l *turnsLine) nearest(p *piece, src *source) float64 {
	least := math.Inf(1)
	for i := range 5 {
		for _, t := range [2]float64{l.window.from, l.window.to} {
			for _, z := range [2]float64{-l.height / 2, l.height / 2} {
				at, _ := p.at(float64(i)/4, t)
				point := l.place.point([3]float64{at.x, at.y, z})
				for j := range src.pieces {
					least = min(least, src.clearance(&src.pieces[j], vec{point[0], point[1]}, point[2]))
				}
			}
		}
	}
	return least
}
