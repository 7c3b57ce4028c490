package coil

import (
	"math"
	"testing"

	"lode/stdlib/coil/internal/kernel"
	"lode/units"
)

// The witness of proximity losses: every turn a line of its own where it lies, the field of all others along it by Biot and
// Savart's law in straight pieces, and the heat that it makes in thin wire, πω²B²d⁴/64ρ a metre (C. R. Sullivan, IEEE Transactions
// on Power Electronics 14, 1999, 283-291).

const corner = 7 // points

// turn is the middle of a wire in pieces.
func (c Winding) turn(depth, z float64) (points []kernel.Vector) {
	s := c.shape
	r := float64(s.CornerRadius)
	a, b := float64(s.Length)/2-r, float64(s.Width)/2-r
	for q, m := range [4][2]float64{{1, 1}, {-1, 1}, {-1, -1}, {1, -1}} {
		for i := range corner {
			sin, cos := math.Sincos(math.Pi / 2 * (float64(q) + float64(i)/(corner-1)))
			points = append(points, kernel.Vector{m[0]*a + (r+depth)*cos, m[1]*b + (r+depth)*sin, z})
		}
	}
	return points
}

// straights is the field of 1 A in a level turn: each straight piece by the angles that its ends are seen at.
func straights(turn []kernel.Vector, at kernel.Vector) (b kernel.Vector) {
	z := at[2] - turn[0][2]
	for i, from := range turn {
		to := turn[(i+1)%len(turn)]
		lx, ly := to[0]-from[0], to[1]-from[1]
		l := math.Sqrt(lx*lx + ly*ly)
		if l < 1e-9 {
			continue
		}
		lx, ly = lx/l, ly/l
		x, y := at[0]-from[0], at[1]-from[1]
		past := x*lx + y*ly
		square := x*x + y*y + z*z - past*past
		if square < 1e-18 {
			continue
		}
		scale := 1e-7 / square * (past/math.Sqrt(past*past+square) - (past-l)/math.Sqrt((past-l)*(past-l)+square))
		b[0] += scale * ly * z
		b[1] -= scale * lx * z
		b[2] += scale * (lx*y - ly*x)
	}
	return b
}

// byTurns is what f adds to the resistance at direct current by proximity. The layers are laid here anew, to and fro from below.
func (c Winding) byTurns(f float64) float64 {
	o, full := c.layout, min(c.layout.perLayer, c.turns)
	var turns [][]kernel.Vector
	for i := range c.turns {
		k, j := i/o.perLayer, float64(i%o.perLayer)
		z := (j - float64(full-1)/2) * o.pitch
		if k%2 == 1 {
			z = -z
		}
		if c.style.Lay == Orthocyclic {
			z += float64(2*(k%2)-1) * o.pitch / 4
		}
		turns = append(turns, c.turn(float64(c.wire.Overall())/2+float64(k)*o.rise, z))
	}
	sum, looked := 0.0, min(61, len(turns)) // of many turns, some that meet no rows
	for n := range looked {
		i := (2*n + 1) * len(turns) / (2 * looked)
		turn := turns[i]
		for j, a := range turn[:len(turn)/2] {
			side, looks := turn[j+1].Plus(-1, a), 1
			if (j+1)%corner == 0 { // a straight side
				looks = 5
			}
			for m := range looks {
				at, field := a.Plus((float64(m)+0.5)/float64(looks), side), kernel.Vector{}
				for k, other := range turns {
					if k != i {
						field = field.Plus(1, straights(other, at))
					}
				}
				sum += 2 * length(side) / float64(looks) * field.Dot(field)
			}
		}
	}
	d, w := float64(c.wire.Bare()), 2*math.Pi*f
	sum *= float64(len(turns)) / float64(looked)
	return sum * math.Pi * w * w * math.Pow(d, 4) / 64 / float64(c.wire.Metal().Resistivity)
}

func TestResistanceACAgainstTurns(t *testing.T) {
	for name, x := range map[string]struct {
		former Former
		awg    float64
		turns  int
		style  Style
	}{
		"one layer":               {Round{CoreDiameter: 20 * mm, Height: 25 * mm}, 22, 30, Style{Lay: Layered}},
		"a layer and a begun one": {Round{CoreDiameter: 20 * mm, Height: 25 * mm}, 22, 50, Style{Lay: Layered}},
		"a flat spiral":           {Round{CoreDiameter: 20 * mm, Height: 1 * mm}, 22, 10, Style{Lay: Layered}},
		"short and fat":           {Round{CoreDiameter: 6 * mm, Height: 3 * mm}, 30, 100, Style{Lay: Orthocyclic}},
		"spaced":                  {Round{CoreDiameter: 30 * mm, Height: 25 * mm}, 22, 40, Style{Lay: Layered, Pitch: 1 * mm}},
		"long core":               {Racetrack{CoreLength: 70 * mm, CoreWidth: 6 * mm, Height: 3 * mm}, 26, 60, Style{Lay: Layered}},
		"square":                  {Rectangle{CoreLength: 40 * mm, CoreWidth: 30 * mm, Height: 10 * mm}, 26, 70, Style{Lay: Layered}},
		"fine wire":               {Round{CoreDiameter: 10 * mm, Height: 1 * mm}, 42, 120, Style{Lay: Layered}},
		"many turns, smeared":     {Round{CoreDiameter: 12 * mm, Height: 6 * mm}, 34, 420, Style{Lay: Layered}},
		"long core, smeared":      {Racetrack{CoreLength: 30 * mm, CoreWidth: 6 * mm, Height: 6 * mm}, 34, 410, Style{Lay: Layered}},
	} {
		c := wound(t, x.former, gauge(t, x.awg), x.turns, x.style)
		turns := c.byTurns(1)
		for _, f := range []units.Frequency{1e3, 10e3} {
			bare := float64(c.wire.Bare())
			skin := kernel.SkinFactor(bare, kernel.SkinDepth(float64(c.wire.Metal().Resistivity), float64(f))) - 1
			added := float64(must(c.ResistanceAC(f))-c.Resistance()) - skin*float64(c.Resistance())
			close(t, "proximity loss, "+name, added, turns*sq(float64(f)), 0.04)
		}
	}
}
