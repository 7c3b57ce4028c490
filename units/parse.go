package units

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Parse reads a number with a unit as people write it: "4.7 kΩ", "22nF", "0.063 mm",
// "75 pF/m", "10 mm²", "-3 dB", "20 °C". The unit may be a product or quotient of units
// with powers. It refuses a number without digits, an unknown unit and a decimal comma.
func Parse(text string) (Product, error) {
	number, unit, err := cut(text)
	if err != nil {
		return Product{}, err
	}
	switch unit {
	case "°C", "degC":
		return Product{number + zeroCelsius, Dim(0, 0, 0, 0, 1)}, nil
	case "dBV":
		return Product{Value: number}, nil
	case "dBu":
		return Product{Value: number + zeroDBu}, nil
	}
	factor, dim, err := parseUnit(unit)
	if err != nil {
		return Product{}, fmt.Errorf("%q: %w", text, err)
	}
	return Product{number * factor, dim}, nil
}

// parseKind reads text as a quantity of kind k.
func parseKind(text string, k Kind) (float64, error) {
	if value, ok := parseCode(strings.TrimSpace(text), k); ok {
		return value, nil
	}
	p, err := Parse(text)
	if err != nil {
		return 0, err
	}
	if decibels(text) != decibelsOf(k) || p.Dim != k.Dim {
		got := p.Dim.UnitText()
		if got == "" {
			got = "a number without a unit"
		}
		return 0, fmt.Errorf("%q: wrong unit: got %s, want %s %s, such as %s", text, got, article(k.Name), k.Name, k.Symbol)
	}
	return p.Value, nil
}

// decibels returns what kind of decibel a text ends in, "" for none.
func decibels(text string) string {
	for _, unit := range [][2]string{{"dB", "dB"}, {"dBV", "dBV"}, {"dBu", "dBV"}} {
		if strings.HasSuffix(strings.TrimSpace(text), unit[0]) {
			return unit[1]
		}
	}
	return ""
}

// decibelsOf returns the kind of decibel that a kind of quantity is counted in.
func decibelsOf(k Kind) string {
	if strings.HasPrefix(k.Symbol, "dB") {
		return k.Symbol
	}
	return ""
}

func article(name string) string {
	if strings.ContainsRune("aeiou", rune(name[0])) {
		return "an"
	}
	return "a"
}

// cut separates the number that text begins with from the unit behind it.
func cut(text string) (float64, string, error) {
	s := strings.TrimSpace(strings.ReplaceAll(text, "−", "-"))
	n := numberLength(s)
	number, err := strconv.ParseFloat(s[:n], 64)
	if err != nil || math.IsInf(number, 0) {
		return 0, "", fmt.Errorf("%q: no number: got %q, want digits and then a unit, such as 4.7 kΩ", text, s)
	}
	rest := strings.TrimSpace(s[n:])
	if strings.HasPrefix(rest, ",") {
		return 0, "", fmt.Errorf("%q: decimal comma: got %q, want a point, such as 0.063 mm", text, s)
	}
	return number, rest, nil
}

// numberLength returns how many bytes at the start of s belong to a decimal number.
func numberLength(s string) int {
	i := 0
	for i < len(s) && (s[i] >= '0' && s[i] <= '9' || s[i] == '.' || (i == 0 && (s[i] == '-' || s[i] == '+'))) {
		i++
	}
	if i < len(s) && (s[i] == 'e' || s[i] == 'E') {
		j := i + 1
		if j < len(s) && (s[j] == '-' || s[j] == '+') {
			j++
		}
		if k := j + digitsLength(s[j:]); k > j {
			return k
		}
	}
	return i
}

func digitsLength(s string) int {
	i := 0
	for i < len(s) && s[i] >= '0' && s[i] <= '9' {
		i++
	}
	return i
}

// parseUnit reads a product or quotient of units: everything behind a solidus divides.
func parseUnit(text string) (float64, Dimension, error) {
	factor, dim := 1.0, Dimension{}
	if text == "" {
		return factor, dim, nil
	}
	if f, d, ok := lookupUnit(text); ok {
		return f, d, nil
	}
	for i, part := range strings.Split(text, "/") {
		for _, item := range strings.FieldsFunc(part, func(r rune) bool { return strings.ContainsRune("·* ", r) }) {
			f, d, err := parsePower(item)
			if err != nil {
				return 0, dim, err
			}
			if i > 0 {
				f, d = 1/f, Dimension{}.Over(d)
			}
			factor, dim = factor*f, dim.Times(d)
		}
	}
	return factor, dim, nil
}

var plainDigits = strings.NewReplacer("⁻", "-", "⁰", "0", "¹", "1", "²", "2", "³", "3", "⁴", "4", "^", "")

// parsePower reads one unit with an optional whole exponent, or a root as in √Hz.
func parsePower(item string) (float64, Dimension, error) {
	if base, ok := strings.CutPrefix(item, "√"); ok {
		f, d, err := parsePower(base)
		for i := range d {
			d[i] /= 2
		}
		return math.Sqrt(f), d, err
	}
	if f, d, ok := lookupUnit(item); ok || item == "1" {
		return f, d, nil
	}
	cut := strings.IndexAny(item, "⁻⁰¹²³⁴^-0123456789")
	if cut > 0 {
		exponent, err := strconv.Atoi(plainDigits.Replace(item[cut:]))
		if f, d, ok := lookupUnit(item[:cut]); ok && err == nil && exponent >= -4 && exponent <= 4 {
			for i := range d {
				d[i] *= int8(exponent)
			}
			return math.Pow(f, float64(exponent)), d, nil
		}
	}
	return 0, Dimension{}, fmt.Errorf("unknown unit: got %q, want one such as mm, kΩ, nF or pF/m", item)
}

// lookupUnit finds a unit by one of its spellings, or as printing writes it.
func lookupUnit(symbol string) (float64, Dimension, bool) {
	for _, u := range named {
		for _, s := range u.Spellings() {
			if s == symbol {
				k, _ := KindNamed(u.Type)
				return u.Factor, k.Dim, true
			}
		}
	}
	for _, k := range kinds {
		for _, step := range k.Steps() {
			if step.Symbol == symbol && k.Form != "point" {
				return step.Factor, k.Dim, true
			}
		}
	}
	return plainPrefix(symbol)
}

// plainPrefix reads the spellings of micro that printing does not use.
func plainPrefix(symbol string) (float64, Dimension, bool) {
	for _, other := range []string{"u", "μ"} {
		rest, ok := strings.CutPrefix(symbol, other)
		if ok && rest != "" {
			return lookupUnit("µ" + rest)
		}
	}
	return 1, Dimension{}, false
}
