package kernel

import (
	"math"
	"math/rand"
	"testing"
)

// Mutual checks of hum:
//
//	uniform field    field times mean area of the turns (MeanTurnArea)
//	straight wire    closed form of a rectangular turn beside a wire; the field summed over the
//	                 area of rounded turns; the uniform field far away

func TestUniformFieldAgainstArea(t *testing.T) {
	random := rand.New(rand.NewSource(6))
	for range 20 {
		length, width, r := randomCore(random)
		w := Window{length - 2*r, width - 2*r, r, 0.01, 0.004 * random.Float64()}
		B := Vector{random.Float64(), random.Float64(), 1}
		P, S := RoundedPerimeter(length, width, r), RoundedArea(length, width, r)
		close(t, "Flux", w.Flux(func(x Vector) Vector { return UniformPotential(B, x) }, math.Inf(1)), MeanTurnArea(P, S, 0, w.Build), 1e-10)
	}
}

// A wire in the plane of a rectangular turn, parallel to its side a, at the distance d from the
// centre: Φ = µ0·I·a/2π·ln((d+b/2)/(d-b/2)). Source: D. J. Griffiths, Introduction to Electrodynamics,
// the loop beside a long wire.
func TestWireAgainstClosedForm(t *testing.T) {
	const a, b, d, I = 0.07, 0.02, 0.05, 3.0
	w := Window{a, b, 0, 1e-9, 1e-9}
	got := w.Flux(func(x Vector) Vector { return WirePotential(I, Vector{0, d, 0}, Vector{1, 0, 0}, x) }, 0)
	// The current along +x at +y gives a field downwards, -z, at the coil.
	close(t, "Flux", got, -Mu0*I*a/(2*math.Pi)*math.Log((d+b/2)/(d-b/2)), 1e-6)
}

// surface sums the field of the wire over the area of one turn.
func surface(w Window, t, z, I float64, p, u Vector) float64 {
	const n = 600
	R, sum := w.Radius+t, 0.0
	X, Y := w.Along/2+R, w.Across/2+R
	for i := range n {
		x := -X + 2*X*(float64(i)+0.5)/n
		half := Y
		if beyond := math.Abs(x) - w.Along/2; beyond > 0 {
			half = w.Across/2 + math.Sqrt(R*R-beyond*beyond)
		}
		sum += 2 * X / n * simpson(func(y float64) float64 {
			away := Vector{x, y, z}.Plus(-1, p)
			away = away.Plus(-away.Dot(u), u)
			return Mu0 * I / (2 * math.Pi * away.Dot(away)) * u.Cross(away)[2]
		}, -half, half, 20)
	}
	return sum
}

func TestWireAgainstSurface(t *testing.T) {
	random := rand.New(rand.NewSource(7))
	for range 12 {
		length, width, r := randomCore(random)
		w := Window{length - 2*r, width - 2*r, r, 1e-9, 1e-9}
		p := Vector{random.NormFloat64(), random.NormFloat64(), random.NormFloat64()}
		p = Vector{}.Plus((length+width)*(0.8+random.Float64())/math.Sqrt(p.Dot(p)), p)
		u := p.Cross(Vector{random.NormFloat64(), random.NormFloat64(), random.NormFloat64()})
		u = Vector{}.Plus(1/math.Sqrt(u.Dot(u)), u)
		got := w.Flux(func(x Vector) Vector { return WirePotential(2, p, u, x) }, 0)
		want := surface(w, 0, 0, 2, p, u)
		scale := Mu0 * 2 / (2 * math.Pi * math.Sqrt(p.Dot(p))) * length * width
		if math.Abs(got-want) > 2e-4*scale {
			t.Errorf("Flux: got %.9g, want %.9g of about %.3g", got, want, scale)
		}
	}
}

// Windows average their turns.
func TestWindowAgainstTurns(t *testing.T) {
	w := Window{0.06, 0, 0.004, 0.012, 0.004}
	p, u := Vector{0.02, 0.06, 0.03}, Vector{}
	u = p.Cross(Vector{1, 0.3, 0.2})
	u = Vector{}.Plus(1/math.Sqrt(u.Dot(u)), u)
	sum := 0.0
	for i := range 8 {
		for j := range 8 {
			sum += surface(w, 0.004*(float64(i)+0.5)/8, 0.012*((float64(j)+0.5)/8-0.5), 1, p, u) / 64
		}
	}
	close(t, "Flux", w.Flux(func(x Vector) Vector { return WirePotential(1, p, u, x) }, 0), sum, 1e-3)
}

func TestWireFarAway(t *testing.T) {
	w := Window{0.05, 0.01, 0.003, 0.01, 0.003}
	const d = 40.0
	got := w.Flux(func(x Vector) Vector { return WirePotential(1, Vector{0, d, 0}, Vector{-1, 0, 0}, x) }, 0)
	want := w.Flux(func(x Vector) Vector { return UniformPotential(Vector{0, 0, Mu0 / (2 * math.Pi * d)}, x) }, 0)
	close(t, "Flux", got, want, 1e-4)
}

// Fewer points do for sources that are far: the same sources counted as near ones.
func TestFluxFromAfar(t *testing.T) {
	random := rand.New(rand.NewSource(9))
	for range 200 {
		length, width, r := randomCore(random)
		w := Window{length - 2*r, width - 2*r, r, 0.001 + 0.03*random.Float64(), 0.001 + 0.01*random.Float64()}
		reach := math.Hypot(math.Hypot(length/2+w.Build, width/2+w.Build), w.Height/2)
		p := Vector{random.NormFloat64(), random.NormFloat64(), random.NormFloat64()}
		p = Vector{}.Plus(farOff*reach/math.Sqrt(p.Dot(p)), p)
		u := p.Cross(Vector{random.NormFloat64(), random.NormFloat64(), random.NormFloat64()})
		u = Vector{}.Plus(1/math.Sqrt(u.Dot(u)), u)
		wire := func(x Vector) Vector { return WirePotential(2, p, u, x) }
		scale := Mu0 * 2 / (2 * math.Pi * math.Sqrt(p.Dot(p))) * length * width
		if got, want := w.Flux(wire, farOff), w.Flux(wire, 0); math.Abs(got-want) > 1e-11*scale {
			t.Errorf("Flux: got %.15g, want %.15g of about %.3g", got, want, scale)
		}
		everywhere := func(x Vector) Vector { return UniformPotential(Vector{1, 2, 3}, x) }
		close(t, "Flux", w.Flux(everywhere, math.Inf(1)), w.Flux(everywhere, 0), 1e-13)
	}
}

func BenchmarkFlux(b *testing.B) {
	w := Window{0.05, 0.01, 0.003, 0.01, 0.003}
	for b.Loop() {
		w.Flux(func(x Vector) Vector { return WirePotential(1, Vector{0, 0.3, 0}, Vector{-1, 0, 0}, x) }, 0)
	}
}
