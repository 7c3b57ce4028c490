package piezo

import (
	"testing"

	"lode/stdlib/circuit"
	"lode/units"
)

// Elements joined by formula are the same as their circuits joined part by part.
func TestGroups(t *testing.T) {
	a := Element{Capacitance: 1e-9, ChargePerNewton: 3e-10, Leakage: 5e8}
	b := Element{Capacitance: 2.2e-9, ChargePerNewton: 5e-10, Leakage: 8e8}
	place := func(n circuit.Network, e Element, name, hot, cold string, pressed float64) circuit.Network {
		return n.VoltageSource(name+" V", name, cold, units.Voltage(pressed*e.VoltagePerNewton().SI())).Capacitor(name+" C", name, hot, e.Capacitance).Resistor(name+" R", hot, cold, e.Leakage)
	}
	level := func(n circuit.Network) float64 {
		r, err := n.Reference(1).Capacitor("cable", "hot", circuit.Ground, 5e-10).Resistor("input", "hot", circuit.Ground, 1e7).Sweep("hot", 20, 2e4)
		if err != nil {
			t.Fatal(err)
		}
		v, err := r.LevelAt(1000)
		if err != nil {
			t.Fatal(err)
		}
		return v.SI()
	}
	one := func(e Element, err error) float64 {
		if err != nil {
			t.Fatal(err)
		}
		return level(place(circuit.New(""), e, "e", "hot", circuit.Ground, 1))
	}
	join := func(hot, middle string, first, second float64) float64 {
		return level(place(place(circuit.New(""), a, "a", "hot", middle, first), b, "b", hot, circuit.Ground, second))
	}
	near(t, "parallel", one(Parallel(a, b)), join("hot", circuit.Ground, 1, 1), 1e-9)
	near(t, "series", one(Series(a, b)), join("middle", "middle", 1, 1), 1e-5)
	near(t, "one alone", one(a.Among(b)), join("hot", circuit.Ground, 1, 0), 1e-9)

	four, err := Parallel(a, a, a, a)
	if err != nil || four.Capacitance != 4*a.Capacitance || four.VoltagePerNewton() != a.VoltagePerNewton() {
		t.Errorf("four alike in parallel: got %v, %v", four, err)
	}
	lossy := Element{Capacitance: 1e-9, ChargePerNewton: 1e-10, LossTangent: 0.02}
	mixed, _ := Parallel(lossy, Element{Capacitance: 3e-9, ChargePerNewton: 1e-10, LossTangent: 0.04})
	near(t, "loss tangent in parallel", mixed.LossTangent, 0.035, 1e-12)
	mixed, _ = Series(lossy, Element{Capacitance: 3e-9, ChargePerNewton: 1e-10, LossTangent: 0.04})
	near(t, "loss tangent in series", mixed.LossTangent, 0.025, 1e-12)
	if _, err := Series(); err == nil {
		t.Error("no elements were joined")
	}
	if _, err := Parallel(a, Element{}); err == nil {
		t.Error("an empty element was joined")
	}
}
