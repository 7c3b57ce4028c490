package transformer

import (
	"strings"
	"testing"
)

func TestModelWarnings(t *testing.T) {
	whole := Model{Ratio: 10, PrimaryInductance: 1, Leakage: 1e-3, SecondaryCapacitance: 100e-12}
	if list := whole.Warnings(); len(list) != 0 {
		t.Errorf("a whole model: %q", list)
	}
	if list := (Model{Ratio: 10}).Warnings(); len(list) != 3 || !strings.Contains(list[0], "1 to 10") {
		t.Errorf("a ratio alone: %q", list)
	}
}
