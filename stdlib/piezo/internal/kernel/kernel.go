// Package kernel holds the formulas of a piezoelectric element below its own resonance, in SI
// float64 (IEEE Std 176-1987, Standard on Piezoelectricity). Inputs are trusted.
package kernel

import "math"

// Vacuum is the electric constant in F/m (CODATA 2022).
const Vacuum = 8.8541878188e-12

// Capacitance returns the capacitance in F of a plate with electrodes on both faces, edges
// neglected: ε0·ε·A/t.
func Capacitance(permittivity, area, thickness float64) float64 {
	return Vacuum * permittivity * area / thickness
}

// Corner returns the frequency in Hz below which a resistance drains the charge of a capacitance.
func Corner(ohm, farad float64) float64 { return 1 / (2 * math.Pi * ohm * farad) }
