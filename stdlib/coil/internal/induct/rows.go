package induct

import (
	"math"

	"gonum.org/v1/gonum/mathext"
)

// This file sums turns of equal pitch around a round core one by one: circles have a closed form.

// A Row is a layer of turns that follow each other by one pitch: the depth of its wires' middles over
// the core and the height of the lowest one.
type Row struct {
	Depth, Lowest float64
	Turns         int
}

// CircularRows is the inductance in henry of rows of round wire in series around a core of a radius.
func CircularRows(radius float64, rows []Row, pitch float64, wire Wire) float64 {
	sum := 0.0
	for i, a := range rows {
		for _, b := range rows[:i] {
			sum += 2 * rowPair(radius, a, b, pitch)
		}
		sum += rowSelf(radius, a, pitch, wire)
	}
	return sum
}

func rowSelf(radius float64, a Row, pitch float64, wire Wire) float64 {
	r := radius + a.Depth
	sum := float64(a.Turns) * Circles(r, r, wire.meanDistance())
	for m := 1; m < a.Turns; m++ {
		sum += 2 * float64(a.Turns-m) * Circles(r, r, float64(m)*pitch)
	}
	return sum
}

func rowPair(radius float64, a, b Row, pitch float64) float64 {
	sum := 0.0
	for m := 1 - a.Turns; m < b.Turns; m++ {
		pairs := min(a.Turns-1, b.Turns-1-m) - max(0, -m) + 1
		sum += float64(pairs) * Circles(radius+a.Depth, radius+b.Depth, b.Lowest-a.Lowest+float64(m)*pitch)
	}
	return sum
}

// Circles is the mutual inductance in henry of two circular filaments with one axis, a distance apart
// (J. C. Maxwell, Treatise, 1873, art. 701).
func Circles(a, b, distance float64) float64 {
	if a == 0 || b == 0 {
		return 0
	}
	m := 4 * a * b / (sq(a+b) + sq(distance))
	k := math.Sqrt(m)
	return Mu0 * math.Sqrt(a*b) * ((2/k-k)*mathext.CompleteK(m) - 2/k*mathext.CompleteE(m))
}
