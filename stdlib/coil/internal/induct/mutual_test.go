package induct

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
)

func TestCoaxialCirclesAgainstLoops(t *testing.T) {
	for _, c := range []struct {
		a, b Section
		z    float64
	}{
		{Circle(0.01, 0.004, 0.003), Circle(0.008, 0.006, 0.005), 0.01},
		{Circle(0.01, 0.004, 0.003), Circle(0.016, 0.004, 0.003), 0.001}, // one around the other
		{Circle(0.01, 0.004, 0.003), Circle(0.002, 0.004, 0.003), -0.002},
		{Circle(0.01, 0.004, 0.003), Circle(0.01, 0.004, 0.003), 0.2},
		{Circle(0.01, 0, 0.003), Circle(0.01, 0.004, 0), 0.006},
	} {
		want := circles(c.a, c.b, c.z, 8)
		got, _ := Coaxial(c.a, c.b, 20, 30, c.z)
		closeTo(t, fmt.Sprint("default ", c), got, 600*want, 2e-5)
		got, _ = CoaxialTo(c.a, c.b, 20, 30, c.z, 1e-7)
		closeTo(t, fmt.Sprint("fine ", c), got, 600*want, 1e-6)
	}
}

// A circle cut into four corners of a rectangle without sides goes the general way.
func TestCircleByTheGeneralRoute(t *testing.T) {
	a, b := Circle(0.01, 0.004, 0.003), Circle(0.012, 0.006, 0.005)
	almost := b
	almost.CoreLength += 1e-9
	want, _ := CoaxialTo(a, b, 1, 1, 0.008, 1e-7)
	got, _ := CoaxialTo(a, almost, 1, 1, 0.008, 1e-7)
	closeTo(t, "coaxial", got, want, 1e-6)
	want, _ = SelfTo(b, 1, 1e-7)
	got, _ = SelfTo(almost, 1, 1e-7)
	closeTo(t, "self", got, want, 1e-6)
}

func TestCoaxialAgainstNeumann(t *testing.T) {
	base := Section{0.07, 0.012, 0.003, 0.005, 0.003}
	for _, c := range []struct {
		b Section
		z float64
	}{
		{Section{0.07, 0.012, 0.003, 0.006, 0.004}, 0.010},
		{Section{0.085, 0.027, 0.008, 0.006, 0.004}, 0.002}, // around
		{Section{0.05, 0.002, 0, 0.006, 0.001}, 0.002},      // inside
		{Section{0.06, 0.01, 0.005, 0.006, 0.004}, 0.010},
		{Circle(0.01, 0.006, 0.004), 0.010},
	} {
		want := filamentSum(filaments(base, 3, 36, Placement{}), filaments(c.b, 3, 36, Placement{Shift: [3]float64{0, 0, c.z}}))
		got, _ := Coaxial(base, c.b, 100, 200, c.z)
		closeTo(t, fmt.Sprint(c), got, 20000*want, 5e-5)
	}
}

var placements = []struct {
	a, b  Section
	place Placement
}{
	{Section{0.07, 0.012, 0.003, 0.005, 0.003}, Section{0.07, 0.012, 0.003, 0.006, 0.004}, Placement{Shift: [3]float64{0, 0.025, 0}}},
	{Section{0.07, 0.012, 0.003, 0.005, 0.003}, Section{0.07, 0.012, 0.006, 0.006, 0.004}, Placement{Shift: [3]float64{0.01, 0.022, 0.002}}},
	{Section{0.02, 0.012, 0.003, 0.005, 0.003}, Circle(0.01, 0.006, 0.004), Placement{Shift: [3]float64{0.005, 0.002, 0.009}}},
	{Section{0.07, 0.012, 0.003, 0.005, 0.003}, Section{0.06, 0.015, 0.006, 0.006, 0.004}, Placement{Shift: [3]float64{0.005, 0.002, 0.009}, Turn: [3]float64{0, 0, 0.3}}},
	{Section{0.07, 0.012, 0.003, 0.005, 0.003}, Section{0.07, 0.012, 0.003, 0.006, 0.004}, Placement{Shift: [3]float64{0, 0.03, 0.005}, Turn: [3]float64{math.Pi, 0, 0}}},
	{Section{0.07, 0.012, 0.003, 0.005, 0.003}, Section{0.07, 0.012, 0.003, 0.006, 0.004}, Placement{Shift: [3]float64{0, 0.03, 0.005}, Turn: [3]float64{0.5, 0.1, 0}}},
	{Section{0.07, 0.012, 0.003, 0.005, 0.003}, Circle(0.01, 0.006, 0.004), Placement{Shift: [3]float64{0, 0, 0.025}, Turn: [3]float64{0.7, 0.1, 0}}},
	{Section{0.07, 0.012, 0.003, 0.005, 0.003}, Section{0.07, 0.012, 0.003, 0.006, 0.004}, Placement{Shift: [3]float64{0, 0, 0.012}, Turn: [3]float64{0, 0.05, 0}}},
}

func TestPairAgainstNeumann(t *testing.T) {
	for _, c := range placements {
		want := filamentSum(filaments(c.a, 3, 24, Placement{}), filaments(c.b, 3, 24, c.place))
		got, err := Pair(c.a, c.b, 10, 20, c.place)
		closeTo(t, fmt.Sprint(c), got, 200*want, 1e-4)
		if err > 5e-4*math.Abs(got) {
			t.Errorf("%v: estimated error %.2g", c, err/got)
		}
		back, _ := Pair(c.b, c.a, 20, 10, c.place.inverse())
		closeTo(t, fmt.Sprint("exchanged ", c), back, got, 1e-4)
	}
}

// Coils that nearly touch, upright and tilted, against a finer level.
func TestPairOfCloseCoils(t *testing.T) {
	s := Section{0.07, 0.0065, 0.003, 0.01, 0.004}
	width := s.CoreWidth + 2*s.Build
	for _, p := range []Placement{
		{Shift: [3]float64{0, width, 0}},
		{Shift: [3]float64{0, width + 0.0002, 0}},
		{Shift: [3]float64{0.003, 0.002, s.Height}},
		{Shift: [3]float64{0.003, 0.002, 0.012}, Turn: [3]float64{0, 0, 1}},
		{Shift: [3]float64{0, width + 0.002, 0}, Turn: [3]float64{0.1, 0, 0}},
		{Shift: [3]float64{0, width + 0.0035, 0.001}, Turn: [3]float64{0.5, 0, 0}},
	} {
		got, err := Pair(s, s, 1, 1, p)
		fine, _ := pairAt(s, s, p)(4)
		closeTo(t, fmt.Sprint(p), got, fine, 5e-5)
		if math.Abs(got-fine) > err {
			t.Errorf("%v: off by %.2g, estimated %.2g", p, got/fine-1, err/fine)
		}
	}
}

// The flux of one coil's field through the other, from Field and not from the potential: the mean
// over the filaments' areas would need a mesh, so a small flat coil is taken, whose area is
// covered by a grid of Gauss points.
func TestPairAgainstFlux(t *testing.T) {
	a := Section{0.07, 0.012, 0.002, 0.01, 0.004}
	small := Section{0.004, 0.003, 0, 0, 1e-9}
	for _, place := range []Placement{
		{Shift: [3]float64{0.01, 0.02, 0.012}, Turn: [3]float64{0.4, -0.9, 0.2}},
		{Shift: [3]float64{0, 0, 0.01}},
		{Shift: [3]float64{0.045, 0.003, -0.004}, Turn: [3]float64{0, 1.2, 0}},
	} {
		rule := gauss(6)
		normal := place.vector([3]float64{0, 0, 1})
		flux := 0.0
		for i, x := range rule.x {
			for j, y := range rule.x {
				at := place.point([3]float64{(x - 0.5) * 0.004, (y - 0.5) * 0.003, 0})
				flux += rule.w[i] * rule.w[j] * 12e-6 * dot(Field(a, 500, at), normal)
			}
		}
		got, _ := PairTo(a, small, 500, 1, place, 1e-6)
		closeTo(t, fmt.Sprint(place), got, flux, 2e-5)
	}
}

// randomPair draws two disjoint windows on one axis: b above a.
func randomPair(r *rand.Rand) (a, b Section, z float64) {
	a, b = randomSection(r), randomSection(r)
	return a, b, (a.Height+b.Height)/2 + 0.0002 + 0.02*r.Float64()
}

func TestCoaxialLaws(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 14))
	for range 30 {
		a, b, z := randomPair(r)
		m, err := Coaxial(a, b, 1, 1, z)
		fine := coaxialAt(a, b, z)(6)
		if off := math.Abs(m - fine); off > 3*err || off > 5e-5*fine {
			t.Errorf("%+v %+v %g: off by %.2g, estimated %.2g", a, b, z, off/fine, err/fine)
		}
		other, _ := Coaxial(b, a, 1, 1, -z)
		closeTo(t, "reciprocity", other, m, 3e-5)
		la, _ := Self(a, 1)
		lb, _ := Self(b, 1)
		if m <= 0 || m*m >= la*lb {
			t.Errorf("%+v %+v: M %g, L %g and %g", a, b, m, la, lb)
		}
		further, _ := Coaxial(a, b, 1, 1, z+0.001)
		if further >= m {
			t.Errorf("%+v %+v: M grows from %g to %g with distance", a, b, m, further)
		}
	}
}

// Pair tends to Coaxial as the shift and the tilt vanish, by each of its three routes.
func TestPairTendsToCoaxial(t *testing.T) {
	r := rand.New(rand.NewPCG(15, 16))
	for range 10 {
		a, b, z := randomPair(r)
		z += 0.003
		want, _ := Coaxial(a, b, 1, 1, z)
		for _, p := range []Placement{
			{}, {Shift: [3]float64{1e-7, 0, 0}}, {Turn: [3]float64{1e-6, 0, 0}}, {Turn: [3]float64{0, 0, math.Pi}},
		} {
			p.Shift[2] = z
			got, _ := Pair(a, b, 1, 1, p)
			closeTo(t, fmt.Sprintf("%+v %+v %+v", a, b, p), got, want, 2e-4)
		}
		got, _ := Pair(a, b, 1, 1, Placement{Shift: [3]float64{0, 0, z}, Turn: [3]float64{0, math.Pi, 0}})
		closeTo(t, "upside down", got, -want, 1e-9)
	}
}

// Far apart two coils are dipoles: M = µ0/4π A1 A2 (3 (n1·e)(n2·e) − n1·n2) / r³.
func TestPairFarApart(t *testing.T) {
	a, b := Section{0.07, 0.012, 0.003, 0.005, 0.003}, Circle(0.01, 0.006, 0.004)
	for _, p := range []Placement{
		{Shift: [3]float64{0, 3, 4}}, {Shift: [3]float64{2, 3, 4}, Turn: [3]float64{0.5, 0.3, 0.1}}, {Shift: [3]float64{0, 0, -5}},
	} {
		r := math.Sqrt(dot(p.Shift, p.Shift))
		one, other := AreaTurns(a, 10, Placement{}), AreaTurns(b, 20, p)
		want := Mu0 / (4 * math.Pi) / (r * r * r) *
			(3*dot(one, p.Shift)*dot(other, p.Shift)/(r*r) - dot(one, other))
		got, _ := Pair(a, b, 10, 20, p)
		closeTo(t, fmt.Sprint(p), got, want, 1e-3)
	}
}

// Coils that share a mirror, or their axis, are summed by halves; moved out of it by a nanometre they are not.
func TestPairsThatShareAMirror(t *testing.T) {
	a, b := Section{0.07, 0.012, 0.003, 0.005, 0.003}, Section{0.05, 0.016, 0.006, 0.006, 0.004}
	for _, p := range []Placement{
		{Shift: [3]float64{0, 0.025, 0.001}}, {Shift: [3]float64{0.075, 0, 0.002}}, {Shift: [3]float64{0.03, 0, 0.012}},
		{Shift: [3]float64{0, -0.025, 0.001}, Turn: [3]float64{0, 0, math.Pi}}, {Shift: [3]float64{0, 0.025, 0}, Turn: [3]float64{math.Pi, 0, 0}},
		{Shift: [3]float64{0, 0, 0.012}, Turn: [3]float64{0, 0, 0.6}},
	} {
		moved := p
		moved.Shift[0], moved.Shift[1] = p.Shift[0]+1e-9, p.Shift[1]+1e-9
		closeTo(t, fmt.Sprint(p), PairValue(a, b, 1, 1, p), PairValue(a, b, 1, 1, moved), 1e-6)
	}
}
