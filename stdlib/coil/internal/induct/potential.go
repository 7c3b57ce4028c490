package induct

import "math"

// This file holds the field of one winding in space: the vector potential and the flux
// density, per ampere, from sides in closed form and arcs by quadrature.

// An axialMean is 1/R averaged over one axial height seen from a point: the difference of
// asinh(u/ρ)/h between the ends of the height, at u = high and u = low.
type axialMean struct{ low, high, scale float64 }

// meanOver returns the kernel of a height h about 0 seen from the axial position z.
func meanOver(h, z float64) axialMean {
	return axialMean{z - h/2, z + h/2, 1 / h}
}

// point is f(ρ), with the ends combined so that a far point loses no digits.
func (k axialMean) point(rho2 float64) float64 {
	return k.scale * asinhStep(k.low, k.high, math.Sqrt(rho2+k.low*k.low), math.Sqrt(rho2+k.high*k.high), rho2)
}

// side is the integral of f along a side: the potential of a charged rectangle, with
// ∫∫ 1/R = x asinh(u/p) + u asinh(x/q) − d atan(xu/(dR)) at its four corners.
func (k axialMean) side(x1, x2, d float64) float64 {
	d2 := d * d
	low2, high2 := k.low*k.low, k.high*k.high
	a1, a2 := x1*x1+d2, x2*x2+d2
	r1l, r1h := math.Sqrt(a1+low2), math.Sqrt(a1+high2)
	r2l, r2h := math.Sqrt(a2+low2), math.Sqrt(a2+high2)
	sum := x2*asinhStep(k.low, k.high, r2l, r2h, a2) - x1*asinhStep(k.low, k.high, r1l, r1h, a1)
	sum += k.high*asinhStep(x1, x2, r1h, r2h, d2+high2) - k.low*asinhStep(x1, x2, r1l, r2l, d2+low2)
	if d != 0 {
		sum -= d * (atanStep(x1*k.high/(d*r1h), x2*k.high/(d*r2h)) - atanStep(x1*k.low/(d*r1l), x2*k.low/(d*r2l)))
	}
	return k.scale * sum
}

// atanStep is atan b − atan a.
func atanStep(a, b float64) float64 { return turn(b-a, 1+a*b) }

// across is −ρ f'(ρ) divided by ρ²: the radial gradient per unit of the vector ρ.
func (k axialMean) across(rho2 float64) float64 {
	return k.scale / rho2 * (k.high/math.Sqrt(rho2+k.high*k.high) - k.low/math.Sqrt(rho2+k.low*k.low))
}

// axialGradient is ∂f/∂z.
func (k axialMean) axialGradient(rho2 float64) float64 {
	return k.scale * (1/math.Sqrt(rho2+k.high*k.high) - 1/math.Sqrt(rho2+k.low*k.low))
}

// acrossSide and gradientSide are d·∫across and ∫axialGradient along a side.
func (k axialMean) acrossSide(from, to, d float64) float64 {
	if d == 0 {
		return 0
	}
	slope := func(x, u float64) float64 { return x * u / (d * math.Sqrt(x*x+u*u+d*d)) }
	return k.scale * (atanStep(slope(from, k.high), slope(to, k.high)) - atanStep(slope(from, k.low), slope(to, k.low)))
}

func (k axialMean) gradientSide(from, to, d float64) float64 {
	return k.scale * (filament{k.high}.side(from, to, d) - filament{k.low}.side(from, to, d))
}

// A source is a winding prepared for many points.
type source struct {
	winding
	digits float64
}

func newSource(w winding, digits float64) source {
	if small := 1e-7 * w.size; w.height < small {
		w.height = small
	}
	return source{w, digits}
}

// clearance is the distance of a point from the window, 0 inside it.
func (s *source) clearance(p *piece, at vec, z float64) float64 {
	least := math.Inf(1)
	for _, t := range [2]float64{s.window.from, s.window.to} {
		least = min(least, pieceDistance2(p, t, at))
	}
	above := max(0, math.Abs(z)-s.height/2)
	return math.Sqrt(least + above*above)
}

func pieceDistance2(p *piece, t float64, at vec) float64 {
	if !p.arc {
		return sideDistance2(p, t, at)
	}
	gap := at.minus(p.start)
	turn := math.Mod(math.Atan2(gap.y, gap.x)-p.angle+4*math.Pi, 2*math.Pi)
	if turn <= p.span {
		rest := gap.length() - t
		return rest * rest
	}
	a, _ := p.at(0, t)
	b, _ := p.at(1, t)
	a, b = a.minus(at), b.minus(at)
	return min(a.dot(a), b.dot(b))
}

// A place is a point of the quadrature over a piece of a source: the vector from the winding to
// the field point, the directions there and the weight. For a side only out and along matter.
type place struct {
	gap, out, along vec
	w               float64
}

// each visits the places of a piece: over the build, and for an arc over the angle.
func (s *source) each(p *piece, at vec, z float64, visit func(place)) {
	far := s.clearance(p, at, z)
	over := gauss(1)
	if s.window.width() > 0 {
		over = gauss(orderFor(s.window.width(), far, s.digits, 2, 16))
	}
	around := gauss(1)
	if p.arc {
		around = gauss(orderFor(p.extent(s.window.to), far, s.digits, p.leastOrder(), maxOrder))
	}
	for j, x := range around.x {
		base, out, along := p.frame(x)
		if !p.arc {
			base = p.start
		}
		gap := at.minus(base)
		for i, y := range over.x {
			t := s.window.from + y*s.window.width()
			w := over.w[i] * around.w[j]
			if p.arc {
				w *= p.span * t
			}
			visit(place{gap.minus(out.times(t)), out, along, w})
		}
	}
}

// potential is the vector potential in µ0/4π per ampere-turn. It has no axial component.
func (s *source) potential(at vec, z float64) (a vec) {
	k := meanOver(s.height, z)
	for i := range s.pieces {
		p := &s.pieces[i]
		if !p.arc && p.length == 0 {
			continue
		}
		s.each(p, at, z, func(here place) {
			if p.arc {
				a = a.plus(here.along.times(here.w * k.point(here.gap.dot(here.gap))))
				return
			}
			x, d := here.gap.dot(p.along), here.gap.dot(p.out)
			a = a.plus(p.along.times(here.w * k.side(x-p.length, x, d)))
		})
	}
	return a
}

// field is the flux density in µ0/4π per ampere-turn, ∮ ∇f × dl.
func (s *source) field(at vec, z float64) (plane vec, axial float64) {
	k := meanOver(s.height, z)
	for i := range s.pieces {
		p := &s.pieces[i]
		s.each(p, at, z, func(here place) {
			if p.arc {
				rho2 := here.gap.dot(here.gap)
				axial -= here.w * here.gap.dot(here.out) * k.across(rho2)
				plane = plane.minus(here.out.times(here.w * k.axialGradient(rho2)))
				return
			}
			x, d := here.gap.dot(p.along), here.gap.dot(p.out)
			axial -= here.w * k.acrossSide(x-p.length, x, d)
			plane = plane.minus(p.out.times(here.w * k.gradientSide(x-p.length, x, d)))
		})
	}
	return plane, axial
}

// Potential is the magnetic vector potential of a winding at a point, in V·s/m per ampere. The
// coil's centre is the origin and its axis is z. Digits are lost inside the window only.
func Potential(s Section, turns float64, at [3]float64) [3]float64 {
	src := newSource(s.winding(), fieldDigits)
	a := src.potential(vec{at[0], at[1]}, at[2])
	scale := Mu0 / (4 * math.Pi) * turns
	return [3]float64{scale * a.x, scale * a.y, 0}
}

// Field is the flux density of a winding at a point, in tesla per ampere. Within the window, where the current flows, it is
// not to be used: the rules count on a distance from it, and the error there reaches some per cent.
func Field(s Section, turns float64, at [3]float64) [3]float64 {
	src := newSource(s.winding(), fieldDigits)
	b, z := src.field(vec{at[0], at[1]}, at[2])
	scale := Mu0 / (4 * math.Pi) * turns
	return [3]float64{scale * b.x, scale * b.y, scale * z}
}

const fieldDigits = 24
