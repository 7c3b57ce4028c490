package transformer

import "testing"

// What is zero is left out of the drawing as it is of the network.
func TestDrawing(t *testing.T) {
	full := Model{Ratio: 10, PrimaryInductance: 0.8, Leakage: 1e-3, PrimaryResistance: 20, SecondaryResistance: 900, CoreLoss: 1e4, PrimaryCapacitance: 1e-10, SecondaryCapacitance: 2e-10}
	for want, m := range map[int]Model{10: full, 3: {Ratio: 2}} {
		l, err := m.Ladder()
		if err != nil {
			t.Fatal(err)
		}
		if len(l.Steps) != want {
			t.Errorf("got %v, want %d steps", l.Steps, want)
		}
	}
	if _, err := (Model{}).Ladder(); err == nil {
		t.Error("an empty model was drawn")
	}
}
