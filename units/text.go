package units

import (
	"math"
	"strconv"
	"strings"
)

// Step is one unit that printing may choose.
type Step struct {
	Symbol string
	Factor float64 // SI units in one of this
	From   float64 // smallest magnitude, in SI units, that is printed in it
}

// Steps returns the units that values of k are printed in, from small to large.
func (k Kind) Steps() []Step {
	if steps, ok := scales[k.scale]; ok {
		return steps
	}
	if k.scale == "si" {
		return prefixed(k.Symbol)
	}
	return []Step{{k.Symbol, 1, 0}}
}

func prefixed(symbol string) []Step {
	steps := make([]Step, 0, len(siPrefixes))
	for _, p := range siPrefixes {
		steps = append(steps, Step{p.symbol + symbol, p.factor, p.factor})
	}
	return steps
}

var siPrefixes = [...]struct {
	symbol string
	factor float64
}{{"f", 1e-15}, {"p", 1e-12}, {"n", 1e-9}, {"µ", 1e-6}, {"m", 1e-3}, {"", 1}, {"k", 1e3}, {"M", 1e6}, {"G", 1e9}}

// scales are the kinds of quantity whose usual units are not every third power of ten.
var scales = map[string][]Step{
	"length":        {{"nm", 1e-9, 0}, {"µm", 1e-6, 1e-6}, {"mm", 1e-3, 1e-5}, {"m", 1, 1}, {"km", 1e3, 1e4}},
	"area":          {{"mm²", 1e-6, 0}, {"m²", 1, 1e-1}},
	"volume":        {{"mm³", 1e-9, 0}, {"cm³", 1e-6, 1e-6}, {"m³", 1, 1e-1}},
	"mass":          {{"µg", 1e-9, 0}, {"mg", 1e-6, 1e-6}, {"g", 1e-3, 1e-3}, {"kg", 1, 1}},
	"massperlength": {{"mg/m", 1e-6, 0}, {"g/m", 1e-3, 1e-3}, {"kg/m", 1, 1}},
	"perlength":     {{"/m", 1, 0}, {"/mm", 1e3, 1e3}},
	"persquare":     {{"A/m²", 1, 0}, {"A/mm²", 1e6, 1e4}},
	"degrees":       {{"°", math.Pi / 180, 0}},
	"celsius":       {{"°C", 1, 0}},
}

// Text writes a value of kind k with the unit that suits its size, to four significant
// digits, trailing zeros dropped.
func Text(value float64, k Kind) string {
	number, unit := Split(value, k)
	return join(number, unit)
}

// Split returns the two parts of Text.
func Split(value float64, k Kind) (number, unit string) {
	step := k.StepFor(value)
	return Digits(k.in(value, step), 4), step.Symbol
}

// In returns value, in SI units, counted in step.
func (k Kind) In(value float64, step Step) float64 { return k.in(value, step) }

func (k Kind) in(value float64, step Step) float64 {
	if k.scale == "celsius" {
		return value - zeroCelsius
	}
	return value / step.Factor
}

// StepFor returns the unit that value is best printed in.
func (k Kind) StepFor(value float64) Step {
	steps := k.Steps()
	size := rounded(math.Abs(value), 4)
	best := steps[0]
	if size == 0 || math.IsNaN(size) || math.IsInf(size, 0) {
		return coherent(steps)
	}
	for _, s := range steps {
		if size >= s.From*(1-1e-12) {
			best = s
		}
	}
	return best
}

func coherent(steps []Step) Step {
	for _, s := range steps {
		if s.Factor == 1 {
			return s
		}
	}
	return steps[0]
}

// rounded keeps the given number of significant digits.
func rounded(x float64, digits int) float64 {
	y, err := strconv.ParseFloat(strconv.FormatFloat(x, 'e', digits-1, 64), 64)
	if err != nil {
		return x
	}
	return y
}

// Digits writes x to the given number of significant digits without trailing zeros, in
// scientific form only far from one.
func Digits(x float64, digits int) string {
	switch {
	case math.IsNaN(x):
		return "undefined"
	case math.IsInf(x, 0):
		return strings.Replace(strconv.FormatFloat(x, 'g', -1, 64), "Inf", "∞", 1)
	case x == 0:
		return "0"
	}
	exponent := int(math.Floor(math.Log10(rounded(math.Abs(x), digits))))
	if exponent < -5 || exponent > 8 {
		return scientific(x, digits)
	}
	return trim(strconv.FormatFloat(rounded(x, digits), 'f', max(0, digits-1-exponent), 64))
}

func scientific(x float64, digits int) string {
	mantissa, exponent, _ := strings.Cut(strconv.FormatFloat(x, 'e', digits-1, 64), "e")
	power, _ := strconv.Atoi(exponent)
	return trim(mantissa) + "·10" + superscripts.Replace(itoa(power))
}

func trim(s string) string {
	if !strings.Contains(s, ".") {
		return s
	}
	return strings.TrimRight(strings.TrimRight(s, "0"), ".")
}

func join(number, unit string) string {
	if unit == "" || unit == "°" {
		return number + unit
	}
	return number + " " + unit
}
