package chart

import "math"

// Regions returns the outlines of where the map is at or above level, as closed loops in
// the map's own coordinates. Loops may lie in one another: filled by the even-odd rule they
// cover the region. NaN counts as below.
//
// The method is marching squares: each cell of the grid is cut by at most two straight lines
// whose ends are interpolated along its edges, and lines that share an end are joined. The
// grid gets a rim far below any level, as wide as nothing, so that every loop closes. In a
// saddle the mean of the four corners says which side is joined.
func (m *Map) Regions(level float64) [][]Point {
	g := rimmed{m, level}
	next := map[edge]edge{}
	for j := range len(m.Y) + 1 {
		for i := range len(m.X) + 1 {
			g.cut(i, j, next)
		}
	}
	var loops [][]Point
	for j := range len(m.Y) + 2 {
		for i := range len(m.X) + 2 {
			for _, start := range []edge{{i, j, false}, {i, j, true}} {
				if loop := g.follow(start, next); len(loop) > 2 {
					loops = append(loops, loop)
				}
			}
		}
	}
	return loops
}

// edge is the side of a cell that begins at grid point i, j and goes right or up.
type edge struct {
	i, j int
	up   bool
}

type rimmed struct {
	*Map
	level float64
}

// at returns how far grid point i, j is above the level; index 0 and the last are the rim.
func (g rimmed) at(i, j int) float64 {
	if i < 1 || j < 1 || i > len(g.X) || j > len(g.Y) || math.IsNaN(g.Values[j-1][i-1]) {
		return math.Inf(-1)
	}
	return g.Values[j-1][i-1] - g.level
}

func (g rimmed) place(i, j int) Point {
	return Point{g.X[min(max(i-1, 0), len(g.X)-1)], g.Y[min(max(j-1, 0), len(g.Y)-1)]}
}

// crossing interpolates where the level crosses an edge.
func (g rimmed) crossing(e edge) Point {
	i, j := e.i+1, e.j
	if e.up {
		i, j = e.i, e.j+1
	}
	a, b := g.at(e.i, e.j), g.at(i, j)
	p, q := g.place(e.i, e.j), g.place(i, j)
	t := a / (a - b)
	switch {
	case math.IsInf(a, -1):
		t = 1
	case math.IsInf(b, -1):
		t = 0
	}
	return Point{p.X + t*(q.X-p.X), p.Y + t*(q.Y-p.Y)}
}

// cut adds the lines through one cell, each with the region on its left.
func (g rimmed) cut(i, j int, next map[edge]edge) {
	low, right, top, left := edge{i, j, false}, edge{i + 1, j, true}, edge{i, j + 1, false}, edge{i, j, true}
	corners := [4]bool{g.at(i, j) >= 0, g.at(i+1, j) >= 0, g.at(i+1, j+1) >= 0, g.at(i, j+1) >= 0}
	sides := [4]edge{low, right, top, left}
	if corners[0] == corners[2] && corners[1] == corners[3] && corners[0] != corners[1] {
		g.saddle(i, j, corners, sides, next)
		return
	}
	var from, to *edge
	for k := range sides {
		a, b := corners[k], corners[(k+1)%4]
		if a && !b {
			from = &sides[k]
		}
		if !a && b {
			to = &sides[k]
		}
	}
	if from != nil && to != nil {
		next[*from] = *to
	}
}

// saddle joins the two high corners where the middle is high, and parts them elsewhere.
func (g rimmed) saddle(i, j int, corners [4]bool, sides [4]edge, next map[edge]edge) {
	middle := g.at(i, j) + g.at(i+1, j) + g.at(i+1, j+1) + g.at(i, j+1)
	turn := 3
	if middle >= 0 {
		turn = 1
	}
	for k := range sides {
		if corners[k] && !corners[(k+1)%4] {
			next[sides[k]] = sides[(k+turn)%4]
		}
	}
}

// follow walks a loop from start and takes it out of next.
func (g rimmed) follow(start edge, next map[edge]edge) []Point {
	var loop []Point
	for e := start; ; {
		to, ok := next[e]
		if !ok {
			return loop
		}
		delete(next, e)
		loop = append(loop, g.crossing(e))
		e = to
	}
}
