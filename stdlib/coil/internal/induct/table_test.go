package induct

import (
	"math"
	"testing"
)

func TestTableOfTheKernel(t *testing.T) {
	for _, k := range []*sheets{newSheets(0.01, 0.01, 0), newSheets(0.001, 0.02, 0.015), newSheets(0.004, 0.004, 0.0041)} {
		quick, worst := k.tabled(), 0.0
		for rho := 1e-9; rho < 0.5; rho *= 1.0137 {
			got, want := quick.point(rho*rho), k.exactPoint(rho*rho)
			worst = max(worst, math.Abs(got/want-1))
		}
		book.Note(t, "table of the kernel", worst)
		if worst > 3e-8 {
			t.Errorf("%v: the table is off by %.2g", k.u, worst)
		}
	}
}
