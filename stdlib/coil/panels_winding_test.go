package coil

import (
	"math/rand/v2"
	"testing"

	"lode/stdlib/coil/internal/kernel"
	"lode/units"
)

// surface lays panels on the four sides of a winding around its middle, in as many quadrants. The voltage grows from layer to
// layer and, in the first and last one, along the height.
func (c Winding) surface(quadrants, steps int) []panel {
	s, h, p := c.shape, float64(c.shape.Height)/2, float64(max(1, c.layout.layers))
	core := kernel.Outline{Length: float64(s.Length), Width: float64(s.Width), Radius: float64(s.CornerRadius)}
	out := round(c.outline(), quadrants, steps)
	in := round(core, quadrants, steps)
	if core.Radius < 1e-9 { // a corner of the core is one point, that of the outside an arc
		in = nil
		for _, q := range out {
			in = append(in, kernel.Vector{min(max(q[0], -core.Length/2), core.Length/2), min(max(q[1], -core.Width/2), core.Width/2)})
		}
	}
	list := strip(out, out, -h, h, 6, func(x float64) float64 { return 1 - (1-x)/p })
	list = append(list, strip(in, in, h, -h, 6, func(x float64) float64 { return x / p })...)
	list = append(list, strip(in, out, -h, -h, 6, func(x float64) float64 { return x })...)
	return append(list, strip(out, in, h, h, 6, func(x float64) float64 { return 1 - x })...)
}

// over lays panels on a cover that is open below.
func (cover Cover) over(quadrants, steps int, bottom float64) []panel {
	outline := kernel.Outline{Length: float64(cover.Length), Width: float64(cover.Width), Radius: float64(cover.CornerRadius)}
	edge := round(outline, quadrants, steps)
	middle := make([]kernel.Vector, len(edge))
	for i, p := range edge {
		middle[i] = kernel.Vector{}.Plus(0.05, p)
	}
	zero := func(float64) float64 { return 0 }
	top := bottom + float64(cover.Height)
	list := append(strip(edge, edge, bottom, top, 10, zero), strip(edge, middle, top, top, 8, zero)...)
	for i := range list {
		list[i].grounded = true
	}
	return list
}

// TestCoverAgainstBoundaryElements has what a cover adds in air, the whole range less its fillings.
func TestCoverAgainstBoundaryElements(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 7))
	for n := 0; n < 8; {
		c, ok := randomWinding(t, r, Scatter)
		if !ok || c.layout.build < 0.5e-3 {
			continue
		}
		o := c.outline()
		gap := func() float64 { return 0.5e-3 + min(6e-3, float64(c.shape.Height))*r.Float64()*r.Float64() }
		x, y, z := gap(), gap(), gap()
		cover := Cover{Length: units.Length(o.Length + 2*x), Width: units.Length(o.Width + 2*y), Height: c.shape.Height + units.Length(z)}
		cover.CornerRadius = units.Length(o.Radius + r.Float64()*min(x, y))
		if n++; n == 8 { // a long one: a line
			c = wound(t, Round{CoreDiameter: 20 * mm, Height: 60 * mm}, gauge(t, 40), 12000)
			cover = Cover{Length: 30 * mm, Width: 30 * mm, CornerRadius: 15 * mm, Height: 64 * mm}
		}
		coil := c.surface(1, 3)
		alone := solved(coil, mirrors{1, 1, 0})
		both := solved(append(coil, cover.over(1, 3, -float64(c.shape.Height)/2)...), mirrors{1, 1, 0})
		for hot, tolerance := range map[Lead]float64{Finish: 0.2, Start: 0.45} {
			volt := func(p panel) float64 {
				if hot == Start && !p.grounded {
					return 1 - p.volt
				}
				return p.volt
			}
			got, want := must(c.CoverCapacitance(cover, hot)), both.effective(volt)-alone.effective(volt)
			close(t, "cover capacitance, "+hot.String()+" hot", float64(got.Low)/0.85, want, tolerance)
			if !(float64(got.Low) < 1.05*want && float64(got.High) > want) {
				t.Errorf("%v in %+v, %v hot: range %v, in air %g pF", c, cover, hot, got, 1e12*want)
			}
		}
	}
}

// TestCapacitanceBetweenAgainstBoundaryElements has two windings alike as pieces of metal: the difference of their charges with opposite
// and with equal voltages.
func TestCapacitanceBetweenAgainstBoundaryElements(t *testing.T) {
	r := rand.New(rand.NewPCG(15, 7))
	for n := 0; n < 8; {
		c, ok := randomWinding(t, r, Scatter)
		if !ok || c.layout.build < 0.5e-3 {
			continue
		}
		n++
		o, h, axis := c.outline(), float64(c.shape.Height), n%2+1 // beside along y, stacked along z
		gap, second := max(0.5e-3, o.Width/2*(0.05+0.7*r.Float64())), Placed{Winding: c}
		if axis == 1 {
			gap = min(h, o.Width) * (0.05 + 0.5*r.Float64())
			second.Y = units.Length(o.Width + gap)
		} else {
			second.Z = -units.Length(h + gap)
		}
		whole, same := c.surface(1, 3), mirrors{1, 1, 1}
		if axis == 1 {
			whole, same = c.surface(4, 3), mirrors{1, 1, 0}
		}
		opposite := same
		opposite[axis] = -1
		var metal []panel
		for _, p := range whole {
			if p.middle()[0] > 0 {
				metal = append(metal, p.moved(axis, gap/2+map[int]float64{1: o.Width, 2: h}[axis]/2))
			}
		}
		one := func(panel) float64 { return 1 }
		want := (solved(metal, opposite).effective(one) - solved(metal, same).effective(one)) / 4
		got := must(must(InSeries(Placed{Winding: c}, second)).CapacitanceBetween(1, 2))
		close(t, "capacitance to a neighbour "+map[int]string{1: "beside", 2: "above"}[axis], float64(got.Low)/0.8, want, 0.25)
		if !(float64(got.Low) < 1.05*want && float64(got.High) > want) {
			t.Errorf("%v, gap %g mm, axis %d: range %v, in air %g pF", c, 1e3*gap, axis, got, 1e12*want)
		}
	}
}
