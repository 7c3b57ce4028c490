// Package kernel holds the formulas of round wire: plain SI float64, pure and unchecked.
// Letters follow the sources: d diameter, A area, ρ resistivity, α temperature
// coefficient, E modulus of elasticity.
package kernel

import "math"

// Area returns the cross-section π·d²/4 of a round conductor.
func Area(d float64) float64 { return math.Pi / 4 * d * d }

// Diameter returns the diameter of a round conductor of cross-section A.
func Diameter(A float64) float64 { return 2 * math.Sqrt(A/math.Pi) }

// ResistancePerLength returns ρ/A of a round conductor.
func ResistancePerLength(ρ, d float64) float64 { return ρ / Area(d) }

// DiameterForResistance returns the diameter at which a round conductor has the
// resistance r per length.
func DiameterForResistance(ρ, r float64) float64 { return Diameter(ρ / r) }

// TemperatureFactor returns R(T)/R(20 °C) = 1 + α·(T - 20 °C), with α the coefficient at
// 20 °C for constant mass (IEC 60028, 1925; NBS Handbook 100, 1966). T is in degrees
// Celsius.
func TemperatureFactor(α, T float64) float64 { return 1 + α*(T-20) }

// MassPerLength returns the mass of a conductor of diameter d under enamel that brings it
// to the overall diameter D, for the densities of conductor and enamel.
func MassPerLength(d, D, conductor, enamel float64) float64 {
	return Area(d)*conductor + (Area(D)-Area(d))*enamel
}
