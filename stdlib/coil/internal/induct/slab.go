package induct

import "math"

// This file integrates the axial average once more, over the depth of a side: what remains is
// the potential of a whole block of current, a side of all turns, at a point in the plane.

// block is the antiderivative of the kernel along both directions of the plane, for places beyond the end
// of a block. Terms that do not depend on x are left out, since they cancel between its two ends, so that it is
// smooth far from an end. With r² = x²+y²+u², for x ≥ 0,
//
//	∬ g dx dy = x y u asinh(u/√(x²+y²)) + (y u²/2 − y³/6) ln(x+r) + (x u²/2 − x³/6) asinh(y/√(x²+u²))
//	          − (x² u/2) atan(yu/(xr)) + (y² u/2) [atan(yr/(xu)) − atan(y/u)]
//	          + (u³/6) [atan(y/u) − atan(xy/(ur))] − x y r/3
//
// found here; the tests compare it with quadrature. The differences of arc tangents in brackets add up to the first one.
func (k *sheets) block(x, y float64) float64 {
	if x == 0 && y == 0 {
		return 0
	}
	sum := 0.0
	for i := range k.n {
		if u := k.u[i]; u == 0 {
			sum += k.w[i] * flatSlab(x, math.Abs(y))
		} else {
			sum += k.w[i] * slab(x, math.Abs(y), u)
		}
	}
	return math.Copysign(sum, sum*y)
}

func slab(x, y, u float64) float64 {
	x2, y2, u2 := x*x, y*y, u*u
	r := math.Sqrt(x2 + y2 + u2)
	bend := y * u * (y2 + u2) / (r + x) // y u (r−x)
	a, b := angle(bend, x*u2+y2*r), angle(bend, u2*r+y2*x)
	sum := (u2/2-y2/6)*y*ln(x+r) - x*y*r/3 +
		(u2/2-x2/6)*x/2*ln((y+r)*(y+r)/(x2+u2)) +
		u/2*(y2*a+u2/3*b-x2*(a+b))
	if x > 0 {
		sum += x * y * u / 2 * ln((u+r)*(u+r)/(x2+y2))
	}
	return sum
}

// flatSlab is slab for u = 0.
func flatSlab(x, y float64) float64 {
	r := math.Sqrt(x*x + y*y)
	sum := -y*y*y/6*ln(x+r) - x*y*r/3
	if x > 0 {
		sum -= x * x * x / 6 * ln((y+r)/x)
	}
	return sum
}
