package kernel

import "math"

// The American wire gauge is a geometric progression fixed by two sizes: gauge 36 is
// 0.005 inch and gauge 0000 (counted as -3) is 0.46 inch, 39 steps apart (ASTM B258;
// NBS Handbook 100, 1966). Hence d(n) = 0.005 inch · 92^((36-n)/39).

// AWGDiameter returns the unrounded diameter of gauge n.
func AWGDiameter(n float64) float64 { return 127e-6 * math.Pow(92, (36-n)/39) }

// AWGGauge returns the gauge number, not rounded, of a diameter.
func AWGGauge(d float64) float64 { return 36 - 39*math.Log(d/127e-6)/math.Log(92) }
