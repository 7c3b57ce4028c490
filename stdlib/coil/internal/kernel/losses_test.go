package kernel

import (
	"math"
	"testing"
)

// Mutual checks of losses:
//
//	SkinDepth        printed value for copper
//	SkinFactor       series for thin wire, asymptote for thick wire; diffusion solved in rings
//	ProximityLoss    π·ω²·B²·d⁴/64ρ for thin wire; surface loss for thick wire
//	Dowell           its own series; layers of round wire by SkinFactor and ProximityLoss

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
		close(t, "thin", SkinFactor(2*x, 1), 1+math.Pow(x, 4)/48, 1e-3*math.Pow(x, 4))
	}
	for _, x := range []float64{0.5, 1, 2, 4} {
		close(t, "rings", SkinFactor(2*x, 1), rings(x), 2e-3)
	}
	const x = 8.0 // R/R0 = a/2δ + 1/4 + 3δ/32a
	close(t, "thick", SkinFactor(2*x, 1), x/2+0.25+3/(32*x), 1e-3)
}

func TestProximityLoss(t *testing.T) {
	const resistivity, B = 1 / 58e6, 1e-4
	for _, d := range []float64{2e-5, 1e-4, 5e-4} {
		const f = 20000.0
		ω := 2 * math.Pi * f
		// C. R. Sullivan, IEEE Trans. Power Electronics 14 (1999) 283-291: πω²B̂²d⁴/128ρ, here rms
		want := math.Pi * ω * ω * B * B * math.Pow(d, 4) / (64 * resistivity)
		close(t, "thin", ProximityLoss(d, SkinDepth(resistivity, f), resistivity, B), want, 0.02)
	}
	// A wire much thicker than δ turns the field away: twice the field at its flanks, 2H·sin φ, gives the
	// surface loss ρ/δ·(2H)²·(πd/2).
	const d, δ = 20.0, 1.0
	H := B / Mu0
	close(t, "thick", ProximityLoss(d, δ, resistivity, B), resistivity/δ*4*H*H*math.Pi*d/2, 0.1)
}

func TestDowell(t *testing.T) {
	for _, m := range []float64{1, 3, 20} {
		for _, A := range []float64{0.05, 0.15} {
			d := A / math.Pow(math.Pi/4, 0.75)
			close(t, "series", Dowell(m, d, d, 1)-1, (5*m*m-1)/45*math.Pow(A, 4), 0.01)
		}
		close(t, "seam", Dowell(m, 0.0119, 0.0119, 1), Dowell(m, 0.0121, 0.0121, 1), 1e-6*m*m)
	}
	// Round wire in the field of its layers: at the middle of layer k it is (k-½)·I/p.
	const d, p, m, δ = 0.1, 0.11, 12.0, 0.25
	const resistivity = 1.0
	loss := 0.0
	for k := 1.0; k <= m; k++ {
		loss += ProximityLoss(d, δ, resistivity, Mu0*(k-0.5)/p) / m
	}
	direct := resistivity / (math.Pi / 4 * d * d)
	close(t, "layers", SkinFactor(d, δ)+loss/direct, Dowell(m, d, p, δ), 0.1)
}
