package circuit

import (
	"errors"
	"math/cmplx"
	"strings"
	"testing"

	"lode/units"
)

// Node names that mean something to a simulator, or come out alike, are kept apart.
func TestDeckNames(t *testing.T) {
	n := New("two\nlines").Coil("pickup", "GND", "x1a", Coil{Resistance: 1, Inductance: 1, EMF: 1}).Resistor("a", "x1a", "0", 1).Resistor("b", "0", "é", 1).
		Resistor("c", "é", "è", 1).Resistor("d", "è", Ground, 1).Resistor("wire", Ground, "earth", 0).Resistor("e", "GND", "earth", 5)
	deck, err := n.Deck("é", 20, 20e3)
	if err != nil {
		t.Fatal(err)
	}
	want := `* two lines
* pickup
V1 ngnd x1a_2 AC 1
R1 x1a_2 x1b 1
L1 x1b x1a 1
* a
R2 x1a n0 1
* b
R3 n0 __2 1
* c
R4 __2 _ 1
* d
R5 _ 0 1
* e
R6 ngnd 0 5
.ac dec 50 20 20000
.print ac vdb(__2) vp(__2)
.end
`
	if deck != want {
		t.Errorf("got\n%s\nwant\n%s", deck, want)
	}
	endless := func(units.Frequency) units.Impedance { return units.Impedance(cmplx.Inf()) }
	if _, err := n.Impedance("Z", "x1a", Ground, endless).Deck("x1a", 20, 20e3); !errors.Is(err, ErrValue) {
		t.Errorf("an endless impedance in a deck: got %v", err)
	}
}

func TestNetlist(t *testing.T) {
	text := New("names").VoltageSource("V", "in", Ground, -2).CurrentSource("I", Ground, "in", 1e-3).Inductor("a", "in", "p", 1).Inductor("b", "s", Ground, 0.01).Couple("a", "b", 0.98).
		Resistor("R", "p", "s", 4700).Transformer("T", "p", Ground, "t", Ground, 12.5).Transconductance("g", "t", Ground, "p", "s", 2e-3).NoiseVoltage("en", "t", "u", 5e-9).
		Impedance("Z", "u", Ground, func(units.Frequency) units.Impedance { return 1 }).VoltageAmplifier("A", "w", Ground, "u", Ground, 3).String()
	want := `names
V         voltage source     in – ground  -2 V
I         current source     ground – in  1 mA
a         inductor           in – p       1 H
b         inductor           s – ground   10 mH
R         resistor           p – s        4.7 kΩ
T         transformer        t – ground   12.5 times p – ground
g         transconductance   t – ground   2 mS times p – s
en        noise voltage      t – u        5 nV/√Hz
Z         impedance          u – ground   by a function
A         voltage amplifier  w – ground   3 times u – ground
a with b  coupling                        k = 0.98`
	if text != want {
		t.Errorf("got\n%s\nwant\n%s", text, want)
	}
	broken := New("").Resistor("R", "a", Ground, -1).String()
	if !strings.Contains(broken, "want 0 Ω or more") {
		t.Errorf("got %q", broken)
	}
}
