package piezo

// Map of mutual checks
//
//	table of Erturk and Inman           <-> materials                     (TestMaterials, testdata/reference)
//	parallel plate                       <-> Capacitance of discs          (TestMaterials)
//	voltage coefficient g33·t/A          <-> VoltagePerNewton              (TestMaterials)
//	corner and cable loss formulas       <-> chain of package load         (TestChain)
//	feedback network of package circuit  <-> charge amplifier              (TestChargeAmplifier)
//	4kT·Re Z                             <-> noise of the dielectric loss  (TestLossNoise)

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

// Each row of the table names its source.
func TestMaterials(t *testing.T) {
	file, err := os.Open("../../testdata/reference/loads_piezo.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	checked := 0
	for _, row := range rows[1:] {
		m := map[string]Material{"PZT-5A": SoftPZT(), "PZT-5H": VerySoftPZT()}[row[0]]
		want, err := strconv.ParseFloat(row[2], 64)
		if err != nil {
			t.Fatal(err)
		}
		quantity, sizes, _ := strings.Cut(row[1], " ")
		var got float64
		switch quantity {
		case "d33_pm_per_V": // a metre per volt is a coulomb per newton
			got = m.ChargePerNewton.SI() * 1e12
		case "eps33T_over_eps0":
			got = m.Permittivity
		case "density_kg_per_m3":
			got = m.Density.SI()
		case "g33_V_m_per_N":
			e, err := Disc{m, 0.02, 0.001}.Element()
			if err != nil {
				t.Fatal(err)
			}
			got = e.VoltagePerNewton().SI() * math.Pi / 4 * 0.02 * 0.02 / 0.001
		case "disc_capacitance_F":
			got = disc(t, m, sizes).Capacitance.SI()
		default:
			continue
		}
		checked++
		near(t, row[0]+" "+row[1], got, want, 1e-7)
	}
	if checked != 14 {
		t.Errorf("%d rows checked, want 14", checked)
	}
}

func disc(t *testing.T, m Material, sizes string) Element {
	diameter, thickness, _ := strings.Cut(strings.TrimPrefix(sizes, "dia_m="), " t_m=")
	d, err := strconv.ParseFloat(diameter, 64)
	if err != nil {
		t.Fatal(err)
	}
	h, err := strconv.ParseFloat(thickness, 64)
	if err != nil {
		t.Fatal(err)
	}
	e, err := Disc{m, units.Length(d), units.Length(h)}.Element()
	if err != nil {
		t.Fatal(err)
	}
	return e
}

var element = Element{Capacitance: 500e-12, ChargePerNewton: 300e-12, Leakage: 50e6}

func TestChain(t *testing.T) {
	r, err := load.FromSource(element).Cable(3).Input(1e6).Sweep(1, 20e3)
	if err != nil {
		t.Fatal(err)
	}
	corner, err := element.LowCorner(1e6, 300e-12)
	if err != nil {
		t.Fatal(err)
	}
	found, err := r.LowCutoff()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "corner", found.SI(), corner.SI(), 1e-3)
	loss, err := element.CableLoss(300e-12)
	if err != nil {
		t.Fatal(err)
	}
	top, _ := r.LevelAt(1e9)
	near(t, "cable loss", -top.SI(), loss.SI(), 1e-6)
	strip, err := Strip{SoftPZT(), 0.07, 0.003, 0.0005}.Element()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "strip", strip.Capacitance.SI(), 8.8541878188e-12*1700*0.07*0.003/0.0005, 1e-12)
}

// The same amplifier with its feedback drawn and a gain of ten million; a current source drives the charge.
func TestChargeAmplifier(t *testing.T) {
	if got := (ChargeAmplifier{1e-9, 100e6}).String(); got != "charge amplifier, feedback 1 nF and 100 MΩ" {
		t.Errorf("got %s", got)
	}
	a := ChargeAmplifier{FeedbackCapacitance: 1e-9, FeedbackResistance: 100e6}
	n := circuit.New("").Reference(1).CurrentSource("charge", circuit.Ground, "in", 1e-6).Capacitor("C", "in", circuit.Ground, 500e-12).Capacitor("cable", "in", circuit.Ground, 2e-9).
		VoltageAmplifier("A", "out", circuit.Ground, circuit.Ground, "in", 1e7).Capacitor("Cf", "in", "out", 1e-9).Resistor("Rf", "in", "out", 100e6)
	r, err := n.Sweep("out", 0.01, 20e3)
	if err != nil {
		t.Fatal(err)
	}
	corner, err := a.LowCorner()
	if err != nil {
		t.Fatal(err)
	}
	at, _ := r.LevelAt(corner)
	low, _ := r.LevelAt(corner / 1e4)
	near(t, "half power at the corner", (at - low).SI(), -3.0103, 1e-5)
	high, _ := r.LevelAt(1000)
	volts, err := a.VoltagePerNewton(element)
	if err != nil {
		t.Fatal(err)
	}
	charge := 1e-6 / (2 * math.Pi * 1000)
	near(t, "volts per charge", high.Ratio()/charge, volts.SI()/300e-12, 1e-5)
	gain, err := a.NoiseGain(element, 2e-9)
	if err != nil {
		t.Fatal(err)
	}
	noise, err := circuit.New("").Capacitor("C", "in", circuit.Ground, 2.5e-9).NoiseVoltage("en", "in", "x", 1e-6).VoltageAmplifier("A", "out", circuit.Ground, circuit.Ground, "x", 1e7).
		Capacitor("Cf", "in", "out", 1e-9).Resistor("Rf", "in", "out", 1e12).Noise("out", 100, 20e3)
	if err != nil {
		t.Fatal(err)
	}
	density, _ := noise.DensityAt(20e3)
	near(t, "noise gain", density.SI()/1e-6, gain.Ratio(), 1e-4)
}

func TestLossNoise(t *testing.T) {
	e := Element{Capacitance: 1e-9, ChargePerNewton: 1e-10, LossTangent: 0.02}
	noise, err := load.FromSource(e).Noise(100, 10e3)
	if err != nil {
		t.Fatal(err)
	}
	density, err := noise.DensityAt(1000)
	if err != nil {
		t.Fatal(err)
	}
	omega := 2 * math.Pi * 1000
	near(t, "density", density.SI(), math.Sqrt(4*1.380649e-23*293.15*0.02/(omega*1e-9*(1+0.02*0.02))), 1e-9)
}

func TestRefused(t *testing.T) {
	_, a := Disc{SoftPZT(), 0, 1e-3}.Element()
	_, b := Disc{SoftPZT(), 0.02, units.Length(math.NaN())}.Element()
	_, c := Disc{Material{}, 0.02, 1e-3}.Element()
	_, d := Strip{SoftPZT(), 0.02, -1, 1e-3}.Element()
	_, e := Element{}.LowCorner(1e6, 0)
	_, f := element.LowCorner(0, 0)
	_, g := element.CableLoss(-1)
	_, h := ChargeAmplifier{}.LowCorner()
	_, i := load.FromSource(Element{Capacitance: 1e-9, ChargePerNewton: 1e-10, LossTangent: 2}).Sweep(20, 2e4)
	for i, c := range []struct {
		err  error
		want string
	}{{a, "diameter"}, {b, "thickness"}, {c, "permittivity"}, {d, "width"}, {e, "capacitance"}, {f, "input resistance"}, {g, "cable"}, {h, "feedback"}, {i, "loss tangent"}} {
		if c.err == nil || !strings.Contains(c.err.Error(), c.want) {
			t.Errorf("case %d: want %q: got %v", i, c.want, c.err)
		}
	}
}
