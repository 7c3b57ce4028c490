package coil

import (
	"fmt"
	"math"
	"sort"

	"lode/stdlib/coil/internal/kernel"
	"lode/units"
)

// Point is a point of an outline in plan view.
type Point struct {
	X units.Length // along the core
	Y units.Length // across it
}

// Convex is a core of any outline. Wire under tension spans hollows, so that the core counts
// as its convex hull.
//
// Source: Steiner's formula (1840): perimeter and area alone decide the length of turns and the areas in them.
//
// Accuracy: lengths, areas, resistance and, up to 40 corners, inductance exact; with more corners inductance within some 0.01 %. Mutual inductance
// with a tilted winding, field, losses and hum of near wires are those of the rounded rectangle of equal perimeter and area, within some
// per cent.
type Convex struct {
	Corners []Point      // of the core, three or more in any order, within 2 m of the origin
	Height  units.Length // between the flanges, up to 2 m
	Room    units.Length // depth from the core to the edge of the flange, up to 2 m; zero: no flange
}

// Shape checks the dimensions and returns the rounded rectangle that has the same turns.
func (c Convex) Shape() (Shape, error) {
	for _, p := range c.Corners {
		if !(math.Abs(float64(p.X)) <= float64(longest) && math.Abs(float64(p.Y)) <= float64(longest)) {
			return Shape{}, refuse("convex Corners: out of range", fmt.Sprintf("%v, %v", p.X, p.Y), "at most "+longest.String()+" from the origin", "write the unit, such as 10*mm")
		}
	}
	hull := hullOf(c.Corners)
	perimeter, area, length := measures(hull)
	if len(hull) < 3 || !(area > 1e-12) {
		return Shape{}, refuse("convex Corners: no area", fmt.Sprintf("%d corners", len(hull)), "three corners or more around the core", "")
	}
	if err := span("convex Height", c.Height); err != nil {
		return Shape{}, err
	}
	room := c.Room
	if room == 0 {
		room = units.Length(math.Inf(1))
	} else if err := span("convex Room", room); err != nil {
		return Shape{}, err
	}
	l, w, r := kernel.EqualRectangle(perimeter, area, length)
	shape := Shape{Length: units.Length(l), Width: units.Length(w), CornerRadius: units.Length(r), Height: c.Height, Room: room}
	shape.hull = hull
	return shape, nil
}

// String names the core and its height.
func (c Convex) String() string {
	return fmt.Sprintf("convex, core of %d corners, %v high", len(c.Corners), c.Height)
}

// hullOf returns the corners of the convex hull, counterclockwise.
//
// Source: A. M. Andrew, Another efficient algorithm for convex hulls in two dimensions, Information Processing Letters 9 (1979).
func hullOf(points []Point) []Point {
	p := append([]Point(nil), points...)
	sort.Slice(p, func(i, j int) bool { return p[i].X < p[j].X || p[i].X == p[j].X && p[i].Y < p[j].Y })
	half := func(next func(int) Point) []Point {
		var chain []Point
		for i := range p {
			q := next(i)
			for n := len(chain); n >= 2 && turns(chain[n-2], chain[n-1], q) <= 0; n = len(chain) {
				chain = chain[:n-1]
			}
			chain = append(chain, q)
		}
		return chain[:max(0, len(chain)-1)]
	}
	lower := half(func(i int) Point { return p[i] })
	return append(lower, half(func(i int) Point { return p[len(p)-1-i] })...)
}

// turns is positive where the way a, b, c turns left.
func turns(a, b, c Point) float64 {
	return float64(b.X-a.X)*float64(c.Y-a.Y) - float64(b.Y-a.Y)*float64(c.X-a.X)
}

// areaOf is the area in a hull.
func areaOf(hull []Point) (area float64) {
	for i, a := range hull {
		area += turns(hull[0], a, hull[(i+1)%len(hull)]) / 2
	}
	return area
}

// measures returns the perimeter of a hull, the area in it and its greatest length.
func measures(hull []Point) (perimeter, area, length float64) {
	area = areaOf(hull)
	for i, a := range hull {
		b := hull[(i+1)%len(hull)]
		perimeter += math.Hypot(float64(b.X-a.X), float64(b.Y-a.Y))
		low, high := math.Inf(1), math.Inf(-1) // the extent along this side
		for _, c := range hull {
			along := (float64(c.X)*float64(b.X-a.X) + float64(c.Y)*float64(b.Y-a.Y)) / math.Hypot(float64(b.X-a.X), float64(b.Y-a.Y))
			low, high = min(low, along), max(high, along)
		}
		length = max(length, high-low)
	}
	return perimeter, area, length
}
