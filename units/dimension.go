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
	return d.String()
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
