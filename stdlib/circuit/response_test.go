package circuit

import (
	"errors"
	"math"
	"strings"
	"testing"

	"lode/units"
)

func lowpass(r, c float64) Network {
	return New("low-pass").VoltageSource("V", "in", Ground, 1).Resistor("R", "in", "out", units.Resistance(r)).Capacitor("C", "out", Ground, units.Capacitance(c))
}

// One pole: -3 dB at 1/(2πRC), delay RC/(1 + (ωRC)²), no peak.
func TestOnePole(t *testing.T) {
	r, err := lowpass(1e4, 1e-8).Sweep("out", 20, 20e3)
	if err != nil {
		t.Fatal(err)
	}
	f, err := r.Cutoff()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "cutoff", f.SI(), 1/(2*math.Pi*1e-4), 1e-9)
	if _, err := r.Peak(); err == nil || !strings.Contains(err.Error(), "no peak from 20 Hz to 20 kHz") {
		t.Errorf("peak: got %v", err)
	}
	if _, err := r.LowCutoff(); err == nil {
		t.Error("a low-pass has no lower corner")
	}
	for _, hertz := range []float64{20, 1000, 2e4} {
		delay, err := r.DelayAt(units.Frequency(hertz))
		if err != nil {
			t.Fatal(err)
		}
		x := 2 * math.Pi * hertz * 1e-4
		near(t, "delay", delay.SI(), 1e-4/(1+x*x), 1e-6)
	}
}

// A band-pass has both corners, counted from its middle: RC high-pass at 50 Hz, low-pass at 5 kHz,
// decoupled by an amplifier.
func TestBandPass(t *testing.T) {
	high, low := 1/(2*math.Pi*50*1e5), 1/(2*math.Pi*5000*1e4)
	n := New("band").VoltageSource("V", "in", Ground, 2).Capacitor("C1", "in", "a", units.Capacitance(high)).Resistor("R1", "a", Ground, 1e5).
		VoltageAmplifier("A", "b", Ground, "a", Ground, 3).Resistor("R2", "b", "out", 1e4).Capacitor("C2", "out", Ground, units.Capacitance(low))
	r, err := n.Sweep("out", 1, 1e6)
	if err != nil {
		t.Fatal(err)
	}
	plateau, _ := r.Plateau()
	near(t, "plateau", plateau.Ratio(), 3/1.01, 1e-4)
	up, err := r.Cutoff()
	if err != nil {
		t.Fatal(err)
	}
	down, err := r.LowCutoff()
	if err != nil {
		t.Fatal(err)
	}
	// |H/H0|² = 1/(1 + (f/a - b/f)²·ab/(a+b)²...) of two separate poles: up·down = 50·5000, up - down = 5050.
	near(t, "product", up.SI()*down.SI(), 50*5000, 1e-3)
	near(t, "difference", up.SI()-down.SI(), 5050, 1e-3)
}

// A narrow peak between the points of any usual grid: Q 2000 at 1234.5 Hz.
func TestNarrowPeak(t *testing.T) {
	w := 2 * math.Pi * 1234.5
	c := 1 / (w * w * 1.0)
	n := New("narrow").VoltageSource("V", "in", Ground, 1).Inductor("L", "in", "x", 1).Resistor("R", "x", "out", units.Resistance(w/2000)).Capacitor("C", "out", Ground, units.Capacitance(c))
	r, err := n.Sweep("out", 20, 20e3)
	if err != nil {
		t.Fatal(err)
	}
	p, err := r.Peak()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "frequency", p.Frequency.SI(), 1234.5*math.Sqrt(1-1/(2*2000.0*2000)), 1e-7)
	near(t, "Q", p.Q, 2000, 1e-6)
}

// LC: resonance goes with the square root of each: -0.5 % for one percent more of L or C.
func TestSensitivities(t *testing.T) {
	n := New("").Coil("coil", "out", Ground, Coil{Resistance: 100, Inductance: 2, EMF: 1}).Capacitor("C", "out", Ground, 1e-9)
	all, err := n.Sensitivities("out", 20, 20e3)
	if err != nil {
		t.Fatal(err)
	}
	if len(all) != 3 {
		t.Fatalf("got %v, want resistance, inductance and capacitance", all)
	}
	for _, s := range all {
		want := map[string][2]float64{"resistance": {0, -0.0864}, "inductance": {-0.5, 0.0432}, "capacitance": {-0.5, -0.0432}}[s.Quantity]
		if math.Abs(s.Resonance-want[0]) > 1e-3 || math.Abs(s.Height.SI()-want[1]) > 1e-3 {
			t.Errorf("%s: got %g %% and %v, want %v", s.Quantity, s.Resonance, s.Height, want)
		}
	}
	if rows := all.Frame().Rows(); rows != 3 {
		t.Errorf("frame has %d rows", rows)
	}
	tiny := Sensitivities{{"C", "capacitance", -1.7e-5, 0.12345678, -0.07706}}
	for c, want := range map[int]float64{2: 0, 3: 0.1235, 4: -0.0771} {
		if got := tiny.Frame().Columns[c].Values[0]; math.Abs(got-want) > 1e-12 || math.Signbit(got) != (want < 0) {
			t.Errorf("column %d: got %g, want %g, rounded to a ten-thousandth", c, got, want)
		}
	}
}

func TestFrame(t *testing.T) {
	r, err := New("shown").Coil("coil", "out", Ground, Coil{Resistance: 6000, Inductance: 2.5, EMF: -0.5}).Capacitor("C", "out", Ground, 6e-10).Resistor("R", "out", Ground, 1e6).Sweep("out", 20, 20e3)
	if err != nil {
		t.Fatal(err)
	}
	f := r.Raised(-6).Named("lower").Frame()
	level, _ := f.Named("Level")
	phase, _ := f.Named("Phase")
	if f.Title != "lower" || len(f.Columns) != 3 || len(f.Marks) != 2 || f.Columns[0].Values[0] != 20 || math.Abs(f.Columns[0].Values[f.Rows()-1]-20e3) > 1e-9 {
		t.Errorf("frame %q with %d columns, marks %v", f.Title, len(f.Columns), f.Marks)
	}
	near(t, "first level", level.Values[0], -6+20*math.Log10(1e6/1.006e6), 1e-3)
	for i := 1; i < len(phase.Values); i++ {
		if math.Abs(phase.Values[i]-phase.Values[i-1]) > 1 {
			t.Errorf("phase jumps at %g Hz", f.Columns[0].Values[i])
		}
	}
	near(t, "mark", f.Marks[0].Y, -6+16.0552, 1e-4)
	if want := "lower: resonance 4.096 kHz, 16.11 dB above the plateau, -3 dB at 6.376 kHz"; r.Named("lower").String() != want {
		t.Errorf("got %q, want %q", r.Named("lower"), want)
	}
}

func TestFaults(t *testing.T) {
	v := New("x").VoltageSource("V", "in", Ground, 1)
	ok := v.Resistor("R", "in", "out", 1e3).Resistor("load", "out", Ground, 1e3)
	coil := Coil{Resistance: 1, Inductance: 1}
	three := ok.Coil("a", "out", Ground, coil).Coil("b", "out", Ground, coil).Coil("c", "out", Ground, coil)
	nan := math.NaN()
	for i, c := range []struct {
		network Network
		fault   Fault
		words   string
	}{
		{ok.Resistor("bad", "in", "out", -5), ErrValue, "\"bad\": resistance: value not possible: got -5 Ω, want 0 Ω or more"},
		{ok.Capacitor("bad", "in", "out", 0), ErrValue, "want more than 0 F"},
		{ok.Inductor("bad", "in", "out", units.Inductance(nan)), ErrValue, "undefined H"},
		{ok.Coil("bad", "in", "out", Coil{Inductance: 1, EMF: units.Voltage(math.Inf(1))}), ErrValue, "EMF"},
		{ok.Resistor("R", "in", "out", 1), ErrName, "already"},
		{ok.Resistor("", "in", "out", 1), ErrName, "name for the part"},
		{ok.Resistor("R3", "in", "", 1), ErrName, "two nodes"},
		{ok.Resistor("R3", "in", "in", 1), ErrName, "both ends"},
		{ok.Resistor("R3", "a", "b", 1e3), ErrFloating, "node \"a\""},
		{ok.CurrentSource("I", Ground, "alone", 1), ErrFloating, "node \"alone\""},
		{ok.Transformer("T", "in", Ground, "s", "t", 2).Resistor("R3", "s", "t", 1e3), ErrFloating, "node \"s\""},
		{ok.VoltageSource("V2", "in", Ground, 2), ErrShorted, "V2"},
		{ok.VoltageSource("V2", "in", "in", 2), ErrShorted, "both ends"},
		{ok.Resistor("wire", "in", Ground, 0), ErrShorted, "\"V\""},
		{three.Couple("a", "b", 1.1), ErrCoupling, "k = 1.1"},
		{three.Couple("a", "b", nan), ErrCoupling, "undefined"},
		{three.Couple("a", "a", 0.1), ErrCoupling, "itself"},
		{three.Couple("a", "R", 0.1), ErrName, "\"R\" is no inductor"},
		{three.Couple("a", "b", 0.1).Couple("b", "a", 0.1), ErrName, "twice"},
		{three.Couple("a", "b", 0.9).Couple("b", "c", 0.9).Couple("a", "c", -0.9), ErrCoupling, "a, b, c"},
		{ok.Inductor("a", "out", Ground, 1).Inductor("b", "out", Ground, 1).Couple("a", "b", 1), ErrSingular, "no single solution"},
		{ok.Transformer("T", "in", Ground, "out", Ground, 0), ErrValue, "turns ratio"},
		{ok.Impedance("Z", "in", "out", nil), ErrValue, "function"},
		{ok.Impedance("Z", "in", "out", func(units.Frequency) units.Impedance { return units.Impedance(complex(nan, 0)) }), ErrValue, "impedance at 20 Hz"},
		{ok.Impedance("Z", "in", "out", func(f units.Frequency) units.Impedance { return units.Impedance(complex(1000-f.SI(), 5)) }), ErrValue, "want a resistance of 0 Ω or more"},
		{ok.CurrentAmplifier("F", "in", "out", "R", 1), ErrName, "current through \"R\""},
		{ok.Temperature(-1), ErrValue, "temperature"},
		{ok.Reference(0), ErrValue, "reference"},
		{ok.NoiseVoltage("n", "in", "y", -1), ErrValue, "noise voltage"},
		{ok.WithResistance("V", 1), ErrName, "resistance"},
		{ok.WithCapacitance("nobody", 1), ErrName, "no part of that name"},
		{ok.WithResistance("R", -1), ErrValue, "part \"R\""},
	} {
		_, err := c.network.Sweep("out", 20, 20e3)
		if !errors.Is(err, c.fault) || !strings.Contains(err.Error(), c.words) {
			t.Errorf("case %d: want %q with %q: got %v", i, c.fault, c.words, err)
		}
	}
	for _, r := range [][2]units.Frequency{{0, 10}, {10, 10}, {20, 10}, {-1, 10}, {1, units.Frequency(nan)}, {1, units.Frequency(math.Inf(1))}} {
		if _, err := ok.Sweep("out", r[0], r[1]); !errors.Is(err, ErrRange) {
			t.Errorf("%v: got %v", r, err)
		}
	}
	if _, err := ok.Sweep("nowhere", 20, 20e3); err == nil || !strings.Contains(err.Error(), "want one of ground, in, out") {
		t.Errorf("unknown node: got %v", err)
	}
	var empty Response
	if _, err := empty.Peak(); err == nil {
		t.Error("an empty response has no peak")
	}
}

// Levels at chosen frequencies are those of the sweep.
func TestLevels(t *testing.T) {
	n := lowpass(1e4, 1e-8)
	levels, err := n.Levels("out", []units.Frequency{5000, 20, 1000})
	if err != nil || len(levels) != 3 {
		t.Fatal(levels, err)
	}
	for i, hertz := range []float64{5000, 20, 1000} {
		x := 2 * math.Pi * hertz * 1e-4
		near(t, "level", levels[i].SI(), -10*math.Log10(1+x*x), 1e-9)
	}
}
