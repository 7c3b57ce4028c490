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

// side is the integral of f along a side: the potential of a charged rectangle,
// ∫∫ 1/R = x asinh(u/p) + u asinh(x/q) − d atan(xu/(dR)).
func (k axialMean) side(from, to, d float64) float64 {
	return k.scale * (rectangle(from, to, k.high, d) - rectangle(from, to, k.low, d))
}

func rectangle(x1, x2, u, d float64) float64 {
	d = math.Abs(d)
	q2 := u*u + d*d
	r1, r2 := math.Sqrt(x1*x1+q2), math.Sqrt(x2*x2+q2)
	sum := u * asinhStep(x1, x2, r1, r2, q2)
	if x1 != 0 {
		sum -= x1 * math.Asinh(u/math.Hypot(x1, d))
	}
	if x2 != 0 {
		sum += x2 * math.Asinh(u/math.Hypot(x2, d))
	}
	if d > 0 {
		sum -= d * (math.Atan(x2*u/(d*r2)) - math.Atan(x1*u/(d*r1)))
	}
	return sum
}

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
	angle := func(x, u float64) float64 { return math.Atan(x * u / (d * math.Sqrt(x*x+u*u+d*d))) }
	return k.scale * (angle(to, k.high) - angle(from, k.high) - angle(to, k.low) + angle(from, k.low))
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

// each visits the points of the quadrature over the build, and for an arc over the angle;
// a side is visited once per distance, with no angle.
func (s *source) each(p *piece, at vec, z float64, visit func(t, x, w float64)) {
	far := s.clearance(p, at, z)
	over := gauss(orderFor(s.window.width(), far, s.digits, 2, 16))
	if s.window.width() == 0 {
		over = gauss(1)
	}
	around := gauss(1)
	if p.arc {
		around = gauss(orderFor(p.extent(s.window.to), far, s.digits, p.leastOrder(), maxOrder))
	}
	for i, y := range over.x {
		t := s.window.from + y*s.window.width()
		for j, x := range around.x {
			visit(t, x, over.w[i]*around.w[j])
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
		s.each(p, at, z, func(t, x, w float64) {
			if !p.arc {
				gap := at.minus(p.start)
				along := gap.dot(p.along)
				a = a.plus(p.along.times(w * k.side(along-p.length, along, gap.dot(p.out)-t)))
				return
			}
			point, tangent := p.at(x, t)
			gap := at.minus(point)
			a = a.plus(tangent.times(w * p.span * t * k.point(gap.dot(gap))))
		})
	}
	return a
}

// field is the flux density in µ0/4π per ampere-turn, ∮ ∇f × dl.
func (s *source) field(at vec, z float64) (plane vec, axial float64) {
	k := meanOver(s.height, z)
	for i := range s.pieces {
		p := &s.pieces[i]
		s.each(p, at, z, func(t, x, w float64) {
			if !p.arc {
				gap := at.minus(p.start)
				along, d := gap.dot(p.along), gap.dot(p.out)-t
				axial -= w * k.acrossSide(along-p.length, along, d)
				plane = plane.minus(p.out.times(-w * k.gradientSide(along-p.length, along, d)))
				return
			}
			point, tangent := p.at(x, t)
			out := vec{tangent.y, -tangent.x}
			gap := at.minus(point)
			rho2 := gap.dot(gap)
			w *= p.span * t
			axial -= w * gap.dot(out) * k.across(rho2)
			plane = plane.plus(out.times(w * k.axialGradient(rho2)))
		})
	}
	return plane.times(-1), axial
}

// Potential is the magnetic vector potential of a winding at a point, in V·s/m per ampere. The
// coil's centre is the origin and its axis is z. Digits are lost inside the window only.
func Potential(s Section, turns float64, at [3]float64) [3]float64 {
	src := newSource(s.winding(), fieldDigits)
	a := src.potential(vec{at[0], at[1]}, at[2])
	scale := Mu0 / (4 * math.Pi) * turns
	return [3]float64{scale * a.x, scale * a.y, 0}
}

// Field is the flux density of a winding at a point, in tesla per ampere.
func Field(s Section, turns float64, at [3]float64) [3]float64 {
	src := newSource(s.winding(), fieldDigits)
	b, z := src.field(vec{at[0], at[1]}, at[2])
	scale := Mu0 / (4 * math.Pi) * turns
	return [3]float64{scale * b.x, scale * b.y, scale * z}
}

const fieldDigits = 24
