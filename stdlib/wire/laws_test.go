package wire

import (
	"math"
	"math/rand"
	"testing"

	"lode/stdlib/wire/internal/tables"
	"lode/units"
)

// everyWire returns each size of each table in each of its builds, bare included.
func everyWire() []Wire {
	var all []Wire
	for _, gauge := range tables.Gauges() {
		for _, row := range gauge.Sizes {
			for build := range gauge.Builds {
				if w := fromRow(gauge, row, build); w.coat != "bare" {
					all = append(all, w)
				}
			}
			all = append(all, fromRow(gauge, row, 0).Uncoated())
		}
	}
	return all
}

func TestEveryWireIsSound(t *testing.T) {
	all := everyWire()
	if len(all) < 300 {
		t.Fatalf("%d wires, want all tables", len(all))
	}
	for _, w := range all {
		bare, overall, r := w.BareLimits(), w.OverallLimits(), w.ResistanceLimits()
		ordered := bare.Min < bare.Nominal && bare.Nominal < bare.Max &&
			overall.Min < overall.Nominal && overall.Nominal < overall.Max &&
			r.Min < r.Nominal && r.Nominal < r.Max
		if !ordered {
			t.Errorf("%s: limits out of order: %v, %v, %v", w.Name(), bare, overall, r)
		}
		if coated := w.coat != "bare"; coated != (overall.Nominal > bare.Nominal) || coated != (overall.Min > bare.Min) {
			t.Errorf("%s: bare %v, overall %v", w.Name(), bare, overall)
		}
		book.Close(t, "resistance times area, 1/58 Ω·mm²/m", float64(w.ResistancePerLength())*float64(w.Conductor())*58e6, 1, 1e-12)
		// From the tables: tolerances of the finest wires reach ±8 % of the diameter.
		if spread := float64(bare.Max/bare.Min) - 1; spread > 0.16 {
			t.Errorf("%s: conductor varies by %.3g", w.Name(), spread)
		}
	}
}

// A thinner size has a thinner conductor, a smaller overall diameter, more resistance and less
// mass; a heavier build is thicker over the same conductor.
func TestTablesAreMonotone(t *testing.T) {
	for _, gauge := range tables.Gauges() {
		for build := range gauge.Builds {
			var last Wire
			for i := range gauge.Sizes {
				j := i
				if gauge.System == "metric" { // the others count the other way
					j = len(gauge.Sizes) - 1 - i
				}
				w := fromRow(gauge, gauge.Sizes[j], build)
				comparable := last.coat == w.coat
				if comparable && !(w.Bare() < last.Bare() && w.Overall() < last.Overall() &&
					w.ResistancePerLength() > last.ResistancePerLength() && w.MassPerLength() < last.MassPerLength()) {
					t.Errorf("%v does not lie below %v", w, last)
				}
				last = w
			}
		}
		for _, row := range gauge.Sizes {
			thin, thick := fromRow(gauge, row, 0), fromRow(gauge, row, 1)
			if thin.coat != "bare" && thick.coat != "bare" && !(thick.Overall() > thin.Overall() && thick.Bare() == thin.Bare()) {
				t.Errorf("%v is not heavier than %v", thick, thin)
			}
		}
	}
}

// Half sizes have no printed list here; each must be the formula of ASTM B258 rounded to the step
// of the standard: 0.1 mil, and 0.01 mil from gauge 45 on.
func TestHalfSizes(t *testing.T) {
	for gauge := 24.5; gauge < 46; gauge++ {
		step := 0.1
		if gauge > 45 {
			step = 0.01
		}
		off := must(AWG(gauge))(t).Bare() - must(AWGDiameter(gauge))(t)
		if got := math.Abs(float64(off / units.Mil)); got > 0.56*step {
			t.Errorf("AWG %g: %.3g mil off the formula, want half a step of %g", gauge, got, step)
		}
	}
}

func TestResistanceFollowsTemperature(t *testing.T) {
	w := must(AWG(42))(t)
	for _, row := range []struct{ degrees, ratio float64 }{{20, 1}, {75, 1.21615}, {0, 0.9214}, {25, 1.01965}} { // IEC 60028
		at := must(w.ResistancePerLengthAt(units.Celsius(row.degrees)))(t)
		book.Close(t, "resistance over that at 20 °C", float64(at/w.ResistancePerLength()), row.ratio, 1e-12)
		limits := must(w.ResistanceLimitsAt(units.Celsius(row.degrees)))(t)
		if limits.Nominal != at || math.Abs(float64(limits.Max/w.ResistanceLimits().Max)-row.ratio) > 1e-12 {
			t.Errorf("limits at %g °C: %v", row.degrees, limits)
		}
	}
}

func TestAmountsInvert(t *testing.T) {
	random := rand.New(rand.NewSource(3))
	for _, w := range everyWire() {
		length := units.Length(math.Pow(10, 5*random.Float64()-2))
		fromMass := must(w.LengthOfMass(must(w.Mass(length))(t)))(t)
		fromResistance := must(w.LengthOfResistance(must(w.Resistance(length))(t)))(t)
		book.Close(t, "length from mass", float64(fromMass), float64(length), 1e-12)
		book.Close(t, "length from resistance", float64(fromResistance), float64(length), 1e-12)
		if got := float64(w.TurnsPerLength()) * float64(w.Overall()); math.Abs(got-1) > 1e-12 {
			t.Errorf("%s: turns per length times diameter = %g", w.Name(), got)
		}
	}
}

// One ampere in 1 mm² by hand: the diameter is √(4/π) mm.
func TestCurrentDensity(t *testing.T) {
	w := must(Measured(1.1283791670955126*units.Millimetre, 1.2*units.Millimetre))(t)
	if got := must(w.CurrentDensity(-1))(t); math.Abs(float64(got)+1e6) > 1e-3 {
		t.Errorf("density = %v, want -1 A/mm²", got)
	}
}

func TestStretchKeepsTheVolume(t *testing.T) {
	for _, w := range everyWire() {
		long := must(w.Stretched(0.07))(t)
		book.Close(t, "volume of stretched wire", float64(long.Conductor()/w.Conductor())*1.07, 1, 1e-12)
		// A piece of 1 m is now 1.07 m; its resistance rises by (1.07)².
		if got := 1.07 * float64(long.ResistancePerLength()/w.ResistancePerLength()); math.Abs(got-1.1449) > 1e-12 {
			t.Errorf("%s: piece has %g of its resistance, want 1.1449", w.Name(), got)
		}
	}
	w := must(AWG(42))(t)
	if same := must(w.Stretched(0))(t); same != w {
		t.Errorf("not stretched, but %v", same)
	}
}

func TestStretchGrowsWithTension(t *testing.T) {
	w := must(AWG(42))(t)
	last := Stretch{Least: -1, Most: -1, Elastic: -1}
	for share := 0.0; share <= 1; share += 0.05 {
		s := must(w.Stretch(units.Force(share * float64(w.BreakingLoad().Low))))(t)
		if !(s.Elastic > last.Elastic && s.Least >= last.Least && s.Most >= last.Most && s.Most >= s.Least) {
			t.Errorf("at %v: %v after %v", s.Tension, s, last)
		}
		last = s
	}
	// Within the winding tension the wire stays as it is: below a tenth of a per cent.
	if s := must(w.Stretch(w.WindingTension().High))(t); s.Most > 0.001 {
		t.Errorf("winding tension stretches by %g", s.Most)
	}
	// Soft copper yields (0.2 % permanent) somewhere between 90 and 160 MPa (handbooks, recalled).
	low := must(w.Stretch(units.Force(90e6 * float64(w.Conductor()))))(t)
	high := must(w.Stretch(units.Force(160e6 * float64(w.Conductor()))))(t)
	if low.Most > 0.002 || high.Least < 0.002 {
		t.Errorf("yields outside 90 to 160 MPa: %v, %v", low, high)
	}
}

// A wire measured as its own table says finds itself, alone at distance zero within its system.
func TestEveryWireFindsItself(t *testing.T) {
	for _, w := range everyWire() {
		if w.coat == "bare" || w.coat == "grade 3" { // which is not looked for
			continue
		}
		m := Measurement{Bare: w.Bare(), Overall: w.Overall(), System: w.system,
			Resistance: units.Resistance(100 * w.ResistancePerLength()), Length: 100}
		found := must(Identify(m))(t)
		if best := found.List[0]; best.Wire != w || best.Distance > 1e-9 {
			t.Errorf("%s found as %v", w.Name(), best)
		}
	}
}

// Wire drawn at random within the limits of its gauge fits that gauge, whatever is measured of
// it; and wire beyond a limit by more than the error of the measurement does not.
func TestWireWithinItsLimitsFits(t *testing.T) {
	random := rand.New(rand.NewSource(4))
	between := func(d Diameters) units.Length {
		return d.Min + units.Length(random.Float64())*(d.Max-d.Min)
	}
	for _, w := range everyWire() {
		if w.coat == "bare" {
			continue
		}
		bare := between(w.BareLimits())
		overall := max(bare, between(w.OverallLimits()))
		drawn := must(Measured(bare, overall))(t)
		m := Measurement{Bare: bare, Overall: overall, Resistance: must(drawn.Resistance(30))(t), Length: 30}
		complete, _, err := m.complete()
		if err != nil {
			t.Fatal(err)
		}
		if match := complete.compare(w); !match.Fits() {
			t.Errorf("%s: wire of %v, %v does not fit: %v", w.Name(), bare, overall, match)
		}
		complete.Bare, complete.Overall, complete.Resistance = 0, w.OverallLimits().Max+1.01*units.Micrometre, 0
		if match := complete.compare(w); match.Fits() {
			t.Errorf("%s: overall %v fits", w.Name(), complete.Overall)
		}
	}
}

// Cold or warm, the same wire is found: the resistance is brought back to 20 °C.
func TestIdentifyKnowsTheTemperature(t *testing.T) {
	w := must(AWG(43))(t)
	warm := must(w.ResistancePerLengthAt(units.Celsius(32)))(t)
	m := Measurement{Resistance: units.Resistance(50 * warm), Length: 50, Temperature: units.Celsius(32), System: "awg"}
	best := must(Identify(m))(t).List[0]
	if best.Wire != w || math.Abs(best.ResistanceOff) > 1e-12 {
		t.Errorf("found %v, %g off", best, best.ResistanceOff)
	}
	d := must(Measurement{Resistance: m.Resistance, Length: 50, Temperature: m.Temperature}.Wire())(t)
	if math.Abs(float64(d.Bare()/w.Bare())-1) > 1e-12 {
		t.Errorf("conductor %v, want %v", d.Bare(), w.Bare())
	}
}

// By hand: 170 Ω in 30 m is 5.667 Ω/m; gauge 42 has 5.444 (4.1 % off, its limits allow 8.5 and the
// meter 1), gauge 43 has 7.030 and starts at 6.433.
func TestKnownMeasurement(t *testing.T) {
	found := must(Identify(Measurement{Resistance: 170, Length: 30, System: "AWG"}))(t)
	fits := map[string]bool{}
	for _, match := range found.List {
		fits[match.Wire.label] = match.Fits()
		if match.Wire.label == "AWG 42" && math.Abs(match.ResistanceOff-0.0409) > 0.0002 {
			t.Errorf("AWG 42 is off by %g", match.ResistanceOff)
		}
	}
	if !fits["AWG 42"] || fits["AWG 43"] || !fits["AWG 42.5"] || fits["AWG 41"] {
		t.Errorf("fits: %v", fits)
	}
	last := 0.0
	for _, match := range found.List {
		if match.Distance < last {
			t.Errorf("not sorted: %v", found.List)
		}
		last = match.Distance
	}
}

// Enamel of British sizes: as thick as that of the next larger metric size, and marked.
func TestBorrowedEnamel(t *testing.T) {
	w, lender := must(SWG(46))(t), must(Metric(63*units.Micrometre))(t)
	if math.Abs(float64(w.Enamel()/lender.Enamel())-1) > 1e-9 || !w.OverallLimits().Estimate {
		t.Errorf("enamel %v, want %v as an estimate: %v", w.Enamel(), lender.Enamel(), w.OverallLimits())
	}
	if thick := must(SWG(10))(t); thick.Coat() != "bare" || thick.Overall() != thick.Bare() {
		t.Errorf("%v, want it bare", thick)
	}
}

func TestOtherMetals(t *testing.T) {
	w := must(AWG(42))(t)
	for _, m := range tables.Materials() {
		other := must(w.Of(m.Name))(t)
		ratio := float64(other.ResistancePerLength() / w.ResistancePerLength())
		if math.Abs(ratio-m.Resistivity*58e6) > 1e-9*ratio {
			t.Errorf("%s: %g times copper", m.Name, ratio)
		}
		if !(m.WeakestStrength < m.StrongestStrength && m.WindingStress < m.WeakestStrength/2 && m.Source != "" &&
			m.Coldest < 20 && m.Hottest > 20 && m.Hardening > 0 && m.Hardening < 1) {
			t.Errorf("row out of order: %+v", m)
		}
		// Wiedemann, Franz and Lorenz put no pure metal below silver.
		if m.Resistivity < 15.8e-9 || m.Density < 2600 || m.Density > 22600 {
			t.Errorf("not a conductor: %+v", m)
		}
		heavy := must(other.Heavy())(t)
		if heavy.Metal() != other.Metal() {
			t.Errorf("heavy build of %s is of %s", m.Name, heavy.Metal().Name)
		}
	}
}

func BenchmarkAWG(b *testing.B) {
	for b.Loop() {
		if _, err := AWG(42); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkIdentify(b *testing.B) {
	for b.Loop() {
		if _, err := Identify(Measurement{Overall: 71e-6, Resistance: 170, Length: 30}); err != nil {
			b.Fatal(err)
		}
	}
}

// Both spellings of aluminium are one metal, and a metal without a range of temperatures has that of copper.
func TestMetalsByOtherWords(t *testing.T) {
	w := must(AWG(42))(t)
	if a, b := must(w.Of("aluminum"))(t), must(w.Of("aluminium"))(t); a != b {
		t.Errorf("%v is not %v", a, b)
	}
	// Phosphor bronze CuSn8: 0.11 Ω·mm²/m, 8.8 g/cm³ (handbooks, recalled)
	bronze := must(w.MadeOf(Material{Name: "bronze", Resistivity: 110e-9, Density: 8800}))(t)
	if got, want := float64(bronze.ResistancePerLength()), 0.11/(math.Pi/4*0.0635*0.0635); math.Abs(got/want-1) > 1e-12 {
		t.Errorf("%g Ω/m, want %g", got, want)
	}
	if _, err := bronze.ResistancePerLengthAt(units.Celsius(251)); err == nil {
		t.Error("251 °C was accepted")
	}
}

// Hooke's law by hand: 0.4 N on copper of 2.5 mil, 117 GPa. What is left for good solves the flow curve of Hollomon in
// the form S·(ε/n)ⁿ·exp(n-ε), found here by halving.
func TestStretchByHand(t *testing.T) {
	w := must(AWG(42))(t)
	s := must(w.Stretch(0.4))(t)
	stress := 0.4 / (math.Pi / 4 * 63.5e-6 * 63.5e-6)
	if math.Abs(s.Elastic/(stress/117e9)-1) > 1e-12 {
		t.Errorf("springs back %g, want %g", s.Elastic, stress/117e9)
	}
	for strength, got := range map[float64]float64{200e6: s.Most, 275e6: s.Least} {
		low, high := 0.0, 0.2
		for range 100 {
			if ε := (low + high) / 2; strength*math.Pow(ε/0.2, 0.2)*math.Exp(0.2-ε) < stress {
				low = ε
			} else {
				high = ε
			}
		}
		if want := math.Exp(low) - 1; math.Abs(got/want-1) > 1e-9 {
			t.Errorf("strength %g: longer by %g, want %g", strength, got, want)
		}
	}
}
