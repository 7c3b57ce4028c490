package induct

import "math"

// This file holds the inductances of windings with a common axis.

// A winding is what the engine needs to know of a coil.
type winding struct {
	pieces    []piece
	window    window
	height    float64
	size      float64 // largest dimension
	perimeter float64 // first turn
}

func (s Section) winding() winding {
	a, b := s.straights()
	return winding{
		pieces: skeletonPieces(rectangleSkeleton(a, b)), window: s.window(), height: s.Height,
		size:      max(s.CoreLength+2*s.Build, s.CoreWidth+2*s.Build, s.Height),
		perimeter: s.corePerimeter(),
	}
}

// Self is the inductance of a winding in henry, with an estimate of the error in henry. The
// estimate is the step from a coarser computation; the error is usually a tenth of it.
func Self(s Section, turns float64) (inductance, err float64) {
	return climb(defaultLevel, defaultLevel, 0, turns*turns, selfAt(s))
}

// SelfTo is Self to a relative accuracy between 1e-3 and 1e-8.
func SelfTo(s Section, turns, relative float64) (inductance, err float64) {
	return climb(1, topLevel, relative, turns*turns, selfAt(s))
}

func selfAt(s Section) func(level int) float64 {
	w := s.winding()
	tasks := selfTasks(len(w.pieces))
	return func(level int) float64 { return w.with(w, true, 0, level, tasks) }
}

// Coaxial is the mutual inductance in henry of two windings with a common axis and parallel
// sides, whose centres are the distance apart, with an estimate of the error
// in henry. The windows must not overlap: one may lie above, inside or around the other.
func Coaxial(a, b Section, na, nb, distance float64) (mutual, err float64) {
	return climb(defaultLevel, defaultLevel, 0, na*nb, coaxialAt(a, b, distance))
}

// CoaxialTo is Coaxial to a relative accuracy between 1e-3 and 1e-8.
func CoaxialTo(a, b Section, na, nb, distance, relative float64) (mutual, err float64) {
	return climb(1, topLevel, relative, na*nb, coaxialAt(a, b, distance))
}

func coaxialAt(a, b Section, distance float64) func(level int) float64 {
	wa, wb := a.winding(), b.winding()
	if sameSkeleton(a, b) {
		tasks := coaxialTasks(len(wa.pieces))
		return func(level int) float64 { return wa.with(wb, true, distance, level, tasks) }
	}
	wa.pieces, wb.pieces = quarters(a.straights()), quarters(b.straights())
	tasks := rectangleTasks()
	return func(level int) float64 { return wa.with(wb, false, distance, level, tasks) }
}

func sameSkeleton(a, b Section) bool {
	xa, ya := a.straights()
	xb, yb := b.straights()
	same := func(p, q float64) bool {
		return math.Abs(p-q) <= 1e-12*(a.CoreLength+a.CoreWidth) && (p == 0) == (q == 0)
	}
	return same(xa, xb) && same(ya, yb)
}

// with is the mutual inductance of one turn with one turn, in henry.
func (p winding) with(q winding, common bool, z float64, level int, tasks []task) float64 {
	k, scale := axial(p.height, q.height, z, max(p.size, q.size))
	if scale > 0 {
		scale = max(scale, min(p.size, q.size)/1000)
	}
	e := engine{
		k: k, scale: scale, p: p.pieces, q: q.pieces, wp: p.window, wq: q.window, common: common,
		gap: max(0, math.Abs(z)-(p.height+q.height)/2),
		o:   ordersAt(level).deepen(p.window, p.perimeter).deepen(q.window, q.perimeter),
	}
	return Mu0 / (4 * math.Pi) * e.total(tasks)
}

const (
	defaultLevel = 2
	topLevel     = 8
)

// climb raises the level until a step is below the relative accuracy.
func climb(level, most int, relative, factor float64, at func(level int) float64) (value, err float64) {
	rough := at(level - 1)
	for {
		value = at(level)
		err = math.Abs(value - rough)
		if level >= most || err <= relative*math.Abs(value) {
			return factor * value, math.Abs(factor) * err
		}
		rough = value
		level++
	}
}
