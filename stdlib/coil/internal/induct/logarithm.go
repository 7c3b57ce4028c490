package induct

import "math"

// This file holds the two functions in which most of the time of a closed form goes, for arguments that are finite and
// positive: by a table of 128 places and a short series between them.

// places is the number of table entries to an octave of the logarithm, and from 0 to 1 of the arc tangent.
const places = 128

// A logAt is 1/m and ln m in the middle m of one part of the octave from 1 to 2.
type logAt struct{ inverse, log float64 }

var logs = func() (t [places]logAt) {
	for i := range t {
		m := 1 + (float64(i)+0.5)/places
		t[i] = logAt{1 / m, math.Log(m)}
	}
	return t
}()

// ln is the natural logarithm within 4e-16 and a unit in the last place.
func ln(x float64) float64 {
	bits := math.Float64bits(x)
	exponent := bits >> 52
	if exponent-1 >= 2046 { // not a normal positive number
		return math.Log(x)
	}
	at := logs[bits>>45&(places-1)]
	r := math.Float64frombits(bits&(1<<52-1)|1023<<52)*at.inverse - 1
	r2 := r * r
	series := r - r2*(0.5-r*(1.0/3)+r2*(0.25-r*0.2+r2*(1.0/6)))
	return float64(int(exponent)-1023)*math.Ln2 + (at.log + series)
}

// arcTangents holds the coefficients of the Taylor series of the arc tangent about i/places.
var arcTangents = func() (t [places + 1][7]float64) {
	for i := range t {
		c := float64(i) / places
		t[i][0] = math.Atan(c)
		s, before, slope := 1+c*c, 0.0, 1/(1+c*c) // 1/(1+(c+h)²) has a recurrence; it is integrated term by term
		for n := 1; n < len(t[i]); n++ {
			t[i][n] = slope / float64(n)
			before, slope = slope, -(2*c*slope+before)/s
		}
	}
	return t
}()

// angle is atan(y/x) for y ≥ 0 and x ≥ 0 within 4e-16, NaN where both are 0.
func angle(y, x float64) float64 {
	if y > x {
		return math.Pi/2 - acute(x/y)
	}
	return acute(y / x)
}

// turn is the angle of (x, y) between -π and π.
func turn(y, x float64) float64 {
	a := angle(math.Abs(y), math.Abs(x))
	if x < 0 {
		a = math.Pi - a
	}
	return math.Copysign(a, y)
}

// acute is the arc tangent from 0 to 1.
func acute(q float64) float64 {
	if !(q <= 1) {
		return math.NaN()
	}
	i := int(q*places + 0.5)
	h := q - float64(i)/places
	h2 := h * h
	odd := arcTangents[i][1] + h2*(arcTangents[i][3]+h2*arcTangents[i][5])
	even := arcTangents[i][2] + h2*(arcTangents[i][4]+h2*arcTangents[i][6])
	return arcTangents[i][0] + (h*odd + h2*even)
}
