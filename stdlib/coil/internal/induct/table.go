package induct

import (
	"math"
	"sync"
)

// This file makes the kernel between two points quick where it is asked for thousands of times. As
// a function of ρ² its only singularities lie at ρ² ≤ 0, so that between a power of two and the next it
// is a polynomial of degree 9 within 2e-8 (L. N. Trefethen, Approximation Theory and Approximation Practice,
// 2013, theorem 8.2: the error falls as (3+√8)^−n; recalled).

// degree of the polynomials.
const degree = 9

// tableTop is the exponent of 2¹² m².
const tableTop = 1023 + 12

// A lookup holds the polynomials, each made when it is first asked for.
type lookup struct {
	exact func(rho2 float64) float64
	top   int // exponent above all
	known [64]bool
	c     [64]polynomial
}

// A polynomial of the mantissa, taken from -1 to 1.
type polynomial [degree + 1]float64

// tabled returns the kernel with a table of its own, for one worker.
func (k *sheets) tabled() *sheets {
	to := *k
	to.table = &lookup{exact: k.exactPoint, top: tableTop}
	return &to
}

// at is the kernel at ρ².
func (l *lookup) at(rho2 float64) float64 {
	bits := math.Float64bits(rho2)
	i := l.top - int(bits>>52)
	if uint(i) >= uint(len(l.c)) {
		return l.exact(rho2)
	}
	if !l.known[i] {
		l.make(i)
	}
	x := math.Float64frombits(bits&(1<<52-1)|1023<<52)*2 - 3
	return l.c[i].at(x, x*x)
}

// at is small enough for the compiler to write it out where it is called.
func (c *polynomial) at(x, x2 float64) float64 {
	even := c[0] + x2*(c[2]+x2*(c[4]+x2*(c[6]+x2*c[8])))
	return even + x*(c[1]+x2*(c[3]+x2*(c[5]+x2*(c[7]+x2*c[9]))))
}

// line is Σ w·f(√((t−y)² + a·t + b)) over a row of t.
func (l *lookup) line(t, w []float64, y, a, b float64) float64 {
	var squares [maxOrder]float64
	for i, t := range t {
		squares[i] = (t-y)*(t-y) + a*t + b
	}
	return l.sum(squares[:len(t)], w)
}

// nodes is the same over pairs of distances.
func (l *lookup) nodes(nodes []node, w []float64, c crossing) float64 {
	sum, squares := 0.0, [maxOrder]float64{}
	for len(nodes) > 0 {
		n := min(len(nodes), maxOrder)
		for i := range n {
			squares[i] = c.at(&nodes[i])
		}
		sum += l.sum(squares[:n], w[:n])
		nodes, w = nodes[n:], w[n:]
	}
	return sum
}

// sum is Σ w·f(ρ).
func (l *lookup) sum(squares, w []float64) float64 {
	sum := 0.0
	w = w[:len(squares)]
	for i, rho2 := range squares {
		bits := math.Float64bits(rho2)
		j := uint(l.top - int(bits>>52))
		if j < uint(len(l.c)) && l.known[j] {
			x := math.Float64frombits(bits&(1<<52-1)|1023<<52)*2 - 3
			sum += w[i] * l.c[j].at(x, x*x)
		} else {
			sum += w[i] * l.at(rho2)
		}
	}
	return sum
}

// make interpolates between the Chebyshev points of one power of two.
func (l *lookup) make(i int) {
	l.known[i] = true
	scale := math.Float64frombits(uint64(l.top-i) << 52)
	rows := interpolation()
	for j := range rows {
		v := l.exact(scale * (3 + rows[j].x) / 2)
		for n := range l.c[i] {
			l.c[i][n] += rows[j].c[n] * v
		}
	}
}

// A cardinal polynomial is one at its own point and zero at the others.
type cardinal struct {
	x float64
	c [degree + 1]float64
}

// interpolation returns the cardinal polynomials of the Chebyshev points.
var interpolation = sync.OnceValue(func() []cardinal {
	rows := make([]cardinal, degree+1)
	for j := range rows {
		rows[j].x = math.Cos(math.Pi * (float64(j) + 0.5) / (degree + 1))
	}
	for j := range rows {
		c := [degree + 1]float64{1}
		for i := range rows {
			if i != j {
				c = timesRoot(c, rows[i].x, rows[j].x-rows[i].x)
			}
		}
		rows[j].c = c
	}
	return rows
})

// timesRoot multiplies a polynomial by (x−root)/size.
func timesRoot(c [degree + 1]float64, root, size float64) (to [degree + 1]float64) {
	for n, v := range c {
		to[n] -= v * root / size
		if n < degree {
			to[n+1] += v / size
		}
	}
	return to
}
