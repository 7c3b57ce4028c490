package induct

import "math"

// This file holds the kernel of many filaments above each other: the sum of 1/R over the heights between two turns.

// An aboveEachOther kernel is that sum, each height taken some times.
type aboveEachOther struct {
	z2, times []float64 // squares of the heights
	table     *lookup   // of point, if that is quick
}

func (k *aboveEachOther) point(rho2 float64) float64 {
	if k.table != nil {
		return k.table.at(rho2)
	}
	return k.exactPoint(rho2)
}

func (k *aboveEachOther) exactPoint(rho2 float64) float64 {
	sum := 0.0
	for i, z2 := range k.z2 {
		sum += k.times[i] / math.Sqrt(rho2+z2)
	}
	return sum
}

func (k *aboveEachOther) side(from, to, d float64) float64 {
	sum, d2, from2, to2 := 0.0, d*d, from*from, to*to
	for i, z2 := range k.z2 {
		q2 := d2 + z2
		sum += k.times[i] * asinhStep(from, to, math.Sqrt(from2+q2), math.Sqrt(to2+q2), q2)
	}
	return sum
}

func (k *aboveEachOther) double(x, d float64) float64 {
	sum := 0.0
	for i, z2 := range k.z2 {
		if q := math.Sqrt(d*d + z2); q > 0 {
			sum += k.times[i] * (x*arsinh(x/q) - math.Sqrt(x*x+q*q))
		}
	}
	return sum
}
