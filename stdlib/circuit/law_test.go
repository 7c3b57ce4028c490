package circuit

// Map of mutual checks
//
//	ngspice 39, 17 networks              <-> Sweep, Noise                  (TestSpice)
//	formula by hand                      <-> 1 mΩ beside 1 GΩ, k = 1       (TestExtremes, TestPerfectCoupling)
//	reciprocity, passivity, Thévenin     <-> random networks               (TestReciprocity, TestPassive, TestThevenin)
//	sum over poles                       <-> elimination                   (TestPolesAgree in the kernel)
//	Tellegen, Foster                     <-> random networks               (TestEnergy, TestFoster)
//	4kTR and kT/C                        <-> noise of random networks      (TestNyquist, TestEquipartition)
//	printed table of weighting A         <-> AWeighting                    (TestAWeighting)
//	derivative by hand                   <-> DelayAt, Sensitivities        (TestDelay, TestSensitivities)
//	parts as they are                    <-> parts written otherwise       (TestSameNetworkOtherwise)

import (
	"fmt"
	"math"
	"math/cmplx"
	"math/rand"
	"testing"

	"lode/units"
)

var frequencies = []units.Frequency{1, 33, 440, 5120, 2e4, 1e6}

// random returns a passive network of a chain of nodes with parts across, coupled coils among them.
func random(r *rand.Rand) Network {
	n, nodes := New("random"), 4+r.Intn(5)
	name := func(i int) string {
		if i == 0 {
			return Ground
		}
		return fmt.Sprint("n", i)
	}
	for i := 1; i < nodes; i++ {
		n = n.Resistor(fmt.Sprint("r", i), name(i), name(i-1), units.Resistance(spread(r, 1e-1, 1e8)))
	}
	for i := range 2 * nodes {
		a, b := r.Intn(nodes), r.Intn(nodes)
		if a == b {
			continue
		}
		switch r.Intn(3) {
		case 0:
			n = n.Resistor(fmt.Sprint("p", i), name(a), name(b), units.Resistance(spread(r, 10, 1e7)))
		case 1:
			n = n.Capacitor(fmt.Sprint("p", i), name(a), name(b), units.Capacitance(spread(r, 1e-12, 1e-5)))
		case 2:
			c := Coil{Resistance: units.Resistance(spread(r, 1, 1e4)), Inductance: units.Inductance(spread(r, 1e-5, 10)), Capacitance: units.Capacitance(spread(r, 1e-12, 1e-9))}
			n = n.Coil(fmt.Sprint("p", i), name(a), name(b), c)
		}
	}
	return coupled(r, n)
}

// coupled couples the first two coils, sometimes perfectly.
func coupled(r *rand.Rand, n Network) Network {
	var coils []string
	for _, p := range n.parts {
		if p.kind == coil {
			coils = append(coils, p.name)
		}
	}
	if len(coils) < 2 {
		return n
	}
	k := 2*r.Float64() - 1
	if r.Intn(3) == 0 {
		k = 1
	}
	return n.Couple(coils[0], coils[1], k)
}

func spread(r *rand.Rand, low, high float64) float64 { return low * math.Pow(high/low, r.Float64()) }

func phasor(t *testing.T, n Network, node string, f units.Frequency) complex128 {
	t.Helper()
	r, err := n.Reference(1).Sweep(node, f*0.9, f*1.1)
	if err != nil {
		t.Fatal(err)
	}
	v, err := r.value(f)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func close(t *testing.T, what string, got, want complex128, relative float64) {
	t.Helper()
	if !(cmplx.Abs(got-want) <= relative*cmplx.Abs(want)) {
		t.Errorf("%s: got %v, want %v", what, got, want)
	}
}

// A network of passive parts gives the same voltage when source and meter change places.
func TestReciprocity(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	for range 100 {
		n := random(r)
		for _, f := range frequencies {
			there := phasor(t, n.CurrentSource("I", Ground, "n1", 1e-3), "n3", f)
			back := phasor(t, n.CurrentSource("I", Ground, "n3", 1e-3), "n1", f)
			close(t, fmt.Sprintf("%v\nat %v", n, f), there, back, 1e-7)
		}
	}
}

// No passive network shows a negative resistance.
func TestPassive(t *testing.T) {
	r := rand.New(rand.NewSource(2))
	for range 200 {
		n := random(r)
		for _, f := range frequencies {
			z, err := n.ImpedanceAt("n2", f)
			if err != nil {
				t.Fatal(err)
			}
			if real(complex128(z)) < -1e-9*cmplx.Abs(complex128(z)) {
				t.Errorf("%v\nat %v: %v", n, f, complex128(z))
			}
		}
	}
}

// A load on a network gets what the open voltage and the impedance say.
func TestThevenin(t *testing.T) {
	r := rand.New(rand.NewSource(3))
	for range 100 {
		n := random(r).CurrentSource("I", Ground, "n1", 1e-3)
		load := spread(r, 10, 1e7)
		for _, f := range frequencies {
			z, err := n.ImpedanceAt("n3", f)
			if err != nil {
				t.Fatal(err)
			}
			open := phasor(t, n, "n3", f)
			loaded := phasor(t, n.Resistor("load", "n3", Ground, units.Resistance(load)), "n3", f)
			close(t, "Thévenin", loaded, open*complex(load, 0)/(complex(load, 0)+complex128(z)), 1e-7)
		}
	}
}

// A gigaohm hangs behind milliohms and is driven by a current: the voltage needs all digits of both.
func TestExtremes(t *testing.T) {
	n := New("extremes").CurrentSource("I", Ground, "a", 1e-9).Resistor("wire", "a", "b", 1e-3).Resistor("wire 2", "b", "c", 1e-3).
		Resistor("leak", "c", Ground, 1e9).Capacitor("stray", "b", Ground, 1e-12).Coil("coil", "b", "d", Coil{Resistance: 1e-3, Inductance: 1e-6}).Resistor("leak 2", "d", Ground, 1e9)
	for _, f := range frequencies {
		s := complex(0, 2*math.Pi*f.SI())
		y := 1/complex(1e9+1e-3, 0) + s*1e-12 + 1/(complex(1e9+1e-3, 0)+s*1e-6)
		close(t, fmt.Sprint("at ", f), phasor(t, n, "a", f), 1e-9*(1e-3+1/y), 1e-9)
	}
}

// At k = 1 a pair of windings is an ideal transformer with its primary inductance across it.
func TestPerfectCoupling(t *testing.T) {
	wound := New("wound").VoltageSource("V", "in", Ground, 1).Resistor("R", "in", "p", 150).Inductor("L1", "p", Ground, 2).Inductor("L2", "s", Ground, 200).
		Couple("L1", "L2", 1).Resistor("load", "s", Ground, 47e3)
	ideal := New("ideal").VoltageSource("V", "in", Ground, 1).Resistor("R", "in", "p", 150).Inductor("L1", "p", Ground, 2).Transformer("T", "p", Ground, "s", Ground, 10).
		Resistor("load", "s", Ground, 47e3)
	for _, f := range frequencies {
		s := complex(0, 2*math.Pi*f.SI())
		primary := 1 / (1/(2*s) + 100/complex(47e3, 0))
		want := 10 * primary / (primary + 150)
		close(t, "wound", phasor(t, wound, "s", f), want, 1e-9)
		close(t, "ideal", phasor(t, ideal, "s", f), want, 1e-9)
	}
}

// Splitting, merging and reordering parts changes nothing.
func TestSameNetworkOtherwise(t *testing.T) {
	law := func(f units.Frequency) units.Impedance {
		return units.Impedance(complex(6e3, 2*math.Pi*f.SI()*2.5))
	}
	one := New("one").Coil("coil", "hot", Ground, Coil{Resistance: 6e3, Inductance: 2.5, Capacitance: 1e-10, EMF: 1}).Resistor("R", "hot", Ground, 2e5)
	for _, other := range []Network{
		New("parts").Resistor("R", "hot", Ground, 2e5).VoltageSource("E", "x", Ground, 1).Resistor("r", "x", "y", 6e3).Inductor("L", "y", "hot", 2.5).Capacitor("C", Ground, "hot", 1e-10),
		New("function").Resistor("R", "hot", Ground, 2e5).VoltageSource("E", "x", Ground, 1).Impedance("Z", "x", "hot", law).Capacitor("C", Ground, "hot", 1e-10),
		New("further").Coil("coil", "hot", Ground, Coil{Resistance: 3e3, Inductance: 1.25, Capacitance: 1e-10, EMF: 1, Further: func(f units.Frequency) units.Impedance { return law(f) / 2 }}).Resistor("R", "hot", Ground, 2e5),
		New("halves").Coil("a", "hot", "mid", Coil{Resistance: 2e3, Inductance: 0.625, EMF: 0.25}).Coil("b", "mid", Ground, Coil{Resistance: 4e3, Inductance: 0.625, EMF: 0.75}).
			Couple("a", "b", 1).Capacitor("C", "hot", Ground, 1e-10).Resistor("R1", "hot", Ground, 4e5).Resistor("R2", "hot", Ground, 4e5),
	} {
		for _, f := range frequencies {
			close(t, other.title+" at "+f.String(), phasor(t, other, "hot", f), phasor(t, one, "hot", f), 1e-9)
		}
	}
}

// A branched network must not change its origin.
func TestBranchingKeepsOrigin(t *testing.T) {
	start := New("start").VoltageSource("V", "in", Ground, 1).Resistor("R", "in", "out", 1e3)
	a, b := start.Resistor("load", "out", Ground, 1e3), start.Resistor("load", "out", Ground, 3e3)
	c := a.WithResistance("load", 9e3)
	for want, n := range map[float64]Network{0.5: a, 0.75: b, 0.9: c} {
		close(t, "divider", phasor(t, n, "out", 1000), complex(want, 0), 1e-12)
	}
}
