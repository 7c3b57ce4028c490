package kernel

import (
	"math"
	"math/rand"
	"testing"

	"lode/stdlib/internal/evidence"
)

// Map of mutual checks. Every formula has two witnesses that do not share code with it:
//
//	Area                 polygons that hold and fill the circle; square law
//	Diameter             inverse of Area on random arguments; a circle of area π has diameter 2
//	ResistancePerLength  10.371 Ω per circular mil-foot (NBS Handbook 100); printed resistances (package wire)
//	TemperatureFactor    ratios of IEC 60028; zero resistance at -234.5 °C as handbooks print
//	MassPerLength        mass resistivity 0.15328 Ω·g/m² (NBS Handbook 100); printed masses (package wire)
//	AWGDiameter          both defining sizes (ASTM B258); doubling rules; computed reference table (package wire)
//	AWGGauge             inverse of AWGDiameter; defining sizes
//	EngineeringStress    its maximum, searched on a grid, is the strength and lies at the exponent
//	FlowStrain           inverse of EngineeringStress; power law for small strain; bisection

// book keeps what tests compared; DEVELOPERS.md tells how to print it.
var book evidence.Book

func near(t *testing.T, what string, got, want, relative float64) {
	t.Helper()
	book.Close(t, what, got, want, relative)
}

func TestAreaBetweenPolygons(t *testing.T) {
	const sides = 4096
	for _, d := range []float64{1e-5, 6.35e-5, 1e-3, 2} {
		within := sides * d * d / 8 * math.Sin(2*math.Pi/sides)
		around := sides * d * d / 4 * math.Tan(math.Pi/sides)
		if a := Area(d); !(within < a && a < around) {
			t.Errorf("Area(%g) = %g, want between %g and %g", d, a, within, around)
		}
		near(t, "Area(2d)/Area(d)", Area(2*d)/Area(d), 4, 1e-15)
	}
}

func TestDiameterIsTheInverseOfArea(t *testing.T) {
	random := rand.New(rand.NewSource(1))
	for range 1000 {
		d := math.Pow(10, -6+7*random.Float64())
		near(t, "Diameter(Area(d))", Diameter(Area(d)), d, 1e-14)
		ρ := 1e-8 * (1 + 100*random.Float64())
		near(t, "DiameterForResistance", DiameterForResistance(ρ, ResistancePerLength(ρ, d)), d, 1e-14)
	}
	near(t, "Diameter(π)", Diameter(math.Pi), 2, 1e-15)
}

// One foot of copper one mil thick has 10.371 Ω (NBS Handbook 100, 1966, table 1; recalled).
func TestMilFoot(t *testing.T) {
	const copper = 1 / 58e6
	near(t, "mil-foot", ResistancePerLength(copper, 25.4e-6)*0.3048, 10.371, 0.5e-4)
}

// Resistance per length times mass per length does not depend on the diameter: 0.15328 Ω·g/m²
// (NBS Handbook 100, 1966; recalled).
func TestMassResistivity(t *testing.T) {
	const copper = 1 / 58e6
	for _, d := range []float64{4e-5, 1e-4, 1e-3} {
		product := ResistancePerLength(copper, d) * 1e3 * MassPerLength(d, d, 8890, 1300)
		near(t, "mass resistivity", product, 0.15328, 0.5e-4)
	}
}

func TestEnamelAddsItsRing(t *testing.T) {
	d, D := 0.0635e-3, 0.07112e-3
	ring := math.Pi * (d + D) / 2 * (D - d) / 2 // mean circumference times thickness
	near(t, "enamel", MassPerLength(d, D, 0, 1300), ring*1300, 1e-12)
}

// Ratios of IEC 60028 (1925) for 0.00393 per kelvin; handbooks print -234.5 °C for no
// resistance.
func TestTemperatureFactor(t *testing.T) {
	for _, row := range []struct{ T, want float64 }{{20, 1}, {75, 1.21615}, {25, 1.01965}, {0, 0.9214}} {
		near(t, "factor", TemperatureFactor(0.00393, row.T), row.want, 1e-12)
	}
	if f := TemperatureFactor(0.00393, -234.5); math.Abs(f) > 0.0003 {
		t.Errorf("factor at -234.5 °C = %g, want 0 within the rounding of that figure", f)
	}
}

// ASTM B258 fixes gauge 36 at 5 mil and gauge 0000 at 460 mil. The rules of thumb follow: six
// gauges halve the diameter, three halve the area, ten divide it by ten.
func TestGaugeProgression(t *testing.T) {
	near(t, "gauge 36", AWGDiameter(36), 0.005*0.0254, 1e-15)
	near(t, "gauge 0000", AWGDiameter(-3), 0.46*0.0254, 1e-14)
	near(t, "gauge of 460 mil", AWGGauge(0.46*0.0254), -3, 1e-13)
	for n := -3.0; n <= 56; n += 0.5 {
		near(t, "six gauges", AWGDiameter(n)/AWGDiameter(n+6), 2, 0.003)
		near(t, "three gauges", Area(AWGDiameter(n))/Area(AWGDiameter(n+3)), 2, 0.003)
		near(t, "ten gauges", Area(AWGDiameter(n))/Area(AWGDiameter(n+10)), 10, 0.02)
		near(t, "one gauge", AWGDiameter(n)/AWGDiameter(n+1), 1.1229322, 1e-7)
		if back := AWGGauge(AWGDiameter(n)); math.Abs(back-n) > 1e-12 {
			t.Errorf("AWGGauge(AWGDiameter(%g)) = %.15g", n, back)
		}
	}
}

// Considère: the pull is largest where the strain equals the exponent, and is the strength.
func TestPullPeaksAtTheExponent(t *testing.T) {
	for _, n := range []float64{0.1, 0.2, 0.54} {
		peak, at := 0.0, 0.0
		for ε := 1e-4; ε < 3; ε += 1e-4 {
			if s := EngineeringStress(ε, 240e6, n); s > peak {
				peak, at = s, ε
			}
		}
		near(t, "peak", peak, 240e6, 1e-7)
		near(t, "strain at the peak", at, n, 2e-3)
	}
}

func TestFlowStrainAgainstBisection(t *testing.T) {
	random := rand.New(rand.NewSource(2))
	for range 1000 {
		n, S := 0.05+0.5*random.Float64(), 1e7*(1+60*random.Float64())
		s := S * (0.3 + 0.7*random.Float64())
		low, high := 0.0, n
		for range 200 {
			if middle := (low + high) / 2; EngineeringStress(middle, S, n) < s {
				low = middle
			} else {
				high = middle
			}
		}
		if got := FlowStrain(s, S, n); math.Abs(got-low) > 1e-9*low+1e-300 {
			t.Errorf("FlowStrain(%g, %g, %g) = %.12g, bisection %.12g", s, S, n, got, low)
		}
	}
}

func TestFlowStrainAtItsEnds(t *testing.T) {
	if got := FlowStrain(0, 240e6, 0.2); got != 0 {
		t.Errorf("without stress %g, want 0", got)
	}
	near(t, "at the strength", FlowStrain(240e6, 240e6, 0.2), 0.2, 1e-6)
	K, s := 240e6*math.Pow(math.E/0.2, 0.2), 20e6
	near(t, "power law", FlowStrain(s, 240e6, 0.2), math.Pow(s/K, 5), 1e-5)
}

func BenchmarkFlowStrain(b *testing.B) {
	for b.Loop() {
		FlowStrain(120e6, 240e6, 0.2)
	}
}
