package induct

import (
	"math"

	"lode/stdlib/pace"
)

// This file holds the inductances of windings with a common axis.

// A winding is what the engine needs to know of a coil.
type winding struct {
	pieces []piece
	window window
	height float64
	size   float64 // largest dimension
	narrow float64 // distance of opposite sides
}

func (s Section) winding() winding {
	a, b := s.straights()
	return winding{
		pieces: skeletonPieces(rectangleSkeleton(a, b)), window: s.window(), height: s.Height,
		size: max(s.CoreLength+2*s.Build, s.CoreWidth+2*s.Build, s.Height), narrow: min(s.CoreLength, s.CoreWidth) + s.Build,
	}
}

// Self is the inductance of a winding in henry, with an estimate of the error in henry. The
// estimate is the step from a coarser computation; the error is usually a tenth of it.
func Self(s Section, turns float64) (inductance, err float64) {
	return climb(defaultLevel, defaultLevel, 0, turns*turns, selfAt(s))
}

// SelfValue is the inductance that Self returns, without the estimate of the error, in two thirds
// of the time.
func SelfValue(s Section, turns float64) float64 {
	return turns * turns * selfAt(s)(defaultLevel)
}

// SelfTo is Self to a relative accuracy between 1e-3 and 1e-7.
func SelfTo(s Section, turns, relative float64) (inductance, err float64) {
	if relative >= sure && s.isUsual() {
		value := turns * turns * selfAt(s)(defaultLevel+1)
		return value, sure * value
	}
	return climb(defaultLevel+2, topLevel, relative, turns*turns, selfAt(s))
}

// sure is the relative accuracy that the level above the default one is known to reach for usual windows.
const sure = 6e-6

// isUsual reports whether the window and the core are of the kind on which the levels were measured.
func (s Section) isUsual() bool {
	long, wide := max(s.CoreLength, s.CoreWidth), min(s.CoreLength, s.CoreWidth)
	return long <= 40*wide && s.Height >= long/200 && s.Height <= 2*long && s.Build >= long/500 && s.Build <= long
}

func selfAt(s Section) func(level int) float64 {
	w := s.winding()
	if s.Height == 0 && s.Build == 0 {
		return func(int) float64 { return math.Inf(1) }
	}
	if a, b := s.straights(); len(w.pieces) == 4 && max(a, b) < 0.4*w.window.to {
		w.pieces = quarters(a, b) // half circles that nearly touch at both ends
	}
	tasks := selfTasks(len(w.pieces))
	return func(level int) float64 { return w.with(w, true, 0, 0, level, tasks) }
}

// Coaxial is the mutual inductance in henry of two windings with a common axis and parallel
// sides, whose centres are the distance apart, with an estimate of the error
// in henry. The windows must not overlap: one may lie above, inside or around the other.
func Coaxial(a, b Section, na, nb, distance float64) (mutual, err float64) {
	return climb(defaultLevel, defaultLevel, 0, na*nb, coaxialAt(a, b, distance))
}

// SelfPart is SelfValue for a part of a whole: the smaller its share, the less exact it has to be.
func SelfPart(s Section, turns, share float64) float64 {
	if s.isThin(share) {
		return turns * turns * s.asSheet()
	}
	return turns * turns * selfAt(s)(levelFor(share))
}

// isThin reports whether a window may be taken as a sheet, which leaves out less than a tenth of the square of build over width.
func (s Section) isThin(share float64) bool {
	thin := sq(s.Build / min(s.CoreLength, s.CoreWidth))
	return s.Build > 0 && s.Height > 0 && !s.isCircle() && thin*share < 4e-5
}

// asSheet is the inductance of one turn by that of a sheet in the middle of its build, which differs as parallel straight
// strips do: by the logarithm of their mean distances. It is within some 1e-4 for windows that are thin against the core.
func (s Section) asSheet() float64 {
	sheet := Section{s.CoreLength + s.Build, s.CoreWidth + s.Build, s.CornerRadius + s.Build/2, s.Height, 0}
	ratio := RectangleMeanDistance(s.Build, s.Height) / RectangleMeanDistance(0, s.Height)
	return selfAt(sheet)(1) - Mu0/(2*math.Pi)*s.MeanTurnLength()*math.Log(ratio)
}

// PartOff is what SelfPart and CoaxialPart together may be off, relative to the whole.
const PartOff = 4e-6

// CoaxialPart is the mutual inductance for a part of a whole.
func CoaxialPart(a, b Section, na, nb, distance, share float64) float64 {
	if value, ok := besideLayer(a, b, distance, share); ok {
		return na * nb * value
	}
	return na * nb * coaxialAt(a, b, distance)(levelFor(share))
}

// levelFor is the level that keeps the error of a part below 1e-5 of the whole.
func levelFor(share float64) int {
	switch {
	case share < 0.008:
		return 0
	case share < 0.3:
		return 1
	}
	return defaultLevel
}

// CoaxialTo is Coaxial to a relative accuracy between 1e-3 and 1e-7.
func CoaxialTo(a, b Section, na, nb, distance, relative float64) (mutual, err float64) {
	return climb(defaultLevel, topLevel, relative, na*nb, coaxialAt(a, b, distance))
}

func coaxialAt(a, b Section, distance float64) func(level int) float64 {
	wa, wb := a.winding(), b.winding()
	if sameSkeleton(a, b) {
		tasks := coaxialTasks(len(wa.pieces))
		if wa.window == wb.window {
			tasks = selfTasks(len(wa.pieces))
		}
		return func(level int) float64 { return wa.with(wb, true, 0, distance, level, tasks) }
	}
	wa.pieces, wb.pieces = quarters(a.straights()), quarters(b.straights())
	tasks := rectangleTasks()
	return func(level int) float64 { return wa.with(wb, false, 0, distance, level, tasks) }
}

func sameSkeleton(a, b Section) bool {
	xa, ya := a.straights()
	xb, yb := b.straights()
	same := func(p, q float64) bool {
		return math.Abs(p-q) <= 1e-12*(a.CoreLength+a.CoreWidth) && (p == 0) == (q == 0)
	}
	return same(xa, xb) && same(ya, yb)
}

// with is the mutual inductance of one turn with one turn, in henry, q being the distance
// aside and z along the axis.
func (p winding) with(q winding, common bool, aside, z float64, level int, tasks []task) float64 {
	value, _ := p.withParts(q, common, aside, z, level, tasks)
	return value
}

// withParts returns also what the pairs of pieces add up to without their signs.
func (p winding) withParts(q winding, common bool, aside, z float64, level int, tasks []task) (value, parts float64) {
	e := p.engine(q, common, aside, z, level)
	value = Mu0 / (4 * math.Pi) * e.shared(tasks)
	return value, Mu0 / (4 * math.Pi) * e.parts
}

func (p winding) engine(q winding, common bool, aside, z float64, level int) engine {
	k, scale := axial(p.height, q.height, z, max(p.size, q.size))
	if scale > 0 {
		scale = max(scale, min(p.size, q.size)/1000)
	}
	o := ordersAt(level).deepen(p.window)
	if q.window != p.window {
		o = o.deepen(q.window)
	}
	lost := 0.0
	if !common || z != 0 || p.window != q.window {
		lost = max(lostDigits(math.Hypot(aside, z), p.size, q.size), lostDigits(math.Hypot(aside, z), p.narrow, q.narrow)/2)
		o.digits += 2 + lost
		if aside > 0 {
			o.digits += 1.5
		}
	}
	return engine{
		k: k, scale: scale, p: p.pieces, q: q.pieces, wp: p.window, wq: q.window, common: common,
		gap:    max(0, math.Abs(z)-(p.height+q.height)/2),
		smooth: axialGap(p.height, q.height, z),
		o:      o,
		quick:  level <= tableLevel && lost < tableLost,
	}
}

// axialGap is the axial distance of two windows as far as the smoothness of their kernel goes: being
// averaged over the heights, it is much smoother than the bare gap suggests (the
// singularity at ρ = ±i·gap is a weak one). It is 0 for windows that overlap axially.
func axialGap(ha, hb, z float64) float64 {
	gap := math.Abs(z) - (ha+hb)/2
	if gap < -1e-9*(ha+hb) {
		return 0
	}
	return max(0, gap) + 0.3*min(ha, hb)
}

// lostDigits is how much the pieces of two distant windings cancel, as a power of e: each pair is
// of the order 1/distance, their sum that of two dipoles. Of two long coils, opposite sides cancel.
func lostDigits(distance, a, b float64) float64 {
	return math.Log1p(distance*distance/(a*a)) + math.Log1p(distance*distance/(b*b))
}

// A table of the kernel keeps eight digits: up to a level, and where few of them are lost to cancellation.
const (
	tableLevel = 3
	tableLost  = 7
)

const (
	defaultLevel = 2
	topLevel     = 8
)

// climb raises the level until a step is below the relative accuracy. The error is taken to be
// the step, which is usually ten times too much, with a part of the one before and a floor, which
// cover the cases where two levels agree by chance.
func climb(level, most int, relative, factor float64, at func(level int) float64) (value, err float64) {
	return climbOver(level, most, relative, factor, alone(at))
}

// climbOver is climb for a sum of which is known how large its parts are; the floor goes with them.
func climbOver(level, most int, relative, factor float64, at func(level int) (value, parts float64)) (value, err float64) {
	if relative > 0 { // the floor is above it further down
		level = min(max(level, int(math.Ceil(-3-math.Log10(relative/2)))), most)
	}
	rough, _ := at(level - 1)
	before := 0.0
	for {
		var parts float64
		value, parts = at(level)
		step := math.Abs(value - rough)
		err = step + before/20 + 2*math.Pow10(-3-level)*parts
		if math.IsInf(value, 0) || pace.Stopped() || level >= most || err <= relative*math.Abs(value) {
			return factor * value, math.Abs(factor) * err
		}
		rough, before = value, step
		level++
	}
}
