package dim

import (
	"math/rand/v2"
	"testing"
)

// The dimensions of this test are written out by hand: length, mass, time, current,
// temperature, angle, in halves.
var (
	number      = Vector{}
	second      = Vector{2: 2}
	ohm         = Vector{4, 2, -6, -4}
	henry       = Vector{4, 2, -4, -4, 0, -2} // Ω·s over an angle: X = ωL
	farad       = Vector{-4, -2, 8, 4, 0, -2} // s/Ω over an angle: B = ωC
	hertz       = Vector{2: -2}
	radPerSec   = Vector{2: -2, 5: 2}
	metre       = Vector{0: 2}
	squareMetre = Vector{0: 4}
)

func root(t *testing.T, v Vector) Vector {
	t.Helper()
	r, ok := v.Power(1)
	if !ok {
		t.Fatalf("%v has no root", v)
	}
	return r
}

// TestFormulas goes through the formulas of every handbook on alternating current.
func TestFormulas(t *testing.T) {
	tau := root(t, henry.Times(farad))
	for _, c := range []struct {
		name      string
		got, want Vector
	}{
		{"1/√(LC)", tau.Inverse(), radPerSec},
		{"1/(2π√(LC))", Turn(1).Times(tau).Inverse(), hertz},
		{"R/L", ohm.Over(henry), radPerSec},
		{"1/(RC)", ohm.Times(farad).Inverse(), radPerSec},
		{"R/(2πL)", ohm.Over(Turn(1).Times(henry)), hertz},
		{"ωL", radPerSec.Times(henry), ohm},
		{"2πfL", Turn(1).Times(hertz).Times(henry), ohm},
		{"1/(ωC)", radPerSec.Times(farad).Inverse(), ohm},
		{"√(L/C)", root(t, henry.Over(farad)), ohm},
		{"2πf", Turn(1).Times(hertz), radPerSec},
		{"ω/(2π)", radPerSec.Over(Turn(1)), hertz},
		{"ωL/R", radPerSec.Times(henry).Over(ohm), number},
		{"1/period", second.Inverse(), hertz},
	} {
		if !c.got.Same(c.want) {
			t.Errorf("%s: got %v, want %v", c.name, c.got, c.want)
		}
	}
	if tau.Inverse().Same(hertz) || hertz.Same(radPerSec) {
		t.Error("a frequency passes for an angular frequency")
	}
	if !tau.Same(second) {
		t.Error("√(LC) is no time")
	}
	if area := Turn(1).Times(metre).Times(metre); !area.Same(squareMetre) {
		t.Error("πr² is no area")
	}
}

func TestLaws(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	draw := func() (v Vector) {
		for i := range v {
			v[i] = int8(random.IntN(13) - 6)
		}
		return v
	}
	for range 2000 {
		a, b := draw(), draw()
		if a.Times(b) != b.Times(a) || a.Times(b).Over(b) != a || a.Inverse().Inverse() != a || a.Over(a) != number {
			t.Fatalf("%v and %v break the laws of a product", a, b)
		}
		square, _ := a.Power(4)
		if square != a.Times(a) {
			t.Fatalf("%v squared: %v", a, square)
		}
		if back, ok := square.Power(1); !ok || back != a {
			t.Fatalf("the root of %v squared: %v", a, back)
		}
		if cube, _ := a.Power(6); true {
			if back, ok := cube.Third(); !ok || back != a {
				t.Fatalf("the cube root of %v cubed: %v", a, back)
			}
		}
		if a.Visible().Visible() != a.Visible() || !a.Same(a.Visible()) && a.Visible() != hertz && a != radPerSec {
			t.Fatalf("%v: what is visible changes", a)
		}
	}
	if _, ok := (Vector{0: 1}).Power(1); ok {
		t.Error("a quarter of an exponent was given out")
	}
}
