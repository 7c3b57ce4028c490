package chance

import (
	"fmt"
	"math"
	"slices"
	"testing"
)

// TestSame holds the beginning of a sequence: records of notebooks rest on it. The first
// number follows from the definition of the generator, computed here by big steps of its
// own: see step.
func TestSame(t *testing.T) {
	d := Seed(7)
	hi, lo := uint64(7), uint64(streams)
	for i := range 1000 {
		var want uint64
		hi, lo, want = step(hi, lo)
		u, err := d.Between(0, 1)
		if err != nil || u != float64(want>>11)/(1<<53) {
			t.Fatalf("draw %d: got %v, want %v", i, u, float64(want>>11)/(1<<53))
		}
	}
}

// step is the generator from its definition: a 128-bit state times a multiplier plus an
// increment, and the output function DXSM (double xor shift multiply) with the cheap
// multiplier 0xda942042e4dd58b5 for both, as in NumPy's documentation of PCG64DXSM.
func step(hi, lo uint64) (uint64, uint64, uint64) {
	const multiplierHi, multiplierLo, incrementHi, incrementLo = 2549297995355413924, 4865540595714422341, 6364136223846793005, 1442695040888963407
	h, l := product(lo, multiplierLo)
	h += hi*multiplierLo + lo*multiplierHi
	l += incrementLo
	if l < incrementLo {
		h++
	}
	h += incrementHi
	x := h
	x ^= x >> 32
	x *= 0xda942042e4dd58b5
	x ^= x >> 48
	x *= l | 1
	return h, l, x
}

// product multiplies by schoolbook halves.
func product(a, b uint64) (hi, lo uint64) {
	const half = 1<<32 - 1
	a0, a1, b0, b1 := a&half, a>>32, b&half, b>>32
	middle := a1*b0 + (a0*b0)>>32
	rest := middle&half + a0*b1
	return a1*b1 + middle>>32 + rest>>32, a * b
}

// distance is the largest difference between the distribution of a sample and the one
// that it should have (Kolmogorov-Smirnov).
func distance(sample []float64, distribution func(float64) float64) float64 {
	slices.Sort(sample)
	worst, n := 0.0, float64(len(sample))
	for i, x := range sample {
		p := distribution(x)
		worst = max(worst, math.Abs(p-float64(i)/n), math.Abs(p-float64(i+1)/n))
	}
	return worst
}

// TestDistributions compares with the distributions; 1.95/√n is exceeded by chance in one
// of a thousand seeds (N. Smirnov, Table for Estimating the Goodness of Fit of Empirical
// Distributions, Annals of Mathematical Statistics 19, 1948).
func TestDistributions(t *testing.T) {
	const n = 20000
	for seed := range 5 {
		d := Seed(seed)
		var flat, normal []float64
		for range n {
			x, _ := d.Between(-2, 3)
			y, _ := d.Around(5, 0.5)
			flat, normal = append(flat, x), append(normal, y)
		}
		if got := distance(flat, func(x float64) float64 { return (x + 2) / 5 }); got > 1.95/math.Sqrt(n) {
			t.Errorf("seed %d, Between: distance %.4f", seed, got)
		}
		if got := distance(normal, func(x float64) float64 { return math.Erfc((5-x)/0.5/math.Sqrt2) / 2 }); got > 1.95/math.Sqrt(n) {
			t.Errorf("seed %d, Around: distance %.4f", seed, got)
		}
	}
}

// TestIndependence looks at neighbours within a sequence and across seeds: the correlation
// of n independent pairs stays below 4/√n.
func TestIndependence(t *testing.T) {
	const n = 20000
	a, b := Seed(1), Seed(2)
	within, across, last := 0.0, 0.0, 0.0
	for range n {
		x, y := a.normal(), b.normal()
		within, across, last = within+x*last, across+x*y, x
	}
	if limit := 4 / math.Sqrt(n); math.Abs(within/n) > limit || math.Abs(across/n) > limit {
		t.Errorf("correlation within %.4f and across %.4f, want below %.4f", within/n, across/n, limit)
	}
}

func TestWhole(t *testing.T) {
	d, count := Seed(3), map[int]int{}
	for range 60000 {
		x, err := d.Whole(-2, 3)
		if err != nil {
			t.Fatal(err)
		}
		count[x]++
	}
	// Chi-squared with 5 degrees of freedom: 20.5 is exceeded in one of a thousand.
	sum := 0.0
	for x := -2; x <= 3; x++ {
		sum += math.Pow(float64(count[x])-10000, 2) / 10000
	}
	if len(count) != 6 || sum > 20.5 {
		t.Errorf("got %v, chi-squared %.1f", count, sum)
	}
	if x, err := d.Whole(4, 4); x != 4 || err != nil {
		t.Errorf("one choice: got %d, %v", x, err)
	}
	if _, err := d.Whole(math.MinInt, math.MaxInt); err != nil {
		t.Error(err)
	}
}

func TestBounds(t *testing.T) {
	d := Seed(-1)
	for range 10000 {
		if x, err := d.Between(0.1, 0.3); err != nil || x < 0.1 || x > 0.3 {
			t.Fatalf("got %v, %v", x, err)
		}
	}
	if x, err := d.Between(2, 2); x != 2 || err != nil {
		t.Errorf("got %v, %v", x, err)
	}
	if x, err := d.Around(2, 0); x != 2 || err != nil {
		t.Errorf("got %v, %v", x, err)
	}
}

func TestRefusals(t *testing.T) {
	d, nan, inf := Seed(1), math.NaN(), math.Inf(1)
	for _, pair := range [][2]float64{{2, 1}, {nan, 1}, {1, nan}, {-inf, 1}, {1, inf}} {
		if _, err := d.Between(pair[0], pair[1]); err == nil {
			t.Errorf("Between%v is not refused", pair)
		}
	}
	for _, pair := range [][2]float64{{1, -1}, {nan, 1}, {1, nan}, {inf, 1}, {1, inf}} {
		if _, err := d.Around(pair[0], pair[1]); err == nil {
			t.Errorf("Around%v is not refused", pair)
		}
	}
	if _, err := d.Whole(2, 1); err == nil || fmt.Sprint(err) == "" {
		t.Error("Whole(2, 1) is not refused")
	}
}
