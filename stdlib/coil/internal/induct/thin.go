package induct

import "math"

// This file takes the turns of a thin layer around a winding as a sheet in the middle of its build.
//
// Averaged over a build s, the flux ψ through the turns at a distance t differs from that in the middle by s²/24 ψ”.
// Outside the winding, where its field has no curl and no divergence,
//
//	ψ” = −∂²ψ/∂z² + 2π B
//
// with B the axial field averaged along the turn: a turn grows by 2π dt. Both are taken from the side nearest by, as if it
// were straight and endless.

// A nearBar is the cross-section of a side of all turns, w by h, and a layer beside it from low to high, whose middle lies
// the distance t from the far side of the bar and t−w from the near one.
type nearBar struct{ w, h, t, low, high float64 }

// besideLayer is what one turn of a winding a and of a thin layer b around it have in common, for a part of a whole. ok is false
// where b is no such layer.
func besideLayer(a, b Section, distance, share float64) (value float64, ok bool) {
	gap := (b.CoreLength-a.CoreLength)/2 - a.Build
	if gap < -1e-9*a.CoreLength || a.Build == 0 || b.Build == 0 || b.Build > 0.2*a.Height || !sameSkeleton(a, b) {
		return 0, false
	}
	p, q, level := a.winding(), b.winding(), a.sheetLevel(share)
	e := p.engine(q, true, 0, distance, level)
	k, tall := e.k.(*sheets)
	if !tall {
		return 0, false
	}
	e.k, e.scale = k.tabled(), max(e.scale, finest*b.Build)
	e.o.digits = ordersAt(level).digits + 2 // neighbours: nothing cancels
	more, sum := thickness(a, b, gap, distance)
	if len(p.pieces) > 1 && sum*share < thinPart*b.MeanTurnLength() {
		e.asSheets(1)
	} else {
		e.asSheets(2)
		more = 0
	}
	return Mu0 / (4 * math.Pi) * (more + e.total(coaxialTasks(len(p.pieces)))), true
}

// thickness is what one turn of a winding and of a layer outside it have more in common than with a sheet in the middle of the
// layer, in µ0/4π, and the sum of its parts regardless of their signs.
func thickness(a, b Section, gap, distance float64) (more, sum float64) {
	n := nearBar{a.Build, a.Height, a.Build + gap + b.Build/2, distance - b.Height/2, distance + b.Height/2}
	scale := b.Build * b.Build / 12 / (a.Build * a.Height * b.Height)
	along, growth := scale*b.MeanTurnLength()*n.bent(), scale*2*math.Pi*n.field()
	return along - growth, math.Abs(along) + math.Abs(growth)
}

// sheetLevel is levelFor for sheets beside a winding, which err less; circles are quick at any level.
func (s Section) sheetLevel(share float64) int {
	switch {
	case share < 0.1 && !s.isCircle():
		return 0
	case s.isCircle() && share > 0.3:
		return 2
	}
	return 1
}

// thinPart is the share of the inductance that the thickness may have as a correction; a few hundredths of that are left.
const thinPart = 2e-4

// finest is the scale in builds of the layer below which the kernel need not be followed: the layer spreads it.
const finest = 30

// asSheets takes q as some sheets at Gauss points of its build where it meets p.
func (e *engine) asSheets(n int) {
	sheets := make([]engine, n)
	for i, x := range gauss(n).x {
		at := e.wq.from + x*e.wq.width()
		sheets[i] = *e
		sheets[i].wq = window{at, at}
	}
	e.sheets = sheets
}

// bySheets is the mean of a pair over the sheets, of which there are so few that all weigh the same.
func (e *engine) bySheets(i, j int) float64 {
	sum := 0.0
	for s := range e.sheets {
		sum += e.sheets[s].pair(i, j)
	}
	return sum / float64(len(e.sheets))
}

// bent and field integrate −∂²/∂z² and −∂/∂t of the potential ∬ ln(1/ρ) of the bar over the layer.
func (n nearBar) bent() float64  { return n.corners(barSlope, n.high) - n.corners(barSlope, n.low) }
func (n nearBar) field() float64 { return n.corners(barFlux, n.high) - n.corners(barFlux, n.low) }

func (n nearBar) corners(f func(t, z float64) float64, z float64) float64 {
	far, near, above, below := n.t, n.t-n.w, math.Abs(z+n.h/2), math.Abs(z-n.h/2)
	return f(far, above) - f(far, below) - f(near, above) + f(near, below)
}

// barSlope integrates z/(t²+z²) over both, barFlux t/(t²+z²) over both and z again: even in z, for t > 0.
func barSlope(t, z float64) float64 { return t/2*ln(t*t+z*z) + z*angle(t, z) }

func barFlux(t, z float64) float64 { return (z*z-t*t)/4*ln(t*t+z*z) + t*z*angle(z, t) }

// meet reports whether two pieces of n are one or neighbours.
func meet(i, j, n int) bool {
	apart := (j - i + n) % n
	return apart <= 1 || apart == n-1
}
