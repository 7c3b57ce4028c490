package formula

import (
	"strings"
	"unicode"
)

var greek = map[string]string{
	"alpha": "α", "beta": "β", "gamma": "γ", "delta": "δ", "epsilon": "ε", "eta": "η", "theta": "θ", "kappa": "κ", "lambda": "λ",
	"mu": "µ", "nu": "ν", "xi": "ξ", "pi": "π", "rho": "ρ", "sigma": "σ", "tau": "τ", "phi": "φ", "chi": "χ", "psi": "ψ", "omega": "ω",
	"Delta": "Δ", "Phi": "Φ", "Psi": "Ψ", "Omega": "Ω", "Sigma": "Σ",
}

// split parts a variable's name into its letter or word and its index.
func split(text string) (base, index string) {
	base, index, found := strings.Cut(text, "_")
	if !found {
		cut := len(strings.TrimRightFunc(text, unicode.IsDigit))
		base, index = text[:cut], text[cut:]
	}
	if base == "" {
		return text, ""
	}
	if letter, ok := greek[base]; ok {
		base = letter
	}
	return base, index
}
