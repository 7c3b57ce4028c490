package coil

import (
	"math"
	"math/rand"
	"strings"
	"testing"

	"lode/units"
)

// Map of mutual checks of hum and coupling:
//
//	Hum, uniform       2πf·N·B·A·cos; the checks of the kernel
//	Hum, wire          closed form for a flat rectangle; uniform field far away; the wire turned in place of the coil
//	pairs              equal coils in a uniform field leave nothing; mismatch by hand; gradient of 1/r by hand
//	Correction         residual after it; turns one more and one less are no better
//	InSeries           a winding cut in two is the winding; dipoles far apart; symmetry

func induced(t *testing.T, c Chain, source HumSource) float64 {
	t.Helper()
	v, err := c.Hum(source, 50*units.Hertz)
	if err != nil {
		t.Fatal(err)
	}
	return float64(v)
}

func inSeries(t *testing.T, coils ...Placed) Chain {
	t.Helper()
	c, err := InSeries(coils...)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func TestUniformHum(t *testing.T) {
	random := rand.New(rand.NewSource(8))
	for range 20 {
		c := wound(t, randomFormer(random), gauge(t, 42), 200+random.Intn(6000))
		angle, tilt := 1.4*random.Float64(), 0.0
		want := 2 * math.Pi * 50 * float64(c.Turns()) * 1e-7 * float64(c.Area())
		got, err := c.Hum(UniformField{FluxDensity: 1e-7, Angle: units.Angle(angle), Bearing: 1}, 50*units.Hertz)
		if err != nil {
			t.Fatal(err)
		}
		close(t, "hum, slanted field: 2πf·N·B·A", float64(got), want*math.Cos(angle), 1e-9)
		tilt = 0.7
		tilted := induced(t, Chain{coils: []Placed{{Winding: c, X: 0.1, Tilt: units.Angle(tilt)}}}, UniformField{FluxDensity: 1e-7})
		close(t, "hum, tilted coil: 2πf·N·B·A", tilted, want*math.Cos(tilt), 1e-9)
	}
}

func TestWireHum(t *testing.T) {
	// one layer on a sharp rectangle, nearly flat: the closed form of a turn beside a wire, Griffiths, Introduction
	// to Electrodynamics, with the mean turn's size
	f := Rectangle{CoreLength: 60 * mm, CoreWidth: 20 * mm, Height: 0.2 * mm}
	c := wound(t, f, gauge(t, 44), 2)
	a, b, d := 0.06+float64(c.Build()), 0.02+float64(c.Build()), 0.15
	got, err := c.Hum(MainsWire{Current: 3, Distance: units.Length(d), Bearing: 90 * units.Degree}, 50*units.Hertz)
	if err != nil {
		t.Fatal(err)
	}
	close(t, "hum of a wire, closed form", float64(got), 2*math.Pi*50*2*2e-7*3*a*math.Log((d+b/2)/(d-b/2)), 1e-3)
	far := MainsWire{Current: 3, Distance: 50, Bearing: 1, Elevation: 0.3}
	level, _ := c.Hum(far, 50)
	uniform, _ := c.Hum(UniformField{FluxDensity: units.FluxDensity(2e-7 * 3 / 50), Angle: 0.3}, 50)
	close(t, "hum of a wire, uniform field", float64(level), float64(uniform), 2e-3)
	far.Elevation, far.Twist = 0, 90*units.Degree
	if upright, _ := c.Hum(far, 50); float64(upright) > 1e-6*float64(level) {
		t.Errorf("a wire along the axis hums: %v", upright)
	}
}

// A tilted coil near a wire hums as an upright one does near a wire that is turned back, also where the wire runs close by; nearer
// than a millimetre and through the core there is no answer.
func TestWireNearTiltedCoil(t *testing.T) {
	c := wound(t, steel, gauge(t, 42), 5000)
	for _, d := range []units.Length{25 * mm, 60 * mm, 0.5} {
		for _, tilt := range []units.Angle{20 * units.Degree, -75 * units.Degree} {
			tilted := inSeries(t, Placed{Winding: c, Tilt: tilt})
			// beside the coil along y, raised by 30° and 30° less the tilt; both wires run along x
			got := induced(t, tilted, MainsWire{Current: 2, Distance: d, Bearing: 90 * units.Degree, Elevation: 30 * units.Degree})
			want := induced(t, inSeries(t, Placed{Winding: c}), MainsWire{Current: 2, Distance: d, Bearing: 90 * units.Degree, Elevation: 30*units.Degree - tilt})
			close(t, "hum near a tilted coil, wire turned back", got, want, 1e-6)
		}
	}
	beside := c.Shape().Width/2 + c.Build()
	if _, err := c.Hum(MainsWire{Current: 1, Distance: beside + 1.01*mm, Bearing: 90 * units.Degree}, 50); err != nil {
		t.Error(err)
	}
	for _, d := range []units.Length{beside + 0.99*mm, 1 * mm} {
		if _, err := c.Hum(MainsWire{Current: 1, Distance: d, Bearing: 90 * units.Degree}, 50); err == nil || !strings.Contains(err.Error(), "winding 1 or too near") {
			t.Errorf("%v: %v", d, err)
		}
	}
}

func TestPairs(t *testing.T) {
	w := gauge(t, 42)
	f := Racetrack{CoreLength: 60 * mm, CoreWidth: 5 * mm, Height: 8 * mm, FlangeWidth: 16 * mm}
	c, more := wound(t, f, w, 5000), wound(t, f, w, 5100)
	field := UniformField{FluxDensity: 1e-7, Angle: 0.5}
	pair := inSeries(t, Placed{Winding: c, Y: -9 * mm}, Placed{Winding: c, Y: 9 * mm, Reversed: true})
	if v := induced(t, pair, field); v != 0 {
		t.Errorf("equal coils leave %g V", v)
	}
	table, err := pair.HumTable(50, field, UniformField{FluxDensity: 1e-7, Angle: 90 * units.Degree})
	if err != nil || table.Rows() != 2 || table.Columns[2].Values[0] != -120 || !math.IsNaN(table.Columns[2].Values[1]) {
		t.Errorf("a field along the turns in a table: %+v, %v", table, err)
	}
	odd := inSeries(t, Placed{Winding: c, Y: -9 * mm}, Placed{Winding: more, Y: 9 * mm, Reversed: true})
	level, err := odd.Residual(field)
	if err != nil {
		t.Fatal(err)
	}
	one, two := 5000*float64(c.Area()), 5100*float64(more.Area())
	close(t, "residual of a mismatch, by hand", float64(level), 20*math.Log10((two-one)/(two+one)), 1e-6)
	// Stacked at a height difference of h over a wire far below: fields as 1/(d+h), so a residual of h/2d.
	stack := inSeries(t, Placed{Winding: c, Z: 5 * mm}, Placed{Winding: c, Z: -5 * mm, Reversed: true})
	level, err = stack.Residual(MainsWire{Current: 1, Distance: 2, Elevation: -45 * units.Degree})
	if err != nil {
		t.Fatal(err)
	}
	// Bz falls as x/(x²+z²); at x = z its slope along z is -1/z, half of that after the sum of two
	close(t, "residual of a height difference, by hand", level.Ratio(), 0.01/(2*2/math.Sqrt2), 0.02)
}

func TestChainLaws(t *testing.T) {
	w := gauge(t, 42)
	f := Racetrack{CoreLength: 40 * mm, CoreWidth: 6 * mm, Height: 10 * mm}
	half := f
	half.Height = 5 * mm
	whole, part := wound(t, f, w, 4000), wound(t, half, w, 2000)
	cut := inSeries(t, Placed{Winding: part, Z: 2.5 * mm}, Placed{Winding: part, Z: -2.5 * mm})
	close(t, "inductance of a winding cut in two", float64(cut.Inductance()), float64(whole.Inductance()), 1e-4)
	close(t, "its resistance", float64(cut.Resistance()), float64(whole.Resistance()), 1e-9)

	far := inSeries(t, Placed{Winding: part}, Placed{Winding: part, Y: 0.6})
	m, err := far.Mutual(1, 2)
	if err != nil {
		t.Fatal(err)
	}
	// two dipoles side by side: M = -µ0·(N·A)²/4πr³
	close(t, "mutual inductance of dipoles", float64(m), -1e-7*sq(2000*float64(part.Area()))/math.Pow(0.6, 3), 0.02)
	turned := inSeries(t, Placed{Winding: part}, Placed{Winding: part, Y: 0.6, Reversed: true})
	back, _ := turned.Mutual(2, 1)
	close(t, "reversed", float64(back), -float64(m), 1e-9)
	close(t, "inductance aiding less opposing, 4M", float64(turned.Inductance()-far.Inductance()), -4*float64(m), 1e-6)

	k, err := inSeries(t, Placed{Winding: part, Y: -9 * mm, Z: mm}, Placed{Winding: wound(t, half, w, 1500), Y: 9 * mm}).Coupling(1, 2)
	swapped, _ := inSeries(t, Placed{Winding: wound(t, half, w, 1500), Y: 9 * mm}, Placed{Winding: part, Y: -9 * mm, Z: mm}).Coupling(1, 2)
	if err != nil || !(k < -0.02 && k > -0.5) {
		t.Errorf("coupling side by side: %g, %v", k, err)
	}
	close(t, "reciprocity", k, swapped, 1e-4)
	square := inSeries(t, Placed{Winding: part}, Placed{Winding: part, Y: 60 * mm, Tilt: 90 * units.Degree})
	if k, _ := square.Coupling(1, 2); math.Abs(k) > 1e-9 {
		t.Errorf("coupling at right angles: %g", k)
	}
	twin := inSeries(t, Placed{Winding: part, Y: -0.3}, Placed{Winding: part, Y: 0.3})
	close(t, "capacitances in series", float64(twin.Capacitance()), float64(part.Capacitance())/2, 1e-6)
}

func TestBadChains(t *testing.T) {
	c := wound(t, steel, gauge(t, 42), 3000)
	for _, b := range []struct {
		coils []Placed
		want  string
	}{{nil, "number of windings"}, {[]Placed{{}}, "Winding: none"}, {[]Placed{{Winding: c}, {Winding: c}}, "overlap"}, {[]Placed{{Winding: c}, {Winding: c, Z: 9 * mm}}, "overlap"},
		{[]Placed{{Winding: c, X: 50}}, "position"}, {[]Placed{{Winding: c, Tilt: units.Angle(math.NaN())}}, "angle"}} {
		if _, err := InSeries(b.coils...); err == nil || !strings.Contains(err.Error(), b.want) {
			t.Errorf("got %v, want %q", err, b.want)
		}
	}
	chain := inSeries(t, Placed{Winding: c}, Placed{Winding: c, Z: 10 * mm, Reversed: true})
	for _, bad := range []HumSource{nil, UniformField{}, UniformField{FluxDensity: 1, Angle: 361 * units.Degree}, MainsWire{Current: 1}, MainsWire{Distance: 1}, MainsWire{Current: 1, Distance: 0.01}} {
		if _, err := chain.Hum(bad, 50); err == nil {
			t.Errorf("%v was accepted", bad)
		}
	}
	if _, err := chain.Hum(UniformField{FluxDensity: 1}, 0); err == nil {
		t.Error("0 Hz was accepted")
	}
	for _, none := range []Chain{{}, {coils: []Placed{{}}}} {
		if _, err := none.Hum(UniformField{FluxDensity: 1}, 50); err == nil || !strings.Contains(err.Error(), "none") {
			t.Errorf("nothing hums: %v", err)
		}
	}
	if _, err := chain.Mutual(0, 1); err == nil {
		t.Error("winding 0 was accepted")
	}
	if _, err := chain.Residual(UniformField{FluxDensity: 1, Angle: 90 * units.Degree}); err == nil {
		t.Error("a field along the turns has a residual")
	}
}
