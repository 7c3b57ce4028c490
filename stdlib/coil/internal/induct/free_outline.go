package induct

import (
	"math"
	"sort"
)

// This file admits cores of any outline. A wire under tension bridges every hollow, so the turn
// next to the core is the convex hull of its outline, and the turns outside are parallel curves
// of that, with arcs at its corners.

// An Outline is a winding on a core of free outline. The core's side lies the distance Offset
// outside the hull of the points.
type Outline struct {
	Points        [][2]float64
	Offset        float64
	Height, Build float64
}

// SelfOutline is Self for a free outline. It takes longer, with the square of the number
// of corners.
func SelfOutline(o Outline, turns float64) (inductance, err float64) {
	return climb(defaultLevel, defaultLevel, 0, turns*turns, selfOutlineAt(o))
}

// SelfOutlineValue is the inductance that SelfOutline returns, without the estimate of the error.
func SelfOutlineValue(o Outline, turns float64) float64 {
	return turns * turns * selfOutlineAt(o)(defaultLevel)
}

// SelfOutlineTo is SelfOutline to a relative accuracy between 1e-3 and 1e-7.
func SelfOutlineTo(o Outline, turns, relative float64) (inductance, err float64) {
	return climb(defaultLevel, topLevel, relative, turns*turns, selfOutlineAt(o))
}

func selfOutlineAt(o Outline) func(level int) float64 {
	w := o.winding()
	tasks := mirroredTasks(len(w.pieces))
	return func(level int) float64 { return w.with(w, true, 0, 0, level, tasks) }
}

// ParallelOutlines is the mutual inductance in henry of two windings with parallel axes, the second one turned about the
// origin of its points, in radians, and shifted.
func ParallelOutlines(a, b Outline, na, nb, turn float64, shift [3]float64) float64 {
	wa, wb := a.winding(), b.winding()
	wb.pieces = moved(wb.pieces, turn, vec{shift[0], shift[1]})
	common := samePieces(wa.pieces, wb.pieces, 1e-12*wa.size)
	tasks := allTasks(len(wa.pieces), len(wb.pieces))
	if common && wa.window == wb.window {
		tasks = mirroredTasks(len(wa.pieces))
	}
	return na * nb * wa.with(wb, common, math.Hypot(shift[0], shift[1]), shift[2], defaultLevel, tasks)
}

func samePieces(p, q []piece, tolerance float64) bool {
	if len(p) != len(q) {
		return false
	}
	for i := range p {
		if !p[i].start.isNear(q[i].start, tolerance) {
			return false
		}
	}
	return true
}

// mirroredTasks lists each pair of different pieces once, with equal windows.
func mirroredTasks(n int) []task {
	tasks := make([]task, 0, n*(n+1)/2)
	for i := range n {
		tasks = append(tasks, task{i, i, 1})
		for j := range i {
			tasks = append(tasks, task{i, j, 2})
		}
	}
	return tasks
}

func (o Outline) winding() winding {
	pieces := skeletonPieces(hull(o.Points))
	w := winding{pieces: pieces, window: window{o.Offset, o.Offset + o.Build}, height: o.Height}
	perimeter := 0.0
	for i := range pieces {
		perimeter += pieces[i].extent(o.Offset)
	}
	w.size = max(perimeter/2+2*o.Build, o.Height)
	w.narrow = w.size
	return w
}

// TurnLengthAndArea are the mean over the build of the turn length and of the enclosed area.
func (o Outline) TurnLengthAndArea() (length, area float64) {
	corners := hull(o.Points)
	for i, c := range corners {
		next := corners[(i+1)%len(corners)]
		length += next.minus(c).length()
		area += c.cross(next) / 2
	}
	from, to := o.Offset, o.Offset+o.Build
	area += length*(from+to)/2 + math.Pi/3*(from*from+from*to+to*to)
	return length + math.Pi*(from+to), area
}

// hull is the convex hull, counter-clockwise, without points on its sides: A. M. Andrew, "Another
// efficient algorithm for convex hulls in two dimensions", 1979.
func hull(points [][2]float64) []vec {
	sorted := make([]vec, len(points))
	for i, p := range points {
		sorted[i] = vec{p[0], p[1]}
	}
	sort.Slice(sorted, func(i, j int) bool {
		a, b := sorted[i], sorted[j]
		return a.x < b.x || a.x == b.x && a.y < b.y
	})
	lower := chain(sorted)
	for i, j := 0, len(sorted)-1; i < j; i, j = i+1, j-1 {
		sorted[i], sorted[j] = sorted[j], sorted[i]
	}
	upper := chain(sorted)
	if len(lower) == 1 {
		return lower
	}
	return append(lower[:len(lower)-1], upper[:len(upper)-1]...)
}

// chain is the half of the hull on the right hand of the way through the sorted points.
func chain(sorted []vec) []vec {
	list := []vec{}
	for _, p := range sorted {
		if n := len(list); n > 0 && p == list[n-1] {
			continue
		}
		for len(list) > 1 && !isLeftTurn(list[len(list)-2], list[len(list)-1], p) {
			list = list[:len(list)-1]
		}
		list = append(list, p)
	}
	return list
}

func isLeftTurn(a, b, c vec) bool {
	u, v := b.minus(a), c.minus(b)
	return u.cross(v) > 1e-12*u.length()*v.length()
}
