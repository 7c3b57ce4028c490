package coil

import (
	"fmt"
	"math"
	"slices"

	"lode/units"
	"lode/units/frame"
)

// Chain is windings in series, each in its place: a pair that cancels hum, the sections of a
// bobbin, a tapped winding.
type Chain struct {
	coils   []Placed
	coupled [][]float64 // inductances in henry, own ones on the diagonal, signs of Reversed not yet applied
	strands float64     // capacitance over the chain between strands that lie side by side, in farad
}

// InSeries joins windings in series. Where two share a flux in the same sense it adds to the
// inductance, and subtracts where one of them is Reversed.
//
// Source: Neumann's integral over both windows, as for Winding.Inductance.
//
// Valid: windings that do not overlap; without iron.
//
// Accuracy: mutual inductances as Chain.Mutual; signs follow from the places and from Reversed.
//
// Example: coil.InSeries(coil.Placed{Winding: c}, coil.Placed{Winding: c, Y: 18*mm, Reversed: true})
func InSeries(coils ...Placed) (Chain, error) {
	if len(coils) == 0 || len(coils) > 100 {
		return Chain{}, refuse("chain: number of windings", len(coils), "1 to 100", "")
	}
	chain := Chain{coils: append([]Placed(nil), coils...), coupled: make([][]float64, len(coils))}
	for i, p := range coils {
		name := fmt.Sprintf("winding %d of the chain", i+1)
		if err := p.check(name); err != nil {
			return Chain{}, err
		}
		chain.coupled[i] = make([]float64, len(coils))
		chain.coupled[i][i] = float64(p.Winding.Inductance())
		for j, q := range coils[:i] {
			if p.overlaps(q) {
				return Chain{}, refuse(fmt.Sprintf("%s and winding %d: overlap", name, j+1), fmt.Sprintf("x %v, y %v, z %v", p.X-q.X, p.Y-q.Y, p.Z-q.Z), "places apart", "set X, Y or Z of coil.Placed")
			}
			m := mutual(q, p)
			chain.coupled[i][j], chain.coupled[j][i] = m, m
		}
	}
	return chain, nil
}

// Coils returns how many windings there are.
func (c Chain) Coils() int { return len(c.coils) }

// Coil returns one of the windings, counted from 1.
//
// Example: pair.Coil(2)
func (c Chain) Coil(number int) (Winding, error) {
	if err := c.has(number); err != nil {
		return Winding{}, err
	}
	return c.coils[number-1].Winding, nil
}

func (c Chain) has(numbers ...int) error {
	for _, n := range numbers {
		if n < 1 || n > len(c.coils) {
			return refuse("winding number: out of range", n, fmt.Sprintf("1 to %d", len(c.coils)), "")
		}
	}
	return nil
}

// Inductance returns the inductance of the chain without iron.
//
// Source: L1 + L2 + 2M for windings that aid each other, L1 + L2 - 2M where one is Reversed; Neumann's
// integral for each.
//
// Accuracy: as Winding.Inductance.
func (c Chain) Inductance() units.Inductance {
	sum := 0.0
	for i := range c.coils {
		sum += c.share(i)
	}
	return units.Inductance(sum)
}

// share returns the part of the chain's inductance that the voltage over winding i makes.
func (c Chain) share(i int) float64 {
	sum := 0.0
	for j := range c.coils {
		sum += c.coils[i].sign() * c.coils[j].sign() * c.coupled[i][j]
	}
	return sum
}

// Capacitance returns the one capacitance over the whole chain that does the same at low frequency as those
// of the windings do.
//
// Source: each winding's own capacitance weighted by the square of its share of the voltage.
//
// Valid: well below the resonances; capacitance between the windings left out, but for strands wound side by side.
//
// Accuracy: as Winding.CapacitanceRange.
func (c Chain) Capacitance() units.Capacitance {
	sum, total := 0.0, float64(c.Inductance())
	for i, p := range c.coils {
		part := c.share(i) / total
		sum += part * part * float64(p.Winding.Capacitance())
	}
	return units.Capacitance(sum + c.strands)
}

// Mutual returns the mutual inductance of two windings, counted from 1, as they are joined: positive where they
// aid each other.
//
// Source: Neumann's integral over both windows.
//
// Accuracy: 0.01 % with parallel axes, mostly 0.001 %; 0.05 % with tilted ones; without iron.
//
// Example: pair.Mutual(1, 2)
func (c Chain) Mutual(one, other int) (units.Inductance, error) {
	if err := c.has(one, other); err != nil {
		return 0, err
	}
	i, j := one-1, other-1
	return units.Inductance(c.coils[i].sign() * c.coils[j].sign() * c.coupled[i][j]), nil
}

// Coupling returns the coupling coefficient of two windings, counted from 1: their mutual inductance over the
// geometric mean of their own.
//
// Source: k = M/√(L1·L2).
//
// Valid: -1 to 1, negative where the two oppose each other as they are joined.
//
// Accuracy: 0.001; without iron.
//
// Example: pair.Coupling(1, 2)
func (c Chain) Coupling(one, other int) (float64, error) {
	m, err := c.Mutual(one, other)
	if err != nil {
		return 0, err
	}
	return float64(m) / math.Sqrt(c.coupled[one-1][one-1]*c.coupled[other-1][other-1]), nil
}

// Frame lays the windings out in a row each; places that are the middle for all are left out.
func (c Chain) Frame() frame.Frame {
	columns := map[string][]any{}
	add := func(name string, cell any) { columns[name] = append(columns[name], cell) }
	for i, p := range c.coils {
		add("Winding", i+1)
		add("Turns", p.Winding.turns)
		add("Sense", map[bool]string{false: "forward", true: "reversed"}[p.Reversed])
		add("x", p.X)
		add("y", p.Y)
		add("z", p.Z)
		add("Tilt", p.Tilt)
		add("Turn", p.Turn)
		add("Resistance", p.Winding.Resistance())
		add("Inductance", units.Inductance(c.coupled[i][i]))
		add("Share of the chain", units.Inductance(c.share(i)))
	}
	f := frame.Frame{Title: "Windings in series"}
	for _, name := range []string{"Winding", "Turns", "Sense", "x", "y", "z", "Tilt", "Turn", "Resistance", "Inductance", "Share of the chain"} {
		if column := frame.Collect(name, columns[name]); !atZero(column) {
			f.Columns = append(f.Columns, column)
		}
	}
	return f
}

// atZero reports whether a column says nothing but that all lies in the middle or stands upright.
func atZero(c frame.Column) bool {
	place := c.Kind == units.Length(0).Kind() || c.Kind == units.Angle(0).Kind()
	return place && !slices.ContainsFunc(c.Values, func(v float64) bool { return v != 0 })
}

// String sums the chain up in one line.
func (c Chain) String() string {
	if len(c.coils) == 0 {
		return "no windings"
	}
	return fmt.Sprintf("%d windings in series, %v, %v", len(c.coils), c.Resistance(), c.Inductance())
}
