package kernel

import (
	"math"
	"math/rand"
	"strconv"
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
		close(t, "flux of a uniform field", w.Flux(func(x Vector) Vector { return UniformPotential(B, x) }, math.Inf(1)), MeanTurnArea(P, S, 0, w.Build), 1e-10)
	}
}

// A wire in the plane of a rectangular turn, parallel to its side a, at the distance d from the
// centre: Φ = µ0·I·a/2π·ln((d+b/2)/(d-b/2)). Source: D. J. Griffiths, Introduction to Electrodynamics,
// the loop beside a long wire.
func TestWireAgainstClosedForm(t *testing.T) {
	const a, b, d, I = 0.07, 0.02, 0.05, 3.0
	w := Window{a, b, 0, 1e-9, 1e-9}
	got := w.Flux(func(x Vector) Vector { return WirePotential(I, Vector{0, d, 0}, Vector{1, 0, 0}, x) }, w.Gap(Vector{0, d, 0}, Vector{1, 0, 0}))
	// The current along +x at +y gives a field downwards, -z, at the coil.
	close(t, "flux of a wire", got, -Mu0*I*a/(2*math.Pi)*math.Log((d+b/2)/(d-b/2)), 1e-6)
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

// besides puts a wire anywhere around a window, the nearest points a gap from each other.
func besides(random *rand.Rand, w Window, gap float64) (p, u Vector) {
	p = Vector{random.NormFloat64(), random.NormFloat64(), random.NormFloat64()}
	u = p.Cross(Vector{random.NormFloat64(), random.NormFloat64(), random.NormFloat64()})
	u = Vector{}.Plus(1/math.Sqrt(u.Dot(u)), u)
	p = Vector{}.Plus(1/math.Sqrt(p.Dot(p)), p)
	near, far := 0.0, w.reach()+gap
	for range 50 {
		if middle := (near + far) / 2; w.Gap(Vector{}.Plus(middle, p), u) < gap {
			near = middle
		} else {
			far = middle
		}
	}
	return Vector{}.Plus(far, p), u
}

func TestWireAgainstSurface(t *testing.T) {
	random := rand.New(rand.NewSource(7))
	for i := range 18 {
		length, width, r := randomCore(random)
		w := Window{length - 2*r, width - 2*r, r, 1e-9, 1e-9}
		gap := []float64{0.002, 0.004, 0.01, 0.05, 0.3, 2}[i%6]
		p, u := besides(random, w, gap)
		got := w.Flux(func(x Vector) Vector { return WirePotential(2, p, u, x) }, w.Gap(p, u))
		want := surface(w, 0, 0, 2, p, u)
		scale := Mu0 * 2 / (2 * math.Pi * math.Sqrt(p.Dot(p))) * length * width
		book.Note(t, "flux of a wire "+strconv.FormatFloat(1000*gap, 'g', 3, 64)+" mm away", math.Abs(got-want)/scale)
		if math.Abs(got-want) > 1e-3*scale {
			t.Errorf("Flux, %g m away: got %.9g, want %.9g of about %.3g", gap, got, want, scale)
		}
	}
}

// TestNearWires holds windows, whose pieces get smaller the nearer a wire is, against more of them.
func TestNearWires(t *testing.T) {
	random := rand.New(rand.NewSource(17))
	for i := range 9 {
		length, width, r := randomCore(random)
		w := Window{length - 2*r, width - 2*r, r, 0.001 + 0.02*random.Float64(), 0.001 + 0.008*random.Float64()}
		gap := []float64{0.0015, 0.004, 0.02}[i%3]
		p, u := besides(random, w, gap)
		close(t, "Gap", w.Gap(p, u), gap, 1e-6)
		wire := func(x Vector) Vector { return WirePotential(2, p, u, x) }
		scale := Mu0 * 2 / (2 * math.Pi * math.Sqrt(p.Dot(p))) * length * width
		off := math.Abs(w.Flux(wire, gap)-w.Flux(wire, gap/2)) / scale
		book.Note(t, "flux of a window near a wire", off)
		if off > 1e-4 {
			t.Errorf("%+v, %g m away: off by %g", w, gap, off)
		}
	}
}

// A line past a ball-shaped thing, and one through a flat one.
func TestGap(t *testing.T) {
	w := Window{0.03, 0.004, 0.002, 0.01, 0.003}
	close(t, "over the top", w.Gap(Vector{0, 0, 0.02}, Vector{1, 0, 0}), 0.015, 1e-9)
	close(t, "beside", w.Gap(Vector{0, 0.02, 0}, Vector{1, 0, 0}), 0.013, 1e-9)
	close(t, "past the edge", w.Gap(Vector{0.5, 0.02, 0.01}, Vector{1, 0, 0}), math.Hypot(0.013, 0.005), 1e-9)
	close(t, "upright at the round end", w.Gap(Vector{0.018, 0.008, 7}, Vector{0, 0, 1}), math.Hypot(0.003, 0.006)-0.005, 1e-9)
	if gap := w.Gap(Vector{0.01, 0, 0}, Vector{0, 0, 1}); gap > 1e-12 {
		t.Errorf("through the core: %g", gap)
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
	close(t, "flux of a wire through a window", w.Flux(func(x Vector) Vector { return WirePotential(1, p, u, x) }, w.Gap(p, u)), sum, 1e-3)
}

func TestWireFarAway(t *testing.T) {
	w := Window{0.05, 0.01, 0.003, 0.01, 0.003}
	const d = 40.0
	got := w.Flux(func(x Vector) Vector { return WirePotential(1, Vector{0, d, 0}, Vector{-1, 0, 0}, x) }, d)
	want := w.Flux(func(x Vector) Vector { return UniformPotential(Vector{0, 0, Mu0 / (2 * math.Pi * d)}, x) }, math.Inf(1))
	close(t, "flux of a wire, as that of a uniform field", got, want, 1e-4)
}

// Fewer points do for sources that are far: the same sources counted as near ones.
func TestFluxFromAfar(t *testing.T) {
	random := rand.New(rand.NewSource(9))
	for range 60 {
		length, width, r := randomCore(random)
		w := Window{length - 2*r, width - 2*r, r, 0.001 + 0.03*random.Float64(), 0.001 + 0.01*random.Float64()}
		p, u := besides(random, w, farOff*w.reach())
		wire := func(x Vector) Vector { return WirePotential(2, p, u, x) }
		scale := Mu0 * 2 / (2 * math.Pi * math.Sqrt(p.Dot(p))) * length * width
		if got, want := w.Flux(wire, farOff*w.reach()), w.Flux(wire, w.reach()); math.Abs(got-want) > 1e-11*scale {
			t.Errorf("Flux: got %.15g, want %.15g of about %.3g", got, want, scale)
		}
		everywhere := func(x Vector) Vector { return UniformPotential(Vector{1, 2, 3}, x) }
		close(t, "Flux", w.Flux(everywhere, math.Inf(1)), w.Flux(everywhere, w.reach()/2), 1e-13)
	}
}

func BenchmarkFlux(b *testing.B) {
	w := Window{0.05, 0.01, 0.003, 0.01, 0.003}
	for b.Loop() {
		w.Flux(func(x Vector) Vector { return WirePotential(1, Vector{0, 0.3, 0}, Vector{-1, 0, 0}, x) }, 0.3)
	}
}

func BenchmarkFluxNear(b *testing.B) {
	w := Window{0.05, 0.01, 0.003, 0.01, 0.003}
	for b.Loop() {
		w.Flux(func(x Vector) Vector { return WirePotential(1, Vector{0, 0.02, 0}, Vector{-1, 0, 0}, x) }, 0.009)
	}
}
