package chart

import "math"

// Point is a place on the drawing.
type Point struct{ X, Y float64 }

// Thin drops points that a polyline does not need: none of the points given is further than
// tolerance from the line that is left. The ends stay.
//
// The method is that of D. H. Douglas and T. K. Peucker, "Algorithms for the reduction of
// the number of points required to represent a digitized line or its caricature", The
// Canadian Cartographer 10 (1973): keep the point furthest from the chord and look at both
// halves in turn. A stack stands in for recursion.
func Thin(points []Point, tolerance float64) []Point {
	if len(points) < 3 {
		return points
	}
	keep := make([]bool, len(points))
	keep[0], keep[len(points)-1] = true, true
	stack := [][2]int{{0, len(points) - 1}}
	for len(stack) > 0 {
		a, b := stack[len(stack)-1][0], stack[len(stack)-1][1]
		stack = stack[:len(stack)-1]
		if i, d := furthest(points, a, b); d > tolerance {
			keep[i] = true
			stack = append(stack, [2]int{a, i}, [2]int{i, b})
		}
	}
	var kept []Point
	for i, k := range keep {
		if k {
			kept = append(kept, points[i])
		}
	}
	return kept
}

func furthest(points []Point, a, b int) (index int, distance float64) {
	for i := a + 1; i < b; i++ {
		if d := fromSegment(points[i], points[a], points[b]); d > distance {
			index, distance = i, d
		}
	}
	return index, distance
}

// fromSegment returns how far p is from the segment between a and b.
func fromSegment(p, a, b Point) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	length := dx*dx + dy*dy
	t := 0.0
	if length > 0 {
		t = min(max(((p.X-a.X)*dx+(p.Y-a.Y)*dy)/length, 0), 1)
	}
	return math.Hypot(p.X-a.X-t*dx, p.Y-a.Y-t*dy)
}
