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

// speedSet is the chain with the part values of one of a thousand sets; testdata/speed gives other
// programs the same.
func speedSet(n Network, i int) Network {
	return n.WithInductance("pickup", units.Inductance(2+0.001*float64(i))).WithCapacitance("cable", units.Capacitance(300e-12+0.5e-12*float64(i))).
		WithResistance("tone", units.Resistance(50e3+400*float64(i)))
}

// speedStepUp is a low-impedance coil with a step-up transformer, volume, cable and input.
func speedStepUp() Network {
	return New("step up").Coil("low", "hot", Ground, Coil{Resistance: 40, Inductance: 10e-3, Capacitance: 200e-12, EMF: 1}).
		Resistor("primary R", "hot", "p", 12).Inductor("primary", "p", Ground, 0.8).Inductor("secondary", "s", Ground, 80).Couple("primary", "secondary", 0.999).
		Resistor("secondary R", "s", "sec", 900).Capacitor("secondary C", "sec", Ground, 150e-12).Resistor("upper", "sec", "wiper", 75e3).
		Resistor("lower", "wiper", Ground, 175e3).Capacitor("cable", "wiper", Ground, 500e-12).Resistor("input", "wiper", Ground, 1e6)
}

func speedStepUpSet(n Network, i int) Network {
	return n.WithInductance("low", units.Inductance(8e-3+4e-6*float64(i))).WithCapacitance("cable", units.Capacitance(300e-12+0.5e-12*float64(i))).
		WithResistance("low", units.Resistance(30+0.02*float64(i)))
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
	for _, c := range []struct {
		name  string
		chain Network
		set   func(Network, int) Network
	}{{"controls", speedChain(), speedSet}, {"step_up", speedStepUp(), speedStepUpSet}} {
		b.Run(c.name, func(b *testing.B) {
			f := speedFrequencies()
			for range b.N {
				for i := range 1000 {
					if _, err := c.set(c.chain, i).Levels("wiper", f); err != nil {
						b.Fatal(err)
					}
				}
			}
		})
	}
}

// What a set needs in memory does not grow with the number of frequencies, but for the levels themselves.
func TestLevelsAllocate(t *testing.T) {
	f := speedFrequencies()
	for _, n := range []Network{speedChain(), speedStepUp()} {
		count := func(f []units.Frequency) float64 {
			return testing.AllocsPerRun(5, func() {
				if _, err := n.Levels("wiper", f); err != nil {
					t.Fatal(err)
				}
			})
		}
		if few, many := count([]units.Frequency{f[0], f[1999]}), count(f); many > few+0.5 {
			t.Errorf("%s: %g allocations for 2 frequencies, %g for 2000", n.title, few, many)
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

// The same for the chain with a transformer.
func TestStepUpSets(t *testing.T) {
	n, f := speedStepUp(), speedFrequencies()
	mutual := complex(0.999*math.Sqrt(0.8*80), 0)
	for i := 0; i < 1000; i += 111 {
		levels, err := speedStepUpSet(n, i).Levels("wiper", f)
		if err != nil {
			t.Fatal(err)
		}
		l, cable, r := 8e-3+4e-6*float64(i), 300e-12+0.5e-12*float64(i), 30+0.02*float64(i)
		for j := 0; j < len(f); j += 97 {
			s := complex(0, 2*math.Pi*f[j].SI())
			below := 1/complex(175e3, 0) + 1e-6 + s*complex(cable, 0)
			through := 1 + 75e3*below
			secondary := 1 / (below/through + s*150e-12)
			loop := 900 + s*80 + secondary
			primary := 12 + s*0.8 - s*mutual*s*mutual/loop
			shunt := 1 / (1/primary + s*200e-12)
			want := shunt / (shunt + complex(r, 0) + s*complex(l, 0)) / primary * s * mutual / loop * secondary / through
			if math.Abs(levels[j].SI()-decibels(want)) > 1e-7 {
				t.Errorf("set %d at %v: got %v, want %g dB", i, f[j], levels[j], decibels(want))
			}
		}
	}
}
