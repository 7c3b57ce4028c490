package units

import "strings"

// Base names one of the base dimensions that a Dimension counts.
type Base int

// The base dimensions. Angle marks the factor 2π between a frequency and an angular
// frequency: it is dimensionless in SI but kept apart here, so that one is never
// labelled as the other.
const (
	BaseLength Base = iota
	BaseMass
	BaseTime
	BaseCurrent
	BaseTemperature
	BaseAngle
	baseCount
)

// Dimension is a product of powers of the base dimensions. Exponents are counted in
// halves, so that the volt per root hertz has one. The zero Dimension is a plain number.
type Dimension [baseCount]int8

// Dim builds a Dimension from whole exponents in the order length, mass, time, current,
// temperature; missing ones are zero.
func Dim(exponents ...int) Dimension {
	var d Dimension
	for i, e := range exponents {
		d[i] = int8(2 * e)
	}
	return d
}

// Times returns the dimension of a product.
func (d Dimension) Times(o Dimension) Dimension {
	for i := range d {
		d[i] += o[i]
	}
	return d
}

// Over returns the dimension of a quotient.
func (d Dimension) Over(o Dimension) Dimension {
	for i := range d {
		d[i] -= o[i]
	}
	return d
}

// Plain reports whether d is the dimension of a plain number.
func (d Dimension) Plain() bool { return d == Dimension{} }

var baseSymbols = [baseCount]string{"m", "kg", "s", "A", "K", "rad"}

// String writes d as a product of base units, such as "kg·m²·s⁻²". A dimension that has
// a kind of its own is better shown by UnitText.
func (d Dimension) String() string {
	var parts []string
	for i, halves := range d {
		if halves != 0 {
			parts = append(parts, baseSymbols[i]+superscript(int(halves)))
		}
	}
	return strings.Join(parts, "·")
}

// UnitText writes the unit of d: the symbol of its kind, a product of two kinds that
// gives it (such as "Ω·m²"), or base units.
func (d Dimension) UnitText() string {
	if d.Plain() {
		return ""
	}
	if k, ok := KindOf(d); ok {
		return k.Symbol
	}
	if text, ok := twoKinds(d); ok {
		return text
	}
	if text, ok := powers(d); ok {
		return text
	}
	return d.String()
}

// power is a unit with a whole exponent.
type power struct {
	symbol   string
	dim      Dimension
	exponent int
}

// powers looks for d as a product of few powers of units with names, such as "Ω²" or
// "V²/H", the simplest one it finds.
func powers(d Dimension) (string, bool) {
	best, found := "", d.cost()
	list := candidates()
	for i, a := range list {
		rest := d.Over(a.dim)
		if rest.Plain() && a.cost() < found {
			best, found = product(a), a.cost()
		}
		for _, b := range list[i+1:] {
			if cost := a.cost() + b.cost() + 1; b.symbol != a.symbol && cost < found && rest == b.dim {
				best, found = product(a, b), cost
			}
		}
	}
	return best, best != ""
}

func (p power) cost() int { return max(p.exponent, 1-p.exponent) }

// cost is what reading d in base units takes; those of length and time alone are known to
// everybody.
func (d Dimension) cost() int {
	cost := -1
	for _, halves := range d {
		if halves != 0 {
			cost += 1 + max(int(halves)/2, 1-int(halves)/2)
		}
	}
	if d[BaseMass] == 0 && d[BaseCurrent] == 0 {
		return 0
	}
	return cost
}

// candidates lists the units that names are made of with their small powers.
func candidates() []power {
	var list []power
	add := func(symbol string, dim Dimension) {
		for _, e := range []int{1, 2, -1, -2, 3, -3} {
			p := power{symbol, dim, e}
			for i := range p.dim {
				p.dim[i] *= int8(e)
			}
			list = append(list, p)
		}
	}
	for _, k := range kinds {
		if k.leading || k.Type == "Current" {
			add(k.Symbol, k.Dim)
		}
	}
	add("m", Dim(1))
	add("s", Dim(0, 0, 1))
	add("kg", Dim(0, 1))
	return list
}

// product writes powers, those that divide behind a solidus.
func product(list ...power) string {
	above, below := "", ""
	for _, p := range list {
		if p.exponent > 0 {
			above += "·" + p.symbol + superscript(2*p.exponent)
		} else {
			below += "/" + p.symbol + superscript(-2*p.exponent)
		}
	}
	if above == "" {
		above = "·1"
	}
	return strings.TrimPrefix(above, "·") + below
}

// twoKinds looks for d as electrical symbol times or over a power of metre or second.
func twoKinds(d Dimension) (string, bool) {
	for _, k := range kinds {
		if !k.leading {
			continue
		}
		rest := d.Over(k.Dim)
		if base, halves, ok := rest.single(); ok && base != BaseAngle {
			return joinUnit(k.Symbol, baseSymbols[base], halves), true
		}
	}
	return "", false
}

func (d Dimension) single() (base Base, halves int, ok bool) {
	for i, e := range d {
		if e == 0 {
			continue
		}
		if ok {
			return 0, 0, false
		}
		base, halves, ok = Base(i), int(e), true
	}
	return base, halves, ok
}

func joinUnit(symbol, base string, halves int) string {
	if halves > 0 {
		return symbol + "·" + base + superscript(halves)
	}
	return symbol + "/" + base + superscript(-halves)
}

var superscripts = strings.NewReplacer("-", "⁻", "0", "⁰", "1", "¹", "2", "²", "3", "³",
	"4", "⁴", "5", "⁵", "6", "⁶", "7", "⁷", "8", "⁸", "9", "⁹")

// superscript writes an exponent given in halves; an odd number of halves is written as
// a fraction ("^(3/2)"), one as nothing.
func superscript(halves int) string {
	if halves == 2 {
		return ""
	}
	if halves%2 != 0 {
		return "^(" + itoa(halves) + "/2)"
	}
	return superscripts.Replace(itoa(halves / 2))
}
