// Package kernel holds the formulas of package coil in plain SI float64: turns on a convex
// core, packing, winding capacitance, hum and losses in the wire. Nothing here checks its
// arguments; package coil does.
package kernel

import "math"

// An outline is the closed convex curve that the innermost layer of wire lies on. A turn at
// depth t lies on the parallel curve. Steiner's formulas give its length and the area in it
// from the length P and area S of the core alone, whatever its shape:
//
//	P(t) = P + 2πt        S(t) = S + P·t + πt²
//
// Source: J. Steiner, Über parallele Flächen, 1840; in most texts on convex geometry, such
// as R. Schneider, Convex Bodies: The Brunn-Minkowski Theory, 1993, chapter 4.

// RoundedPerimeter returns the length of a rectangle's outline with corners of radius r.
func RoundedPerimeter(length, width, r float64) float64 {
	return 2*(length+width-4*r) + 2*math.Pi*r
}

// RoundedArea returns the area in that outline.
func RoundedArea(length, width, r float64) float64 {
	return length*width - (4-math.Pi)*r*r
}

// TurnLength returns the length of a turn at depth t over a core of perimeter P.
func TurnLength(P, t float64) float64 { return P + 2*math.Pi*t }

// TurnArea returns the area in a turn at depth t over a core of perimeter P and area S.
func TurnArea(P, S, t float64) float64 { return S + P*t + math.Pi*t*t }

// MeanTurnLength returns the mean length of turns spread evenly over the depths from t1 to t2.
func MeanTurnLength(P, t1, t2 float64) float64 { return P + math.Pi*(t1+t2) }

// MeanTurnArea returns the mean of the areas in turns spread evenly over the depths from t1
// to t2: the integral of TurnArea over the depth, divided by the depth.
func MeanTurnArea(P, S, t1, t2 float64) float64 {
	return S + P*(t1+t2)/2 + math.Pi*(t1*t1+t1*t2+t2*t2)/3
}

// EqualRectangle returns the rounded rectangle of perimeter P and area S that is as long as
// given where there is one, and else the sharp rectangle or the racetrack of that perimeter and
// area. Steiner's formulas make its turns as long, and the areas in them as large, as those of
// the outline it stands for. The area must not exceed that of a circle, P²/4π.
func EqualRectangle(P, S, length float64) (l, w, r float64) {
	width := func(r float64) float64 { return (P+(8-2*math.Pi)*r)/2 - length }
	area := func(r float64) float64 { return RoundedArea(length, width(r), r) }
	half := length / 2 // the radius at which the width's own half is the radius, if that is less
	if slope := 1 - (8-2*math.Pi)/4; slope > 0 {
		half = math.Min(half, (P/2-length)/2/slope)
	}
	switch {
	case width(0) <= 0 || area(0) > S*(1+1e-12):
		root := math.Sqrt(math.Max(0, P*P/16-S))
		return P/4 + root, P/4 - root, 0
	case area(half) < S:
		w = (P - math.Sqrt(math.Max(0, P*P-4*math.Pi*S))) / math.Pi
		return w + (P-math.Pi*w)/2, w, w / 2
	}
	low, high := 0.0, half
	for range 60 {
		if middle := (low + high) / 2; area(middle) < S {
			low = middle
		} else {
			high = middle
		}
	}
	return length, width(high), high
}
