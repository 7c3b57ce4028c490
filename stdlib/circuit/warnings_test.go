package circuit

import (
	"strings"
	"testing"

	"lode/units"
)

func TestWarnings(t *testing.T) {
	divider := func(r units.Resistance) Network {
		return New("").VoltageSource("V", "in", Ground, 1).Resistor("R1", "in", "out", r).Resistor("R2", "out", Ground, 1e3)
	}
	for _, c := range []struct {
		r         units.Resistance
		low, high units.Frequency
		want      string
	}{
		{1e3, 1, 1e6, ""}, {0, 20, 20e3, ""}, {1e9, 20, 20e3, ""},
		{1e3, 0.5, 1e6, "frequencies: got 500 mHz to 1 MHz, valid 1 Hz to 1 MHz"},
		{1e3, 20, 2e6, "frequencies: got 20 Hz to 2 MHz, valid"},
		{2e9, 20, 20e3, `resistor "R1": got 2 GΩ, valid 1 mΩ to 1 GΩ`},
		{1e-4, 20, 20e3, `resistor "R1": got 100 µΩ, valid`},
	} {
		r, err := divider(c.r).Sweep("out", c.low, c.high)
		if err != nil {
			t.Fatal(err)
		}
		if got := strings.Join(r.Warnings(), "\n"); !strings.HasPrefix(got, c.want) || (got == "") != (c.want == "") {
			t.Errorf("%v from %v to %v: got %q, want %q", c.r, c.low, c.high, got, c.want)
		}
	}
}
