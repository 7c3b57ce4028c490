package kernel

import "math"

// Packing is the part of the winding's cross-section that is wire, enamel included. Round
// wires side by side in straight rows reach π/4, wires that lie in the grooves of the layer
// below π/(2√3), the densest packing of circles.
//
// Source: A. Thue, Über die dichteste Zusammenstellung von kongruenten Kreisen in einer
// Ebene, 1910, for the second bound.
const (
	SquarePacking    = math.Pi / 4
	HexagonalPacking = 0.90689968211710892530 // π/(2√3)
)

// ScatterBuild returns the depth of N wires of overall diameter d between flanges h apart,
// never less than one wire.
func ScatterBuild(N, d, h, packing float64) float64 {
	return math.Max(d, N*math.Pi*d*d/4/(packing*h))
}

// ScatterTurns is the inverse: the wires that a depth t holds.
func ScatterTurns(t, d, h, packing float64) float64 {
	return t * packing * h / (math.Pi * d * d / 4)
}

// RowSpacing returns the distance from wire to wire in the straight rows that have the given
// packing: the wires of a scatter winding, put in order.
func RowSpacing(d, packing float64) float64 { return d * math.Sqrt(SquarePacking/packing) }

// GrooveSpacing is the same for wires in the grooves of the row below.
func GrooveSpacing(d, packing float64) float64 { return d * math.Sqrt(HexagonalPacking/packing) }

// Rows returns how many whole wires lie side by side in a height h at a given pitch, of
// overall diameter d: the last one needs its diameter only.
func Rows(h, d, pitch float64) int {
	if h < d*(1-1e-12) {
		return 0
	}
	return 1 + int(math.Floor((h-d)/pitch+1e-9))
}

// GrooveRise returns the rise from layer to layer when each wire lies in the groove between
// two wires a pitch apart, down to nothing where they are two diameters apart.
func GrooveRise(d, pitch float64) float64 {
	return math.Sqrt(math.Max(0, d*d-pitch*pitch/4))
}
