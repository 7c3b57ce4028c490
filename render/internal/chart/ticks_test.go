package chart

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"lode/units"
)

func kind(name string) units.Kind {
	k, _ := units.KindNamed(name)
	return k
}

func labels(a Axis, room int) string {
	var all []string
	for _, t := range a.Ticks(room) {
		if t.Label != "" {
			all = append(all, t.Label)
		}
	}
	return strings.ReplaceAll(strings.Join(all, ", "), "\u00a0", " ")
}

func TestLabels(t *testing.T) {
	hertz := func(low, high float64) Axis { return Axis{"Frequency", kind("Frequency"), true, low, high} }
	for _, c := range []struct {
		axis  Axis
		room  int
		want  string
		title string
	}{
		{hertz(20, 20e3), 12, "20, 50, 100, 200, 500, 1 k, 2 k, 5 k, 10 k, 20 k", "Frequency, Hz"},
		{hertz(20, 20e3), 6, "30, 100, 300, 1 k, 3 k, 10 k", "Frequency, Hz"},
		{hertz(20, 20e3), 4, "100, 1 k, 10 k", "Frequency, Hz"},
		{hertz(2e3, 8e3), 10, "2 k, 3 k, 4 k, 5 k, 6 k, 7 k, 8 k", "Frequency, Hz"},
		{hertz(4100, 4900), 5, "4.2 k, 4.4 k, 4.6 k, 4.8 k", "Frequency, Hz"},
		{hertz(0.02, 0.5), 5, "20 m, 50 m, 100 m, 200 m, 500 m", "Frequency, Hz"},
		{hertz(1e-3, 1e9), 6, "1 m, 1, 1 k, 1 M, 1 G", "Frequency, Hz"},
		{hertz(101, 102), 4, "101, 101.5, 102", "Frequency, Hz"},
		{Axis{"Level", kind("Level"), false, -36, 12}, 9, "−36, −30, −24, −18, −12, −6, 0, 6, 12", "Level, dB"},
		{Axis{"Level", kind("Level"), false, -40, 10}, 6, "−40, −30, −20, −10, 0, 10", "Level, dB"},
		{Axis{"Angle", kind("Angle"), false, -math.Pi / 2, math.Pi / 2}, 5, "−90, −45, 0, 45, 90", "Angle, °"},
		{Axis{"Height", kind("Length"), false, 0, 12e-3}, 5, "0, 5, 10", "Height, mm"},
		{Axis{"Warm", kind("Temperature"), false, 273.15, 313.15}, 5, "0, 10, 20, 30, 40", "Warm, °C"},
		{Axis{"", kind("Resistance"), false, 5900, 6300}, 5, "5.9, 6, 6.1, 6.2, 6.3", "kΩ"},
		{Axis{"turns", units.Number(), false, 0, 10000}, 5, "0, 5000, 10000", "turns"},
	} {
		if got := labels(c.axis, c.room); got != c.want || c.axis.Title() != c.title {
			t.Errorf("%+v in %d: got %q (%s), want %q (%s)", c.axis, c.room, got, c.axis.Title(), c.want, c.title)
		}
	}
}

// Whatever the range, there are two labels or more, none outside, none twice, in order.
func TestTicksLaws(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 5))
	kinds := append(units.Kinds(), units.Number())
	for range 20000 {
		k := kinds[random.IntN(len(kinds))]
		low := math.Pow(10, 24*random.Float64()-12)
		if k.Form == "point" {
			low = 200 + 300*random.Float64()
		}
		a := Axis{"x", k, random.IntN(2) == 0 && k.Form != "point", low, low * math.Pow(10, 1e-3+12*random.Float64()*random.Float64())}
		if !a.Log && random.IntN(2) == 0 {
			a.Min = -a.Max * random.Float64()
		}
		room := 2 + random.IntN(12)
		checkTicks(t, a, room)
	}
}

func checkTicks(t *testing.T, a Axis, room int) {
	t.Helper()
	ticks := a.Ticks(room)
	seen, count, last := map[string]bool{}, 0, math.Inf(-1)
	for _, tick := range ticks {
		if !a.Holds(tick.At) || !(tick.At > last) {
			t.Fatalf("%+v in %d: tick %g outside or out of order", a, room, tick.At)
		}
		last = tick.At
		if tick.Label == "" {
			continue
		}
		if seen[tick.Label] {
			t.Fatalf("%+v in %d: label %q twice in %v", a, room, tick.Label, ticks)
		}
		seen[tick.Label] = true
		count++
	}
	if count < 2 || count > max(room, 5) || len(ticks) > 200 {
		t.Fatalf("%+v in %d: %d labels, %d ticks: %v", a, room, count, len(ticks), ticks)
	}
}
