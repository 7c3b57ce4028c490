package induct

import (
	"math"
	"slices"
)

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
	return climb(discreteLevel, discreteLevel, 0, 1, discreteAt(core, turns, wire))
}

// DiscreteSelfTo is DiscreteSelf to a relative accuracy between 1e-3 and 1e-7.
func DiscreteSelfTo(core Section, turns []Turn, wire Wire, relative float64) (inductance, err float64) {
	return climb(discreteLevel-1, topLevel, relative, 1, discreteAt(core, turns, wire))
}

const discreteLevel = 3

// DiscreteValue is the inductance of single turns in series in henry, a digit coarser than
// DiscreteSelf and without its estimate of the error.
func DiscreteValue(core Section, turns []Turn, wire Wire) float64 {
	return discreteAt(core, turns, wire)(discreteLevel - 1)
}

func discreteAt(core Section, turns []Turn, wire Wire) func(level int) float64 {
	pairs := countPairs(turns, core.CoreLength+core.CoreWidth)
	return func(level int) float64 { return newTurnSum(core, level).over(pairs, wire.meanDistance()) }
}

// A layerPair is all pairs of turns of two depths: how often each height between them occurs. Regular coils have few
// different ones.
type layerPair struct {
	inner, outer float64
	z, times     []float64
	index        map[int64]int // of z in steps
}

func (l *layerPair) add(steps int64, step, times float64) {
	i, known := l.index[steps]
	if !known {
		i = len(l.z)
		l.index[steps] = i
		l.z, l.times = append(l.z, float64(steps)*step), append(l.times, 0)
	}
	l.times[i] += times
}

// countPairs tallies all pairs in the order in which their layers first occur, so that the sum is the same to the last digit
// every time. Places are rounded to 1e-9 of the core.
func countPairs(turns []Turn, size float64) (pairs []layerPair) {
	step := 1e-9 * size
	steps := func(x float64) int64 { return int64(math.Round(x / step)) }
	depths, layer := []int64{}, make([]int, len(turns))
	for i, t := range turns {
		if layer[i] = slices.Index(depths, steps(t.Depth)); layer[i] < 0 {
			layer[i], depths = len(depths), append(depths, steps(t.Depth))
		}
	}
	found := map[[2]int]int{}
	for i, a := range turns {
		for j, b := range turns[:i+1] {
			key := [2]int{layer[i], layer[j]}
			if depths[key[1]] < depths[key[0]] {
				key[0], key[1] = key[1], key[0]
			}
			at, known := found[key]
			if !known {
				at = len(pairs)
				found[key] = at
				pairs = append(pairs, layerPair{inner: float64(depths[key[0]]) * step, outer: float64(depths[key[1]]) * step, index: map[int64]int{}})
			}
			pairs[at].add(steps(math.Abs(a.Z-b.Z)), step, float64(min(2, 1+i-j)))
		}
	}
	return pairs
}

// A turnSum holds what the pairs have in common.
type turnSum struct {
	engine
	tasks, own []task // of two layers, of one
	radius     float64
	tables     bool
}

func newTurnSum(core Section, level int) *turnSum {
	w := core.winding()
	return &turnSum{
		engine: engine{p: w.pieces, q: w.pieces, common: true, o: ordersAt(level)},
		tasks:  coaxialTasks(len(w.pieces)), own: selfTasks(len(w.pieces)), radius: core.CornerRadius, tables: level >= discreteLevel,
	}
}

func (s *turnSum) over(pairs []layerPair, ownDistance float64) float64 {
	sums, values := [mostWorkers]turnSum{}, make([]float64, len(pairs))
	for i := range sums {
		sums[i] = *s
	}
	share(len(pairs), func(worker, i int) { values[i] = sums[worker].mutual(&pairs[i], ownDistance) })
	sum := 0.0
	for _, value := range values {
		sum += value
	}
	return Mu0 / (4 * math.Pi) * sum
}

// mutual is Neumann's integral over all pairs of two layers at once. A filament with itself is displaced by its mean
// distance.
func (s *turnSum) mutual(l *layerPair, ownDistance float64) float64 {
	k := &aboveEachOther{z2: make([]float64, len(l.z)), times: l.times}
	least := math.Inf(1)
	for i, z := range l.z {
		if l.inner == l.outer && z == 0 {
			z = ownDistance
		}
		k.z2[i] = z * z
		least = min(least, z)
	}
	if s.tables && len(l.z) > 1 {
		k.table = &lookup{exact: k.exactPoint, top: tableTop}
	}
	s.k, s.gap, s.smooth, s.scale = k, least, least, least
	s.wp = window{s.radius + l.inner, s.radius + l.inner}
	s.wq = window{s.radius + l.outer, s.radius + l.outer}
	s.joints = s.joints[:0]
	if l.inner == l.outer {
		return s.total(s.own)
	}
	return s.total(s.tasks)
}
