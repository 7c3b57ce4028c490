package ladder

import "testing"

func TestParts(t *testing.T) {
	r, c, l := Part(Resistor, "R", "1 kΩ"), Part(Capacitor, "C", "1 nF"), Part(Inductor, "L", "1 H")
	got := Series(r, Parallel(Series(c, l), Series(r), Branch{})).Parts()
	want := []string{"R", "C", "L", "R"}
	if len(got) != len(want) {
		t.Fatalf("got %v", got)
	}
	for i, p := range got {
		if p.Name != want[i] {
			t.Errorf("part %d: got %s, want %s", i, p.Name, want[i])
		}
	}
	if s := Parallel(r); s.Symbol != Resistor || len(s.Parallel) != 0 {
		t.Errorf("one branch in parallel: got %v", s)
	}
}
