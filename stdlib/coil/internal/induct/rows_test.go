package induct

import (
	"math/rand/v2"
	"testing"
)

// Maxwell's formula against Neumann's integral over the pieces of a turn.
func TestCircularRows(t *testing.T) {
	r := rand.New(rand.NewPCG(61, 62))
	for range 12 {
		radius, pitch := 0.002+0.02*r.Float64(), 0.0001+0.0004*r.Float64()
		rows, turns := []Row{}, []Turn{}
		for layer := range 1 + r.IntN(4) {
			row := Row{Depth: (float64(layer) + 0.5) * pitch * 0.9, Lowest: pitch / 2 * float64(layer%2), Turns: 1 + r.IntN(9)}
			rows = append(rows, row)
			for i := range row.Turns {
				turns = append(turns, Turn{row.Depth, row.Lowest + float64(i)*pitch})
			}
		}
		wire := Wire{Radius: 0.4 * pitch}
		got := CircularRows(radius, rows, pitch, wire)
		want, _ := DiscreteSelfTo(Circle(radius, 0, 0), turns, wire, 1e-6)
		closeTo(t, "rows", got, want, 2e-6)
	}
}

func BenchmarkCircles(b *testing.B) {
	for b.Loop() {
		Circles(0.01, 0.012, 0.003)
	}
}
