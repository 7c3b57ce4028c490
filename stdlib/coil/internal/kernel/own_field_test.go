package kernel

import (
	"math"
	"testing"
)

// Mutual checks of the field of a winding at its own wires:
//
//	polygonField   centre of a square and of a circle in closed form
//	OwnSquare      circular loops by elliptic integrals on a grid of another kind; a long winding

func TestPolygonField(t *testing.T) {
	square := []Vector{{1, 1, 0}, {-1, 1, 0}, {-1, -1, 0}, {1, -1, 0}}
	close(t, "square", polygonField(square, Vector{})[2], Mu0*math.Sqrt2/math.Pi, 1e-9) // 2√2·µ0·I/πa, a = 2
	circle := Window{Radius: 0}.corners(2, 0)
	close(t, "circle", polygonField(circle, Vector{})[2], Mu0/4, 4e-3)
	close(t, "circle, on the axis", polygonField(circle, Vector{0, 0, 3})[2], Mu0/2*4/math.Pow(13, 1.5), 5e-3)
}

// loop returns the field of 1 A in a circle of radius a at the distance r from its axis and z from its plane, by the
// complete elliptic integrals. Source: W. R. Smythe, Static and Dynamic Electricity, section on the circular loop.
func loop(a, r, z float64) (radial, axial float64) {
	q := (a+r)*(a+r) + z*z
	K, E := elliptic(4 * a * r / q)
	near := (a-r)*(a-r) + z*z
	axial = 2e-7 / math.Sqrt(q) * (K + (a*a-r*r-z*z)/near*E)
	radial = 2e-7 * z / (r * math.Sqrt(q)) * (-K + (a*a+r*r+z*z)/near*E)
	return radial, axial
}

// elliptic returns K and E of the parameter m by the arithmetic-geometric mean.
func elliptic(m float64) (K, E float64) {
	a, g, sum, power := 1.0, math.Sqrt(1-m), m/2, 0.5
	for range 30 {
		c := (a - g) / 2
		a, g = (a+g)/2, math.Sqrt(a*g)
		power *= 2
		sum += power * c * c
	}
	K = math.Pi / 2 / a
	return K, K * (1 - sum)
}

func TestOwnSquareAgainstLoops(t *testing.T) {
	for _, c := range []struct{ radius, height, build float64 }{{0.01, 0.01, 0.004}, {0.005, 0.008, 0.003}, {0.02, 0.006, 0.006}, {0.01, 0.04, 0.002}} {
		const n, m = 14, 40 // loops; the field is taken midway between them
		sum, total := 0.0, 0.0
		for i := range n + 1 {
			for j := range m + 1 {
				r, z := c.radius+c.build*float64(i)/n, c.height*(float64(j)/m-0.5)
				var R, Z float64
				for k := range n {
					for l := range m {
						radial, axial := loop(c.radius+c.build*(float64(k)+0.5)/n, r, z-c.height*((float64(l)+0.5)/m-0.5))
						R, Z = R+radial/(n*m), Z+axial/(n*m)
					}
				}
				weight := r * simpsonWeight(i, n) * simpsonWeight(j, m)
				sum, total = sum+weight*(R*R+Z*Z), total+weight
			}
		}
		close(t, "OwnSquare", Window{0, 0, c.radius, c.height, c.build}.OwnSquare(), sum/total, 0.05)
	}
}

// Two long windings that differ in length by 30 mm: their ends alike, the field in the piece between falls evenly
// from µ0/h to nothing over the depth, and the shorter turns lie where it is stronger.
func TestOwnSquareOfLongWinding(t *testing.T) {
	w := Window{0, 0, 0.004, 0.03, 0.002}
	longer := w
	longer.Height = 0.06
	heat := func(w Window) float64 { return w.OwnSquare() * w.Height * w.Height * w.Height }
	α := w.Build / w.Radius
	close(t, "OwnSquare", (heat(longer)-heat(w))/0.03, Mu0*Mu0*(1.0/3+α/12)/(1+α/2), 0.06)
}

func BenchmarkOwnSquare(b *testing.B) {
	w := Window{0.0645, 0, 0.00325, 0.01, 0.0037}
	for b.Loop() {
		w.OwnSquare()
	}
}
