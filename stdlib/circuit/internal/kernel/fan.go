package kernel

import (
	"math"
	"math/cmplx"
)

// Fan holds the transfers from many places of a network to one output. They have their poles in common, so
// that each costs four multiplications a section.
type Fan struct {
	paths   []*Poles
	inverse []complex128 // of the sections at the frequency in hand
}

// Spread returns the transfers to the output that c reads from a unit put into each of the places, between two
// angular frequencies; or false where elimination does not confirm each of them.
func Spread(s *System, d *Direct, c []float64, from []Pair, low, high float64) (*Fan, bool) {
	m, ok := modesOf(s, d, c, math.Sqrt(low*high))
	if !ok {
		return nil, false
	}
	f := &Fan{}
	for _, at := range from {
		b := make([]float64, s.N)
		put(b, at.P, 1)
		put(b, at.Q, -1)
		f.paths = append(f.paths, m.from(b))
	}
	if len(f.paths) > 0 {
		f.inverse = make([]complex128, len(f.paths[0].sections))
	}
	return f, f.confirmed(d, c, from, low, high)
}

// confirmed compares with elimination at a few frequencies.
func (f *Fan) confirmed(d *Direct, c []float64, from []Pair, low, high float64) bool {
	y, h := make([]complex128, len(c)), make([]complex128, len(from))
	for i := range 5 {
		omega := low * math.Pow(high/low, float64(i)/4)
		if !d.Factor(complex(0, omega)) {
			return false
		}
		d.SolveTransposed(c, y)
		f.At(omega, h)
		for k, at := range from {
			want := pick(y, at.P) - pick(y, at.Q)
			if !(cmplx.Abs(h[k]-want) <= agreement*cmplx.Abs(want)) {
				return false
			}
		}
	}
	return true
}

// At writes the transfer from each place at the angular frequency omega.
func (f *Fan) At(omega float64, h []complex128) {
	if len(f.paths) == 0 {
		return
	}
	x := omega / f.paths[0].shift
	for k, s := range f.paths[0].sections {
		f.inverse[k] = s.inverse(x)
	}
	for i, p := range f.paths {
		h[i] = p.sum(x, f.inverse)
	}
}

// inverse returns the reciprocal of the section's denominator.
func (s section) inverse(x float64) complex128 {
	dr, di := s.d0-s.d2*x*x, s.d1*x
	scale := 1 / (dr*dr + di*di)
	return complex(dr*scale, -di*scale)
}

// sum adds up the sections, whose denominators are given by their reciprocals.
func (p *Poles) sum(x float64, inverse []complex128) complex128 {
	var re, im float64
	for k, s := range p.sections {
		nr, ni := s.n0-s.n1, s.n1*x
		gr, gi := real(inverse[k]), imag(inverse[k])
		re += nr*gr - ni*gi
		im += ni*gr + nr*gi
	}
	return complex(p.constant+re+x*im, im-x*re)
}
