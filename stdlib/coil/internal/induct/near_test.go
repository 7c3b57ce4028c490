package induct

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
)

// The rule takes a peak anywhere near the interval as well as what is smooth.
func TestCrowd(t *testing.T) {
	for _, x0 := range []float64{-0.3, 0, 0.2, 0.7, 1.01} {
		for _, d := range []float64{1e-3, 0.05, 3} {
			var c crowd
			c.about(x0, d, 0, 1, 16, 5, maxOrder)
			peak, cube := 0.0, 0.0
			for i, x := range c.x[:c.n] {
				peak += c.w[i] * d / (d*d + (x-x0)*(x-x0))
				cube += c.w[i] * x * x * x
			}
			want := math.Atan((1-x0)/d) + math.Atan(x0/d)
			closeTo(t, fmt.Sprint("peak ", x0, d), peak, want, 1e-5)
			closeTo(t, fmt.Sprint("cube ", x0, d), cube, 0.25, 1e-5)
		}
	}
}

func TestQuickExp(t *testing.T) {
	for x := -30.0; x < 30; x += 0.0137 {
		closeTo(t, fmt.Sprint("exp ", x), quickExp(x), math.Exp(x), 1e-9)
		if off := math.Abs(arsinh(x) - math.Asinh(x)); off > 4e-15 {
			t.Errorf("arsinh %g: off by %g", x, off)
		}
	}
}

// Pieces above each other and beside each other, corners and sides, in all combinations, against plain rules of very many points.
func TestNearAgainstPlainRules(t *testing.T) {
	corner := piece{arc: true, start: vec{0.002, 0.001}, angle: 0.3, span: math.Pi / 2}
	other := piece{arc: true, start: vec{0.003, 0.0005}, angle: 0.5, span: math.Pi / 2}
	side := piece{start: vec{-0.004, 0.006}, along: direction(0.2), out: direction(0.2 - math.Pi/2), length: 0.02}
	cross := piece{start: vec{0.006, -0.003}, along: direction(1.3), out: direction(1.3 - math.Pi/2), length: 0.015}
	for _, pair := range [][2]piece{{corner, other}, {other, corner}, {corner, side}, {cross, corner}, {side, cross}, {cross, side}} {
		for _, wq := range []window{{0.002, 0.007}, {0.004, 0.0045}, {0.003, 0.003}} {
			for _, z := range []float64{0.0035, 0.0045, 0.009} {
				e := engine{k: newSheets(0.004, 0.003, z).tabled(), wp: window{0.001, 0.006}, wq: wq, gap: z - 0.0035, smooth: axialGap(0.004, 0.003, z), quick: true}
				e.o = ordersAt(defaultLevel)
				e.o.digits += 3
				p, q := pair[0], pair[1]
				nodes := separate(nil, e.wp, e.wq, 16, 16)
				want := productOfAnySides(&p, &q, nodes, e.k)
				closeTo(t, fmt.Sprint(p.arc, q.arc, wq, z), e.near(&p, &q), want, 5e-5)
			}
		}
	}
}

// productOfAnySides is product with 24 points along either piece.
func productOfAnySides(p, q *piece, nodes []node, k kernel) float64 {
	return product(p, q, nodes, k, gauss(24), gauss(28), apart)
}

// Two copies of an arc, whose windows differ and lie above each other, against the sum over pairs of turns.
func TestConcentricAgainstTurns(t *testing.T) {
	for _, span := range []float64{math.Pi / 2, math.Pi, 2 * math.Pi} {
		for _, wq := range []window{{0.002, 0.007}, {0.009, 0.0105}, {0.001, 0.006}, {0.003, 0.003}} {
			p := piece{arc: true, span: span}
			e := engine{k: newSheets(0.004, 0.003, 0.004).tabled(), scale: 0.0005, wp: window{0.001, 0.006}, wq: wq, gap: 0.0005, smooth: axialGap(0.004, 0.003, 0.004), common: true, quick: true}
			e.o = ordersAt(5)
			e.alignedNodes(true)
			want := e.alignedArcs(&p)
			e.o = ordersAt(defaultLevel)
			e.o.digits += 2
			closeTo(t, fmt.Sprint(span, wq), e.concentric(&p), want, 1e-5)
		}
	}
}

// The kernel of many filaments is their sum.
func TestKernelOfManyFilaments(t *testing.T) {
	k := &aboveEachOther{z2: []float64{0, 1e-6, 4e-6, 9e-6}, times: []float64{3, 2, 4, 1}}
	quick := *k
	quick.table = &lookup{exact: k.exactPoint, top: tableTop}
	r := rand.New(rand.NewPCG(7, 8))
	for range 50 {
		x, y, d := 0.02*(r.Float64()-0.5), 0.02*(r.Float64()-0.5), 0.001+0.01*r.Float64()
		point, side, double := 0.0, 0.0, 0.0
		for i, z2 := range k.z2 {
			one := filament{math.Sqrt(z2)}
			point += k.times[i] * one.point(d*d)
			side += k.times[i] * one.side(x, y, d)
			double += k.times[i] * one.double(x, d)
		}
		closeTo(t, "point", k.point(d*d), point, 1e-14)
		closeTo(t, "point by table", quick.point(d*d), point, 3e-8)
		closeTo(t, "side", k.side(x, y, d), side, 1e-12)
		closeTo(t, "double", k.double(x, d), double, 1e-12)
	}
}
