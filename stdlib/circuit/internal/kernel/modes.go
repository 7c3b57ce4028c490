package kernel

import "gonum.org/v1/gonum/mat"

// This file splits a system into its modes, once for all that may drive it.

// modes are the eigenvectors of a system's M at a shift, and what an output reads of each.
type modes struct {
	direct  *Direct // factored at the shift
	shift   float64
	output  []float64
	value   []complex128 // λ
	read    []complex128 // what the output reads of each
	vectors *Direct      // nil where there is no store
}

// modesOf returns the modes that the output c reads, or false where there are none or d is not able to
// find them. Until d is used for another frequency transfers may be taken from them.
func modesOf(s *System, d *Direct, c []float64, shift float64) (*modes, bool) {
	if len(s.Varies) > 0 || !d.Factor(complex(shift, 0)) {
		return nil, false
	}
	m := &modes{direct: d, shift: shift, output: c}
	if len(s.Stores) == 0 {
		return m, true
	}
	y, left := make([]complex128, s.N), make([]float64, len(s.Stores))
	d.SolveTransposed(c, y)
	for k, at := range s.Stores {
		left[k] = across(y, at)
	}
	return m, m.diagonalise(timesD(d.transfers(), s.D, len(left)), timesD(left, s.D, len(left)))
}

// diagonalise splits the matrix M into its eigenvectors.
func (m *modes) diagonalise(matrix, left []float64) bool {
	n := len(left)
	for i := range matrix {
		matrix[i] *= m.shift // a number of order one, without unit
	}
	var e mat.Eigen
	if !e.Factorize(mat.NewDense(n, n, matrix), mat.EigenRight) {
		return false
	}
	m.value, m.read = e.Values(nil), make([]complex128, n)
	var vectors mat.CDense
	e.VectorsTo(&vectors)
	m.vectors = NewDirect(New(n, 0))
	for j := range n {
		for k := range n {
			v := vectors.At(j, k)
			m.read[k] += complex(left[j], 0) * v
			m.vectors.lu[j*n+k] = v
		}
	}
	m.vectors.scan()
	return m.vectors.eliminate()
}

// from returns the transfer to the output from what is put in.
func (m *modes) from(b []float64) *Poles {
	s, x := m.direct.sys, make([]complex128, m.direct.sys.N)
	m.direct.Solve(b, x)
	p := &Poles{shift: m.shift, constant: real(dot(m.output, x)), value: m.value, residue: make([]complex128, len(m.value))}
	if len(m.value) == 0 {
		return p
	}
	right := make([]float64, len(s.Stores))
	for k, at := range s.Stores {
		right[k] = across(x, at)
	}
	m.vectors.Solve(right, p.residue)
	for k, read := range m.read {
		p.residue[k] = read * p.residue[k] * complex(m.shift, 0)
	}
	p.cut()
	return p
}
