package chart

import (
	"math"
	"math/rand/v2"
	"testing"
)

func TestStackNeverOverlaps(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for range 3000 {
		n := 1 + random.IntN(9)
		want, size := make([]float64, n), make([]float64, n)
		for i := range want {
			want[i], size[i] = 400*random.Float64()-50, 10+20*random.Float64()
		}
		got, ok := Stack(want, size, 0, 300)
		if !ok {
			t.Fatalf("%v of %v do not fit in 300", want, size)
		}
		for i := range got {
			if got[i]-size[i]/2 < -1e-9 || got[i]+size[i]/2 > 300+1e-9 {
				t.Fatalf("%v: %d lies outside: %v", want, i, got)
			}
			for j := range i {
				if math.Abs(got[i]-got[j]) < (size[i]+size[j])/2-1e-9 {
					t.Fatalf("%v of %v: %d and %d overlap: %v", want, size, i, j, got)
				}
			}
		}
	}
}

func TestStackMovesLittle(t *testing.T) {
	for _, c := range []struct{ want, got []float64 }{
		{[]float64{50, 100}, []float64{50, 100}},
		{[]float64{100, 100}, []float64{90, 110}},
		{[]float64{105, 95, 200}, []float64{110, 90, 200}},
		{[]float64{100, 100, 100}, []float64{80, 100, 120}},
		{[]float64{0, 5}, []float64{10, 30}},
	} {
		got, _ := Stack(c.want, []float64{20, 20, 20}[:len(c.want)], 0, 300)
		for i := range got {
			if math.Abs(got[i]-c.got[i]) > 1e-9 {
				t.Errorf("%v: got %v, want %v", c.want, got, c.got)
				break
			}
		}
	}
	if _, ok := Stack([]float64{1, 2}, []float64{20, 20}, 0, 30); ok {
		t.Error("two of 20 were fitted into 30")
	}
}

func TestLabelsKeepClear(t *testing.T) {
	random := rand.New(rand.NewPCG(4, 4))
	placed := 0
	for range 300 {
		f := Field{Frame: Box{0, 0, 600, 300}}
		for range 12 {
			p := Point{600 * random.Float64(), 300 * random.Float64()}
			before := len(f.Taken)
			box, ok := f.Label(p, 40+80*random.Float64(), 15)
			if !ok {
				continue
			}
			placed++
			if !box.Within(f.Frame) || meets(box, f.Taken[:before]) {
				t.Fatalf("label at %v overlaps or leaves the frame", box)
			}
		}
	}
	if placed < 3000 {
		t.Errorf("only %d of 3600 labels found a place", placed)
	}
}

func TestLabelAvoidsCurve(t *testing.T) {
	f := Field{Frame: Box{0, 0, 600, 300}, Curves: [][]Point{{{0, 150}, {300, 150}, {600, 20}}}}
	box, ok := f.Label(Point{300, 150}, 90, 15)
	if !ok || f.covered(box) > 0 {
		t.Errorf("label at %v lies on the curve", box)
	}
}

func TestThin(t *testing.T) {
	var curve []Point
	for i := range 2000 {
		x := float64(i) / 3
		curve = append(curve, Point{x, 150 + 100*math.Sin(x/40)*math.Exp(-x/300)})
	}
	thin := Thin(curve, 0.1)
	if len(thin) > 250 || thin[0] != curve[0] || thin[len(thin)-1] != curve[len(curve)-1] {
		t.Errorf("%d of %d points left", len(thin), len(curve))
	}
	for _, p := range curve {
		least := math.Inf(1)
		for i := 1; i < len(thin); i++ {
			least = min(least, fromSegment(p, thin[i-1], thin[i]))
		}
		if least > 0.1+1e-9 {
			t.Fatalf("%v is %.3f from the thinned line", p, least)
		}
	}
}
