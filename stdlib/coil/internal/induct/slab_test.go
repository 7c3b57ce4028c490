package induct

import (
	"math"
	"math/rand/v2"
	"testing"
)

// A block of current is a side at each depth, one after the other.
func TestBlockIsSidesInARow(t *testing.T) {
	r := rand.New(rand.NewPCG(31, 32))
	for range 300 {
		k := newSheets(0.2+r.Float64(), 0.2+r.Float64(), 2*r.Float64()*float64(r.IntN(2)))
		if r.IntN(2) == 0 {
			h := 0.1 + r.Float64()
			k = newSheets(h, h, 0)
		}
		x, length := r.Float64()*float64(r.IntN(3)), 0.5+3*r.Float64()
		low := 2*r.Float64() - 1
		high := low + 0.1 + r.Float64()
		got := k.block(x+length, high) - k.block(x, high) - k.block(x+length, low) + k.block(x, low)
		want := 0.0
		cut := math.Min(math.Max(0, low), high) // the side's potential bends at d = 0
		for _, part := range [2]window{{low, cut}, {cut, high}} {
			rule := cubed(30)
			for i, v := range rule.x {
				d := part.to - v*part.width()
				if part.from == cut {
					d = part.from + v*part.width()
				}
				want += rule.w[i] * part.width() * k.side(x, x+length, d)
			}
		}
		book.Note(t, "block of current", math.Abs(got/want-1))
		if math.Abs(got-want) > 1e-9*math.Abs(want) {
			t.Errorf("x %g to %g, y %g to %g, %v: got %.12g, want %.12g", x, x+length, low, high, k.u, got, want)
		}
	}
}
