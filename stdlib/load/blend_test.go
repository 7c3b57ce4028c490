package load

import (
	"math"
	"strings"
	"testing"

	"lode/units"
)

// Two Thévenin sources meet through their resistors: the voltage is the sum of the currents over that of the admittances.
func TestBlend(t *testing.T) {
	a, b := Coil{6e3, 2.5, 0}, Coil{120, 30e-3, 0}
	line := From(a).Blend(From(b).Capacitor(22e-9), Blending{Own: 47e3, Other: 10e3, Level: -6, Reversed: true}).Cable(5).Input(1e6)
	for _, f := range tones {
		s := complex(0, f.Angular().SI())
		shunt := 1 / (s * 22e-9)
		source := 120 + 30e-3*s
		second, inner := -complex(math.Pow(10, -0.3), 0)*shunt/(shunt+source), shunt*source/(shunt+source)
		y1, y2 := 1/(6e3+2.5*s+47e3), 1/(inner+10e3)
		same(t, "blend", transfer(t, line, f), (y1+second*y2)/(y1+y2+1e-6+s*500e-12))
	}
	for want, l := range map[string]Line{
		"second chain: none":         From(a).Blend(Line{}, Blending{}),
		"second chain: has an input": From(a).Blend(From(b).Input(1e6), Blending{}),
		"blend: own resistor":        From(a).Blend(From(b), Blending{Own: -1}),
		"blend: level":               From(a).Blend(From(b), Blending{Level: units.Level(math.NaN())}),
	} {
		if _, err := l.Sweep(20, 2e4); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("want %q: got %v", want, err)
		}
	}
}

// A cable with resistance is a T of half, capacitance, half.
func TestCableResistance(t *testing.T) {
	line := From(Coil{60, 20e-3, 0}).CableOf(100, 120e-12, 0.3).Input(600)
	for _, f := range tones {
		s := complex(0, f.Angular().SI())
		y := s*12e-9 + 1/complex(615, 0)
		v := 1 / (1 + (60+20e-3*s+15)*y)
		same(t, "lossy cable", transfer(t, line, f), v*600/615)
	}
	if _, err := From(Coil{60, 20e-3, 0}).CableOf(1, 1e-10, 1, 2).Input(600).Sweep(20, 2e4); err == nil {
		t.Error("two resistances were accepted")
	}
	if _, err := From(Coil{60, 20e-3, 0}).CableOf(1, 1e-10, -1).Input(600).Sweep(20, 2e4); err == nil {
		t.Error("a negative resistance was accepted")
	}
}
