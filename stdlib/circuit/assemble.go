package circuit

import (
	"fmt"
	"math"
	"strings"

	"lode/stdlib/circuit/internal/kernel"
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
		for _, node := range []string{part.from, part.to} {
			root := p.joined.root(node)
			if _, known := p.nodes[root]; !known {
				p.nodes[root] = len(p.nodes) - 1
			}
		}
	}
	unknowns, stores := len(p.nodes)-1, 0
	for _, part := range p.network.parts {
		if part.branch() && !p.wire(part) {
			p.branch[part.name] = unknowns
			unknowns++
		}
		p.store[part.name] = stores
		stores += part.stores()
	}
	p.system = kernel.New(unknowns, stores)
}

func (p *plan) wire(q part) bool { return q.kind == resistor && q.value == 0 }

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
	case voltageSource:
		s.Branch(r, at, 0)
		s.B[r] += q.source
	case currentSource:
		s.Inject(at.P, -q.source)
		s.Inject(at.Q, q.source)
	}
}

func (p *plan) resist(q part, at kernel.Pair, r int) {
	switch {
	case p.wire(q):
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
