package induct

import "math"

// This file sums a coil turn by turn, for windings of few thick turns. Every turn is a
// filament along the middle of its wire, a parallel curve of the core; a step from turn to
// turn or from layer to layer is not modelled.

// A Turn is the place of one turn: the depth of the wire's middle outside the core and its height
// over the middle of the winding.
type Turn struct{ Depth, Z float64 }

// A Wire is a round conductor without its insulation. At low frequency the current
// fills it evenly; SurfaceCurrent leaves out its internal inductance.
type Wire struct {
	Radius         float64
	SurfaceCurrent bool
	InGrooves      bool // layers lie half a pitch along in turns
}

// meanDistance is the geometric mean distance of the conductor from itself: a·e^(−1/4) for
// the disc, a for its edge (J. C. Maxwell, Treatise, 1873, art. 692).
func (w Wire) meanDistance() float64 {
	if w.SurfaceCurrent {
		return w.Radius
	}
	return w.Radius * math.Exp(-0.25)
}

// Grid places layers × perLayer turns in the middles of equal cells of a window.
func Grid(s Section, layers, perLayer int) []Turn {
	list := make([]Turn, 0, layers*perLayer)
	for i := range layers {
		for j := range perLayer {
			list = append(list, Turn{
				Depth: (float64(i) + 0.5) * s.Build / float64(layers),
				Z:     ((float64(j)+0.5)/float64(perLayer) - 0.5) * s.Height,
			})
		}
	}
	return list
}

// DiscreteSelf is the inductance of single turns in series, in henry, with an estimate of
// the error of the sum in henry. Of the section only the core matters.
func DiscreteSelf(core Section, turns []Turn, wire Wire) (inductance, err float64) {
	pairs := countPairs(turns, core.CoreLength+core.CoreWidth)
	return climb(discreteLevel, discreteLevel, 0, 1, func(level int) float64 {
		sum := newTurnSum(core, level)
		return sum.over(pairs, wire.meanDistance())
	})
}

// DiscreteSelfTo is DiscreteSelf to a relative accuracy between 1e-3 and 1e-7.
func DiscreteSelfTo(core Section, turns []Turn, wire Wire, relative float64) (inductance, err float64) {
	pairs := countPairs(turns, core.CoreLength+core.CoreWidth)
	return climb(discreteLevel-1, topLevel, relative, 1, func(level int) float64 {
		return newTurnSum(core, level).over(pairs, wire.meanDistance())
	})
}

const discreteLevel = 3

// DiscreteValue is the inductance of single turns in series in henry, a digit coarser than
// DiscreteSelf and without its estimate of the error.
func DiscreteValue(core Section, turns []Turn, wire Wire) float64 {
	return newTurnSum(core, discreteLevel-1).over(countPairs(turns, core.CoreLength+core.CoreWidth), wire.meanDistance())
}

// A turnPair is the shape of a pair of turns; regular coils have few different ones.
type turnPair struct{ inner, outer, z float64 }

// A tally counts equal pairs in the order in which they first occur, so that the sum is the same
// to the last digit every time.
type tally struct {
	pairs []turnPair
	times []float64
	index map[turnPair]int
}

func (t *tally) add(pair turnPair, times float64) {
	i, known := t.index[pair]
	if !known {
		i = len(t.pairs)
		t.index[pair] = i
		t.pairs, t.times = append(t.pairs, pair), append(t.times, 0)
	}
	t.times[i] += times
}

// countPairs tallies all pairs. Places are rounded to 1e-9 of the core.
func countPairs(turns []Turn, size float64) *tally {
	step := 1e-9 * size
	round := func(x float64) float64 { return math.Round(x/step) * step }
	t := &tally{index: map[turnPair]int{}}
	for i, a := range turns {
		t.add(turnPair{round(a.Depth), round(a.Depth), 0}, 1)
		for _, b := range turns[:i] {
			inner, outer := round(min(a.Depth, b.Depth)), round(max(a.Depth, b.Depth))
			t.add(turnPair{inner, outer, round(math.Abs(a.Z - b.Z))}, 2)
		}
	}
	return t
}

// A turnSum holds what the pairs have in common.
type turnSum struct {
	engine
	tasks  []task
	radius float64
}

func newTurnSum(core Section, level int) *turnSum {
	w := core.winding()
	return &turnSum{
		engine: engine{p: w.pieces, q: w.pieces, common: true, o: ordersAt(level)},
		tasks:  coaxialTasks(len(w.pieces)), radius: core.CornerRadius,
	}
}

func (s *turnSum) over(t *tally, ownDistance float64) float64 {
	sums, values := [mostWorkers]turnSum{}, make([]float64, len(t.pairs))
	for i := range sums {
		sums[i] = *s
	}
	share(len(t.pairs), func(worker, i int) { values[i] = sums[worker].mutual(t.pairs[i], ownDistance) })
	sum := 0.0
	for i, times := range t.times {
		sum += times * values[i]
	}
	return Mu0 / (4 * math.Pi) * sum
}

// mutual is Neumann's integral of two filaments, or of one with itself displaced by its mean
// distance.
func (s *turnSum) mutual(pair turnPair, ownDistance float64) float64 {
	z := pair.z
	if pair.inner == pair.outer && z == 0 {
		z = ownDistance
	}
	s.k, s.gap, s.smooth, s.scale = filament{z}, z, z, z
	s.wp = window{s.radius + pair.inner, s.radius + pair.inner}
	s.wq = window{s.radius + pair.outer, s.radius + pair.outer}
	s.joints = s.joints[:0]
	return s.total(s.tasks)
}
