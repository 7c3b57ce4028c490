package kernel

import "math"

// This file solves a system at one frequency by elimination in flat arrays that are
// allocated once per Direct.

// Direct solves one System at any number of frequencies. It is not for concurrent use.
type Direct struct {
	sys     *System
	storage []float64
	lu      []complex128
	inverse []complex128 // reciprocals of the pivots
	order   []int
	largest []float64
	scratch []complex128
}

// NewDirect prepares the workspace for s.
func NewDirect(s *System) *Direct {
	n := s.N
	return &Direct{
		sys: s, storage: s.storage(), lu: make([]complex128, n*n), inverse: make([]complex128, n),
		order: make([]int, n), largest: make([]float64, n), scratch: make([]complex128, n),
	}
}

// Factor prepares solving at the complex frequency s, in rad/s; varying parts are taken at
// the imaginary part. It reports false where the equations do not determine the unknowns.
func (d *Direct) Factor(s complex128) bool {
	for i, g := range d.sys.G {
		d.lu[i] = complex(g, 0) + s*complex(d.storage[i], 0)
	}
	for _, v := range d.sys.Varies {
		d.vary(v, imag(s))
	}
	d.scan()
	return d.eliminate()
}

func (d *Direct) vary(v Varying, omega float64) {
	n, value := d.sys.N, v.Value(omega)
	add := func(i, j int, v complex128) {
		if i >= 0 && j >= 0 {
			d.lu[i*n+j] += v
		}
	}
	add(v.At.P, v.At.P, value)
	add(v.At.Q, v.At.Q, value)
	add(v.At.P, v.At.Q, -value)
	add(v.At.Q, v.At.P, -value)
}

// scan notes the largest coefficient of each column: a pivot that is nothing but rounding
// against it means that the column's unknown is undetermined.
func (d *Direct) scan() {
	n := d.sys.N
	clear(d.largest)
	for i := range n {
		d.order[i] = i
		for j, v := range d.lu[i*n : i*n+n] {
			if s := size(v); s > d.largest[j] || s != s { // what is no number stays
				d.largest[j] = s
			}
		}
	}
}

const rounding = 4e-16

// eliminate is Gaussian elimination with partial pivoting (Golub and Van Loan, Matrix
// Computations, algorithm 3.4.1), rows being exchanged in place.
func (d *Direct) eliminate() bool {
	n := d.sys.N
	for k := range n {
		p := d.pivot(k)
		if !(size(d.lu[p*n+k]) > rounding*d.largest[k]) {
			return false
		}
		d.swap(k, p)
		top := d.lu[k*n : k*n+n]
		d.inverse[k] = reciprocal(top[k])
		for i := k + 1; i < n; i++ {
			row := d.lu[i*n : i*n+n]
			if row[k] != 0 {
				row[k] *= d.inverse[k]
				subtract(row[k+1:], top[k+1:], row[k])
			}
		}
	}
	return true
}

func (d *Direct) pivot(k int) int {
	n, best, at := d.sys.N, -1.0, k
	for i := k; i < n; i++ {
		if s := size(d.lu[i*n+k]); s > best {
			best, at = s, i
		}
	}
	return at
}

func (d *Direct) swap(i, j int) {
	if i == j {
		return
	}
	n := d.sys.N
	a, b := d.lu[i*n:i*n+n], d.lu[j*n:j*n+n]
	for k := range a {
		a[k], b[k] = b[k], a[k]
	}
	d.order[i], d.order[j] = d.order[j], d.order[i]
}

// subtract computes row -= factor·top.
func subtract(row, top []complex128, factor complex128) {
	fr, fi := real(factor), imag(factor)
	for j, t := range top[:len(row)] {
		tr, ti := real(t), imag(t)
		row[j] -= complex(fr*tr-fi*ti, fr*ti+fi*tr)
	}
}

// Solve computes x from the right side b, after Factor.
func (d *Direct) Solve(b []float64, x []complex128) {
	n := d.sys.N
	for i := range n {
		sum := complex(b[d.order[i]], 0)
		for j, l := range d.lu[i*n : i*n+i] {
			sum -= l * x[j]
		}
		x[i] = sum
	}
	for i := n - 1; i >= 0; i-- {
		sum := x[i]
		for j := i + 1; j < n; j++ {
			sum -= d.lu[i*n+j] * x[j]
		}
		x[i] = sum * d.inverse[i]
	}
}

// SolveTransposed computes y with Aᵀ·y = c, after Factor: y's entries are the transfers
// from a unit put into each equation to the output that c reads.
func (d *Direct) SolveTransposed(c []float64, y []complex128) {
	n, z := d.sys.N, d.scratch
	for i := range n {
		sum := complex(c[i], 0)
		for j := range i {
			sum -= d.lu[j*n+i] * z[j]
		}
		z[i] = sum * d.inverse[i]
	}
	for i := n - 1; i >= 0; i-- {
		for j := i + 1; j < n; j++ {
			z[i] -= d.lu[j*n+i] * z[j]
		}
	}
	for i := range n {
		y[d.order[i]] = z[i]
	}
}

// size is a cheap norm that orders pivots well enough.
func size(v complex128) float64 { return math.Abs(real(v)) + math.Abs(imag(v)) }

// reciprocal returns 1/v by Smith's scaling (Smith, Algorithm 116, CACM 5, 1962).
func reciprocal(v complex128) complex128 {
	a, b := real(v), imag(v)
	if math.Abs(a) >= math.Abs(b) {
		r := b / a
		d := 1 / (a + b*r)
		return complex(d, -r*d)
	}
	r := a / b
	d := 1 / (a*r + b)
	return complex(r*d, -d)
}
