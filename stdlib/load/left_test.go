package load

import (
	"math"
	"math/cmplx"
	"strings"
	"testing"

	"lode/units"
)

// The transmission line is the witness: an open line of resistance R and capacitance C passes 1/cosh √(jωRC), and half the
// resistance in front of all the capacitance 1/(1 + jωRC/2).
func TestCableLeft(t *testing.T) {
	x := complex(0, 1)
	off := 20 * math.Log10(cmplx.Abs(cmplx.Cosh(cmplx.Sqrt(x))/(1+x/2)))
	if math.Abs(off) > 0.32 || math.Abs(off) < 0.2 {
		t.Errorf("where the resistance is as large as the reactance: %g dB off the line, want about 0.3", off)
	}
	l := From(Coil{DCResistance: 6e3, SelfInductance: 2})
	equal := units.ResistancePerLength(1 / (2 * math.Pi * 20e3 * 100 * 100e-12 * 100))
	for _, c := range []struct {
		list []string
		want string
	}{
		{l.cableLeft(900), ""}, {l.cableLeft(0), ""},
		{l.cableLeft(1100), "cable length: got 1100 m, valid up to 1000 m"},
		{l.deskLeft(Desk{Cable: 1500}), "cable length: got 1500 m"},
		{l.cableOfLeft(100, 100e-12, 0.9*equal), ""},
		{l.cableOfLeft(100, 100e-12, 1.1*equal), "cable resistance: got "},
	} {
		if got := strings.Join(c.list, "\n"); !strings.HasPrefix(got, c.want) || (got == "") != (c.want == "") {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
}
