package induct

import (
	"fmt"
	"math/rand/v2"
	"testing"
)

// Layers of a twentieth to all of the build of the winding below, at one end of it and in the middle, as parts of all sizes.
func TestThinLayerOnRandomCoils(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	worst := 0.0
	for range 120 {
		a := randomSection(r)
		a.Build = min(a.Build, 0.007)
		b := a
		b.CoreLength, b.CoreWidth, b.CornerRadius = a.CoreLength+2*a.Build, a.CoreWidth+2*a.Build, a.CornerRadius+a.Build
		layers, filled := 1+r.IntN(20), 0.1+0.9*r.Float64()
		b.Build, b.Height = a.Build/float64(layers), a.Height*filled
		distance := (a.Height - b.Height) / 2 * float64(r.IntN(2))
		share := 2 * filled / float64(layers)
		got, ok := besideLayer(a, b, distance, share)
		if ok != (b.Build <= 0.2*a.Height) {
			t.Errorf("%+v around %+v: taken for a thin layer %v", b, a, ok)
		}
		if !ok {
			continue
		}
		fine, _ := CoaxialTo(a, b, 1, 1, distance, 1e-7)
		off := (got/fine - 1) * share
		closeTo(t, fmt.Sprint(a, b), 1+off, 1, 1.5e-5)
		worst = max(worst, off, -off)
	}
	t.Logf("worst %.2g of the whole", worst)
}

// The correction for thickness against the difference of thick layer and sheet, on a wide and tall bobbin.
func TestThicknessOfLayer(t *testing.T) {
	a := Section{0.2, 0.2, 0.01, 0.004, 0.002}
	for _, build := range []float64{0.0001, 0.0002, 0.0004} {
		b := Section{0.204, 0.204, 0.012, 0.003, build}
		sheet := Section{0.204 + build, 0.204 + build, 0.012 + build/2, 0.003, 0}
		thick, _ := CoaxialTo(a, b, 1, 1, 0.0005, 1e-7)
		thin, _ := CoaxialTo(a, sheet, 1, 1, 0.0005, 1e-7)
		more, _ := thickness(a, b, 0, 0.0005)
		closeTo(t, fmt.Sprint(build), Mu0/12.566370614359172*more/(thick-thin), 1, 0.06)
	}
}
