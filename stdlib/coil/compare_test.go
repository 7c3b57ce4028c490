package coil

import (
	"strings"
	"testing"
)

func TestAtHeight(t *testing.T) {
	w := gauge(t, 43)
	for _, f := range []Former{steel, Rectangle{CoreLength: 40 * mm, CoreWidth: 5 * mm, Height: 9 * mm}, Round{CoreDiameter: 9 * mm, Height: 9 * mm},
		Convex{Corners: ring(6, 0.01, 0.01), Height: 9 * mm}} {
		c := wound(t, f, w, 4000)
		low, err := c.AtHeight(c.Shape().Height * 0.8)
		if err != nil {
			t.Fatal(err)
		}
		close(t, "build times height", float64(low.Build()*low.Shape().Height), float64(c.Build()*c.Shape().Height), 1e-9)
		table := Compare(c, low)
		if table.Rows() != 2 {
			t.Errorf("%d rows", table.Rows())
		}
		height, ok := table.OfKind("Length")
		if !ok || height.Values[1] != float64(low.Shape().Height) {
			t.Errorf("heights %v", height.Values)
		}
	}
	c := wound(t, steel, gauge(t, 43), 4000)
	if f := Compare(c, wound(t, steel, gauge(t, 43), 5000)); f.Columns[0].Name != "Turns" || !strings.Contains(f.Title, c.Wire().Name()) {
		t.Errorf("windings that differ by their turns alone: title %q, first column %q", f.Title, f.Columns[0].Name)
	}
	if _, err := (Winding{}).AtHeight(mm); err == nil || !strings.Contains(err.Error(), "none") {
		t.Errorf("zero winding: %v", err)
	}
	if rows := Compare(Winding{}).Rows(); rows != 1 {
		t.Errorf("zero winding: %d rows", rows)
	}
}
