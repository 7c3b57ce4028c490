// Package kernel solves linear networks at single frequencies, in SI float64.
//
// A network is the system (G + s·B·D·Bᵀ + varying parts)·x = b: x holds node voltages in
// volts and then branch currents times Scale, so in volts as well; G is real, the columns
// of B pick the pairs of unknowns that energy stores act on, and D holds the stores.
// Inputs are trusted: the package above validates.
package kernel

// Scale is the resistance, in Ω, that currents are multiplied by and node equations too.
//
// Elements of much less impedance than Scale are best entered as branches, those of more as
// conductances: then no coefficient is much larger than one, and rounding acts like a
// leak of 1e-20 S or a gain error of 1e-16 instead of swamping a gigaohm beside a milliohm.
const Scale = 1e4

// Ground is the index of the reference node, which has no equation.
const Ground = -1

// Pair names two unknowns, entered with +1 and -1. Either may be Ground.
type Pair struct{ P, Q int }

// Varying is a coefficient that depends on frequency by a function, entered as
// Value·(e_P - e_Q)(e_P - e_Q)ᵀ.
type Varying struct {
	At    Pair
	Value func(omega float64) complex128
}

// System is a network ready to be solved.
type System struct {
	N      int
	G      []float64 // N×N by rows
	B      []float64 // what the sources put in
	Stores []Pair
	D      []float64 // len(Stores)² by rows
	Varies []Varying
}

// New returns an empty system of n unknowns and m energy stores.
func New(n, m int) *System {
	return &System{N: n, G: make([]float64, n*n), B: make([]float64, n), Stores: make([]Pair, m), D: make([]float64, m*m)}
}

// Add adds v to a coefficient of G; coefficients of the ground are dropped.
func (s *System) Add(row, column int, v float64) {
	if row >= 0 && column >= 0 {
		s.G[row*s.N+column] += v
	}
}

// Conduct enters a conductance in siemens between two nodes.
func (s *System) Conduct(at Pair, siemens float64) {
	addPair(s.G, s.N, at, at, siemens*Scale)
}

// Branch gives unknown r, a current flowing from at.P through the branch to at.Q, its two
// node equations and the left side v_P - v_Q - ohms·i of its own.
func (s *System) Branch(r int, at Pair, ohms float64) {
	s.Add(at.P, r, 1)
	s.Add(at.Q, r, -1)
	s.Add(r, at.P, 1)
	s.Add(r, at.Q, -1)
	s.Add(r, r, -ohms/Scale)
}

// Transformer gives unknown r, the current into the secondary's first end, to an ideal
// transformer with the secondary's voltage ratio times the primary's.
func (s *System) Transformer(r int, secondary, primary Pair, ratio float64) {
	s.Branch(r, secondary, 0)
	s.Listen(r, primary, -ratio)
	s.Add(primary.P, r, -ratio)
	s.Add(primary.Q, r, ratio)
}

// Listen adds gain times the voltage between two nodes to the left side of branch r.
func (s *System) Listen(r int, ear Pair, gain float64) {
	s.Add(r, ear.P, gain)
	s.Add(r, ear.Q, -gain)
}

// Transconduct makes a current of siemens times the voltage at ear flow from at.P to at.Q.
func (s *System) Transconduct(at, ear Pair, siemens float64) {
	for _, end := range []struct {
		node int
		sign float64
	}{{at.P, 1}, {at.Q, -1}} {
		s.Add(end.node, ear.P, end.sign*siemens*Scale)
		s.Add(end.node, ear.Q, -end.sign*siemens*Scale)
	}
}

// Capacitor makes store k a capacitance in farad between two nodes.
func (s *System) Capacitor(k int, at Pair, farad float64) {
	s.Stores[k] = at
	s.D[k*len(s.Stores)+k] = farad * Scale
}

// Inductor makes store k the self-inductance of branch r, in henry.
func (s *System) Inductor(k, r int, henry float64) {
	s.Stores[k] = Pair{r, Ground}
	s.D[k*len(s.Stores)+k] = -henry / Scale
}

// Mutual couples the inductors of stores j and k by a mutual inductance in henry.
func (s *System) Mutual(j, k int, henry float64) {
	m := len(s.Stores)
	s.D[j*m+k] -= henry / Scale
	s.D[k*m+j] -= henry / Scale
}

// Inject puts a current in ampere into the node.
func (s *System) Inject(node int, ampere float64) {
	if node >= 0 {
		s.B[node] += ampere * Scale
	}
}

// storage returns B·D·Bᵀ as a full matrix.
func (s *System) storage() []float64 {
	full, m := make([]float64, s.N*s.N), len(s.Stores)
	for j, at := range s.Stores {
		for k, to := range s.Stores {
			if d := s.D[j*m+k]; d != 0 {
				addPair(full, s.N, at, to, d)
			}
		}
	}
	return full
}

// addPair adds v·(e_P - e_Q)(e_P' - e_Q')ᵀ to the n×n matrix a.
func addPair(a []float64, n int, row, column Pair, v float64) {
	add := func(i, j int, v float64) {
		if i >= 0 && j >= 0 {
			a[i*n+j] += v
		}
	}
	add(row.P, column.P, v)
	add(row.Q, column.Q, v)
	add(row.P, column.Q, -v)
	add(row.Q, column.P, -v)
}
