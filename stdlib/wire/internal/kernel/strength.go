package kernel

import "math"

// The flow curve of a soft metal is written as σ = K·εⁿ with the true stress σ and the true
// (logarithmic) strain ε (J. H. Hollomon, "Tensile deformation", Trans. AIME 162, 1945). The pull on
// the original cross-section, s = σ·exp(-ε), is largest at ε = n (A. Considère, 1885), and that
// largest value is the tensile strength S. So K = S·(e/n)ⁿ, and the curve is fixed by S and n.

// FlowStrain returns the permanent true strain under the engineering stress s, up to the
// tensile strength S, for the hardening exponent n. It solves n·ln(ε) - ε = ln(s/K) by Newton's
// method in x = ln(ε): the left side is concave in x and rises up to ε = n, and the start
// lies below the solution, so the steps approach it from below without overshoot.
func FlowStrain(s, S, n float64) float64 {
	if s <= 0 {
		return 0
	}
	c := math.Log(s/S) - n*(1-math.Log(n))
	x := c / n
	for range 200 {
		ε := math.Exp(x)
		step := (c - n*x + ε) / (n - ε)
		if !(step > 1e-15*math.Abs(x)) {
			break
		}
		x += step
	}
	return min(math.Exp(x), n)
}

// EngineeringStress returns the pull per original cross-section at the true strain ε on the
// flow curve of strength S and exponent n: the inverse of FlowStrain.
func EngineeringStress(ε, S, n float64) float64 {
	K := S * math.Pow(math.E/n, n)
	return K * math.Pow(ε, n) * math.Exp(-ε)
}
