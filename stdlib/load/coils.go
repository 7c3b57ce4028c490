package load

import (
	"errors"
	"fmt"
	"math"

	"lode/stdlib/circuit"
	"lode/units"
)

// This file wires coils to each other: in series, in parallel, reversed, tapped, shorted, coupled.

// Coils is one coil or several wired together, with two ends. Each coil has an EMF of 1 V unless
// it is raised, and levels are relative to 1 V.
//
//	neck, bridge := load.One(a).Named("neck"), load.One(b).Named("bridge").Raised(-2*dB)
//	load.FromCoils(load.Series(neck, bridge.Reversed()).Coupled("neck", "bridge", 0.02))
type Coils struct {
	how      string // "one", "series" or "parallel"
	source   Source
	name     string
	emf      float64
	tap      float64 // share of the turns below the tap, 1 for none
	shorted  bool
	members  []Coils
	mutuals  []mutual
	err      error
	reversed bool
	further  func(units.Frequency) units.Impedance
	metal    []metal
}

// metal is conducting matter near a coil: a shorted turn.
type metal struct {
	k      float64
	corner units.Frequency
}

type mutual struct {
	first, second string
	k             float64
}

// One returns a single coil.
func One(c Source) Coils {
	if c == nil {
		return Coils{err: errors.New("coil: missing: got nothing, want a winding or a load.Coil")}
	}
	return Coils{how: "one", source: c, emf: 1, tap: 1}
}

// Series returns coils in series, the first at the hot end.
func Series(coils ...Coils) Coils { return group("series", coils) }

// Parallel returns coils in parallel.
func Parallel(coils ...Coils) Coils { return group("parallel", coils) }

func group(how string, coils []Coils) Coils {
	g := Coils{how: how, members: append([]Coils(nil), coils...)}
	if len(coils) == 0 {
		g.err = fmt.Errorf("coils in %s: none: want at least one", how)
	}
	return g
}

// Named gives a coil a name, by which it can be coupled; without one it is "coil", "coil 2" and so on.
func (c Coils) Named(name string) Coils {
	if c.how != "one" {
		return c.fail(fmt.Errorf("name %q: given to several coils: want it on one coil", name))
	}
	c.name = name
	return c
}

// Reversed exchanges the two ends.
func (c Coils) Reversed() Coils {
	c.reversed = !c.reversed
	return c
}

// Raised raises the EMF of all the coils by a level; a negative one lowers it.
func (c Coils) Raised(by units.Level) Coils {
	c.emf *= by.Ratio()
	members := append([]Coils(nil), c.members...)
	for i := range members {
		members[i] = members[i].Raised(by)
	}
	c.members = members
	return c
}

// Tapped takes the signal of one coil from a tap at the given share of its turns, counted from its
// cold end; the turns above the tap hang open.
//
// Source: the two parts of a winding on one core couple perfectly in this model, so that inductance goes
// with the square of the turns; resistance and EMF go with the turns.
func (c Coils) Tapped(share float64) Coils {
	switch {
	case c.how != "one":
		return c.fail(errors.New("tap: given to several coils: want it on one coil"))
	case !(share > 0 && share <= 1):
		return c.fail(fmt.Errorf("tap: got a share of %s of the turns, want more than 0 and at most 1", units.Digits(share, 4)))
	}
	c.tap = share
	return c
}

// Shorted joins both ends, as when one coil of two in series is switched off. It keeps its
// coupling to the others.
func (c Coils) Shorted() Coils {
	c.shorted = true
	return c
}

// Lossy puts an impedance that depends on frequency in series with one coil, such as what a
// measurement found beyond its DC resistance and inductance.
//
// Example: load.FromCoils(load.One(c).Lossy(func(f units.Frequency) units.Impedance { return units.Impedance(complex(0.2*float64(f), 0)) }))
func (c Coils) Lossy(further func(units.Frequency) units.Impedance) Coils {
	if c.how != "one" {
		return c.fail(errors.New("loss: given to several coils: want it on one coil"))
	}
	c.further = further
	return c
}

// NearMetal puts conducting matter near one coil, such as a cover or a base plate: eddy currents in it
// take inductance away and bring loss. K is the coupling of coil and metal, corner the frequency at
// which the metal's own resistance and reactance are equal. Several pieces may be added.
//
// Source: a shorted turn, such as Terman, Radio Engineers' Handbook, 1943, section 2 (coupled circuits): the
// coil's impedance grows by ω²k²L·τ/(1 + jωτ) with τ = 1/(2π·corner).
//
// Valid: metal thin against its skin depth; a thick piece acts like several of different corners.
//
// Example: load.FromCoils(load.One(c).NearMetal(0.3, 4*kHz))
func (c Coils) NearMetal(k float64, corner units.Frequency) Coils {
	switch {
	case c.how != "one":
		return c.fail(errors.New("metal: given to several coils: want it on one coil"))
	case !(k >= 0 && k <= 1):
		return c.fail(fmt.Errorf("metal: coupling: got %s, want 0 to 1", units.Digits(k, 4)))
	case !(corner > 0) || math.IsInf(corner.SI(), 1):
		return c.fail(fmt.Errorf("metal: corner: got %v, want more than 0 Hz", corner))
	}
	c.metal = append(c.metal[:len(c.metal):len(c.metal)], metal{k, corner})
	return c
}

// Coupled couples two coils by name with a coupling factor from -1 to 1, positive for coils whose
// hot ends have the same polarity.
func (c Coils) Coupled(first, second string, k float64) Coils {
	c.mutuals = append(c.mutuals[:len(c.mutuals):len(c.mutuals)], mutual{first, second, k})
	return c
}

func (c Coils) fail(err error) Coils {
	if c.err == nil {
		c.err = err
	}
	return c
}

// Position is one position of a selector switch: the coils it connects, and how.
type Position struct {
	Name  string
	Coils Coils
}

// Responses sweeps a chain for each position of a selector. Chain says what follows the coils.
//
// Example: load.Responses(positions, func(l load.Line) load.Line { return l.Volume(500*kΩ).Cable(5*metre).Input(1*MΩ) }, 20*Hz, 20*kHz)
func Responses(positions []Position, chain func(Line) Line, low, high units.Frequency) ([]circuit.Response, error) {
	var all []circuit.Response
	for _, p := range positions {
		r, err := chain(FromCoils(p.Coils)).Named(p.Name).Sweep(low, high)
		if err != nil {
			return nil, fmt.Errorf("position %q: %w", p.Name, err)
		}
		all = append(all, r)
	}
	return all, nil
}
