package kernel

import (
	"math"
	"math/cmplx"
	"testing"
)

// Mutual checks of losses:
//
//	SkinDepth        printed value for copper
//	SkinFactor       series for thin wire, asymptote for thick wire; diffusion solved in rings
//	ProximityLoss    π·ω²·B²·d⁴/64ρ for thin wire; surface loss for thick wire; diffusion solved along the radius
//	all together     layers of round wire and a long winding against Dowell

func TestSkinDepth(t *testing.T) {
	// 9.3459 mm at 50 Hz for annealed copper of 58 MS/m (handbook table value 9.35 mm)
	close(t, "SkinDepth", SkinDepth(1/58e6, 50), 9.3459e-3, 1e-4)
}

// rings solves the diffusion of current in a round wire by finite differences along the
// radius: E” + E'/r = jωµE/ρ, with x = r/a and the wire's d/2δ given.
func rings(ratio float64) float64 {
	const n = 4000
	k2 := complex(0, 2*ratio*ratio) // (a/δ)²·2j
	h := 1.0 / n
	previous, field := complex(1, 0), 1+k2*complex(h*h/4, 0)
	sum := complex(math.Pi*h*h/4, 0) // current of unit conductivity
	for i := 1; i < n; i++ {
		x := float64(i) * h
		weight := 2 * math.Pi * x * h
		sum += complex(weight, 0) * field
		next := (k2*complex(h*h, 0)*field + 2*field - previous*complex(1-h/(2*x), 0)) / complex(1+h/(2*x), 0)
		previous, field = field, next
	}
	sum += complex(math.Pi*h*(1-h/4), 0) * field
	return real(field/sum) * math.Pi
}

func TestSkinFactor(t *testing.T) {
	for _, x := range []float64{0.05, 0.2, 0.5} {
		close(t, "SkinFactor, series for thin wire", SkinFactor(2*x, 1), 1+math.Pow(x, 4)/48, 1e-3*math.Pow(x, 4))
	}
	for _, x := range []float64{0.5, 1, 2, 4} {
		close(t, "SkinFactor, diffusion in rings", SkinFactor(2*x, 1), rings(x), 2e-3)
	}
	const x = 8.0 // R/R0 = a/2δ + 1/4 + 3δ/32a
	close(t, "SkinFactor, asymptote", SkinFactor(2*x, 1), x/2+0.25+3/(32*x), 1e-3)
}

func TestProximityLoss(t *testing.T) {
	const resistivity, B = 1 / 58e6, 1e-4
	for _, d := range []float64{2e-5, 1e-4, 5e-4} {
		const f = 20000.0
		ω := 2 * math.Pi * f
		// C. R. Sullivan, IEEE Trans. Power Electronics 14 (1999) 283-291: πω²B̂²d⁴/128ρ, here rms
		want := math.Pi * ω * ω * B * B * math.Pow(d, 4) / (64 * resistivity)
		close(t, "ProximityLoss of thin wire", ProximityLoss(d, SkinDepth(resistivity, f), resistivity, B), want, 0.02)
	}
	// A wire much thicker than δ turns the field away: twice the field at its flanks, 2H·sin φ, gives the
	// surface loss ρ/δ·(2H)²·(πd/2).
	const d, δ = 20.0, 1.0
	H := B / Mu0
	close(t, "ProximityLoss, surface loss", ProximityLoss(d, δ, resistivity, B), resistivity/δ*4*H*H*math.Pi*d/2, 0.1)
}

// acrossField is ProximityLoss by finite differences along the radius: the vector potential A·sin φ in the wire, A” + A'/r - A/r²
// = jωµA/ρ, joined to the field outside, Br + C/r. Its heat is ω²/ρ·∫A²·sin²φ.
func acrossField(a, δ, resistivity, B float64) float64 {
	const n = 4000
	h := a / n
	k2 := complex(0, 2/(δ*δ))
	A, before := complex(h, 0), complex(0, 0)
	sum := 0.0
	for i := 1; i <= n; i++ {
		r := h * float64(i)
		next := (complex(2+h*h/(r*r), 0)*A + k2*complex(h*h, 0)*A - before*complex(1-h/(2*r), 0)) / complex(1+h/(2*r), 0)
		weight := 1.0
		if i == n {
			weight = 0.5
		}
		sum += weight * h * r * real(A*cmplx.Conj(A))
		if i == n { // A = Ba + C/a and A' = B - C/a²
			slope := (next - before) / complex(2*h, 0)
			scale := 2 * complex(B, 0) / (A/complex(a, 0) + slope)
			sum *= real(scale * cmplx.Conj(scale))
		}
		before, A = A, next
	}
	ω := 2 * resistivity / (Mu0 * δ * δ)
	return ω * ω / resistivity * math.Pi * sum
}

func TestProximityLossAgainstDiffusion(t *testing.T) {
	for _, x := range []float64{0.1, 0.3, 0.7, 1, 1.5, 2.5, 4, 7} {
		close(t, "ProximityLoss", ProximityLoss(2*x, 1, 1/58e6, 1e-4), acrossField(x, 1, 1/58e6, 1e-4), 3e-3)
	}
}

// dowell returns the resistance of m full layers of round wire of diameter d at a pitch p against that for direct
// current, where the field between the layers runs along them and grows evenly from nothing on one side to the other.
//
// Source: P. L. Dowell, Effects of eddy currents in transformer windings, Proceedings of the IEE 113 (1966) 1387-1394;
// round wires as squares of equal area at their porosity.
func dowell(m, d, p, δ float64) float64 {
	A := math.Pow(math.Pi/4, 0.75) * d / δ * math.Sqrt(d/p)
	self := (math.Sinh(2*A) + math.Sin(2*A)) / (math.Cosh(2*A) - math.Cos(2*A))
	others := (math.Sinh(A) - math.Sin(A)) / (math.Cosh(A) + math.Cos(A))
	return A * (self + 2*(m*m-1)/3*others)
}

func TestLayersAgainstDowell(t *testing.T) {
	// Round wire in the field of its layers: at the middle of layer k it is (k-½)·I/p.
	const d, p, m, δ = 0.1, 0.11, 12.0, 0.25
	const resistivity = 1.0
	loss := 0.0
	for k := 1.0; k <= m; k++ {
		loss += ProximityLoss(d, δ, resistivity, Mu0*(k-0.5)/p) / m
	}
	direct := resistivity / (math.Pi / 4 * d * d)
	close(t, "AC resistance of layers", SkinFactor(d, δ)+loss/direct, dowell(m, d, p, δ), 0.1)
}

// Up to a radius of one skin depth the two agree about what is added; at three Ferreira's wires, which do not screen each other,
// have twice as much.
func TestSkinDepthsAgainstDowell(t *testing.T) {
	for _, x := range []float64{0.2, 0.5, 0.75, 1} {
		close(t, "AC resistance added to layers, up to one skin depth", addedToLayers(10, x), dowell(10, 1, 1.1, 0.5/x)-1, 0.1)
	}
	if over := addedToLayers(10, 3) / (dowell(10, 1, 1.1, 0.5/3) - 1); over < 1.8 {
		t.Errorf("at three skin depths %g times Dowell's", over)
	}
}

func addedToLayers(m, x float64) float64 {
	const d, p = 1.0, 1.1
	loss := SkinFactor(d, d/2/x) - 1
	for k := 1.0; k <= m; k++ {
		loss += ProximityLoss(d, d/2/x, 1, Mu0*(k-0.5)/p) / m * math.Pi / 4 * d * d
	}
	return loss
}

// A piece of a long winding, the difference of two with the same ends: its field falls evenly from the inside to the
// outside, as Dowell takes it between the layers of a transformer. His square wires (5 %) and the shorter inner turns make the
// difference.
func TestLongWindingAgainstDowell(t *testing.T) {
	const d, p, m, resistivity = 180e-6, 200e-6, 10.0, 1 / 58e6
	δ := SkinDepth(resistivity, 20e3)
	added := func(height float64) float64 { // of a winding with height/p turns a layer, over its direct resistance
		w := Window{0, 0, 0.004, height, m * p}
		return ProximityLoss(d, δ, resistivity, m*height/p*math.Sqrt(w.OwnSquare())) / (resistivity / (math.Pi / 4 * d * d)) * height
	}
	α := m * p / 0.004
	got := (added(0.06)-added(0.03))/0.03 + SkinFactor(d, δ) - 1
	close(t, "AC resistance of a long winding", got, 0.95*(1+α/4)/(1+α/2)*(dowell(m, d, p, δ)-1), 0.06)
}
