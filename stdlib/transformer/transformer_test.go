package transformer

// Map of mutual checks
//
//	worked answers, read and computed      <-> ratios, corners, losses, flux   (TestCases, testdata/reference)
//	two-corner formulas                     <-> the whole circuit swept         (TestCornersOnTheNetwork)
//	nameplate                               <-> corners of the model it gives   (TestNameplateComesBack)
//	coupled windings of package circuit     <-> model from measurements         (TestBenchIsCoupledWindings)
//	model and coil in a chain               <-> formula by hand                 (TestInChain)

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"lode/stdlib/circuit"
	"lode/stdlib/load"
	"lode/units"
)

func near(t *testing.T, what string, got, want, relative float64) {
	t.Helper()
	if !(math.Abs(got-want) <= relative*math.Abs(want)) {
		t.Errorf("%s: got %.10g, want %.10g", what, got, want)
	}
}

// parameters reads "Rs_ohm=200;RL_ohm=1500".
func parameters(t *testing.T, text string) map[string]float64 {
	t.Helper()
	all := map[string]float64{}
	for _, pair := range strings.Split(text, ";") {
		name, number, _ := strings.Cut(pair, "=")
		v, err := strconv.ParseFloat(number, 64)
		if err != nil {
			t.Fatal(err)
		}
		all[name] = v
	}
	return all
}

// TestCases works the cases of the reference table; each row there names its source.
func TestCases(t *testing.T) {
	file, err := os.Open("../../testdata/reference/transformer_cases.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	worked := 0
	for _, row := range rows[1:] {
		want, err := strconv.ParseFloat(row[3], 64)
		if err != nil {
			t.Fatal(err)
		}
		got, ok := work(t, row[0], row[2], parameters(t, row[1]))
		if !ok {
			continue
		}
		worked++
		digits := 1e-8
		if row[5] == "read" {
			digits = 0.005 // printed to three digits
		}
		near(t, row[0]+" "+row[1], got, want, digits)
	}
	if worked != 34 {
		t.Errorf("%d cases worked, want all 34 of transformers", worked)
	}
}

func work(t *testing.T, name, quantity string, p map[string]float64) (float64, bool) {
	m := Model{Ratio: p["Ns_over_Np"], PrimaryInductance: units.Inductance(p["Lp_H"]), Leakage: units.Inductance(p["Lleak_H"]),
		PrimaryResistance: units.Resistance(p["Rp_ohm"]), SecondaryResistance: units.Resistance(p["Rsec_ohm"])}
	source, end := units.Resistance(p["Rs_ohm"]), units.Resistance(p["RL_ohm"])
	var err error
	var f units.Frequency
	var level units.Level
	value := math.NaN()
	switch name {
	case "turns_ratio":
		value, err = ratio(quantity, p)
	case "reflected_impedance":
		m.Ratio = 1 / p["Np_over_Ns"]
		if p["Np"] > 0 {
			m.Ratio = p["Ns"] / p["Np"]
		}
		value = m.ToPrimary(units.Impedance(complex(p["Zs_ohm"], 0))).Resistance().SI()
	case "low_corner":
		f, err = m.LowCorner(source, end)
		value = f.SI()
	case "high_corner":
		f, err = m.HighCorner(source, end)
		value = f.SI()
	case "insertion_loss_windings":
		level, err = m.InsertionLoss(source, end)
		value = level.SI()
	case "midband_voltage_gain":
		level, err = m.Gain(source, end)
		value = level.Ratio()
	case "primary_inductance":
		var wound Model
		wound, err = Windings{Primary: p["N"], Secondary: 1, InductanceFactor: units.Inductance(p["A_L_nH"] * 1e-9)}.Model()
		value = wound.PrimaryInductance.SI()
	case "peak_flux_density":
		var b units.FluxDensity
		b, err = FluxDensity(units.Voltage(p["V_rms"]), units.Frequency(p["f_Hz"]), p["N"], units.Area(p["A_m2"]))
		value = b.SI()
	default:
		return 0, false
	}
	if err != nil {
		t.Error(name, err)
	}
	return value, true
}

func ratio(quantity string, p map[string]float64) (float64, error) {
	m, err := Nameplate{Primary: units.Resistance(p["Zp_ohm"]), Secondary: units.Resistance(p["Zs_ohm"])}.Model()
	switch quantity {
	case "Np_over_Ns":
		return 1 / m.Ratio, err
	case "voltage_gain_dB":
		return units.LevelOf(m.Ratio).SI(), err
	}
	return m.Ratio, err
}

var sample = Model{Ratio: 10, PrimaryInductance: 1, Leakage: 0.5e-3, PrimaryResistance: 10, SecondaryResistance: 900}

// Far apart, the corners and the middle are where the whole circuit has them.
func TestCornersOnTheNetwork(t *testing.T) {
	r, err := sample.Sweep(150, 50e3, 0.1, 1e8)
	if err != nil {
		t.Fatal(err)
	}
	low, _ := sample.LowCorner(150, 50e3)
	high, _ := sample.HighCorner(150, 50e3)
	gain, _ := sample.Gain(150, 50e3)
	from, err := r.LowCutoff()
	if err != nil {
		t.Fatal(err)
	}
	to, err := r.Cutoff()
	if err != nil {
		t.Fatal(err)
	}
	plateau, _ := r.Plateau()
	near(t, "low corner", from.SI(), low.SI(), 1e-3)
	near(t, "high corner", to.SI(), high.SI(), 1e-3)
	// Leakage and primary inductance divide: L_leak·R/L_m joins the source, R the load seen from the primary.
	near(t, "gain", plateau.Ratio(), gain.Ratio()*669/(669+0.5e-3*509), 1e-5)
}

func TestNameplateComesBack(t *testing.T) {
	p := Nameplate{Primary: 150, Secondary: 15e3, LowCorner: 20, HighCorner: 30e3, PrimaryResistance: 12, SecondaryResistance: 1e3}
	m, err := p.Model()
	if err != nil {
		t.Fatal(err)
	}
	low, _ := m.LowCorner(150, 15e3)
	high, _ := m.HighCorner(150, 15e3)
	near(t, "low", low.SI(), 20, 1e-12)
	near(t, "high", high.SI(), 30e3, 1e-12)
	near(t, "ratio", m.Ratio, 10, 1e-12)
}

// What is measured on two coupled windings gives a model that behaves as they do, exactly.
func TestBenchIsCoupledWindings(t *testing.T) {
	for _, k := range []float64{0.6, 0.95, 0.999} {
		l1, l2 := 0.8, 80.0
		b := Bench{PrimaryOpen: units.Inductance(l1), PrimaryShorted: units.Inductance(l1 * (1 - k*k)), VoltageRatio: k * math.Sqrt(l2/l1), PrimaryResistance: 40, SecondaryResistance: 1500}
		m, err := b.Model()
		if err != nil {
			t.Fatal(err)
		}
		got, err := b.Coupling()
		near(t, "coupling", got, k, 1e-9)
		turns, _ := Windings{Primary: 200, Secondary: 2000, InductanceFactor: 20e-6, Coupling: k, PrimaryResistance: 40, SecondaryResistance: 1500}.Model()
		near(t, "windings", turns.Ratio, m.Ratio, 1e-9)
		near(t, "windings' leakage", turns.Leakage.SI(), m.Leakage.SI(), 1e-9)
		want, err2 := circuit.New("").VoltageSource("V", "EMF", circuit.Ground, 1).Resistor("R", "EMF", "in", 150).Resistor("r1", "in", "p", 40).
			Inductor("L1", "p", circuit.Ground, units.Inductance(l1)).Inductor("L2", "s", circuit.Ground, units.Inductance(l2)).Couple("L1", "L2", k).
			Resistor("r2", "s", "out", 1500).Resistor("RL", "out", circuit.Ground, 47e3).Sweep("out", 10, 1e5)
		model, err3 := m.Sweep(150, 47e3, 10, 1e5)
		if err != nil || err2 != nil || err3 != nil {
			t.Fatal(err, err2, err3)
		}
		for _, f := range []units.Frequency{10, 200, 3e3, 5e4, 1e5} {
			a, _ := model.LevelAt(f)
			w, _ := want.LevelAt(f)
			p, _ := model.PhaseAt(f)
			q, _ := want.PhaseAt(f)
			if math.Abs((a-w).SI()) > 1e-7 || math.Abs((p-q).SI()) > 1e-8 {
				t.Errorf("k %g at %v: got %v, %v, want %v, %v", k, f, a, p, w, q)
			}
		}
	}
}

// A low-impedance coil through a step-up transformer, with all parts of the model, by hand.
func TestInChain(t *testing.T) {
	m := sample
	m.CoreLoss, m.PrimaryCapacitance, m.SecondaryCapacitance = 2e4, 1e-9, 2e-10
	line := load.From(load.Coil{DCResistance: 40, SelfInductance: 0.01}).Through(m).Cable(5).Input(1e6)
	r, err := line.Sweep(20, 20e3)
	if err != nil {
		t.Fatal(err)
	}
	parallel := func(a, b complex128) complex128 { return a * b / (a + b) }
	for _, f := range []units.Frequency{20, 500, 5e3, 2e4} {
		s := complex(0, 2*math.Pi*f.SI())
		secondary := parallel(1e6, 1/(s*(500e-12+2e-10)))
		core := parallel(parallel(s, 2e4), (900+secondary)/100)
		in := parallel(1/(s*1e-9), 10+s*0.5e-3+core)
		want := in / (in + 40 + s*0.01) * core / (core + 10 + s*0.5e-3) * 10 * secondary / (secondary + 900)
		got, _ := r.LevelAt(f)
		near(t, "level at "+f.String(), got.Ratio(), math.Hypot(real(want), imag(want)), 1e-8)
	}
	back := m.Reversed().Reversed()
	near(t, "reversed twice", back.PrimaryInductance.SI(), m.PrimaryInductance.SI(), 1e-12)
}

func TestSecondaryResonance(t *testing.T) {
	m, err := Bench{PrimaryOpen: 1, PrimaryShorted: 1e-6, VoltageRatio: 10, SecondaryResonance: 1000, SecondaryResistance: 1}.Model()
	if err != nil {
		t.Fatal(err)
	}
	r, err := circuit.New("").CurrentSource("I", circuit.Ground, "out", 1).Inductor("L", "out", circuit.Ground, units.Inductance(m.PrimaryInductance.SI()*m.Ratio*m.Ratio)).
		Capacitor("C", "out", circuit.Ground, m.SecondaryCapacitance).Resistor("R", "out", circuit.Ground, 1e9).Sweep("out", 100, 10e3)
	if err != nil {
		t.Fatal(err)
	}
	f, err := r.Resonance()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "resonance", f.SI(), 1000, 1e-6)
}

// The best of many taps is the one next to the best ratio.
func TestTaps(t *testing.T) {
	var taps []Tap
	for n := 2.0; n < 50; n++ {
		taps = append(taps, Tap{strconv.Itoa(int(n)), Model{Ratio: n}})
	}
	all, err := CompareTaps(200, 47e3, taps...)
	if err != nil {
		t.Fatal(err)
	}
	best, _ := all.Best()
	wanted, _ := BestRatio(200, 47e3)
	near(t, "best ratio", wanted, 15.3297097, 1e-8)
	near(t, "best tap", best.Ratio, 15, 1e-12)
	near(t, "seen", best.SeenBySource.SI(), 47e3/225, 1e-12)
	if all.Frame().Rows() != len(taps) || !math.IsNaN(all.Frame().Columns[3].Values[0]) {
		t.Error("frame does not hold the taps")
	}
}

func TestRefused(t *testing.T) {
	nan := math.NaN()
	_, a := Nameplate{Primary: 150}.Model()
	_, b := Bench{PrimaryOpen: 1, PrimaryShorted: 2, VoltageRatio: 1}.Model()
	_, c := Bench{PrimaryOpen: 1, VoltageRatio: nan}.Model()
	_, d := Windings{Primary: 10, Secondary: 10, InductanceFactor: 1e-6, Coupling: 1.2}.Model()
	_, e := Windings{Primary: nan, Secondary: 10, InductanceFactor: 1e-6}.Model()
	_, f := Model{}.LowCorner(1, 1)
	_, g := Model{Ratio: 2}.LowCorner(1, 1)
	_, h := Model{Ratio: 2, Leakage: -1}.Sweep(1, 1, 20, 2e4)
	_, i := Model{Ratio: 2}.Gain(1, 0)
	_, j := FluxDensity(1, 50, 0, 1e-4)
	_, k := CompareTaps(1, 1)
	_, l := load.From(load.Coil{DCResistance: 1, SelfInductance: 1}).Through(Model{}).Resonance()
	for i, c := range []struct {
		err  error
		want string
	}{{a, "secondary impedance"}, {b, "want less than the open one"}, {c, "voltage ratio"}, {d, "coupling"}, {e, "turns"}, {f, "ratio"}, {g, "primary inductance"},
		{h, "leakage"}, {i, "load resistance"}, {j, "turns"}, {k, "at least one"}, {l, "transformer ratio"}} {
		if c.err == nil || !strings.Contains(c.err.Error(), c.want) {
			t.Errorf("case %d: want %q: got %v", i, c.want, c.err)
		}
	}
}
