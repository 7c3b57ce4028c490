package kernel

import (
	"math"
	"testing"
)

// A witness for Cell that assumes no field lines: the potential between endless layers of wires, each layer one volt above the
// one below, by finite volumes on a square grid of one period, with the bare wires at their potentials and the enamel and the
// filling by their permittivities. The energy of the period gives the capacitance of a wire against the next layer.
type lattice struct {
	nx, ny  int
	flow    [2][]float64 // conductance to the next cell along x and along y
	fixed   []bool
	volt    []float64
	period  float64 // volts gained along one period in y
	gapRows int
	open    bool // ends at its edges, which no field crosses, in place of coming again
}

// layersOf lays out wires at equal distances, on top of each other or in the grooves, with the pitch as the unit of length.
func layersOf(c Cell, grooves bool, n int) *lattice {
	height, rows, pitch := 1.0, 1, c.Overall+c.Gap
	if grooves {
		height, rows = math.Sqrt(3), 2
	}
	l := &lattice{nx: n, ny: int(math.Round(height * float64(n))), period: float64(rows), gapRows: rows}
	size := l.nx * l.ny
	l.fixed, l.volt = make([]bool, size), make([]float64, size)
	resist := make([]float64, size) // half a cell's, nothing in a wire
	for i := range size {
		x, y := (float64(i%n)+0.5)/float64(n), (float64(i/n)+0.5)/float64(l.ny)*height
		resist[i] = 0.5 / c.Filling
		l.volt[i] = y / height * l.period
		for _, w := range [][3]float64{{0, 0, 0}, {1, 0, 0}, {0, height, l.period}, {1, height, l.period}, {0.5, height / 2, 1}} {
			if !grooves && w[0] == 0.5 {
				continue
			}
			switch r := math.Hypot(x-w[0], y-w[1]); {
			case r < c.Bare/pitch/2:
				resist[i], l.fixed[i], l.volt[i] = 0, true, w[2]
			case r < c.Overall/pitch/2:
				resist[i] = 0.5 / c.Enamel
			}
		}
	}
	return l.joined(resist)
}

// joined finds the conductances between cells.
func (l *lattice) joined(resist []float64) *lattice {
	for way := range 2 {
		l.flow[way] = make([]float64, len(resist))
		for i := range resist {
			if j, _ := l.next(way, i); resist[i]+resist[j] > 0 {
				l.flow[way][i] = 1 / (resist[i] + resist[j])
			}
		}
	}
	return l
}

// next returns the neighbour of a cell along a way and the volts that the period adds there.
func (l *lattice) next(way, i int) (j int, jump float64) {
	x, y := i%l.nx, i/l.nx
	if l.open && (way == 0 && x+1 == l.nx || way == 1 && y+1 == l.ny) {
		return i, 0
	}
	if way == 0 {
		return y*l.nx + (x+1)%l.nx, 0
	}
	if y+1 == l.ny {
		return x, l.period
	}
	return i + l.nx, 0
}

// slope is the gradient of the energy at v, times the part of v that is free; jumps counts the period or not.
func (l *lattice) slope(v []float64, jumps float64) (g []float64, energy float64) {
	g = make([]float64, len(v))
	for way := range 2 {
		for i, flow := range l.flow[way] {
			j, jump := l.next(way, i)
			drop := v[j] + jumps*jump - v[i]
			energy += flow * drop * drop
			g[i] -= flow * drop
			g[j] += flow * drop
		}
	}
	for i, fixed := range l.fixed {
		if fixed {
			g[i] = 0
		}
	}
	return g, energy
}

// capacitance relaxes the potential by conjugate gradients and returns farads per metre of wire and layer.
func (l *lattice) capacitance() float64 {
	dot := func(a, b []float64) (sum float64) {
		for i := range a {
			sum += a[i] * b[i]
		}
		return sum
	}
	g, _ := l.slope(l.volt, 1)
	p, norm := make([]float64, len(g)), dot(g, g)
	for i := range g {
		p[i] = -g[i]
	}
	for first := norm; norm > 1e-9*first; {
		Ap, _ := l.slope(p, 0)
		step := norm / dot(p, Ap)
		for i := range p {
			l.volt[i] += step * p[i]
			g[i] += step * Ap[i]
		}
		before := norm
		norm = dot(g, g)
		for i := range p {
			p[i] = norm/before*p[i] - g[i]
		}
	}
	_, energy := l.slope(l.volt, 1)
	return VacuumPermittivity * energy / float64(l.gapRows)
}

func TestCellAgainstFiniteVolumes(t *testing.T) {
	const n = 96
	for _, c := range []Cell{{63.5, 71, 3.5, 1, 0}, {63.5, 71, 3.5, 2.3, 0}, {50, 60, 3.5, 1, 0}, {63.5, 71, 3.5, 1, 12}} {
		row, groove := layersOf(c, false, n).capacitance(), layersOf(c, true, n).capacitance()
		tolerance := 0.12
		if c.Gap > 0 {
			tolerance = 0.2
		}
		close(t, "RowToLayer", c.RowToLayer(), row, tolerance)
		close(t, "GrooveToLayer", c.GrooveToLayer(), groove, tolerance)
	}
}
