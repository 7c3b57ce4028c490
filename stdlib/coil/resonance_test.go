package coil

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"lode/units"
)

// Witnesses of calibration: a capacitance put back into its resonance; printed test cases for two frequencies.

func TestCalibrated(t *testing.T) {
	c := wound(t, steel, gauge(t, 42), 6000)
	const L, C, added = 2.4, 95e-12, 120e-12
	f := units.Frequency(1 / (2 * math.Pi * math.Sqrt(L*(C+added))))
	got, err := c.Calibrated(Resonance{Frequency: f, Added: added, Inductance: L})
	if err != nil {
		t.Fatal(err)
	}
	close(t, "Capacitance", float64(got.Capacitance()), C, 1e-9)
	if r := got.CapacitanceRange(); r.Low >= C || r.High <= C {
		t.Errorf("range %v", r)
	}
	for _, bad := range []Resonance{{}, {Frequency: -1}, {Frequency: f, Added: -1}, {Frequency: 1e6, Added: 1e-9}, {Frequency: f, Inductance: units.Inductance(math.NaN())}} {
		if _, err := c.Calibrated(bad); err == nil {
			t.Errorf("%+v was accepted", bad)
		}
	}
}

func TestSelfCapacitanceReference(t *testing.T) {
	file, err := os.Open("../../testdata/reference/capacitance_two_frequency.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	lines, err := csv.NewReader(file).ReadAll()
	if err != nil || len(lines) != 4 {
		t.Fatalf("%d lines, %v", len(lines), err)
	}
	for _, line := range lines[1:] {
		var x [7]float64
		for i := range x {
			if x[i], err = strconv.ParseFloat(line[i], 64); err != nil {
				t.Fatal(err)
			}
		}
		one := Resonance{Frequency: units.Frequency(x[5]), Added: units.Capacitance(x[2])}
		other := Resonance{Frequency: units.Frequency(x[6]), Added: units.Capacitance(x[3])}
		got, err := SelfCapacitance(one, other)
		if err != nil {
			t.Fatal(err)
		}
		close(t, "SelfCapacitance", float64(got), x[1], 1e-5)
		if swapped, _ := SelfCapacitance(other, one); math.Abs(float64(swapped/got)-1) > 1e-9 {
			t.Errorf("the order matters: %v, %v", got, swapped)
		}
		if _, err := SelfCapacitance(one, one); err == nil {
			t.Error("one measurement was taken for two")
		}
	}
}

// Potting a measured winding and adding turns to it change the capacitance as the estimates do, and the range holds the value it had
// and the one it would have in proportion.
func TestCalibrationIsCarriedOver(t *testing.T) {
	c := wound(t, steel, gauge(t, 42), 5000)
	measured := must(c.Calibrated(Resonance{Frequency: 6 * units.Kilohertz, Inductance: 2}))
	wax := must(CompoundNamed("paraffin"))
	potted, estimate := must(measured.Potted(wax)), must(c.Potted(wax))
	close(t, "potted", float64(potted.Capacitance()/measured.Capacitance()), float64(estimate.Capacitance()/c.Capacitance()), 1e-12)
	more := must(potted.With(6000))
	close(t, "more turns", float64(more.Capacitance()/potted.Capacitance()), float64(must(estimate.With(6000)).Capacitance()/estimate.Capacitance()), 1e-12)
	if more.filling() != wax.Permittivity {
		t.Errorf("more turns: filling %g", more.filling())
	}
	same := must(potted.On(steel))
	close(t, "on the same bobbin", float64(same.Capacitance()), float64(potted.Capacitance()), 1e-12)
	if r, m := potted.CapacitanceRange(), measured.CapacitanceRange(); r.High-r.Low <= m.High-m.Low {
		t.Errorf("potting did not widen the range: %v, %v", m, r)
	}
}
