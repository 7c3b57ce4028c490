package load

import (
	"math"
	"math/cmplx"
	"strings"
	"testing"

	"lode/units"
)

func transfer(t *testing.T, l Line, f units.Frequency) complex128 {
	t.Helper()
	r, err := l.Sweep(f/2, f*2)
	if err != nil {
		t.Fatal(err)
	}
	level, _ := r.LevelAt(f)
	phase, _ := r.PhaseAt(f)
	return cmplx.Rect(level.Ratio(), phase.SI())
}

func same(t *testing.T, what string, got, want complex128) {
	t.Helper()
	if !(cmplx.Abs(got-want) <= 1e-8*cmplx.Abs(want)) {
		t.Errorf("%s: got %v, want %v", what, got, want)
	}
}

var tones = []units.Frequency{20, 330, 2500, 4700, 2e4}

// Coils in series are one coil of the summed values; in parallel of equal ones, half; a coupling
// adds twice the mutual inductance, or takes it away.
func TestCoilsTogether(t *testing.T) {
	bare := Coil{6e3, 2.5, 0}
	sum := func(r, l float64) Coil { return Coil{units.Resistance(r), units.Inductance(l), 0} }
	chain := func(l Line) Line { return l.Volume(250e3).Cable(4).Input(1e6) }
	a, b := One(bare).Named("a"), One(sum(7e3, 3)).Named("b")
	mutual := 0.4 * math.Sqrt(2.5*3)
	for name, c := range map[string]struct {
		coils Coils
		one   Coil
		emf   complex128
	}{
		"series":             {Series(a, b), sum(13e3, 5.5), 2},
		"series, coupled":    {Series(a, b).Coupled("a", "b", 0.4), sum(13e3, 5.5+2*mutual), 2},
		"reversed":           {Series(a, b.Reversed()).Coupled("a", "b", 0.4), sum(13e3, 5.5-2*mutual), 0},
		"both reversed":      {Series(a, b).Reversed().Coupled("a", "b", 0.4), sum(13e3, 5.5+2*mutual), -2},
		"raised":             {Series(a, b.Raised(6)).Raised(-6), sum(13e3, 5.5), complex(1+math.Pow(10, -0.3), 0)},
		"parallel":           {Parallel(a, a.Named("c")), sum(3e3, 1.25), 1},
		"parallel, coupled":  {Parallel(a, a.Named("c")).Coupled("a", "c", 0.5), sum(3e3, 1.875), 1},
		"second one shorted": {Series(a, b.Shorted()), sum(6e3, 2.5), 1},
		"tap":                {a.Tapped(0.6), sum(3.6e3, 0.9), 0.6},
		"nested":             {Series(Parallel(a, a.Named("c")), b), sum(10e3, 4.25), 2},
	} {
		for _, f := range tones {
			got := chain(FromCoils(c.coils))
			if c.emf == 0 { // equal EMFs against each other: nothing comes out, but the impedance is there
				z, err := got.Impedance(f)
				want, _ := chain(From(c.one)).Impedance(f)
				if err != nil {
					t.Fatal(name, err)
				}
				same(t, name, complex128(z), complex128(want))
				continue
			}
			same(t, name, transfer(t, got, f), c.emf*transfer(t, chain(From(c.one)), f))
		}
	}
}

// A tap keeps the self-capacitance of the whole winding: seen at the tap it counts by one over the share squared.
func TestTapCarriesCapacitance(t *testing.T) {
	tapped := FromCoils(One(Coil{0.001, 2, 1e-10}).Tapped(0.5)).Input(1e6)
	plain := From(Coil{0.0005, 0.5, 4e-10}).Input(1e6)
	p, err := tapped.Resonance()
	q, err2 := plain.Resonance()
	if err != nil || err2 != nil {
		t.Fatal(err, err2)
	}
	near(t, "resonance", p.SI(), q.SI(), 1e-6)
}

// Each wiring by its formula at one position.
func TestWirings(t *testing.T) {
	for _, f := range tones {
		s := complex(0, 2*math.Pi*f.SI())
		source := 6000 + 2.5*s
		divide := func(open, z, shunt complex128) complex128 { return open * shunt / (z + shunt) }
		parallel := func(a, b complex128) complex128 { return a * b / (a + b) }
		bare := From(Coil{6e3, 2.5, 0})
		half := Linear(500e3).At(0.4)

		got := transfer(t, bare.VolumeWired(VolumeWiring{Pot: half, Independent: true}).Input(1e6), f)
		same(t, "independent", got, divide(1, source, parallel(200e3, 300e3+1e6))*1e6/(1e6+300e3))

		bypass := 1e5 + parallel(1/(s*1e-9), 150e3)
		upper, lower := parallel(300e3, bypass), parallel(200e3, 1e6)
		got = transfer(t, bare.VolumeWired(VolumeWiring{Pot: half, Bypass: 1e-9, BypassParallel: 150e3, BypassSeries: 1e5}).Input(1e6), f)
		same(t, "bypass", got, divide(1, source, upper+lower)*lower/(upper+lower))

		got = transfer(t, bare.ToneWired(ToneWiring{Pot: half, Capacitance: 1e-8, Choke: 1.5, ChokeResistance: 80}).Input(1e6), f)
		same(t, "notch", got, divide(1, source, parallel(1e6, 200e3+1/(s*1e-8)+1.5*s+80)))

		got = transfer(t, bare.ToneWired(ToneWiring{Pot: Linear(500e3), Capacitance: 1e-8, NoLoad: true}).Input(1e6), f)
		same(t, "no load", got, divide(1, source, 1e6))

		cut := parallel(300e3, 1/(s*1e-9))
		got = transfer(t, bare.BassCut(half, 1e-9).Input(1e6), f)
		same(t, "bass cut", got, divide(1, source, cut+1e6)*1e6/(cut+1e6))

		got = transfer(t, bare.Buffer(Buffer{InputResistance: 2e6, InputCapacitance: 1e-11, Gain: 6, OutputResistance: 1e3}).Input(1e4), f)
		same(t, "buffer", got, divide(1, source, parallel(2e6, 1/(s*1e-11)))*complex(math.Pow(10, 0.3)*10/11, 0))

		low := From(Coil{60, 20e-3, 0}).Tone(500, 1e-6, 0.2).Volume(500, 0.5)
		shunt := parallel(100+1/(s*1e-6), 250+parallel(250, 2e3))
		same(t, "low impedance", transfer(t, low.Desk(Desk{}), f), divide(1, 60+20e-3*s, shunt)*parallel(250, 2e3)/(250+parallel(250, 2e3)))
	}
}

// Metal near a coil by its formula, as a coupled shorted turn and as a function of frequency.
func TestNearMetal(t *testing.T) {
	const k, corner = 0.4, 3000.0
	c := Coil{6e3, 2.5, 0}
	eddy := func(f units.Frequency) units.Impedance {
		x := complex(0, f.SI()/corner)
		s := complex(0, f.Angular().SI())
		return units.Impedance(-k * k * s * 2.5 * x / (1 + x))
	}
	for _, f := range tones {
		s := complex(0, f.Angular().SI())
		z, shunt := 6000+2.5*s+complex128(eddy(f)), 1/(1e-6+s*500e-12)
		want := shunt / (shunt + z)
		same(t, "shorted turn", transfer(t, FromCoils(One(c).NearMetal(k, corner)).Cable(5).Input(1e6), f), want)
		same(t, "function", transfer(t, FromCoils(One(c).Lossy(eddy)).Cable(5).Input(1e6), f), want)
		tapped := transfer(t, FromCoils(One(c).Tapped(0.5).NearMetal(k, corner)).Cable(5).Input(1e6), f)
		same(t, "tapped", tapped, shunt/2/(shunt+3000+(z-6000)/4))
	}
	if all, err := From(coil).Cable(5).Input(1e6).Sensitivities(); err != nil || len(all) != 5 {
		t.Errorf("sensitivities: got %v, %v", all, err)
	}
}

func TestMeasuredTaper(t *testing.T) {
	p := Measured(1e5, []float64{0, 0.5, 1}, []float64{0.01, 0.2, 1})
	for x, want := range map[float64]float64{0: 0.01, 0.25: 0.105, 0.5: 0.2, 0.75: 0.6, 1: 1} {
		near(t, "share", p.At(x).Share(), want, 1e-12)
	}
}

// The table is IEC 60063; testdata/reference says where its rows come from.
func TestPreferred(t *testing.T) {
	for _, row := range table(t, "loads_e_series.csv") {
		series, want := int(number(t, map[string]string{"n": strings.TrimPrefix(row["series"], "E")}, "n")), number(t, row, "value")
		for _, scale := range []float64{1, 1e3, 1e-9} {
			got, err := PreferredResistance(series, units.Resistance(want*scale*1.0001))
			if err != nil {
				t.Fatal(err)
			}
			near(t, row["series"], got.SI(), want*scale, 1e-12)
		}
	}
	for _, c := range []struct {
		series       int
		from, wanted units.Capacitance
	}{{6, 20e-9, 22e-9}, {12, 9.6e-9, 10e-9}, {3, 8e-9, 10e-9}, {192, 9.19e-9, 9.2e-9}, {24, 1e-6, 1e-6}} {
		got, err := PreferredCapacitance(c.series, c.from)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "rounded", got.SI(), c.wanted.SI(), 1e-12)
	}
	if _, err := PreferredResistance(5, 1e3); err == nil {
		t.Error("E5 does not exist")
	}
	if _, err := PreferredResistance(24, -1); err == nil {
		t.Error("a negative resistance was rounded")
	}
}

func TestResponses(t *testing.T) {
	a, b := One(Coil{6e3, 2.5, 1e-10}).Named("a"), One(Coil{7e3, 3, 1e-10}).Named("b")
	all, err := Responses([]Position{{"a", a}, {"both", Parallel(a, b)}, {"b", b}}, func(l Line) Line { return l.Cable(5).Input(1e6) }, 20, 2e4)
	if err != nil || len(all) != 3 || all[1].Label() != "both" {
		t.Fatal(all, err)
	}
	f0, _ := all[0].Resonance()
	f1, _ := all[1].Resonance()
	if !(f1 > f0) {
		t.Errorf("coils in parallel resonate at %v, one at %v", f1, f0)
	}
}

// A noisy input: en adds to the coil's and pot's noise at low frequency as squares.
func TestLineNoise(t *testing.T) {
	quiet := From(coil).Volume(500e3).Cable(5)
	a, err := quiet.Input(1e6).Noise(20, 2e4)
	if err != nil {
		t.Fatal(err)
	}
	b, err := quiet.InputNoise(5e-9, 0).Input(1e9).Noise(20, 2e4)
	if err != nil {
		t.Fatal(err)
	}
	x, _ := a.DensityAt(20)
	near(t, "thermal", x.SI(), math.Sqrt(4*1.380649e-23*293.15/(1/6000.0+1/500e3+1e-6)), 1e-4)
	y, _ := b.DensityAt(20)
	near(t, "with input noise", y.SI(), math.Sqrt(4*1.380649e-23*293.15/(1/6000.0+1/500e3)+25e-18), 1e-4)
}

func TestWiringRefused(t *testing.T) {
	a := One(coil).Named("a")
	for want, l := range map[string]Line{
		"two coils have that name":   FromCoils(Series(a, a)),
		"there is no coil \"b\"":     FromCoils(Series(a, One(coil)).Coupled("a", "b", 0.1)),
		"coils in series: none":      FromCoils(Series()),
		"given to several coils":     FromCoils(Series(a).Named("x")),
		"share of 1.5 of the turns":  FromCoils(a.Tapped(1.5)),
		"coils: none":                FromCoils(Coils{}),
		"k = 2":                      FromCoils(Series(a, One(coil)).Coupled("a", "coil", 2)),
		"coupling: got 1.2":          FromCoils(a.NearMetal(1.2, 1e3)),
		"corner: got 0 Hz":           FromCoils(a.NearMetal(0.2, 0)),
		"stage: missing":             From(coil).Through(nil),
		"buffer input resistance":    From(coil).Buffer(Buffer{}),
		"input noise voltage":        From(coil).InputNoise(-1, 0),
		"treble bypass":              From(coil).VolumeWired(VolumeWiring{Pot: Linear(1), Bypass: -1}),
		"want as many of both":       From(coil).VolumeWith(Measured(1e5, []float64{0, 1}, []float64{1})),
		"got positions from 0 to 2":  From(coil).VolumeWith(Measured(1e5, []float64{0, 2}, []float64{0, 1})),
		"share 0.1 as number 3":      From(coil).VolumeWith(Measured(1e5, []float64{0, 0.5, 1}, []float64{0, 0.2, 0.1})),
		"after the input: the input": From(coil).Desk(Desk{Cable: 3, Capacitance: 1e-9}).Desk(Desk{}),
	} {
		if _, err := l.Sweep(20, 2e4); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("want %q: got %v", want, err)
		}
	}
}
