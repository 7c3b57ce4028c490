package load

import (
	"strings"
	"testing"

	"lode/stdlib/circuit"
	"lode/units"
	"lode/units/ladder"
)

// told returns the ways, names and values of a drawing in one line.
func told(t *testing.T, source ladder.Source) string {
	t.Helper()
	l, err := source.Ladder()
	if err != nil {
		t.Fatal(err)
	}
	var words []string
	for _, s := range l.Steps {
		text := string(s.Way) + ":" + s.Name + " " + s.Value
		for _, p := range s.Branch.Parts() {
			text += " " + string(p.Symbol) + " " + p.Name + " " + p.Value
		}
		words = append(words, strings.Join(strings.Fields(text), " "))
	}
	return strings.Join(words, "; ")
}

type doubler struct{}

func (doubler) Into(n circuit.Network, name, in, out string) circuit.Network {
	return n.VoltageAmplifier(name, out, circuit.Ground, in, circuit.Ground, 2)
}

func (doubler) String() string { return "times 2" }

func TestDrawing(t *testing.T) {
	c := Coil{6e3, 2.5, 1e-10}
	a, b := One(c).Named("a"), One(c).Named("b")
	const coilTold = "to ground: resistor 6 kΩ inductor 2.5 H voltage source coil EMF capacitor 100 pF"
	const out = "; terminal:out"
	for want, source := range map[string]ladder.Source{
		coilTold + "; to ground: variable resistor tone 500 kΩ at 0.3 capacitor 22 nF; divider:volume 250 kΩ; to ground: capacitor cable 5 m 500 pF; to ground: resistor input 1 MΩ; to ground: capacitor 30 pF" + out: From(c).Tone(500e3, 22e-9, 0.3).Volume(250e3).Cable(5).Input(1e6, 30e-12),
		coilTold + "; divider, input on the wiper:volume 1 kΩ at 0.5 resistor 5 Ω capacitor 1 nF resistor 150 kΩ; divider:volume 2 2 kΩ" + out:                                                                         From(c).VolumeWired(VolumeWiring{Pot: Linear(1e3).At(0.5), Independent: true, Bypass: 1e-9, BypassParallel: 150e3, BypassSeries: 5}).Volume(2e3),
		coilTold + "; to ground: open switch off variable resistor tone 1 kΩ capacitor 1 nF inductor 1 H resistor 80 Ω" + out:                                                                                          From(c).ToneWired(ToneWiring{Pot: Linear(1e3), NoLoad: true, Capacitance: 1e-9, Choke: 1, ChokeResistance: 80}),
		coilTold + "; in series: capacitor bass cut 1 nF variable resistor 1 MΩ" + out:                                                                                                                                 From(c).BassCut(Linear(1e6), 1e-9),
		coilTold + "; to ground: resistor 1 MΩ; to ground: capacitor 10 pF; amplifier:buffer 6 dB; in series: resistor 1 kΩ" + out:                                                                                     From(c).Buffer(Buffer{InputResistance: 1e6, InputCapacitance: 1e-11, Gain: 6, OutputResistance: 1e3}),
		coilTold + "; in series: voltage source noise 5 nV/√Hz; to ground: current source noise 1 pA/√Hz" + out:                                                                                                        From(c).InputNoise(5e-9, 1e-12),
		coilTold + "; in series: impedance stage times 2; in series: resistor 500 mΩ; to ground: capacitor cable 10 m 1 nF; in series: resistor 500 mΩ" + out:                                                          From(c).Through(doubler{}).CableOf(10, 1e-10, 0.1),
		"to ground: inductor a 6 kΩ, 2.5 H, 100 pF inductor b, reversed 6 kΩ, 2.5 H, 100 pF closed switch shorted" + out:                                                                                               Series(a, b.Reversed().Shorted()),
		"to ground: inductor a, tap at 40 % 6 kΩ, 2.5 H, 100 pF" + out:                                                                                                                                                 a.Tapped(0.4),
		"to ground: resistor 6 kΩ inductor 2.5 H impedance loss voltage source a EMF capacitor 100 pF" + out:                                                                                                           a.Lossy(func(units.Frequency) units.Impedance { return 1 }),
		"to ground: closed switch a inductor a 6 kΩ, 2.5 H, 100 pF; to ground: open switch both inductor a 6 kΩ, 2.5 H, 100 pF inductor b 6 kΩ, 2.5 H, 100 pF" + out:                                                   Selector{{"a", a}, {"both", Parallel(a, b)}},
	} {
		if got := told(t, source); got != want {
			t.Errorf("got\n%s\nwant\n%s", got, want)
		}
	}
	l, _ := FromCoils(Parallel(a.NearMetal(0.3, 4e3), b).Coupled("a", "b", 0.02)).Ladder()
	for _, want := range []string{`"a" and "b" are coupled, k = 0.02`, "Metal near a coil: k = 0.3, corner 4 kHz"} {
		if !strings.Contains(strings.Join(l.Notes, " "), want) {
			t.Errorf("notes: got %v, want %q", l.Notes, want)
		}
	}
	for _, bad := range []ladder.Source{From(nil), From(Coil{}), One(nil), Selector{{"x", One(nil)}}} {
		if _, err := bad.Ladder(); err == nil {
			t.Errorf("%v was drawn", bad)
		}
	}
	if got := told(t, From(c).Cable(0.3).Cable(5)); !strings.Contains(got, "cable 300 mm 30 pF") || !strings.Contains(got, "cable 2, 5 m 500 pF") {
		t.Errorf("two cables: got %s", got)
	}
	// Lines that branch off one another have drawings of their own.
	start := From(c).Cable(1)
	one, two := start.Resistor(1e3), start.Capacitor(1e-9)
	if told(t, one) == told(t, two) || !strings.Contains(told(t, one), "resistor 1 kΩ") {
		t.Error("branched chains share a drawing")
	}
}
