package induct

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
)

// randomSection draws a coil between 5 and 100 mm, of all shapes, from deep to thin.
func randomSection(r *rand.Rand) Section {
	s := Section{CoreLength: 0.005 + 0.095*r.Float64(), CoreWidth: 0.004 + 0.03*r.Float64()}
	least := min(s.CoreLength, s.CoreWidth) / 2
	switch r.IntN(4) {
	case 0: // sharp corners
	case 1:
		s.CornerRadius = least
	case 2:
		s.CornerRadius = least * r.Float64()
	case 3:
		s = Circle(least, 0, 0)
	}
	s.Height = math.Exp(math.Log(0.001) + r.Float64()*math.Log(20))
	s.Build = math.Exp(math.Log(0.0003) + r.Float64()*math.Log(30))
	return s
}

// anySection draws windows from 1/200 to twice as high as the core is long and from 1/500 to all of it deep, around cores of up to
// forty times as long as wide.
func anySection(r *rand.Rand) Section {
	between := func(a, b float64) float64 { return a * math.Pow(b/a, r.Float64()) }
	s := Section{CoreLength: between(0.003, 0.3)}
	s.CoreWidth = min(0.3, max(0.003, s.CoreLength*between(1.0/40, 40)))
	least := min(s.CoreLength, s.CoreWidth) / 2
	s.CornerRadius = []float64{0, least, least * r.Float64(), least * r.Float64()}[r.IntN(4)]
	size := max(s.CoreLength, s.CoreWidth)
	s.Height, s.Build = between(size/200, size*2), between(size/500, size)
	return s
}

// The default level and the next against the sixth, and the estimate against the error.
func TestAccuracyOnRandomCoils(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	worst, poor := 0.0, 0
	for range 300 {
		s := anySection(r)
		got, err := Self(s, 1)
		fine := selfAt(s)(6)
		off := math.Abs(got/fine - 1)
		worst = max(worst, off)
		book.Note(t, "inductance against a finer level", off)
		if off > 1e-5 {
			poor++
		}
		if off > 3*err/got+1e-7 {
			t.Errorf("%+v: error %.2g, estimated %.2g", s, off, err/got)
		}
		closeTo(t, fmt.Sprint(s, " to 1e-5"), selfAt(s)(3), fine, sure)
	}
	if worst > 3e-5 || poor > 6 {
		t.Errorf("%d of 300 coils are off by more than 1e-5, one by %.2g", poor, worst)
	}
	t.Logf("worst %.2g, %d above 1e-5", worst, poor)
}

// Shapes at the edge of what the method is made for: needle cores, sides of micrometres between
// two corners, windows thin or deep beyond use, cores of no width.
func TestDefaultAccuracyAtExtremes(t *testing.T) {
	for _, s := range []Section{
		{1, 0.005, 0, 0.001, 0.001}, {1, 0.005, 0.0025, 0.001, 0.0001}, {0.1, 0.1, 0.0001, 0.1, 0.0001},
		{0.07, 0.0065, 0.003249, 0.01, 0.004}, {0.07, 0.0065, 0.003, 0.01, 0.004}, {0.07, 0.0001, 0, 0.01, 0.01},
		{0.07, 0.01, 0.002, 1e-5, 0.004}, {0.07, 0.01, 0.002, 0.004, 1e-6}, {0.07, 0.01, 0.002, 1e-5, 0},
		Circle(0, 0.01, 0.01), Circle(0, 0.001, 0.03), Circle(0.1, 10, 0.01), {0.01, 0.01, 0, 1, 0.001},
	} {
		got, err := Self(s, 1)
		fine := selfAt(s)(7)
		closeTo(t, fmt.Sprint(s), got, fine, 4e-5)
		if math.Abs(got-fine) > 2*err {
			t.Errorf("%v: off by %.2g, estimated %.2g", s, got/fine-1, err/fine)
		}
	}
	if l, _ := Self(Circle(0.01, 0, 0), 1); !math.IsInf(l, 1) {
		t.Errorf("a filament without section: got %g, want +Inf", l)
	}
}

// The windows of no height and of no build are limits.
func TestThinWindowsAreLimits(t *testing.T) {
	for _, s := range []Section{{0.07, 0.01, 0.002, 0, 0.004}, {0.07, 0.01, 0.002, 0.004, 0}, Circle(0.01, 0, 0.004)} {
		thin := s
		if s.Height == 0 {
			thin.Height = 1e-7
		} else {
			thin.Build = 1e-8
		}
		zero, _ := SelfTo(s, 1, 1e-6)
		small, _ := SelfTo(thin, 1, 1e-6)
		closeTo(t, fmt.Sprint(s), small, zero, 3e-5)
	}
}

func TestSelfToReachesWhatIsAsked(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 25 {
		s := randomSection(r)
		fine := selfAt(s)(9)
		for _, relative := range []float64{1e-4, 1e-6, 1e-7} {
			got, _ := SelfTo(s, 1, relative)
			closeTo(t, fmt.Sprintf("%+v to %g", s, relative), got, fine, 1.5*relative)
		}
	}
}

// sampled is the defining sixfold average of T·T'/R over two points of the winding, on the
// additive sequence of M. Roberts (2018) with a generalised golden ratio: no kernel, no rule and
// no piece of the package is in it.
func sampled(s Section, n int) float64 {
	const g = 1.1127756842787055 // root of x⁷ = x + 1
	var step, x [6]float64
	for i := range step {
		step[i] = math.Pow(g, -float64(i+1))
	}
	sum := 0.0
	for range n {
		for i := range x {
			x[i] = math.Mod(x[i]+step[i], 1)
		}
		p, a, la := randomPoint(s, x[0], x[1], x[2])
		q, b, lb := randomPoint(s, x[3], x[4], x[5])
		d := [3]float64{p[0] - q[0], p[1] - q[1], p[2] - q[2]}
		sum += la * lb * (a.x*b.x + a.y*b.y) / math.Sqrt(dot(d, d))
	}
	return Mu0 / (4 * math.Pi) * sum / float64(n)
}

// randomPoint takes three numbers in [0,1) to a depth, a height and a place along the turn.
func randomPoint(s Section, u, v, w float64) (point [3]float64, tangent vec, length float64) {
	t := u * s.Build
	length = s.TurnLength(t)
	a, b := s.straights()
	r := s.CornerRadius + t
	way := w * length
	for quarter := range 4 {
		angle := float64(quarter) * math.Pi / 2
		centre := vec{a / 2 * [4]float64{1, -1, -1, 1}[quarter], b / 2 * [4]float64{1, 1, -1, -1}[quarter]}
		side := [2]float64{a, b}[quarter%2]
		if arc := r * math.Pi / 2; way < arc || quarter == 3 && way-arc >= side {
			n := direction(angle + way/r)
			at := centre.plus(n.times(r))
			return [3]float64{at.x, at.y, v * s.Height}, vec{-n.y, n.x}, length
		} else if way -= arc; way < side {
			e := direction(angle + math.Pi)
			at := centre.plus(vec{e.y, -e.x}.times(r)).plus(e.times(way))
			return [3]float64{at.x, at.y, v * s.Height}, e, length
		}
		way -= side
	}
	panic("induct: a point beyond the turn")
}

func TestSelfAgainstSampling(t *testing.T) {
	for _, s := range []Section{
		{0.07, 0.012, 0, 0.01, 0.004}, {0.03, 0.03, 0.003, 0.01, 0.008}, {0.05, 0.01, 0.005, 0.006, 0.003}, Circle(0.01, 0.01, 0.005),
	} {
		got, _ := Self(s, 1)
		closeTo(t, fmt.Sprintf("%+v", s), got, sampled(s, 600_000), 1e-3)
	}
}

func TestSelfScales(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 20 {
		s := randomSection(r)
		k := 0.1 + 5*r.Float64()
		big := Section{k * s.CoreLength, k * s.CoreWidth, k * s.CornerRadius, k * s.Height, k * s.Build}
		one, _ := Self(s, 1)
		many, _ := Self(big, 321)
		closeTo(t, "size and turns", many, k*321*321*one, 1e-6)
		turned := s
		turned.CoreLength, turned.CoreWidth = s.CoreWidth, s.CoreLength
		other, _ := Self(turned, 1)
		closeTo(t, "length and width exchanged", other, one, 1e-9)
	}
}

// A longer, wider core gives more, a higher window less.
func TestSelfIsMonotone(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	for range 20 {
		s := randomSection(r)
		long, wide, high := s, s, s
		long.CoreLength *= 1.02
		wide.CoreWidth *= 1.02
		high.Height *= 1.02
		l, _ := Self(s, 1)
		for _, more := range []Section{long, wide} {
			if m, _ := Self(more, 1); m <= l {
				t.Errorf("%+v: %g, enlarged %g", s, l, m)
			}
		}
		if m, _ := Self(high, 1); m >= l {
			t.Errorf("%+v: %g, higher %g", s, l, m)
		}
	}
}

// A winding cut in two, by height or by build, is the sum of its parts and twice their
// mutual inductance.
func TestSplitting(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 10))
	for range 30 {
		s := randomSection(r)
		whole, _ := Self(s, 1)
		x := 0.2 + 0.6*r.Float64()
		up, low := s, s
		up.Height, low.Height = x*s.Height, (1-x)*s.Height
		closeTo(t, fmt.Sprintf("height %+v", s), joinedParts(up, low, x, s.Height/2), whole, 2e-5)
		in, out := s, s
		in.Build, out.Build = x*s.Build, (1-x)*s.Build
		out.CoreLength += 2 * in.Build
		out.CoreWidth += 2 * in.Build
		out.CornerRadius += in.Build
		closeTo(t, fmt.Sprintf("build %+v", s), joinedParts(in, out, x, 0), whole, 3e-5)
	}
}

func joinedParts(a, b Section, share, distance float64) float64 {
	la, _ := Self(a, share)
	lb, _ := Self(b, 1-share)
	m, _ := Coaxial(a, b, share, 1-share, distance)
	return la + lb + 2*m
}

// The closed forms against a rule that is exact for them, and against the free outline.
func TestMeanTurn(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	rule := gauss(4)
	for range 10 {
		s := randomSection(r)
		length, area := 0.0, 0.0
		for i, x := range rule.x {
			length += rule.w[i] * s.TurnLength(x*s.Build)
			area += rule.w[i] * s.TurnArea(x*s.Build)
		}
		closeTo(t, "mean length", s.MeanTurnLength(), length, 1e-12)
		closeTo(t, "mean area", s.MeanTurnArea(), area, 1e-12)
		o := sectionOutline(s)
		l, a := o.TurnLengthAndArea()
		closeTo(t, "outline's length", l, length, 1e-12)
		closeTo(t, "outline's area", a, area, 1e-12)
	}
}
