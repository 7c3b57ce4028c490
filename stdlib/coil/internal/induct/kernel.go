package induct

import "math"

// This file holds the closed forms. Everything above it only asks a kernel three things.
//
// Two coaxial or parallel windings are cut into pairs of plane curves. The integral of
// 1/R over both axial heights depends on the distance ρ in the plane alone, so a kernel
// is a function of ρ, and the straight sides need its antiderivatives along a line:
//
//	point(ρ²)     = f(ρ)
//	side(a,b,d)   = ∫ f(√(s²+d²)) ds from a to b   the potential of a straight side
//	double(x,d)   = ∬ f(√(s²+d²)) ds ds + const    the mutual term of two parallel sides
//
// With g(ρ,u) = u asinh(u/ρ) − √(ρ²+u²), whose second derivative by u is 1/R, the axial
// average is a second difference of g over the sums and differences of the heights.
// The antiderivatives are those of parallel thin tapes: C. Hoer and C. Love, "Exact
// inductance equations for rectangular conductors with applications to more complicated
// geometries", J. Res. NBS 69C (1965) 127-137 (formula recalled; the tests compare it with
// quadrature).
type kernel interface {
	point(rho2 float64) float64
	side(from, to, d float64) float64
	double(x, d float64) float64
}

// A filament kernel is 1/R between curves in planes the distance z apart.
type filament struct{ z float64 }

func (k filament) point(rho2 float64) float64 { return 1 / math.Sqrt(rho2+k.z*k.z) }

func (k filament) side(from, to, d float64) float64 {
	q2 := d*d + k.z*k.z
	return asinhStep(from, to, math.Sqrt(from*from+q2), math.Sqrt(to*to+q2), q2)
}

func (k filament) double(x, d float64) float64 {
	q := math.Sqrt(d*d + k.z*k.z)
	if q == 0 {
		return 0
	}
	return x*math.Asinh(x/q) - math.Sqrt(x*x+q*q)
}

// A sheets kernel is 1/R averaged over two axial heights: a weighted sum of g at up to
// four values of u, none negative.
type sheets struct {
	n    int
	u, w [4]float64

	table *lookup // of point, if that is quick
}

// axial returns the kernel of two heights whose centres are z apart, and the least distance
// in the plane over which it changes its character. A height too small
// for the second difference (which loses (size/height)² of the 16 digits) is replaced by a
// filament at the geometric mean distance of the line, which is then exact to 1e-9.
func axial(ha, hb, z, size float64) (k kernel, scale float64) {
	small := 1e-5 * size
	switch {
	case ha < small && hb < small:
		if z == 0 {
			z = math.Max(ha, hb) * math.Exp(-1.5)
		}
		return filament{z}, math.Abs(z)
	case ha < small:
		ha = small
	case hb < small:
		hb = small
	}
	s := newSheets(ha, hb, z)
	return s, s.scale()
}

// scale is the least distance of an edge of one height from an edge of the other.
func (k *sheets) scale() float64 {
	least := math.Inf(1)
	for _, u := range k.u[:k.n] {
		if u > 0 {
			least = min(least, u)
		}
	}
	return least
}

func newSheets(ha, hb, z float64) *sheets {
	k := &sheets{}
	scale := 1 / (ha * hb)
	k.add(edges(z, (ha+hb)/2), scale)
	k.add(edges(z, -(ha+hb)/2), scale)
	k.add(edges(z, (ha-hb)/2), -scale)
	k.add(edges(z, (hb-ha)/2), -scale)
	return k
}

// edges is |a+b|, 0 where rounding alone keeps two edges apart.
func edges(a, b float64) float64 {
	u := math.Abs(a + b)
	if u < 1e-12*(math.Abs(a)+math.Abs(b)) {
		return 0
	}
	return u
}

// add merges equal values of u: the self term needs two evaluations instead of four.
func (k *sheets) add(u, w float64) {
	for i := range k.n {
		if math.Abs(k.u[i]-u) <= 1e-14*(k.u[i]+u) {
			k.w[i] += w
			return
		}
	}
	k.u[k.n], k.w[k.n] = u, w
	k.n++
}

func (k *sheets) point(rho2 float64) float64 {
	if k.table != nil {
		return k.table.at(rho2)
	}
	return k.exactPoint(rho2)
}

func (k *sheets) exactPoint(rho2 float64) float64 {
	rho := math.Sqrt(rho2)
	sum := 0.0
	for i := range k.n {
		u := k.u[i]
		if u == 0 {
			sum -= k.w[i] * rho
			continue
		}
		r := math.Sqrt(rho2 + u*u)
		sum += k.w[i] * (u*ln((u+r)/rho) - r)
	}
	return sum
}

// side is the difference of the antiderivatives
//
//	∫₀ˣ g ds = u x asinh(u/p) + ½(u²−d²) asinh(x/q) − u d atan(xu/(dr)) − ½ x r
//
// at two places, with p² = x²+d², q² = u²+d², r² = x²+u²+d²; taking both
// at once saves half the logarithms.
func (k *sheets) side(from, to, d float64) float64 {
	d = math.Abs(d)
	d2 := d * d
	p1, p2 := math.Sqrt(from*from+d2), math.Sqrt(to*to+d2)
	sum := 0.0
	for i := range k.n {
		u := k.u[i]
		if u == 0 {
			sum -= k.w[i] / 2 * (d2*asinhStep(from, to, p1, p2, d2) + to*p2 - from*p1)
			continue
		}
		sum += k.w[i] * tapeSide(from, to, u, d, p1, p2)
	}
	return sum
}

func tapeSide(x1, x2, u, d, p1, p2 float64) float64 {
	q2 := u*u + d*d
	r1, r2 := math.Sqrt(x1*x1+q2), math.Sqrt(x2*x2+q2)
	sum := (u*u-d*d)/2*asinhStep(x1, x2, r1, r2, q2) - (x2*r2-x1*r1)/2
	if x1 != 0 {
		sum -= u * x1 * ln((u+r1)/p1)
	}
	if x2 != 0 {
		sum += u * x2 * ln((u+r2)/p2)
	}
	if d > 0 {
		sum -= u * d * turn(u*d*(x2*r1-x1*r2), d*d*r1*r2+x1*x2*u*u) // between the angles of (x1 u, d r1) and (x2 u, d r2)
	}
	return sum
}

// asinhStep is asinh(x2/q) − asinh(x1/q) with r² = x²+q²; 0 where it is multiplied by q² = 0.
func asinhStep(x1, x2, r1, r2, q2 float64) float64 {
	if q2 == 0 {
		return 0
	}
	a1, a2 := math.Abs(x1)+r1, math.Abs(x2)+r2
	switch {
	case x1 >= 0 && x2 >= 0:
		return ln(a2 / a1)
	case x1 < 0 && x2 < 0:
		return ln(a1 / a2)
	case x1 < 0:
		return ln(a1 * a2 / q2)
	}
	return -ln(a1 * a2 / q2)
}

func (k *sheets) double(x, d float64) float64 {
	x, d = math.Abs(x), math.Abs(d)
	sum := 0.0
	for i := range k.n {
		sum += k.w[i] * tapeDouble(x, k.u[i], d)
	}
	return sum
}

// tapeDouble is the antiderivative in x of the one of side; it is even in x.
func tapeDouble(x, u, d float64) float64 {
	r := math.Sqrt(x*x + u*u + d*d)
	sum := -r / 6 * (x*x + u*u - 2*d*d)
	if u > 0 && x+d > 0 {
		sum += (x*x - d*d) / 2 * u * ln((u+r)/math.Sqrt(x*x+d*d))
	}
	if x > 0 && u+d > 0 {
		sum += (u*u - d*d) / 2 * x * ln((x+r)/math.Sqrt(u*u+d*d))
	}
	if d > 0 && x > 0 && u > 0 {
		sum -= x * u * d * angle(x*u, d*r)
	}
	return sum
}
