package piezo

import "testing"

func TestDrawing(t *testing.T) {
	e := Element{Capacitance: 1e-9, ChargePerNewton: 3e-10, Leakage: 5e8, LossTangent: 0.02}
	l, err := e.Ladder()
	if err != nil || len(l.Steps) != 3 || len(l.Notes) != 1 || l.Steps[0].Branch.Parts()[0].Value != "1 nF" {
		t.Errorf("element: got %v, %v", l, err)
	}
	if l, err = (ChargeAmplifier{FeedbackCapacitance: 1e-9, FeedbackResistance: 1e8}).Ladder(); err != nil || len(l.Steps) != 3 || len(l.Steps[1].Branch.Parts()) != 2 {
		t.Errorf("charge amplifier: got %v, %v", l, err)
	}
	if _, err := (Element{}).Ladder(); err == nil {
		t.Error("an empty element was drawn")
	}
	if _, err := (ChargeAmplifier{}).Ladder(); err == nil {
		t.Error("an empty amplifier was drawn")
	}
}
