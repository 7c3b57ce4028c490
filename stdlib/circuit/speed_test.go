package circuit

import (
	"fmt"
	"math"
	"testing"

	"lode/units"
)

// speedChain is a coil with controls, cable and input.
func speedChain() Network {
	return New("chain").Coil("pickup", "hot", Ground, Coil{Resistance: 6e3, Inductance: 2.5, Capacitance: 100e-12, EMF: 1}).
		Resistor("tone", "hot", "t", 250e3).Capacitor("tone cap", "t", Ground, 22e-9).Resistor("upper", "hot", "wiper", 150e3).
		Resistor("lower", "wiper", Ground, 350e3).Capacitor("cable", "wiper", Ground, 500e-12).Resistor("input", "wiper", Ground, 1e6)
}

// speedSet is the chain with the part values of one of a thousand sets; testdata/speed.sh gives other
// programs the same.
func speedSet(n Network, i int) Network {
	return n.WithInductance("pickup", units.Inductance(2+0.001*float64(i))).WithCapacitance("cable", units.Capacitance(300e-12+0.5e-12*float64(i))).
		WithResistance("tone", units.Resistance(50e3+400*float64(i)))
}

func speedFrequencies() []units.Frequency {
	f := make([]units.Frequency, 2000)
	for i := range f {
		f[i] = units.Frequency(20 * math.Pow(1000, float64(i)/1999))
	}
	return f
}

// BenchmarkSets works out 1000 sets of part values at 2000 frequencies.
func BenchmarkSets(b *testing.B) {
	n, f := speedChain(), speedFrequencies()
	for range b.N {
		for i := range 1000 {
			if _, err := speedSet(n, i).Levels("wiper", f); err != nil {
				b.Fatal(err)
			}
		}
	}
}

func BenchmarkSweep(b *testing.B) {
	n := speedChain()
	for range b.N {
		if _, err := n.Sweep("wiper", 20, 20e3); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkPeak(b *testing.B) {
	r, _ := speedChain().WithResistance("tone", 1e6).WithResistance("upper", 1).Sweep("wiper", 20, 20e3)
	for range b.N {
		if _, err := r.Peak(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkNoise(b *testing.B) {
	n := speedChain()
	for range b.N {
		if _, err := n.Noise("wiper", 20, 20e3); err != nil {
			b.Fatal(err)
		}
	}
}

// Ten of the thousand sets, by the chain's own formula.
func TestSets(t *testing.T) {
	n, f := speedChain(), speedFrequencies()
	for i := 0; i < 1000; i += 111 {
		levels, err := speedSet(n, i).Levels("wiper", f)
		if err != nil {
			t.Fatal(err)
		}
		l, cable, tone := 2+0.001*float64(i), 300e-12+0.5e-12*float64(i), 50e3+400*float64(i)
		for j := 0; j < len(f); j += 97 {
			s := complex(0, 2*math.Pi*f[j].SI())
			wiper := 1 / (1/complex(350e3, 0) + 1e-6 + s*complex(cable, 0))
			hot := 1 / (1/(150e3+wiper) + s*100e-12 + 1/(complex(tone, 0)+1/(s*22e-9)))
			want := hot / (hot + 6000 + s*complex(l, 0)) * wiper / (wiper + 150e3)
			if math.Abs(levels[j].SI()-decibels(want)) > 1e-7 {
				t.Errorf("%s: got %v, want %g dB", fmt.Sprint("set ", i, " at ", f[j]), levels[j], decibels(want))
			}
		}
	}
}
