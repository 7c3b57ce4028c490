package induct

import "math"

// This file integrates pieces of one skeleton that meet in a point, or nearly do.

// isShort reports whether the corners at the ends of side i nearly meet in the angle that they
// turn or in the build.
func (e *engine) isShort(i int) bool { return e.p[i].length < 0.4*max(e.wp.to, e.wq.to) }

// nearArcs integrates two corners with a short side between them, which are mirror images.
func (e *engine) nearArcs(p, q *piece, end touch) float64 {
	if e.quick && e.wp != e.wq && len(e.sheets) == 0 && e.wq.width() > 0 {
		return e.separate(p, q)
	}
	if !e.useProduct() {
		e.nodes = e.jointNodes()
		e.halve()
	}
	r := squared(e.o.joinedArc + e.further(p))
	return product(p, q, e.nodes, e.k, r, r, end)
}

// joined integrates a pair that meets at one end of p, seen from p.
func (e *engine) joined(p, q *piece, end touch) float64 {
	r := squared(e.o.joinedArc + e.further(p) + e.further(q))
	few := e.useProduct() && len(e.nodes) <= fewNodes
	switch {
	case !few && q.arc && e.blocks(e.wp):
		return e.joinedSector(q, p, e.wq, e.wp, r, atStart+atEnd-end)
	case !few && p.arc && e.blocks(e.wq):
		return e.joinedSector(p, q, e.wp, e.wq, r, end)
	case !few && !e.useProduct():
		e.nodes = e.jointNodes()
	}
	if q.arc {
		return alongPiece(q, p, e.nodes, true, e.k, r, atStart+atEnd-end)
	}
	return alongPiece(p, q, e.nodes, false, e.k, r, end)
}

// fewNodes is the number of pairs of depths up to which sides take less time than blocks.
const fewNodes = 9

// blocks reports whether a side of all turns in a window has a closed form: not without height or build.
func (e *engine) blocks(w window) bool {
	_, tall := e.k.(*sheets)
	return tall && w.width() > 1e-5*w.to
}

// further is the number of points that an arc needs more when it turns by two corners, or is long beside the windows: one for every
// doubling beyond eightfold.
func (e *engine) further(p *piece) int {
	if !p.arc {
		return 0
	}
	n := math.Log2(p.extent(e.wp.from)/max(e.wp.width(), e.wq.width(), e.scale)) - 2.5
	if p.span > 2 {
		n = max(n, 3)
	}
	return int(min(max(n, 0), 8))
}

// jointNodes fills nodes for pieces of a common skeleton that touch or nearly touch.
func (e *engine) jointNodes() []node {
	if len(e.joints) == 0 {
		e.joints = together(e.joints, e.wp, e.wq, counts{e.o.joined, max(3, e.o.joined-2), e.o.middle, e.o.thin}, e.scale)
	}
	return append(e.nodes[:0], e.joints...)
}
