package induct

import "math"

// This file turns the evenly filled window into round insulated wires.
//
// Along each turn the two differ like parallel straight wires, by logarithms of geometric mean
// distances: the filled cell against the round conductor for the turn itself, the filled
// cell against the middle of the wire for its neighbours. For square cells the first is
// ln(D/d) + 0.1381, with D the pitch and d the bare diameter, and the second adds up to 0.017
// per turn for a large coil: J. C. Maxwell, Treatise, 1873, art. 693; E. B. Rosa and F. W. Grover,
// "Formulas and tables for the calculation of mutual and self-inductance", Bull. Bureau of
// Standards 8 (1912), section on coils of rectangular section (recalled, not seen). Here the cells may be
// rectangles and the neighbours are summed.

// RoundWire is what layers × perLayer turns of round wire have more than the filled window
// of the same turns, in henry. The turns sit in the middles of equal cells.
func RoundWire(s Section, layers, perLayer int, wire Wire) float64 {
	c := cell{s.Build / float64(layers), s.Height / float64(perLayer)}
	own := math.Log(RectangleMeanDistance(c.t, c.z) / wire.meanDistance())
	turns := float64(layers * perLayer)
	return Mu0 / (2 * math.Pi) * turns * s.MeanTurnLength() * (own + c.neighbours(layers, perLayer, wire.InGrooves))
}

// RectangleMeanDistance is the geometric mean distance of a rectangle from itself: Maxwell,
// Treatise, 1873, art. 692.
func RectangleMeanDistance(a, b float64) float64 {
	if a == 0 || b == 0 {
		return (a + b) * math.Exp(-1.5)
	}
	q := a / b
	log := math.Log(a*a+b*b)/2 - q*q*math.Log1p(1/(q*q))/12 - math.Log1p(q*q)/(12*q*q)
	log += 2.0 / 3 * (q*math.Atan(1/q) + math.Atan(q)/q)
	return math.Exp(log - 25.0/12)
}

// A cell is the pitch across and along the layers.
type cell struct{ t, z float64 }

// neighbours is the sum over the other turns of ln(mean distance of two cells / distance of their
// middles), averaged over the turns.
func (c cell) neighbours(layers, perLayer int, inGrooves bool) float64 {
	sum := 0.0
	across, along := c.reach()
	for i := range min(layers, across) {
		for j := range min(perLayer, along) {
			if i == 0 && j == 0 {
				continue
			}
			place, times := float64(j), 4.0
			switch {
			case inGrooves && i%2 == 1:
				place += 0.5 // one place up and one place down, of which there is one less
			case i == 0 || j == 0:
				times = 2
			}
			share := (1 - float64(i)/float64(layers)) * (1 - place/float64(perLayer))
			sum += times * share * c.excess(float64(i)*c.t, place*c.z)
		}
	}
	return sum
}

// BegunLayer is what the turns of a begun layer around full ones have more, coupled with those, than two filled blocks, in
// henry. Both begin at the same end; in grooves every second layer below begins half a turn later. The section is that of
// the full layers.
func BegunLayer(s Section, layers, perLayer, begun int, wire Wire) float64 {
	c := cell{s.Build / float64(layers), s.Height / float64(perLayer)}
	sum := 0.0
	across, _ := c.reach()
	for i := 1; i <= min(layers, across); i++ {
		if wire.InGrooves && i%2 == 1 {
			sum += c.layerBeside(float64(i), 0.5, perLayer, begun)
		} else {
			sum += c.layerBeside(float64(i), 0, perLayer, begun)
		}
	}
	outermost := s.corePerimeter() + 2*math.Pi*s.Build
	return Mu0 / math.Pi * outermost * sum
}

// layerBeside is the sum over pairs of a begun layer and a full one some layers below. Places m and 2·shift−m along are
// as far away.
func (c cell) layerBeside(layers, shift float64, perLayer, begun int) float64 {
	pairs := func(m int) float64 {
		return float64(max(0, min(begun-1, perLayer-1+m)-max(0, m)+1))
	}
	sum := 0.0
	_, along := c.reach()
	for m := int(2 * shift); m <= min(max(begun, perLayer), along); m++ {
		both := pairs(m)
		if mirror := int(2*shift) - m; mirror != m {
			both += pairs(mirror)
		}
		if both > 0 {
			sum += both * c.excess(layers*c.t, (float64(m)-shift)*c.z)
		}
	}
	return sum
}

// farthest is how many turns away neighbours are still counted: what lies beyond adds less than
// a hundredth of a turn's own share, which is itself a small correction.
const farthest = 24

// reach is that distance in places across and along the layers.
func (c cell) reach() (across, along int) {
	d := farthest * max(c.t, c.z)
	return int(min(d/c.t, 1000)), int(min(d/c.z, 1000))
}

// excess is ln(mean distance / distance) of two cells (t, z) apart. The difference of two points
// of two cells has a triangular density; far away its quadrupole is enough.
func (c cell) excess(t, z float64) float64 {
	r2 := t*t + z*z
	if r2 > 9*(c.t*c.t+c.z*c.z) {
		return (c.z*c.z - c.t*c.t) / 12 * (t*t - z*z) / (r2 * r2)
	}
	rule := gauss(6)
	if r2 > 2*(c.t*c.t+c.z*c.z) {
		rule = gauss(3)
	}
	sum := 0.0
	for i, x := range rule.x {
		for j, y := range rule.x {
			w := rule.w[i] * rule.w[j] * (1 - x) * (1 - y)
			a1, a2, b1, b2 := sq(t+x*c.t), sq(t-x*c.t), sq(z+y*c.z), sq(z-y*c.z)
			sum += w * ln((a1+b1)/r2*((a1+b2)/r2)*((a2+b1)/r2)*((a2+b2)/r2)) / 2
		}
	}
	return sum
}

func sq(x float64) float64 { return x * x }
