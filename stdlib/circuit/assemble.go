package circuit

import (
	"fmt"
	"math"
	"math/cmplx"
	"strconv"
	"strings"

	"lode/stdlib/circuit/internal/kernel"
	"lode/units"
)

// This file turns a checked network into the kernel's equations.

// asBranch is the resistance in Ω below which a resistor's current becomes an unknown, which
// keeps a milliohm from drowning a gigaohm.
const asBranch = kernel.Scale / 100

// plan knows where each node and part of a network is found among the unknowns.
type plan struct {
	network Network
	joined  joins
	nodes   map[string]int // by the root of the joined nodes
	branch  map[string]int
	store   map[string]int
	system  *kernel.System
}

// solve checks and assembles the network.
func (n Network) plan() (*plan, error) {
	if err := n.check(); err != nil {
		return nil, err
	}
	p := &plan{network: n, joined: n.wires(), nodes: map[string]int{}, branch: map[string]int{}, store: map[string]int{}}
	p.number()
	for _, part := range n.parts {
		p.stamp(part)
	}
	for _, c := range n.couplings {
		first, _ := n.find(c.first)
		second, _ := n.find(c.second)
		p.system.Mutual(p.store[c.first], p.store[c.second], c.k*math.Sqrt(first.value*second.value))
	}
	return p, nil
}

// number gives every unknown and every energy store its place.
func (p *plan) number() {
	p.nodes[p.joined.root(Ground)] = kernel.Ground
	for _, part := range p.network.parts {
		for _, node := range part.nodes() {
			root := p.joined.root(node)
			if _, known := p.nodes[root]; !known {
				p.nodes[root] = len(p.nodes) - 1
			}
		}
	}
	unknowns, stores := len(p.nodes)-1, 0
	for _, part := range p.network.parts {
		if part.branch() {
			p.branch[part.name] = unknowns
			unknowns++
		}
		p.store[part.name] = stores
		stores += part.stores()
	}
	p.system = kernel.New(unknowns, stores)
}

func (p part) stores() int {
	switch {
	case p.kind == coil && p.across > 0:
		return 2
	case p.kind == coil || p.kind == inductor || p.kind == capacitor:
		return 1
	}
	return 0
}

func (p *plan) at(part part) kernel.Pair {
	return kernel.Pair{P: p.node(part.from), Q: p.node(part.to)}
}

func (p *plan) node(name string) int { return p.nodes[p.joined.root(name)] }

// stamp enters one part into the equations.
func (p *plan) stamp(q part) {
	s, at, r, k := p.system, p.at(q), p.branch[q.name], p.store[q.name]
	switch q.kind {
	case resistor:
		p.resist(q, at, r)
	case capacitor:
		s.Capacitor(k, at, q.value)
	case inductor, coil:
		s.Branch(r, at, q.series)
		s.Inductor(k, r, q.value)
		s.B[r] += q.source
		if q.across > 0 {
			s.Capacitor(k+1, at, q.across)
		}
		if q.law != nil {
			p.vary(q, r)
		}
	case voltageSource, noiseVoltage:
		s.Branch(r, at, 0)
		s.B[r] += q.source
	case currentSource:
		s.Inject(at.P, -q.source)
		s.Inject(at.Q, q.source)
	case impedance:
		s.Branch(r, at, 0)
		p.vary(q, r)
	case noiseCurrent:
	default:
		p.control(q, at, r)
	}
}

// control enters a transformer or a source that listens to another part.
func (p *plan) control(q part, at kernel.Pair, r int) {
	s, ear := p.system, kernel.Pair{P: p.node(q.plus), Q: p.node(q.minus)}
	switch q.kind {
	case transformer:
		s.Transformer(r, at, ear, q.value)
	case voltageAmplifier:
		s.Branch(r, at, 0)
		s.Listen(r, ear, -q.value)
	case transconductance:
		s.Transconduct(at, ear, q.value)
	case currentAmplifier:
		s.Add(at.P, p.branch[q.through], q.value)
		s.Add(at.Q, p.branch[q.through], -q.value)
	case transresistance:
		s.Branch(r, at, 0)
		s.Add(r, p.branch[q.through], -q.value/kernel.Scale)
	}
}

// vary puts an impedance given by a function into branch r. One that cannot be becomes NaN, which
// spreads to the result; lawProblem then finds it.
func (p *plan) vary(q part, r int) {
	at := kernel.Pair{P: r, Q: kernel.Ground}
	p.system.Varies = append(p.system.Varies, kernel.Varying{At: at, Value: func(omega float64) complex128 {
		z, ok := q.impedance(units.AngularFrequency(omega).Frequency())
		if !ok {
			return cmplx.NaN()
		}
		return -z / kernel.Scale
	}})
}

// impedance calls q's function and reports whether a passive part can have what it returns.
func (q part) impedance(f units.Frequency) (complex128, bool) {
	z := complex128(q.law(f))
	return z, real(z) >= -1e-12*cmplx.Abs(z) && !cmplx.IsInf(z)
}

// undetermined says why there is no solution at a frequency.
func (n Network) undetermined(f units.Frequency) error {
	for _, q := range n.parts {
		if q.law == nil {
			continue
		}
		if z, ok := q.impedance(f); !ok {
			return fmt.Errorf("%v: impedance at %v: %w: got %s Ω, want a resistance of 0 Ω or more", q, f, ErrValue, strconv.FormatComplex(z, 'g', 4, 128))
		}
	}
	return fmt.Errorf("%s: %w at %v: parts without resistance leave a current or voltage undetermined\nhint: give coils and sources their resistance",
		called("network", n.title), ErrSingular, f)
}

func (p *plan) resist(q part, at kernel.Pair, r int) {
	switch {
	case q.value == 0: // a wire: its nodes are one
	case q.branch():
		p.system.Branch(r, at, q.value)
	default:
		p.system.Conduct(at, 1/q.value)
	}
}

// output returns the vector that reads the voltage of one node against another.
func (p *plan) output(from, to string) ([]float64, error) {
	c := make([]float64, p.system.N)
	for i, node := range []string{from, to} {
		index, known := p.nodes[p.joined.root(node)]
		if !known {
			return nil, fmt.Errorf("node %q: %w: there is no such node, want one of %s", node, ErrName, strings.Join(p.network.Nodes(), ", "))
		}
		if index >= 0 {
			c[index] += float64(1 - 2*i)
		}
	}
	return c, nil
}

// relative returns the voltage that levels are relative to.
func (n Network) relative() float64 {
	if n.reference > 0 {
		return n.reference.SI()
	}
	for _, p := range n.parts {
		if p.source != 0 && p.kind != currentSource {
			return math.Abs(p.source)
		}
	}
	return 1
}
