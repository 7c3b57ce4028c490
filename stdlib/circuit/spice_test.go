package circuit

// This file compares networks with ngspice 39, a general-purpose circuit simulator (run from
// Debian's package). testdata/spice holds for each network the deck that was given to it and what
// it printed. With LODE_OUTSIDE=1 the decks are run again; with -update as well, the files are
// written.

import (
	"bufio"
	"flag"
	"fmt"
	"math"
	"math/cmplx"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"lode/units"
)

var update = flag.Bool("update", false, "write the files of testdata")

type spiceCase struct {
	name    string
	network Network
	output  string
}

func spiceCases() []spiceCase {
	gm := units.Conductance(2e-3)
	start := func(title string) Network { return New(title).Temperature(units.Celsius(27)) }
	coil := Coil{Resistance: 6e3, Inductance: 2.5, Capacitance: 100e-12, EMF: 1}
	reversed := Coil{Resistance: 7e3, Inductance: 3, Capacitance: 90e-12, EMF: -0.8}
	ladder := start("eight sections").CurrentSource("drive", "ground", "n0", 1e-3)
	for i := range 8 {
		a, b := fmt.Sprintf("n%d", i), fmt.Sprintf("n%d", i+1)
		ladder = ladder.Capacitor("C"+a, a, Ground, 10e-9).Resistor("R"+a, a, b, units.Resistance(1000*(i+1)))
	}
	return []spiceCase{
		{"loaded_coil", start("loaded coil").Coil("pickup", "hot", Ground, coil).Capacitor("cable", "hot", Ground, 500e-12).Resistor("input", "hot", Ground, 1e6), "hot"},
		{"controls", start("controls").Coil("pickup", "hot", Ground, coil).Resistor("tone", "hot", "t", 150e3).Capacitor("tone cap", "t", Ground, 22e-9).
			Resistor("upper", "hot", "wiper", 180e3).Resistor("lower", "wiper", Ground, 320e3).Capacitor("cable", "wiper", Ground, 700e-12).Resistor("input", "wiper", Ground, 1e6), "wiper"},
		{"series_pair", start("series pair").Coil("one", "hot", "mid", coil).Coil("two", "mid", Ground, reversed).Couple("one", "two", -0.3).
			Capacitor("cable", "hot", Ground, 500e-12).Resistor("pot", "hot", Ground, 250e3), "hot"},
		{"parallel_pair", start("parallel pair").Coil("one", "hot", Ground, coil).Coil("two", "hot", Ground, reversed).Couple("one", "two", 0.45).
			Capacitor("cable", "hot", Ground, 500e-12).Resistor("pot", "hot", Ground, 250e3), "hot"},
		{"three_coils", start("three coils").Coil("one", "a", Ground, coil).Coil("two", "a", "b", reversed).Coil("three", "b", Ground, Coil{Resistance: 5e3, Inductance: 2, EMF: 0.5}).
			Couple("one", "two", 0.2).Couple("two", "three", 0.5).Couple("one", "three", -0.1).Resistor("load", "b", "a", 470e3).Capacitor("stray", "b", Ground, 47e-12), "b"},
		{"tight_transformer", start("tight transformer").VoltageSource("V", "in", Ground, 1).Resistor("source", "in", "p", 150).
			Inductor("primary", "p", Ground, 1).Inductor("secondary", "s", Ground, 100).Couple("primary", "secondary", 1).Resistor("winding", "s", "out", 900).Resistor("load", "out", Ground, 50e3), "out"},
		{"step_up", start("step up").Coil("low", "p", Ground, Coil{Resistance: 40, Inductance: 10e-3, EMF: 0.05}).Inductor("primary", "p", Ground, 0.8).
			Inductor("secondary", "s", Ground, 80).Couple("primary", "secondary", 0.999).Resistor("winding", "s", "out", 1500).Capacitor("cable", "out", Ground, 500e-12).Resistor("load", "out", Ground, 1e6), "out"},
		{"bass_cut", start("bass cut").Coil("pickup", "hot", Ground, coil).Capacitor("series", "hot", "out", 1e-9).Resistor("bypass", "hot", "out", 1e6).Resistor("pot", "out", Ground, 250e3), "out"},
		{"notch", start("notch").Coil("pickup", "hot", Ground, coil).Resistor("damp", "hot", "x", 22e3).Capacitor("C", "x", "y", 10e-9).Inductor("choke", "y", "z", 1.5).Resistor("choke R", "z", Ground, 80).Resistor("input", "hot", Ground, 1e6), "hot"},
		{"twin_t", start("twin T").VoltageSource("V", "in", Ground, 1).Resistor("R1", "in", "a", 10e3).Resistor("R2", "a", "out", 10e3).Capacitor("C3", "a", Ground, 20e-9).
			Capacitor("C1", "in", "b", 10e-9).Capacitor("C2", "b", "out", 10e-9).Resistor("R3", "b", Ground, 5.1e3).Resistor("load", "out", Ground, 1e6), "out"},
		{"ideal_transformer", start("ideal transformer").Coil("low", "p", Ground, Coil{Resistance: 100, Inductance: 50e-3, EMF: 0.1}).
			Transformer("T", "p", Ground, "s", Ground, -10).Resistor("load", "s", Ground, 100e3).Capacitor("cable", "s", Ground, 500e-12), "s"},
		{"buffer", start("buffer").Coil("pickup", "hot", Ground, coil).Resistor("bias", "hot", Ground, 2.2e6).Capacitor("in", "hot", Ground, 10e-12).
			VoltageAmplifier("buffer", "b", Ground, "hot", Ground, 0.98).Resistor("out R", "b", "c", 1e3).Capacitor("out C", "c", "out", 1e-6).Resistor("load", "out", Ground, 10e3).Capacitor("cable", "out", Ground, 3e-9), "out"},
		{"follower", start("follower").VoltageSource("V", "in", Ground, 1).Resistor("gate", "in", "g", 1e6).Capacitor("gate C", "g", "s", 5e-12).Capacitor("gate C2", "g", Ground, 3e-12).
			Transconductance("gm", Ground, "s", "g", "s", gm).Resistor("source R", "s", Ground, 10e3).Capacitor("cable", "s", Ground, 1e-9), "s"},
		{"current_sense", start("current sense").VoltageSource("V", "in", Ground, 1).Resistor("R", "in", "a", 2.2e3).VoltageSource("meter", "a", "b", 0).Capacitor("C", "b", Ground, 47e-9).
			CurrentAmplifier("mirror", "c", Ground, "meter", 3).Resistor("Rc", "c", Ground, 1e3).Transresistance("H", "d", "c", "meter", 470).Resistor("Rd", "d", "out", 3.3e3).Capacitor("Cd", "out", Ground, 10e-9), "out"},
		{"wide_values", start("wide values").VoltageSource("V", "in", Ground, 1).Resistor("wire", "in", "a", 0.1).Resistor("leak", "a", "b", 2e8).Capacitor("stray", "b", Ground, 1e-12).
			Resistor("leak 2", "b", Ground, 2e8).Resistor("wire 2", "b", "out", 0.1).Capacitor("stray 2", "out", Ground, 2e-12).Inductor("long wire", "out", "far", 1e-6).Resistor("far R", "far", Ground, 2e8), "far"},
		{"lossy_coil", start("lossy coil").Coil("pickup", "hot", Ground, Coil{Resistance: 6e3, Inductance: 2.5, Capacitance: 100e-12, EMF: 1, Further: eddy}).
			Capacitor("cable", "hot", Ground, 500e-12).Resistor("input", "hot", Ground, 1e6), "hot"},
		{"function_part", start("function part").VoltageSource("V", "in", Ground, 1).Resistor("R", "in", "out", 10e3).
			Impedance("Z", "out", Ground, func(f units.Frequency) units.Impedance {
				return units.Impedance(complex(500+0.3*float64(f), 2e-2*float64(f)))
			}).Capacitor("C", "out", Ground, 1e-9), "out"},
		{"noise_sources", start("noise sources").Coil("pickup", "hot", Ground, coil).Capacitor("cable", "hot", Ground, 500e-12).NoiseVoltage("en", "hot", "in", 6e-9).
			NoiseCurrent("in", "in", Ground, 0.5e-12).Resistor("input", "in", Ground, 1e6), "in"},
		{"ladder", ladder.Resistor("end", "n8", Ground, 100e3), "n8"},
		{"bridge", start("bridge").VoltageSource("V", "in", Ground, 2).Resistor("R1", "in", "a", 1e3).Capacitor("C1", "a", Ground, 100e-9).Resistor("R2", "in", "b", 4.7e3).
			Inductor("L2", "b", Ground, 0.1).Resistor("across", "a", "b", 10e3).Resistor("wire", "b", "out", 0).Resistor("wire again", "out", "b", 0), "out"},
	}
}

// eddy is what currents in a plate near a coil add: a resistance that grows with the square of
// frequency and an inductance that falls.
func eddy(f units.Frequency) units.Impedance {
	x := complex(0, float64(f)/4e3)
	return units.Impedance(complex(0, -2*math.Pi*float64(f)*0.4) * x / (1 + x))
}

var firstSource = regexp.MustCompile(`(?m)^[VI]\d+`)

// controlled turns a deck of ours into one that prints response and noise with all digits.
func controlled(t *testing.T, c spiceCase) string {
	deck, err := c.network.Deck(c.output, 10, 1e5)
	if err != nil {
		t.Fatal(c.name, err)
	}
	head, _, _ := strings.Cut(deck, ".ac")
	node := regexp.MustCompile(`vdb\((\w+)\)`).FindStringSubmatch(deck)[1]
	if strings.Contains(deck, "pwl(hertz") { // an analysis of noise does not know the tables
		return head + fmt.Sprintf(".control\nset numdgt=14\nac dec 7 10 100k\nprint v(%s)\nquit 0\n.endc\n.end\n", node)
	}
	return head + fmt.Sprintf(`.control
set numdgt=14
ac dec 7 10 100k
print v(%[1]s)
noise v(%[1]s) %[2]s dec 7 10 100k
setplot noise1
print onoise_spectrum
setplot noise2
print onoise_total
quit 0
.endc
.end
`, node, firstSource.FindString(head))
}

var (
	complexLine = regexp.MustCompile(`^\d+\s+(\S+)\s+(\S+),\s+(\S+)\s*$`)
	noiseLine   = regexp.MustCompile(`^\d+\s+(\S+)\s+(\S+)\s*$`)
)

// printed picks the numbers out of what ngspice prints.
func printed(text string) string {
	var lines []string
	for scan := bufio.NewScanner(strings.NewReader(text)); scan.Scan(); {
		if m := complexLine.FindStringSubmatch(scan.Text()); m != nil {
			lines = append(lines, "response,"+strings.Join(m[1:], ","))
		} else if m := noiseLine.FindStringSubmatch(scan.Text()); m != nil {
			lines = append(lines, "density,"+strings.Join(m[1:], ","))
		}
	}
	return strings.Join(lines, "\n") + "\n"
}

func runSpice(t *testing.T, deck string) string {
	out, err := exec.Command("ngspice", "-b", deck).Output()
	if err != nil {
		t.Fatalf("%s: %v\n%s", deck, err, out)
	}
	return printed(string(out))
}

func TestSpice(t *testing.T) {
	outside := os.Getenv("LODE_OUTSIDE") == "1"
	for _, c := range spiceCases() {
		deck, result := filepath.Join("testdata/spice", c.name+".cir"), filepath.Join("testdata/spice", c.name+".csv")
		text := controlled(t, c)
		if *update {
			if err := os.WriteFile(deck, []byte(text), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		kept, err := os.ReadFile(deck)
		if err != nil || string(kept) != text {
			t.Errorf("%s is stale (%v); write it again with LODE_OUTSIDE=1 and -update", deck, err)
		}
		if outside {
			live := runSpice(t, deck)
			if *update {
				if err := os.WriteFile(result, []byte("# ngspice 39: kind, Hz, V or V/√Hz\n"+live), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			compare(t, c, live)
		}
		old, err := os.ReadFile(result)
		if err != nil {
			t.Fatal(err)
		}
		compare(t, c, string(old))
	}
}

// compare checks every line; 1e-4 dB and 1e-3 degree are what is promised.
func compare(t *testing.T, c spiceCase, text string) {
	t.Helper()
	r, err := c.network.Reference(1).Sweep(c.output, 10, 1e5)
	if err != nil {
		t.Fatal(c.name, err)
	}
	noise, err := c.network.Noise(c.output, 10, 1e5)
	if err != nil {
		t.Fatal(c.name, err)
	}
	responses, densities := 0, 0
	for _, line := range strings.Split(text, "\n") {
		var hertz, a, b float64
		if n, _ := fmt.Sscanf(line, "response,%g,%g,%g", &hertz, &a, &b); n == 3 {
			responses++
			want := complex(a, b)
			level, _ := r.LevelAt(units.Frequency(hertz))
			phase, _ := r.PhaseAt(units.Frequency(hertz))
			off := level.SI() - decibels(want)
			turn := cmplx.Phase(want/cmplx.Rect(1, phase.SI())) * 180 / math.Pi
			if !(math.Abs(off) < 1e-4 && math.Abs(turn) < 1e-3) {
				t.Errorf("%s at %g Hz: off by %g dB and %g degrees", c.name, hertz, off, turn)
			}
		}
		if n, _ := fmt.Sscanf(line, "density,%g,%g", &hertz, &a); n == 2 {
			densities++
			got, _ := noise.DensityAt(units.Frequency(hertz))
			if !(math.Abs(got.SI()/a-1) < 1e-5) {
				t.Errorf("%s at %g Hz: noise %g, want %g", c.name, hertz, got, a)
			}
		}
	}
	if quiet := c.name == "lossy_coil" || c.name == "function_part"; responses < 28 || densities < 28 && !quiet {
		t.Errorf("%s: %d responses and %d densities to compare, want 28 of each", c.name, responses, densities)
	}
}
