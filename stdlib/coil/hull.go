package coil

import "math"

// This file measures distances on a plate.

// margin returns the material between a hole and the outline around it, negative where the hole leaves it.
func (p part) margin(hole part) float64 {
	return p.radius - hole.radius - p.beyond(hole.points[0])
}

// beyond returns how far a point lies outside the hull of the part's points, negative inside. The points go around
// counterclockwise.
func (p part) beyond(at Point) float64 {
	least, within := math.Inf(1), len(p.points) > 2
	for i, a := range p.points {
		b := p.points[(i+1)%len(p.points)]
		least = min(least, fromSegment(a, b, at))
		within = within && turns(a, b, at) > 0
	}
	if within {
		return -least
	}
	return least
}

// fromSegment returns the distance of a point from the straight piece between two others.
func fromSegment(a, b, at Point) float64 {
	dx, dy := float64(b.X-a.X), float64(b.Y-a.Y)
	px, py := float64(at.X-a.X), float64(at.Y-a.Y)
	share := 0.0
	if long := dx*dx + dy*dy; long > 0 {
		share = math.Max(0, math.Min(1, (px*dx+py*dy)/long))
	}
	return math.Hypot(px-share*dx, py-share*dy)
}

func distance(a, b part) float64 {
	return math.Hypot(float64(a.points[0].X-b.points[0].X), float64(a.points[0].Y-b.points[0].Y))
}

// between returns the material between two holes.
func between(a, b part) float64 { return distance(a, b) - a.radius - b.radius }
