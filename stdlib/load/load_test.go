package load

// Map of mutual checks
//
//	closed form of the loaded coil   <-> Sweep, Peak, Cutoff     (TestSecondOrder, testdata/reference)
//	divider by hand                  <-> Volume at a position    (TestVolumeDivides)
//	Thévenin source by hand          <-> Impedance               (TestImpedanceByHand)
//	two-terminal formula in complex  <-> the whole chain         (TestChainByLadder, random chains)
//	branched lines                   <-> lines built afresh      (TestBranching)

import (
	"encoding/csv"
	"math"
	"math/cmplx"
	"math/rand"
	"os"
	"strconv"
	"strings"
	"testing"

	"lode/units"
)

// table reads a reference file as rows of named columns.
func table(t *testing.T, name string) []map[string]string {
	t.Helper()
	file, err := os.Open("../../testdata/reference/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	records, err := csv.NewReader(file).ReadAll()
	if err != nil || len(records) < 2 {
		t.Fatal(name, err)
	}
	var rows []map[string]string
	for _, record := range records[1:] {
		row := map[string]string{}
		for i, cell := range record {
			row[records[0][i]] = cell
		}
		rows = append(rows, row)
	}
	return rows
}

func number(t *testing.T, row map[string]string, column string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(row[column], 64)
	if err != nil {
		t.Fatal(column, err)
	}
	return v
}

func near(t *testing.T, what string, got, want, relative float64) {
	t.Helper()
	if !(math.Abs(got-want) <= relative*math.Abs(want)) {
		t.Errorf("%s: got %.10g, want %.10g", what, got, want)
	}
}

// The columns come from the closed form of the two-pole low-pass; the file names it.
func TestSecondOrder(t *testing.T) {
	for _, row := range table(t, "loads_rlc_lowpass.csv") {
		of := func(column string) float64 { return number(t, row, column) }
		c := Coil{units.Resistance(of("series_resistance_ohm")), units.Inductance(of("inductance_H")), units.Capacitance(of("capacitance_F") / 4)}
		line := From(c).CableOf(6*units.Metre, units.CapacitancePerLength(of("capacitance_F")/8)).Input(units.Resistance(of("load_resistance_ohm")))
		r, err := line.Sweep(20*units.Hertz, 20*units.Kilohertz)
		if err != nil {
			t.Fatal(err)
		}
		p, err := r.Peak()
		if err != nil {
			t.Fatal(err)
		}
		near(t, "peak frequency", p.Frequency.SI(), of("f_peak_Hz"), 1e-7)
		near(t, "peak level", p.Level.SI(), of("peak_gain_dB"), 1e-7)
		near(t, "height", p.Height.SI(), of("peak_gain_dB")-of("dc_gain_dB"), 1e-6)
		near(t, "Q", p.Q, of("Q"), 1e-6)
		cutoff, err := r.Cutoff()
		if err != nil {
			t.Fatal(err)
		}
		near(t, "-3 dB", cutoff.SI(), of("f_3dB_Hz"), 1e-7)
		f, _ := line.Resonance()
		near(t, "resonance", f.SI(), of("f_peak_Hz"), 1e-7)
	}
}

var coil = Coil{6 * units.Kiloohm, 2.5 * units.Henry, 100 * units.Picofarad}

// At low frequency a half-turned linear volume passes half, less the coil's resistance.
func TestVolumeDivides(t *testing.T) {
	for _, position := range []float64{0, 0.01, 0.25, 0.5, 0.99, 1} {
		r, err := From(coil).Volume(500*units.Kiloohm, position).Sweep(1*units.Hertz, 10*units.Hertz)
		if err != nil {
			t.Fatal(err)
		}
		level, err := r.LevelAt(1 * units.Hertz)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "divided", level.Ratio(), position*500/506, 1e-7)
	}
}

func TestTapers(t *testing.T) {
	for _, c := range []struct{ got, want float64 }{
		{Linear(1).At(0.3).Share(), 0.3}, {Logarithmic(1).At(0.5).Share(), 0.1}, {LogarithmicAt(1, 0.15).At(0.5).Share(), 0.15},
		{Logarithmic(1).Share(), 1}, {Logarithmic(1).At(0).Share(), 0}, {LogarithmicAt(1, 0.9).At(0.5).Share(), 0.9}, {LogarithmicAt(1, 0.5).At(0.7).Share(), 0.7},
	} {
		near(t, "share", c.got, c.want, 1e-12)
	}
	for last, x := -1.0, 0.0; x <= 1; x += 0.05 {
		share := Logarithmic(1).At(x).Share()
		if share <= last {
			t.Errorf("taper falls at %g", x)
		}
		last = share
	}
}

// The input sees coil ∥ pot ∥ cable when the volume is up.
func TestImpedanceByHand(t *testing.T) {
	line := From(coil).Volume(500 * units.Kiloohm).Cable(5 * units.Metre).Input(1 * units.Megaohm)
	for _, hertz := range []float64{1, 100, 4109, 2e4, 1e6} {
		z, err := line.Impedance(units.Frequency(hertz))
		if err != nil {
			t.Fatal(err)
		}
		s := complex(0, 2*math.Pi*hertz)
		want := 1 / (1/(6000+2.5*s) + 1/500e3 + s*600e-12)
		if cmplx.Abs(complex128(z)-want) > 1e-9*cmplx.Abs(want) {
			t.Errorf("%g Hz: got %v, want %v", hertz, complex128(z), want)
		}
	}
}

// Each random chain is also worked out by hand from its end: input admittance and divider by divider.
func TestChainByLadder(t *testing.T) {
	random := rand.New(rand.NewSource(7))
	between := func(low, high float64) float64 { return low * math.Pow(high/low, random.Float64()) }
	for range 200 {
		c := Coil{units.Resistance(between(10, 2e4)), units.Inductance(between(1e-3, 10)), units.Capacitance(between(1e-11, 1e-9))}
		tone, volume, rest := between(1e4, 1e6), between(1e4, 1e6), between(1e4, 1e7)
		farad, cable, x, y := between(1e-9, 1e-7), between(1e-11, 1e-8), random.Float64(), random.Float64()
		line := From(c).Tone(units.Resistance(tone), units.Capacitance(farad), x).Volume(units.Resistance(volume), y).
			CableOf(1, units.CapacitancePerLength(cable)).Input(units.Resistance(rest), 20*units.Picofarad)
		r, err := line.Sweep(10*units.Hertz, 100*units.Kilohertz)
		if err != nil {
			t.Fatal(err)
		}
		for _, hertz := range []float64{10, 137, 1e3, 5e3, 1e5} {
			s := complex(0, 2*math.Pi*hertz)
			wiper := 1 / (complex(1/(volume*y)+1/rest, 0) + s*complex(cable+20e-12, 0))
			upper := complex(volume*(1-y), 0)
			hot := 1 / (1/(upper+wiper) + s*complex(c.SelfCapacitance.SI(), 0) + 1/(complex(tone*x, 0)+1/(s*complex(farad, 0))))
			want := hot / (hot + complex(c.DCResistance.SI(), 0) + s*complex(c.SelfInductance.SI(), 0)) * wiper / (wiper + upper)
			level, _ := r.LevelAt(units.Frequency(hertz))
			phase, _ := r.PhaseAt(units.Frequency(hertz))
			near(t, "level", level.Ratio(), cmplx.Abs(want), 1e-7)
			if turn := cmplx.Phase(want / cmplx.Rect(1, phase.SI())); math.Abs(turn) > 1e-7 {
				t.Errorf("%v at %g Hz: phase is off by %g", line, hertz, turn)
			}
		}
	}
}

// Variants that branch off one start must not disturb each other.
func TestBranching(t *testing.T) {
	start := From(coil).Volume(500 * units.Kiloohm)
	short, long := start.Cable(1*units.Metre), start.Cable(10*units.Metre)
	again := From(coil).Volume(500 * units.Kiloohm).Cable(1 * units.Metre)
	a, _ := short.Input(units.Megaohm).Resonance()
	b, _ := again.Input(units.Megaohm).Resonance()
	c, _ := long.Input(units.Megaohm).Resonance()
	if a != b || c >= a {
		t.Errorf("short %v, built afresh %v, long %v", a, b, c)
	}
}

func TestRefused(t *testing.T) {
	nan := units.Resistance(math.NaN())
	for want, line := range map[string]Line{
		"coil: missing":                     From(nil),
		"source: missing":                   FromSource(nil),
		"no coil":                           Line{}.Cable(1),
		"inductance: value not possible":    From(Coil{DCResistance: 6000}),
		"position: got 1.2":                 From(coil).Volume(5e5, 1.2),
		"too many positions":                From(coil).Tone(5e5, 22e-9, 0.1, 0.2),
		"volume potentiometer":              From(coil).Volume(nan),
		"cable length: not possible":        From(coil).Cable(-1),
		"cable capacitance: not possible":   From(coil).CableOf(1, units.CapacitancePerLength(math.Inf(1))),
		"input resistance: not possible":    From(coil).Input(0),
		"input capacitance: not possible":   From(coil).Input(1e6, -1e-12),
		"after the input":                   From(coil).Input(1e6).Cable(1),
		"capacitance: value not possible":   From(coil).Tone(5e5, 0),
		"share at half rotation: got 1":     From(coil).VolumeWith(LogarithmicAt(5e5, 1)),
		"resistance: value not possible":    From(Coil{nan, 2, 0}),
		"capacitor: not possible":           From(coil).Capacitor(-1),
		"input: too many values":            From(coil).Input(1e6, 1e-12, 1e-12),
		"position: got undefined, want 0 (": From(coil).Volume(5e5, math.NaN()),
	} {
		_, err := line.Sweep(20, 20000)
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("want %q: got %v", want, err)
		}
		if _, err := line.Impedance(1000); err == nil {
			t.Errorf("%s: impedance without an error", want)
		}
	}
}

func TestWords(t *testing.T) {
	line := From(coil).Tone(500*units.Kiloohm, 22*units.Nanofarad, 0.3).VolumeWith(Logarithmic(500 * units.Kiloohm)).Cable(5 * units.Metre).Input(1 * units.Megaohm)
	want := "coil 6 kΩ, 2.5 H, 100 pF, tone 500 kΩ at 0.3 with 22 nF, volume 500 kΩ, cable 5 m at 100 pF/m, input 1 MΩ"
	if line.String() != want {
		t.Errorf("got %q, want %q", line, want)
	}
	text, err := line.Netlist()
	if err != nil || !strings.Contains(text, "150 kΩ") || len(strings.Split(text, "\n")) != 7 {
		t.Errorf("netlist:\n%s\n%v", text, err)
	}
}
