package induct

import "math"

// This file holds the closed forms. Everything above it only asks a kernel three things.
//
// Two coaxial or parallel windings are cut into pairs of plane curves. The integral of
// 1/R over both axial heights depends on the distance ρ in the plane alone, so a kernel
// is a function of ρ, and the straight sides need its antiderivatives along a line:
//
//	point(ρ²)   = f(ρ)
//	line(x,d)   = ∫₀ˣ f(√(s²+d²)) ds          the potential of a straight side
//	double(x,d) = ∫₀ˣ line(s,d) ds + const    the mutual term of two parallel sides
//
// With g(ρ,u) = u asinh(u/ρ) − √(ρ²+u²), whose second derivative by u is 1/R, the axial
// average is a second difference of g over the sums and differences of the heights.
// The antiderivatives are those of parallel thin tapes: C. Hoer and C. Love, "Exact
// inductance equations for rectangular conductors with applications to more complicated
// geometries", J. Res. NBS 69C (1965) 127-137 (formula recalled; the tests compare it with
// quadrature).
type kernel interface {
	point(rho2 float64) float64
	line(x, d float64) float64
	double(x, d float64) float64
}

// A filament kernel is 1/R between curves in planes the distance z apart.
type filament struct{ z float64 }

func (k filament) point(rho2 float64) float64 { return 1 / math.Sqrt(rho2+k.z*k.z) }

func (k filament) line(x, d float64) float64 {
	return math.Asinh(x / math.Sqrt(d*d+k.z*k.z))
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
}

// axial returns the kernel of two heights whose centres are z apart. A height too small
// for the second difference (which loses (size/height)² of the 16 digits) is replaced by a
// filament at the geometric mean distance of the line, which is then exact to 1e-9.
func axial(ha, hb, z, size float64) kernel {
	small := 1e-5 * size
	switch {
	case ha < small && hb < small:
		if z == 0 {
			return filament{math.Max(ha, hb) * math.Exp(-1.5)}
		}
		return filament{z}
	case ha < small:
		return newSheets(small, hb, z)
	case hb < small:
		return newSheets(ha, small, z)
	}
	return newSheets(ha, hb, z)
}

func newSheets(ha, hb, z float64) *sheets {
	k := &sheets{}
	scale := 1 / (ha * hb)
	k.add(math.Abs(z+(ha+hb)/2), scale)
	k.add(math.Abs(z-(ha+hb)/2), scale)
	k.add(math.Abs(z+(ha-hb)/2), -scale)
	k.add(math.Abs(z-(ha-hb)/2), -scale)
	return k
}

// add merges equal values of u: the self term needs two evaluations instead of four.
func (k *sheets) add(u, w float64) {
	for i := range k.n {
		if k.u[i] == u {
			k.w[i] += w
			return
		}
	}
	k.u[k.n], k.w[k.n] = u, w
	k.n++
}

func (k *sheets) point(rho2 float64) float64 {
	rho := math.Sqrt(rho2)
	sum := 0.0
	for i := range k.n {
		u := k.u[i]
		if u == 0 {
			sum -= k.w[i] * rho
			continue
		}
		r := math.Sqrt(rho2 + u*u)
		sum += k.w[i] * (u*math.Log((u+r)/rho) - r)
	}
	return sum
}

func (k *sheets) line(x, d float64) float64 {
	if x < 0 {
		return -k.line(-x, d)
	}
	if x == 0 {
		return 0
	}
	d = math.Abs(d)
	p2 := x*x + d*d
	p := math.Sqrt(p2)
	sum := 0.0
	for i := range k.n {
		sum += k.w[i] * tapeLine(x, k.u[i], d, p, p2)
	}
	return sum
}

// tapeLine is ∫₀ˣ g ds for x > 0, u ≥ 0, d ≥ 0, with p = √(x²+d²).
func tapeLine(x, u, d, p, p2 float64) float64 {
	switch {
	case u == 0 && d == 0:
		return -x * x / 2
	case u == 0:
		return -(d*d*math.Log((x+p)/d) + x*p) / 2
	}
	r := math.Sqrt(p2 + u*u)
	q2 := d*d + u*u
	sum := u*x*math.Log((u+r)/p) + (u*u-d*d)/2*math.Log((x+r)/math.Sqrt(q2)) - x*r/2
	if d > 0 {
		sum -= u * d * math.Atan(x*u/(d*r))
	}
	return sum
}

func (k *sheets) double(x, d float64) float64 {
	x, d = math.Abs(x), math.Abs(d)
	sum := 0.0
	for i := range k.n {
		sum += k.w[i] * tapeDouble(x, k.u[i], d)
	}
	return sum
}

// tapeDouble is the antiderivative of tapeLine in x (even in x).
func tapeDouble(x, u, d float64) float64 {
	r := math.Sqrt(x*x + u*u + d*d)
	sum := -r / 6 * (x*x + u*u - 2*d*d)
	if u > 0 && x+d > 0 {
		sum += (x*x - d*d) / 2 * u * math.Log((u+r)/math.Sqrt(x*x+d*d))
	}
	if x > 0 && u+d > 0 {
		sum += (u*u - d*d) / 2 * x * math.Log((x+r)/math.Sqrt(u*u+d*d))
	}
	if d > 0 && x > 0 && u > 0 {
		sum -= x * u * d * math.Atan(x*u/(d*r))
	}
	return sum
}
