package study

import (
	"math"
	"strings"
	"testing"

	"lode/units"
)

func resonance(c units.Capacitance) units.Frequency {
	return units.Frequency(1 / (2 * math.Pi * math.Sqrt(2.2*float64(c))))
}

// TestSolve compares with the closed form C = 1/(ω²L).
func TestSolve(t *testing.T) {
	for _, f := range []units.Frequency{3 * units.Kilohertz, 5 * units.Kilohertz, 9 * units.Kilohertz} {
		got, err := Solve(resonance, f, 10e-12, 5e-9)
		want := 1 / (math.Pow(2*math.Pi*float64(f), 2) * 2.2)
		if err != nil || math.Abs(float64(got)/want-1) > 1e-11 {
			t.Errorf("%v: got %v, %v; want %g F", f, got, err, want)
		}
	}
}

func TestExtremes(t *testing.T) {
	power := func(load units.Resistance) units.Power { // of 1 V behind 50 Ω, greatest at 50 Ω (Jacobi's law, 1840)
		return units.Power(float64(load) / math.Pow(50+float64(load), 2))
	}
	got, err := Greatest(power, 1, 1000)
	if err != nil || math.Abs(float64(got)/50-1) > 1e-6 {
		t.Errorf("matched load: got %v, %v; want 50 Ω", got, err)
	}
	low, err := Least(func(x float64) float64 { return math.Cosh(x - 1) }, -3, 3)
	if err != nil || math.Abs(low-1) > 1e-6 {
		t.Errorf("least of cosh(x-1): got %g, %v", low, err)
	}
}

func TestOver(t *testing.T) {
	r, err := Over(func(d units.Length) units.Area { return units.Area(float64(d) * float64(d)) }, 1e-3, 3e-3, 3)
	if err != nil {
		t.Fatal(err)
	}
	f := r.Named("squares").Frame()
	if f.Title != "squares" || f.Columns[0].Kind.Type != "Length" || f.Columns[1].Kind.Type != "Area" || f.Columns[1].Values[1] != 4e-6 {
		t.Errorf("got %+v", f)
	}
	d, err := OverDecades(func(f units.Frequency) units.Frequency { return f }, 20, 20e3, 4)
	if x := d.Frame().Columns[0].Values; err != nil || math.Abs(x[1]/200-1) > 1e-12 || x[3] != 20e3 {
		t.Errorf("decades: got %v, %v", x, err)
	}
}

func TestRefuses(t *testing.T) {
	_, err := Solve(resonance, 50*units.Kilohertz, 50e-12, 5e-9)
	if err == nil || !strings.Contains(err.Error(), "want 50 kHz in between") {
		t.Errorf("out of reach: got %v", err)
	}
	for name, err := range map[string]error{
		"turned":  second(Solve(resonance, 1, 5e-9, 50e-12)),
		"nil":     second(Solve[units.Capacitance, units.Frequency](nil, 1, 1, 2)),
		"nan":     second(Least(func(float64) float64 { return math.NaN() }, 0, 1)),
		"inf":     second(Least(math.Cos, 0, math.Inf(1))),
		"points":  third(Over(math.Cos, 0, 1, 1)),
		"decades": third(OverDecades(math.Cos, 0, 1, 5)),
	} {
		if err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}

func second[X any](_ X, err error) error { return err }
func third(_ Run, err error) error       { return err }

// TestJumps wants an error where a function leaps over the value, and none for the small steps of whole numbers.
func TestJumps(t *testing.T) {
	if x, err := Solve(func(x float64) float64 { return math.Copysign(1, x-3) }, 0.25, 0, 10); err == nil || !strings.Contains(err.Error(), "jumps over") {
		t.Errorf("step: got %g, %v", x, err)
	}
	if x, err := Solve(func(x float64) float64 { return 1 / (x - math.Pi) }, 0, 0, 10); err == nil || !strings.Contains(err.Error(), "jumps over") {
		t.Errorf("pole: got %g, %v", x, err)
	}
	if x, err := Solve(func(turns float64) float64 { return math.Floor(turns) * 2 }, 61, 10, 60); err != nil || math.Abs(x-31) > 1e-9 {
		t.Errorf("whole turns: got %g, %v, want 31", x, err)
	}
}
