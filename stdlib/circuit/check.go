package circuit

import (
	"fmt"
	"math"
	"sort"
	"strings"
)

// This file judges a whole network before it is turned into equations: what nodes there are,
// which hang in the air, which sources are shorted, whether the couplings can be.

// joins is a set of nodes that are held together (union-find with path halving).
type joins map[string]string

func (j joins) root(node string) string {
	if _, known := j[node]; !known {
		j[node] = node
	}
	for j[node] != node {
		j[node] = j[j[node]]
		node = j[node]
	}
	return node
}

// join holds a and b together and reports whether they were apart.
func (j joins) join(a, b string) bool {
	a, b = j.root(a), j.root(b)
	if a == b {
		return false
	}
	if a == Ground {
		a, b = b, a
	}
	j[a] = b
	return true
}

// wires joins the nodes that parts of 0 Ω make one.
func (n Network) wires() joins {
	j := joins{}
	j.root(Ground)
	for _, p := range n.parts {
		if p.kind == resistor && p.value == 0 {
			j.join(p.from, p.to)
		}
	}
	return j
}

// check returns the first fault of the network as a whole.
func (n Network) check() error {
	if n.err != nil {
		return n.err
	}
	if err := n.checkShorts(); err != nil {
		return err
	}
	if err := n.checkFloating(); err != nil {
		return err
	}
	return n.checkCouplings()
}

func (n Network) checkShorts() error {
	j := n.wires()
	for _, p := range n.parts {
		if p.fixed() && !j.join(p.from, p.to) {
			return fmt.Errorf("%v: %w: other voltage sources or wires join %q and %q already", p, ErrShorted, p.from, p.to)
		}
	}
	return nil
}

func (n Network) checkFloating() error {
	j := n.wires()
	for _, p := range n.parts {
		for _, link := range p.links() {
			j.join(link[0], link[1])
		}
	}
	ground := j.root(Ground)
	for _, node := range n.Nodes() {
		if j.root(node) != ground {
			return fmt.Errorf("node %q: %w: no part joins it to %q, not even through others\nhint: give its part of the circuit a connection to %[3]q",
				node, ErrFloating, Ground)
		}
	}
	return nil
}

// Nodes returns the names of all nodes in the order of the alphabet.
func (n Network) Nodes() []string {
	seen := map[string]bool{}
	var nodes []string
	for _, p := range n.parts {
		for _, node := range p.nodes() {
			if !seen[node] {
				seen[node] = true
				nodes = append(nodes, node)
			}
		}
	}
	sort.Strings(nodes)
	return nodes
}

// checkCouplings refuses coupling factors that contradict each other: the matrix of factors
// must have no negative eigenvalue, or the coils would give energy without end. The test is
// a Cholesky factorisation that allows zeros.
func (n Network) checkCouplings() error {
	var names []string
	index := map[string]int{}
	for _, c := range n.couplings {
		for _, name := range []string{c.first, c.second} {
			if _, known := index[name]; !known {
				index[name] = len(names)
				names = append(names, name)
			}
		}
	}
	a := make([][]float64, len(names))
	for i := range a {
		a[i] = make([]float64, len(names))
		a[i][i] = 1
	}
	for _, c := range n.couplings {
		a[index[c.first]][index[c.second]], a[index[c.second]][index[c.first]] = c.k, c.k
	}
	if semidefinite(a) {
		return nil
	}
	return fmt.Errorf("couplings of %s: %w: together the factors would give out energy; check their sizes and signs", strings.Join(names, ", "), ErrCoupling)
}

// semidefinite eliminates symmetrically, the largest diagonal first, and finds a negative
// remainder if there is one; a is overwritten.
func semidefinite(a [][]float64) bool {
	const tolerance = 1e-9
	for k := range a {
		p := k
		for i := k; i < len(a); i++ {
			if a[i][i] < -tolerance {
				return false
			}
			if a[i][i] > a[p][p] {
				p = i
			}
		}
		swapBoth(a, k, p)
		if a[k][k] <= tolerance {
			return smallFrom(a, k, math.Sqrt(tolerance))
		}
		for i := k + 1; i < len(a); i++ {
			f := a[i][k] / a[k][k]
			for j := k + 1; j < len(a); j++ {
				a[i][j] -= f * a[k][j]
			}
		}
	}
	return true
}

// smallFrom tells whether all that is left from row and column k on is rounding.
func smallFrom(a [][]float64, k int, tolerance float64) bool {
	for i := k; i < len(a); i++ {
		for j := k; j < len(a); j++ {
			if math.Abs(a[i][j]) > tolerance {
				return false
			}
		}
	}
	return true
}

func swapBoth(a [][]float64, i, j int) {
	a[i], a[j] = a[j], a[i]
	for _, row := range a {
		row[i], row[j] = row[j], row[i]
	}
}
