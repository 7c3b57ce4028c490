package coil

import (
	"strings"
	"testing"
)

func TestWarnings(t *testing.T) {
	usual := wound(t, Round{CoreDiameter: 12 * mm, Height: 10 * mm, FlangeDiameter: 30 * mm}, gauge(t, 42), 5000)
	if list := usual.Warnings(); len(list) != 0 {
		t.Errorf("an ordinary winding: %q", list)
	}
	for want, c := range map[string]Winding{
		"wires deep":                      wound(t, steel, gauge(t, 32), 40),
		"wires high":                      wound(t, Round{CoreDiameter: 12 * mm, Height: 0.8 * mm, FlangeDiameter: 60 * mm}, gauge(t, 30), 60),
		"only one wire deep":              wound(t, steel, gauge(t, 32), 5),
		"no flange: needs bonded wire":    wound(t, Round{CoreDiameter: 30 * mm, Height: 4 * mm}, gauge(t, 36), 400),
		"no flange: does not hold itself": wound(t, Round{CoreDiameter: 30 * mm, Height: 4 * mm}, gauge(t, 36), 2000),
	} {
		if list := c.Warnings(); len(list) != 1 || !strings.Contains(list[0], want) {
			t.Errorf("%s: got %q", want, list)
		}
	}
	if list := (Winding{}).Warnings(); list != nil {
		t.Errorf("no winding: %q", list)
	}
}
