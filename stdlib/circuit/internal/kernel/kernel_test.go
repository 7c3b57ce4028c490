package kernel

import (
	"math"
	"math/cmplx"
	"math/rand"
	"testing"
)

// chain is a coil with tone and volume controls, cable and input: hot, tone, wiper, coil current.
func chain() (*System, []float64) {
	s := New(4, 4)
	s.Branch(3, Pair{0, Ground}, 6000)
	s.B[3] = 1
	s.Inductor(0, 3, 2.5)
	s.Capacitor(1, Pair{0, Ground}, 100e-12)
	s.Conduct(Pair{0, 1}, 1/500e3)
	s.Capacitor(2, Pair{1, Ground}, 22e-9)
	s.Conduct(Pair{0, 2}, 1/150e3)
	s.Conduct(Pair{2, Ground}, 1/350e3+1e-6)
	s.Capacitor(3, Pair{2, Ground}, 500e-12)
	return s, []float64{0, 0, 1, 0}
}

func random(r *rand.Rand, n, m int) *System {
	s := New(n, m)
	for i := range s.G {
		s.G[i] = r.NormFloat64()
	}
	for i := range s.B {
		s.B[i] = r.NormFloat64()
	}
	for k := range m {
		s.Stores[k] = Pair{r.Intn(n), r.Intn(n+1) - 1}
		for j := range k + 1 {
			s.D[j*m+k] = r.NormFloat64() * 1e-4
			s.D[k*m+j] = s.D[j*m+k]
		}
	}
	return s
}

// Elimination is judged by what is left when its solution is put into the equations.
func TestDirectSolves(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	for range 50 {
		n := 1 + r.Intn(12)
		s := random(r, n, r.Intn(4))
		d, x, y, c := NewDirect(s), make([]complex128, n), make([]complex128, n), make([]float64, n)
		c[r.Intn(n)] = 1
		omega := complex(0, math.Pow(10, 6*r.Float64()))
		if !d.Factor(omega) {
			t.Fatal("regular system refused")
		}
		d.Solve(s.B, x)
		d.SolveTransposed(c, y)
		var through complex128
		full := s.storage()
		for i := range n {
			rest := complex(-s.B[i], 0)
			for j := range n {
				rest += (complex(s.G[i*n+j], 0) + omega*complex(full[i*n+j], 0)) * x[j]
			}
			if cmplx.Abs(rest) > 1e-8 {
				t.Errorf("equation %d of %d: %v is left", i, n, rest)
			}
			through += y[i] * complex(s.B[i], 0)
		}
		if out := dot(c, x); cmplx.Abs(through-out) > 1e-8*cmplx.Abs(out)+1e-12 {
			t.Errorf("transposed: got %v, want %v", through, out)
		}
	}
}

// The sum over poles is another way to the same transfer.
func TestPolesAgree(t *testing.T) {
	s, c := chain()
	p, ok := Reduce(s, NewDirect(s), c, 1e4)
	if !ok {
		t.Fatal("chain was not reduced")
	}
	exact := Exact(s, c)
	for f := 1.0; f < 1e6; f *= 1.3 {
		got, want := p.At(2*math.Pi*f), exact.At(2*math.Pi*f)
		if cmplx.Abs(got-want) > 1e-9*cmplx.Abs(want) {
			t.Errorf("%g Hz: got %v, want %v", f, got, want)
		}
	}
}

// The poles of a series R, L, C are known: |p|² = 1/(LC), -2·Re p = R/L.
func TestPolesOfResonance(t *testing.T) {
	s := New(2, 2)
	s.Branch(1, Pair{0, Ground}, 1000)
	s.B[1] = 1
	s.Inductor(0, 1, 2)
	s.Capacitor(1, Pair{0, Ground}, 1e-9)
	p, _ := Reduce(s, NewDirect(s), []float64{1, 0}, 5e4)
	omegas, qualities := p.Frequencies()
	for i := range omegas {
		if math.Abs(omegas[i]*math.Sqrt(2e-9)-1) > 1e-12 || math.Abs(qualities[i]/(math.Sqrt(2/1e-9)/1000)-1) > 1e-9 {
			t.Errorf("got %g rad/s, Q %g", omegas[i], qualities[i])
		}
	}
	if len(omegas) != 2 {
		t.Errorf("got %d poles", len(omegas))
	}
}

// A double pole has no full set of eigenvectors: the curve must be right all the same.
func TestDoublePole(t *testing.T) {
	s := New(2, 2)
	s.Branch(1, Pair{0, Ground}, 2*math.Sqrt(1/1e-8))
	s.B[1] = 1
	s.Inductor(0, 1, 1)
	s.Capacitor(1, Pair{0, Ground}, 1e-8)
	curve := Transfer(s, []float64{1, 0}, 1, 1e7)
	for w := 1.0; w < 1e7; w *= 3 {
		want := 1 / cmplx.Pow(1+complex(0, w*1e-4), 2)
		if got := curve.At(w); cmplx.Abs(got-want) > 1e-9*cmplx.Abs(want) {
			t.Errorf("%g rad/s: got %v, want %v", w, got, want)
		}
	}
}

func TestSingularIsRefused(t *testing.T) {
	s := New(2, 0)
	s.Conduct(Pair{0, 1}, 1e-3)
	if NewDirect(s).Factor(1i) {
		t.Error("two nodes without ground were solved")
	}
	if v := Exact(s, []float64{1, 0}).At(1); !cmplx.IsNaN(v) {
		t.Errorf("got %v", v)
	}
}

func TestInnerLoopDoesNotAllocate(t *testing.T) {
	s, c := chain()
	p, _ := Reduce(s, NewDirect(s), c, 1e4)
	e := Exact(s, c)
	for name, curve := range map[string]Curve{"poles": p, "elimination": e} {
		if n := testing.AllocsPerRun(10, func() { curve.At(1e4) }); n != 0 {
			t.Errorf("%s: %g allocations a frequency", name, n)
		}
	}
}

var kept complex128

func BenchmarkPolesAt(b *testing.B) {
	s, c := chain()
	p, _ := Reduce(s, NewDirect(s), c, 1e4)
	for range b.N {
		kept += p.At(1e4)
	}
}

func BenchmarkEliminationAt(b *testing.B) {
	s, c := chain()
	e := Exact(s, c)
	for range b.N {
		kept += e.At(1e4)
	}
}

func BenchmarkReduce(b *testing.B) {
	s, c := chain()
	for range b.N {
		Reduce(s, NewDirect(s), c, 1e4)
	}
}
