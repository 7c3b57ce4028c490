package induct

import "math"

// This file averages over the two builds. A node is a pair of distances from the skeletons.

type node struct{ tp, tq, w float64 }

// counts are the points over the difference of two distances, in the interval at 0 and in those
// further out, over their mean, and over the depth of a thin window.
type counts struct{ near, far, middle, thin int }

// separate fills nodes for pieces that stay apart: a product of Gauss rules.
func separate(to []node, p, q window, np, nq int) []node {
	rp, rq := gauss(np), gauss(nq)
	if p.width() == 0 {
		rp = gauss(1)
	}
	if q.width() == 0 {
		rq = gauss(1)
	}
	for i, x := range rp.x {
		for j, y := range rq.x {
			to = append(to, node{p.from + x*p.width(), q.from + y*q.width(), rp.w[i] * rq.w[j]})
		}
	}
	return to
}

// together fills nodes for pieces of one skeleton that meet when tp = tq: the outer variable is
// the difference δ = tq − tp, graded towards the kink at 0 and cut at the corners of the
// window, the inner one is tp along the line of that difference. scale is the
// axial height, below which the kernel changes from logarithm to 1/ρ.
func together(to []node, p, q window, n counts, scale float64) []node {
	if p.width() == 0 || q.width() == 0 {
		return sheetAndWindow(to, p, q, n, scale)
	}
	switch {
	case p == q:
		return diagonal(to, p, n, scale)
	case q.width() < thin*p.width():
		return thinAndWindow(to, p, q, n, scale)
	case p.width() < thin*q.width():
		first := len(to)
		return swapped(thinAndWindow(to, q, p, n, scale), first)
	}
	cuts := [3]float64{q.from - p.from, q.to - p.to, 0}
	low, high := q.from-p.to, q.to-p.from
	sort3(&cuts)
	left := low
	for i := range 4 {
		right := high
		if i < 3 {
			right = math.Min(math.Max(cuts[i], low), high)
		}
		if right > left {
			to = strip(to, p, q, left, right, n, scale)
		}
		left = math.Max(left, right)
	}
	return to
}

// diagonal is together for a self term; both signs of the difference are written out, since
// a side inside an arc's turn and outside it are two different pairs.
func diagonal(to []node, p window, n counts, scale float64) []node {
	c := p.width()
	to = strip(to, p, p, 0, c, n, scale)
	for _, at := range to {
		to = append(to, node{at.tq, at.tp, at.w})
	}
	return to
}

// strip fills the nodes of left < δ < right, in which no corner of the window lies.
func strip(to []node, p, q window, left, right float64, n counts, scale float64) []node {
	area := p.width() * q.width()
	inside := gauss(n.middle)
	return differences(to, left, right, n, scale, func(delta, w float64) []node {
		from := math.Max(p.from, q.from-delta)
		till := math.Min(p.to, q.to-delta)
		for i, x := range inside.x {
			tp := from + x*(till-from)
			to = append(to, node{tp, tp + delta, w * inside.w[i] * (till - from) / area})
		}
		return to
	})
}

// differences walks a range of δ on one side of 0: graded within the scale, and by
// intervals growing fourfold outside it.
func differences(to []node, left, right float64, n counts, scale float64, visit func(delta, w float64) []node) []node {
	sign := 1.0
	if right <= 0 {
		sign, left, right = -1, -right, -left
	}
	for left < right {
		end, r := right, gauss(n.far)
		if left == 0 {
			r = squared(n.near)
			if scale == 0 {
				r = cubed(n.near)
			}
		}
		if step := math.Max(4*left, scale); scale > 0 && step < 0.7*right {
			end = step
		}
		for i, x := range r.x {
			to = visit(sign*(left+x*(end-left)), r.w[i]*(end-left))
		}
		left = end
	}
	return to
}

// thin is the share of the other window below which a window is taken as two sheets: it is smooth over its
// own build.
const thin = 0.55

// thinAndWindow is together for a thin window q.
func thinAndWindow(to []node, p, q window, n counts, scale float64) []node {
	sheets := gauss(n.thin)
	for i, x := range sheets.x {
		at := q.from + x*q.width()
		first := len(to)
		to = swapped(sheetAndWindow(to, window{at, at}, p, n, scale), first)
		for j := first; j < len(to); j++ {
			to[j].w *= sheets.w[i]
		}
	}
	return to
}

// swapped exchanges both distances of the nodes from the first one on.
func swapped(to []node, first int) []node {
	for i := first; i < len(to); i++ {
		to[i].tp, to[i].tq = to[i].tq, to[i].tp
	}
	return to
}

// sheetAndWindow is together when one of the windows, or both, has no build.
func sheetAndWindow(to []node, p, q window, n counts, scale float64) []node {
	switch {
	case p.width() == 0 && q.width() == 0:
		return append(to, node{p.from, q.from, 1})
	case q.width() == 0:
		first := len(to)
		return swapped(sheetAndWindow(to, q, p, n, scale), first)
	}
	cuts := [2]float64{q.from - p.from, q.to - p.from}
	visit := func(delta, w float64) []node {
		to = append(to, node{p.from, p.from + delta, w / q.width()})
		return to
	}
	if cuts[0] < 0 && cuts[1] > 0 {
		to = differences(to, cuts[0], 0, n, scale, visit)
		cuts[0] = 0
	}
	return differences(to, cuts[0], cuts[1], n, scale, visit)
}

func sort3(a *[3]float64) {
	for _, ij := range [3][2]int{{0, 1}, {1, 2}, {0, 1}} {
		if a[ij[0]] > a[ij[1]] {
			a[ij[0]], a[ij[1]] = a[ij[1]], a[ij[0]]
		}
	}
}
