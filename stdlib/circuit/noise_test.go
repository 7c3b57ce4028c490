package circuit

import (
	"encoding/csv"
	"math"
	"math/rand"
	"os"
	"strconv"
	"strings"
	"testing"

	"lode/stdlib/circuit/internal/kernel"
	"lode/units"
)

func near(t *testing.T, what string, got, want, relative float64) {
	t.Helper()
	if !(math.Abs(got-want) <= relative*math.Abs(want)) {
		t.Errorf("%s: got %.10g, want %.10g", what, got, want)
	}
}

// Nyquist: whatever is inside, a passive network shows 4kT times the real part of its impedance.
func TestNyquist(t *testing.T) {
	r := rand.New(rand.NewSource(4))
	for range 40 {
		n := random(r).Temperature(units.Celsius(20))
		noise, err := n.Noise("n2", 1, 1e6)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range frequencies {
			z, _ := n.ImpedanceAt("n2", f)
			density, err := noise.DensityAt(f)
			if err != nil {
				t.Fatal(err)
			}
			want := 4 * kernel.Boltzmann * 293.15 * z.Resistance().SI()
			if got := density.SI() * density.SI(); math.Abs(got-want) > 1e-7*want+1e-13*4*kernel.Boltzmann*293.15*z.Magnitude().SI() {
				t.Errorf("%v\nat %v: got %g, want %g V²/Hz", n, f, got, want)
			}
		}
	}
}

// Equipartition: over all frequencies the noise of a resistance on a capacitance is kT/C.
func TestEquipartition(t *testing.T) {
	n := New("").Resistor("R", "out", Ground, 1e5).Capacitor("C", "out", Ground, 1e-9)
	noise, err := n.Noise("out", 1e-3, 1e12)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "kT/C", noise.Total().SI(), math.Sqrt(kernel.Boltzmann*293.15/1e-9), 1e-6)
}

// 1 kΩ at 20 °C has 4.0236 nV/√Hz (testdata/reference/noise_johnson.csv), to which an amplifier's
// noise adds as squares.
func TestAddedNoise(t *testing.T) {
	n := New("amplifier").Resistor("R", "in", Ground, 1e3).NoiseVoltage("en", "in", "x", 5e-9).NoiseCurrent("in", "x", Ground, 2e-12).Capacitor("C", "x", Ground, 1e-15)
	noise, err := n.Noise("x", 20, 20e3)
	if err != nil {
		t.Fatal(err)
	}
	density := math.Sqrt(4.02361655e-9*4.02361655e-9 + 25e-18 + 4e-18)
	near(t, "total", noise.Total().SI(), density*math.Sqrt(20e3-20), 1e-6)
	near(t, "signal to noise", noise.SignalToNoise(1e-3).SI(), 20*math.Log10(1e-3/noise.Total().SI()), 1e-12)
	shares := noise.Contributions()
	if len(shares) != 3 || shares[0].Part != "en" || shares[2].Part != "in" {
		t.Fatalf("got %v, want en, R, in", shares)
	}
	near(t, "en", shares[0].Flat.SI(), 5e-9*math.Sqrt(20e3-20), 1e-6)
	near(t, "in", shares[2].Flat.SI(), 2e-9*math.Sqrt(20e3-20), 1e-6)
}

// Nominal values of weighting A in third octaves, IEC 61672-1:2013 table 3, rounded to 0.1 dB
// (recalled; the formula is checked against the table and not against itself).
func TestAWeighting(t *testing.T) {
	for _, c := range []struct {
		band  int // of 1 kHz in tenths of a decade
		level float64
	}{{-20, -70.4}, {-15, -39.4}, {-13, -30.2}, {-10, -19.1}, {-6, -8.6}, {-3, -3.2}, {0, 0}, {3, 1.2}, {4, 1.3}, {6, 1.0}, {9, -1.1}, {10, -2.5}, {12, -6.6}, {13, -9.3}} {
		f := units.Frequency(1000 * math.Pow(10, float64(c.band)/10))
		if got := AWeighting(f).SI(); math.Abs(got-c.level) > 0.05001 {
			t.Errorf("%v: got %.3f dB, want %.1f dB", f, got, c.level)
		}
	}
}

// White noise through weighting A, by a sum over equal steps of frequency.
func TestWeightedSum(t *testing.T) {
	noise, err := New("").Resistor("R", "out", Ground, 1e3).Noise("out", 20, 20e3)
	if err != nil {
		t.Fatal(err)
	}
	const steps = 200000
	sum := 0.0
	for i := range steps {
		ratio := AWeighting(units.Frequency(20 + (20e3-20)*(float64(i)+0.5)/steps)).Ratio()
		sum += ratio * ratio
	}
	near(t, "weighted", noise.Weighted().SI(), 4.02361655e-9*math.Sqrt(sum*(20e3-20)/steps), 1e-6)
}

// Johnson noise of testdata/reference, from the exact Boltzmann constant.
func TestJohnson(t *testing.T) {
	text, err := os.ReadFile("../../testdata/reference/noise_johnson.csv")
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(strings.NewReader(string(text))).ReadAll()
	if err != nil || len(rows) < 10 {
		t.Fatal(len(rows), err)
	}
	for _, row := range rows[1:] {
		var v [6]float64
		for i := range v {
			if v[i], err = strconv.ParseFloat(row[i], 64); err != nil {
				t.Fatal(err)
			}
		}
		noise, err := New("").Resistor("R", "out", Ground, units.Resistance(v[0])).Temperature(units.Temperature(v[1])).Noise("out", 1, 20001)
		if err != nil {
			t.Fatal(err)
		}
		density, _ := noise.DensityAt(1000)
		near(t, "density", density.SI(), v[2], 1e-8)
		near(t, "20 kHz", noise.Total().SI(), v[5], 1e-6)
	}
}
