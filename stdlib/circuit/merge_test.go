package circuit

import (
	"errors"
	"math"
	"testing"
)

// Superposition: two networks joined by a resistor give the sum of what each gives with the other's sources off.
func TestIncluding(t *testing.T) {
	a := New("a").Coil("c", "hot", Ground, Coil{Resistance: 6e3, Inductance: 2.5, Capacitance: 1e-10, EMF: 1}).Reference(1)
	b := New("b").VoltageSource("V", "in", Ground, 1).Inductor("p", "in", Ground, 1).Inductor("s", "x", Ground, 4).Couple("p", "s", 0.9).
		VoltageAmplifier("A", "y", Ground, "x", Ground, 3).VoltageSource("meter", "y", "z", 0).Resistor("R", "z", "out", 1e4).Capacitor("C", "out", Ground, 1e-9).
		CurrentAmplifier("F", "out", Ground, "meter", 0.5)
	join := func(a Network, scale float64) complex128 {
		r, err := a.Including("b", b, scale).Resistor("mix", "hot", "b out", 2.2e4).Sweep("hot", 20, 2e4)
		if err != nil {
			t.Fatal(err)
		}
		v, err := r.value(1234)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	both, first, second := join(a, -0.7), join(a, 0), join(a.WithEMF("c", 0), 1)
	if diff := both - (first - 0.7*second); math.Hypot(real(diff), imag(diff)) > 1e-9 {
		t.Errorf("got %v, want %v", both, first-0.7*second)
	}
	alone, err := b.Sweep("out", 20, 2e4)
	if err != nil {
		t.Fatal(err)
	}
	inside, err := New("").Including("b", b, 1).Sweep("b out", 20, 2e4)
	if err != nil {
		t.Fatal(err)
	}
	x, _ := alone.value(500)
	y, _ := inside.value(500)
	if diff := x - y; math.Hypot(real(diff), imag(diff)) > 1e-12 {
		t.Errorf("included: got %v, want %v", y, x)
	}
	if _, err := a.Including("b", New("").Resistor("R", "x", Ground, -1), 1).Sweep("hot", 20, 2e4); !errors.Is(err, ErrValue) {
		t.Errorf("a mistake in the other network: got %v", err)
	}
}
