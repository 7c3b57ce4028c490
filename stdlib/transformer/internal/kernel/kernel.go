// Package kernel holds the formulas of a transformer with a resistive source and load, in SI
// float64. Inputs are trusted: the package above validates.
//
// The circuit is the usual one: source R_s, primary resistance R_p, leakage in series, magnetising
// inductance across, an ideal 1:n transformer, secondary resistance R_2, load R_L. Primary-side
// and secondary-side quantities exchange by n² (Flanagan, Handbook of Transformer Design and
// Applications, 2nd ed., 1993, chapters 1 and 10).
package kernel

import "math"

// Values are the values of that circuit in Ω and H; N is secondary over primary turns.
type Values struct {
	Rs, Rp, R2, RL, N float64
	Lm, Leak          float64
}

// reflected is the load with the secondary's resistance, seen from the primary.
func (v Values) reflected() float64 { return (v.RL + v.R2) / (v.N * v.N) }

// Low returns the lower -3 dB frequency in Hz, where the reactance of the magnetising inductance
// equals source and load in parallel: ω·L_m = (R_s + R_p) ∥ (R_L + R_2)/n².
func Low(v Values) float64 {
	a, b := v.Rs+v.Rp, v.reflected()
	return a * b / (a + b) / (2 * math.Pi * v.Lm)
}

// High returns the upper -3 dB frequency in Hz, where the reactance of the leakage equals source
// and load in series: ω·L_leak = R_s + R_p + (R_L + R_2)/n².
func High(v Values) float64 { return (v.Rs + v.Rp + v.reflected()) / (2 * math.Pi * v.Leak) }

// Gain returns load voltage over source EMF between the corners.
func Gain(v Values) float64 {
	return v.RL / (v.RL + v.R2) * v.N * v.reflected() / (v.Rs + v.Rp + v.reflected())
}

// Loss returns the load voltage without the windings' resistances over that with them.
func Loss(v Values) float64 {
	ideal := v
	ideal.Rp, ideal.R2 = 0, 0
	return Gain(ideal) / Gain(v)
}

// BestRatio returns the ratio that gives the highest load voltage from windings of no resistance:
// √(R_L/R_s).
func BestRatio(source, load float64) float64 { return math.Sqrt(load / source) }

// Flux returns the peak flux density in T: V·√2/(2π·f·N·A) from Faraday's law.
func Flux(volt, hertz, turns, area float64) float64 {
	return volt * math.Sqrt2 / (2 * math.Pi * hertz * turns * area)
}

// Bench returns what open and shorted measurements mean: the coupling factor k = √(1 - L_short/L_open),
// the leakage L_short, the magnetising inductance k²·L_open, and the ratio of the ideal transformer behind
// them from the measured voltage ratio k·√(L_2/L_1). The circuit so made is that of the coupled windings
// exactly, not an approximation (Hurley and Wölfle, Transformers and Inductors for Power Electronics,
// 2013, section 4.2).
func Bench(open, shorted, voltageRatio float64) (k, leak, magnetising, ratio float64) {
	k2 := 1 - shorted/open
	return math.Sqrt(k2), shorted, k2 * open, voltageRatio / k2
}
