package circuit

import (
	"math"

	"lode/units"
)

// This file holds the frequency weighting A.

// AWeighting returns the level that frequency weighting A gives a tone.
//
// Source: IEC 61672-1:2013, annex E: poles at 20.599, 107.653, 737.862 and 12194.217 Hz, 0 dB at 1 kHz.
func AWeighting(f units.Frequency) units.Level { return units.LevelOf(aWeight(f.SI())) }

// aWeight returns the amplitude ratio of weighting A.
func aWeight(hertz float64) float64 { return unnormalised(hertz) / unnormalised(1000) }

func unnormalised(f float64) float64 {
	const f1, f2, f3, f4 = 20.598997, 107.65265, 737.86223, 12194.217
	s := f * f
	return f4 * f4 * s * s / ((s + f1*f1) * math.Sqrt((s+f2*f2)*(s+f3*f3)) * (s + f4*f4))
}
