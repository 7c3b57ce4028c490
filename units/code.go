package units

import (
	"strconv"
	"strings"
)

// This file reads the letter codes that are printed on resistors and capacitors, where a
// letter stands for the decimal point: 4k7, 2R2, 4n7 (IEC 60062; letters from memory).

var codeLetters = map[string]map[rune]float64{
	"Resistance":  {'L': 1e-3, 'R': 1, 'K': 1e3, 'k': 1e3, 'M': 1e6, 'G': 1e9},
	"Capacitance": {'p': 1e-12, 'n': 1e-9, 'µ': 1e-6, 'μ': 1e-6, 'u': 1e-6, 'm': 1e-3, 'F': 1},
}

// parseCode reads a letter code of a resistance or a capacitance.
func parseCode(text string, k Kind) (float64, bool) {
	for i, r := range text {
		if r >= '0' && r <= '9' {
			continue
		}
		factor, ok := codeLetters[k.Type][r]
		if !ok {
			return 0, false
		}
		whole, fraction := text[:i], text[i+len(string(r)):]
		if whole+fraction == "" || fraction == "" || strings.Trim(fraction, "0123456789") != "" {
			return 0, false
		}
		value, err := strconv.ParseFloat(whole+"."+fraction, 64)
		return value * factor, err == nil
	}
	return 0, false
}
