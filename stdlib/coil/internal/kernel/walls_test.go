package kernel

import (
	"math"
	"testing"
)

// Witnesses: coaxial cylinders in closed form, wide plates, and the field of a quarter of the cross-section by finite
// differences, which knows no flat parts or corners.

func TestWallsRound(t *testing.T) {
	got := Walls(Outline{0.02, 0.02, 0.01}, Outline{0.03, 0.03, 0.015})
	close(t, "coaxial cylinders", got, 2*math.Pi*VacuumPermittivity/math.Log(1.5), 1e-9)
	got = Walls(Outline{1, 1e-3, 0.5e-3}, Outline{1.0002, 1.2e-3, 0.6e-3})
	close(t, "plates", got, VacuumPermittivity*2/1e-4, 0.02)
	near := SideBySide(0, 0.01, 1e-3)
	close(t, "two cylinders", near, math.Pi*VacuumPermittivity/math.Log(1.05+math.Sqrt(1.05*1.05-1)), 1e-9)
}

// inside reports whether a point of the first quadrant is in the outline or within a margin of it.
func (o Outline) inside(x, y, margin float64) bool {
	px, py := x-(o.Length/2-o.Radius), y-(o.Width/2-o.Radius)
	return math.Hypot(math.Max(0, px), math.Max(0, py))+math.Min(0, math.Max(px, py)) <= o.Radius+margin
}

// relaxed is the capacitance per height by finite differences on a quarter of the cross-section: twice the energy of
// the field at one volt.
func relaxed(in, out Outline, step float64) float64 {
	nx, ny := int(out.Length/2/step)+2, int(out.Width/2/step)+2
	v, fixed := make([][]float64, nx), make([][]bool, nx)
	for i := range nx {
		v[i], fixed[i] = make([]float64, ny), make([]bool, ny)
		for j := range ny {
			x, y := float64(i)*step, float64(j)*step
			if in.inside(x, y, 1e-9) {
				v[i][j], fixed[i][j] = 1, true
			}
			fixed[i][j] = fixed[i][j] || !out.inside(x, y, -1e-9)
		}
	}
	for range 1500 {
		for i := range nx - 1 {
			for j := range ny - 1 {
				if !fixed[i][j] {
					mean := (v[i+1][j] + v[max(i-1, 1-i)][j] + v[i][j+1] + v[i][max(j-1, 1-j)]) / 4
					v[i][j] += 1.8 * (mean - v[i][j])
				}
			}
		}
	}
	energy := 0.0
	for i := range nx - 1 {
		for j := range ny - 1 {
			a, b := v[i+1][j]-v[i][j], v[i][j+1]-v[i][j]
			edgeX, edgeY := 1.0, 1.0
			if j == 0 {
				edgeX = 0.5
			}
			if i == 0 {
				edgeY = 0.5
			}
			energy += edgeX*a*a + edgeY*b*b
		}
	}
	return 4 * VacuumPermittivity * energy
}

func TestWallsAgainstFiniteDifferences(t *testing.T) {
	for _, c := range []struct{ in, out Outline }{
		{Outline{0.030, 0.014, 0.006}, Outline{0.036, 0.020, 0.009}},
		{Outline{0.030, 0.014, 0.004}, Outline{0.038, 0.019, 0.001}},
		{Outline{0.024, 0.024, 0.012}, Outline{0.034, 0.034, 0}},
	} {
		got, want := Walls(c.in, c.out), relaxed(c.in, c.out, 0.00025)
		close(t, "capacitance of walls", got, want, 0.04)
	}
}
