// Package dim is the algebra of physical dimensions that the checker computes with.
//
// A Vector counts the base dimensions in halves and, last, the angle. The angle makes the
// 2π between frequency and angular frequency visible: inductance and capacitance carry
// one angle less than their SI dimension, because X = ωL and B = ωC, so that 1/√(LC) and
// R/L come out per second with an angle (an angular frequency) and 1/(2π√(LC)) without (a
// frequency). The angle decides only where nothing but time is left; elsewhere it is
// carried along and does not keep two quantities apart.
package dim

// Size is the number of entries of a Vector; the last one is the angle.
const Size = 6

// Entries with a meaning to the checker.
const (
	timeEntry  = 2
	angleEntry = Size - 1
)

// Vector holds exponents in halves. The zero Vector is a plain number.
type Vector [Size]int8

// Radian is the dimension of one factor π or one angle.
var radian = Vector{angleEntry: 2}

// Turn returns the dimension of n factors of π.
func Turn(n int) Vector {
	v := radian
	v[angleEntry] *= int8(n)
	return v
}

// Times returns the dimension of a product.
func (v Vector) Times(w Vector) Vector {
	for i := range v {
		v[i] += w[i]
	}
	return v
}

// Over returns the dimension of a quotient.
func (v Vector) Over(w Vector) Vector {
	for i := range v {
		v[i] -= w[i]
	}
	return v
}

// Power raises v to an exponent given in halves; ok is false where the result would not
// have exponents in halves, or they overflow.
func (v Vector) Power(halves int) (Vector, bool) {
	for i := range v {
		product := int(v[i]) * halves
		if product%2 != 0 || product/2 > 120 || product/2 < -120 {
			return v, false
		}
		v[i] = int8(product / 2)
	}
	return v, true
}

// Third returns the cube root's dimension; ok is false where it has no exponents in halves.
func (v Vector) Third() (Vector, bool) {
	for i := range v {
		if v[i]%3 != 0 {
			return v, false
		}
		v[i] /= 3
	}
	return v, true
}

// Number reports whether v is a plain number, an angle being one.
func (v Vector) Number() bool {
	v[angleEntry] = 0
	return v == Vector{}
}

// Visible returns v without the angle, except for a pure rate (1/time), where the angle
// tells an angular frequency (one) from a frequency (none).
func (v Vector) Visible() Vector {
	angle := v[angleEntry]
	v[angleEntry] = 0
	if v == (Vector{timeEntry: -2}) {
		v[angleEntry] = angle
	}
	return v
}

// Same reports whether quantities of v and w may be added and compared.
func (v Vector) Same(w Vector) bool { return v.Visible() == w.Visible() }

// PureTime reports whether v is a power of time, whatever its angle.
func (v Vector) PureTime() bool {
	t := v[timeEntry]
	v[angleEntry], v[timeEntry] = 0, 0
	return t != 0 && v == Vector{}
}

// Angle returns the exponent of the angle, in whole numbers.
func (v Vector) Angle() int { return int(v[angleEntry]) / 2 }

// Inverse returns the dimension of one over a quantity of v.
func (v Vector) Inverse() Vector { return Vector{}.Over(v) }
