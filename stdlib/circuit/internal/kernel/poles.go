package kernel

import (
	"math"
	"math/cmplx"
)

// This file reduces a system once to poles, so that each further frequency costs one
// division per energy store.
//
// Write s = σ + s0 with a real s0 > 0, A0 = G + s0·B·D·Bᵀ, K = A0⁻¹B. By the matrix inversion
// lemma (Woodbury 1950; Hager, Updating the inverse of a matrix, SIAM Review 31, 1989) the
// output cᵀx is
//
//	H(s) = cᵀA0⁻¹b - σ·u·(1 + σM)⁻¹·w,   M = BᵀK·D,  u = cᵀK·D,  w = BᵀA0⁻¹b,
//
// and the eigenvectors of the small matrix M turn the inverse into a sum over poles
// p = s0 - 1/λ. A passive network has no pole in the right half-plane, hence A0 is regular,
// and D is never inverted, so coils with k = 1 need no special case. Everything is real up to
// the eigenvectors. An M without a full set of eigenvectors (a double pole) makes the sum
// inaccurate: the caller compares with Direct and keeps to that where they disagree.

// Poles is the transfer from the sources of a System to one output.
type Poles struct {
	shift    float64
	constant float64
	value    []complex128 // λ
	residue  []complex128
	sections []section
}

// section is a real pole or a pair of conjugate ones. With t = σ/shift = -1 + jx it is
// (n0 + n1·t) / (d0 - d2·x² + j·d1·x).
type section struct{ n0, n1, d0, d1, d2 float64 }

// single is the section of a real λ with residue r.
func single(v, r float64) section { return section{n0: r, d0: 1 - v, d1: v} }

// double is the section of λ and its conjugate.
func double(v, r complex128) section {
	square := real(v)*real(v) + imag(v)*imag(v)
	return section{
		n0: 2 * real(r), n1: 2 * (real(r)*real(v) + imag(r)*imag(v)),
		d0: (1-real(v))*(1-real(v)) + imag(v)*imag(v), d1: 2 * (real(v) - square), d2: square,
	}
}

// cut makes the sections.
func (p *Poles) cut() {
	for k, v := range p.value {
		switch {
		case imag(v) == 0:
			p.sections = append(p.sections, single(real(v), real(p.residue[k])))
		case imag(v) > 0:
			p.sections = append(p.sections, double(v, p.residue[k]))
		}
	}
}

// Reduce returns the transfer to the output that c reads, or false where that fails.
func Reduce(s *System, d *Direct, c []float64, shift float64) (*Poles, bool) {
	m, ok := modesOf(s, d, c, shift)
	if !ok {
		return nil, false
	}
	return m.from(s.B), true
}

// transfers returns BᵀA0⁻¹B.
func (d *Direct) transfers() []float64 {
	s, m := d.sys, len(d.sys.Stores)
	t, unit, x := make([]float64, m*m), make([]float64, s.N), make([]complex128, s.N)
	for k, at := range s.Stores {
		clear(unit)
		put(unit, at.P, 1)
		put(unit, at.Q, -1)
		d.Solve(unit, x)
		for j, from := range s.Stores {
			t[j*m+k] = across(x, from)
		}
	}
	return t
}

// At returns the transfer at the angular frequency omega.
func (p *Poles) At(omega float64) complex128 {
	x := omega / p.shift
	var re, im float64
	for _, s := range p.sections {
		dr, di := s.d0-s.d2*x*x, s.d1*x
		nr, ni := s.n0-s.n1, s.n1*x
		scale := 1 / (dr*dr + di*di)
		re += (nr*dr + ni*di) * scale
		im += (ni*dr - nr*di) * scale
	}
	return complex(p.constant+re+x*im, im-x*re)
}

// Frequencies returns the magnitudes in rad/s and the quality factors |p|/(-2·Re p) of the
// poles that are not infinite.
func (p *Poles) Frequencies() (omegas, qualities []float64) {
	for _, v := range p.value {
		if cmplx.Abs(v) < 1e-12 {
			continue
		}
		pole := complex(p.shift, 0) * (1 - 1/v)
		omegas = append(omegas, cmplx.Abs(pole))
		qualities = append(qualities, cmplx.Abs(pole)/math.Max(-2*real(pole), 1e-12*cmplx.Abs(pole)))
	}
	return omegas, qualities
}

func timesD(rows, d []float64, m int) []float64 {
	out := make([]float64, len(rows))
	for start := 0; start < len(rows); start += m {
		for j := range m {
			for k := range m {
				out[start+k] += rows[start+j] * d[j*m+k]
			}
		}
	}
	return out
}

func dot(c []float64, x []complex128) complex128 {
	var sum complex128
	for i, v := range c {
		if v != 0 {
			sum += complex(v, 0) * x[i]
		}
	}
	return sum
}

func across(x []complex128, at Pair) float64 { return real(pick(x, at.P) - pick(x, at.Q)) }

func pick(x []complex128, i int) complex128 {
	if i < 0 {
		return 0
	}
	return x[i]
}

func put(x []float64, i int, v float64) {
	if i >= 0 {
		x[i] += v
	}
}
