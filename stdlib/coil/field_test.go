package coil

import (
	"math"
	"math/rand"
	"testing"

	"lode/units"
)

// Map of mutual checks of the field: straight pieces of wire summed by Biot and Savart; the closed form on the axis of
// a thick round coil; a dipole far away.

// pieces sums the field of 1 A over the window cut into n by n filaments of straight pieces.
func pieces(c Winding, n int, at [3]float64) (B [3]float64) {
	for i := range n {
		outline := boundary(c.shape, c.layout.build*(float64(i)+0.5)/float64(n))
		for j := range n {
			z := at[2] - float64(c.shape.Height)*((float64(j)+0.5)/float64(n)-0.5)
			for k, p := range outline {
				q := outline[(k+1)%len(outline)]
				ax, ay, bx, by := at[0]-p[0], at[1]-p[1], at[0]-q[0], at[1]-q[1]
				a, b := math.Sqrt(ax*ax+ay*ay+z*z), math.Sqrt(bx*bx+by*by+z*z)
				scale := 1e-7 * float64(c.turns) / float64(n*n) * (a + b) / (a * b * (a*b + ax*bx + ay*by + z*z))
				B[0] += scale * (ay*z - z*by)
				B[1] += scale * (z*bx - ax*z)
				B[2] += scale * (ax*by - ay*bx)
			}
		}
	}
	return B
}

func TestFieldAgainstPieces(t *testing.T) {
	c := wound(t, Racetrack{CoreLength: 30 * mm, CoreWidth: 6 * mm, Height: 8 * mm}, gauge(t, 42), 3000)
	for _, at := range [][3]float64{{0, 0, 0}, {0.005, 0.001, 0.002}, {0.002, 0.004, 0.006}, {0.014, 0.002, 0.0055}, {0.03, 0.02, 0.01}, {0.0, 0.009, 0.001}} {
		got, err := c.FieldAt(units.Length(at[0]), units.Length(at[1]), units.Length(at[2]), 1)
		if err != nil {
			t.Fatal(err)
		}
		want := pieces(c, 24, at)
		size := math.Sqrt(sq(want[0]) + sq(want[1]) + sq(want[2]))
		for i, b := range []units.FluxDensity{got.X, got.Y, got.Z} {
			book.Note(t, "field of a winding", math.Abs(float64(b)-want[i])/size)
			if math.Abs(float64(b)-want[i]) > 2e-3*size {
				t.Errorf("at %v: got %v, want %v", at, got, want)
				break
			}
		}
	}
}

// On the axis of a thick coil from r1 to r2, h high: B = µ0·N/(2h(r2-r1))·Σ ±z·ln((r2+√(r2²+z²))/(r1+√(r1²+z²))) over
// both ends. Source: D. B. Montgomery, Solenoid Magnet Design, 1969.
func TestFieldOnAxis(t *testing.T) {
	c := wound(t, Round{CoreDiameter: 12 * mm, Height: 9 * mm}, gauge(t, 42), 5000)
	r1, r2, h := 0.006, 0.006+float64(c.Build()), 0.009
	F := func(z float64) float64 { return z * math.Log((r2+math.Hypot(r2, z))/(r1+math.Hypot(r1, z))) }
	for _, z := range []float64{0, 0.002, 0.0045, 0.012, 0.05} {
		got, err := c.FieldAt(0, 0, units.Length(z), 2)
		if err != nil {
			t.Fatal(err)
		}
		close(t, "axis", float64(got.Z), 4e-7*math.Pi*2*5000/(2*h*(r2-r1))*(F(z+h/2)-F(z-h/2)), 1e-4)
	}
	far, _ := c.FieldAt(0, 3, 4, 1)
	moment := 5000 * float64(c.Area()) // a dipole at the distance 5 m: B = µ0·m/4πr³·(3·cos·r - z)
	close(t, "dipole", float64(far.Z), 1e-7*moment/125*(3*0.64-1), 1e-3)
	close(t, "dipole", float64(far.Y), 1e-7*moment/125*3*0.8*0.6, 1e-3)
}

func TestFieldRefuses(t *testing.T) {
	random := rand.New(rand.NewSource(12))
	c := wound(t, steel, gauge(t, 42), 6000)
	for range 200 { // points in the winding, and just out of it
		p := boundary(c.shape, float64(c.Build())*random.Float64())[random.Intn(1600)]
		x, y, z := units.Length(p[0]), units.Length(p[1]), units.Length(10*random.Float64()-5)*mm
		if _, err := c.FieldAt(x, y, z, 1); err == nil {
			t.Errorf("%v, %v, %v is in the winding", x, y, z)
		}
		if _, err := c.FieldAt(x, y, z+10.1*mm, 1); err != nil {
			t.Error(err)
		}
	}
	for _, bad := range []units.Length{units.Length(math.NaN()), 1000} {
		if _, err := c.FieldAt(bad, 0, 0, 1); err == nil {
			t.Errorf("%v was accepted", bad)
		}
	}
	if _, err := c.FieldAt(0, 0, 0, units.Current(math.NaN())); err == nil {
		t.Error("no current was accepted")
	}
}
