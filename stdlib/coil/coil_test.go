package coil

import (
	"math"
	"math/rand"
	"strings"
	"testing"

	"lode/stdlib/internal/evidence"
	"lode/stdlib/wire"
	"lode/units"
)

// Map of mutual checks of this package, with the file where each is. Every formula has two witnesses that do not share code
// with it; those of the kernel and of package induct have maps of their own.
//
//	length, area, mean turn     layers by hand, shells of polygons (coil_test); Steiner's formula on random outlines (properties_test)
//	resistance, at temperature  1/58 Ω·mm²/m over those lengths (coil_test); ratios of IEC 60028 (coil_test, sheet_test)
//	range of resistance         windings of the thinnest and thickest wire at both builds (inverse_test); limits printed for wire (package wire)
//	mass                        volume times density by hand (properties_test); printed masses (package wire)
//	build, layers               wire's share of the window, layers by hand (coil_test); layersIn, its inverse (layout_test)
//	turns that fit              Wind at that number and one more (fit_test); density over area (inverse_test)
//	standing without flanges    areas of rectangle and triangle; wires in a heap counted row by row (inverse_test)
//	turns from resistance       circles by hand; Resistance put back (inverse_test, sheet_test)
//	insulation                  the same winding on a larger core with less room (insulation_test); Steiner's formula by hand
//	convex core                 circle, racetrack, rectangle, Ramanujan's ellipse (convex_test); Steiner's formula (insulation_test)
//	cover, clearance            points of both outlines measured (cover_test); by hand (insulation_test)
//	potting, casting            wire, compound and core add up to the cover; window less wire (casting_test, sheet_test)
//	inductance                  tables of windows at random (windows_test); turn by turn (methods_test); scaling (properties_test)
//	mutual inductance           the same tables; a winding cut in parts (tap_test, sections_test); reciprocity, M² below L1·L2 (properties_test)
//	strands in series           Maxwell's circles turn by turn; n² times the parallel ones (strands_test)
//	sections, stacked           halves make the whole; thin walls hardly count (sections_test)
//	capacitance                 energies of single turns; Medhurst's printed table; laws; the checks of the kernel; resonances put back (resonance_test)
//	cover, neighbour            boundary elements (panels_test); coaxial line; plates; laws (surroundings_test)
//	AC resistance               turns one by one by Biot and Savart (losses_turns_test); by hand; laws; the checks of the kernel
//	hum, field, losses          hum_test, field_test, losses_test
//	level                       doubled turns; slope of the field (left_test)
//	phase, leads on the sheet   Faraday's law along a square turn (sheet_test); leads followed through the chain (sheets_test)
//	poles under strings         crossing of straight lines by determinants; parallel strings (plate_test)
//	outlines, webs of a plate   Steiner's formula on the drawn parts; by hand (plate_test)

const mm = units.Millimetre

func gauge(t testing.TB, n float64) wire.Wire {
	t.Helper()
	w, err := wire.AWG(n)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func wound(t testing.TB, f Former, w wire.Wire, turns int, style ...Style) Winding {
	t.Helper()
	c, err := Wind(f, w, turns, style...)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// book keeps what tests compared; DEVELOPERS.md tells how to print it.
var book evidence.Book

func close(t *testing.T, name string, got, want, tolerance float64) {
	t.Helper()
	book.Close(t, name, got, want, tolerance)
}

// bobbin of the invented workshop's console steel.
var steel = Racetrack{CoreLength: 71 * mm, CoreWidth: 6.5 * mm, Height: 10 * mm, FlangeWidth: 17 * mm}

// randomFormer returns one of the three bobbins without flanges.
func randomFormer(random *rand.Rand) Former {
	a, b := units.Length(10+80*random.Float64())*mm, units.Length(3+6*random.Float64())*mm
	h := units.Length(3+12*random.Float64()) * mm
	switch random.Intn(3) {
	case 0:
		return Racetrack{CoreLength: a, CoreWidth: b, Height: h}
	case 1:
		return Rectangle{CoreLength: a, CoreWidth: b, CornerRadius: b / 2 * units.Length(random.Float64()), Height: h}
	}
	return Round{CoreDiameter: b, Height: h}
}

// outline walks around a rounded rectangle at a depth in short straight steps.
func outline(s Shape, depth float64) (perimeter, area float64) {
	const corner = 600
	r := float64(s.CornerRadius)
	var x, y []float64
	for q, centre := range [][2]float64{{1, 1}, {-1, 1}, {-1, -1}, {1, -1}} {
		for i := 0; i <= corner; i++ {
			angle := math.Pi/2*float64(q) + math.Pi/2*float64(i)/corner
			x = append(x, centre[0]*(float64(s.Length)/2-r)+(r+depth)*math.Cos(angle))
			y = append(y, centre[1]*(float64(s.Width)/2-r)+(r+depth)*math.Sin(angle))
		}
	}
	for i := range x {
		j := (i + 1) % len(x)
		perimeter += math.Hypot(x[j]-x[i], y[j]-y[i])
		area += (x[i]*y[j] - x[j]*y[i]) / 2
	}
	return perimeter, area
}

func TestScatterAgainstQuadrature(t *testing.T) {
	random := rand.New(rand.NewSource(1))
	for range 60 {
		f := randomFormer(random)
		c := wound(t, f, gauge(t, 42), 500+random.Intn(9000))
		build, length, area := float64(c.Build()), 0.0, 0.0
		const shells = 60
		for i := range shells {
			p, s := outline(c.Shape(), build*(float64(i)+0.5)/shells)
			length, area = length+p/shells, area+s/shells
		}
		close(t, "WireLength", float64(c.WireLength()), length*float64(c.Turns()), 5e-5)
		close(t, "Area", float64(c.Area()), area, 1e-4)
		// 1/58 Ω·mm²/m, IEC 60028, and 2.5 mil
		close(t, "Resistance", float64(c.Resistance()), length*float64(c.Turns())/58e6/(math.Pi/4*0.0635e-3*0.0635e-3), 1e-4)
		close(t, "packing", float64(c.Turns())*math.Pi/4*sq(float64(c.Wire().Overall()))/(build*float64(c.Shape().Height)), 0.65, 1e-9)
	}
}

func TestLayersByHand(t *testing.T) {
	w := gauge(t, 40)
	d := float64(w.Overall())
	f := Rectangle{CoreLength: 40 * mm, CoreWidth: 5 * mm, CornerRadius: 1 * mm, Height: 6 * mm}
	c := wound(t, f, w, 1000, Style{Lay: Layered, Pitch: w.Overall()})
	n := int(0.006 / d)
	length, left, layers := 0.0, 1000, 0
	for left > 0 {
		p, _ := outline(c.Shape(), d/2+float64(layers)*d)
		length += p * float64(min(left, n))
		left, layers = left-n, layers+1
	}
	close(t, "WireLength", float64(c.WireLength()), length, 2e-6)
	if c.TurnsPerLayer() != n || c.Layers() != layers {
		t.Errorf("got %d turns in %d layers, want %d in %d", c.TurnsPerLayer(), c.Layers(), n, layers)
	}
	close(t, "Build", float64(c.Build()), float64(layers)*d, 1e-12)
	o := wound(t, f, w, 1000, Style{Lay: Orthocyclic})
	most := int(0.006/d - 0.5) // every second layer is half a turn further along
	if o.TurnsPerLayer() != most {
		t.Errorf("orthocyclic: %d turns per layer, want %d", o.TurnsPerLayer(), most)
	}
	layers = (1000 + most - 1) / most
	close(t, "orthocyclic build", float64(o.Build()), d*(1+float64(layers-1)*math.Sqrt(0.75)), 1e-12)
}

func TestSpecialCasesAgree(t *testing.T) {
	w := gauge(t, 42)
	track := wound(t, Racetrack{CoreLength: 50 * mm, CoreWidth: 8 * mm, Height: 9 * mm}, w, 5000)
	same := wound(t, Rectangle{CoreLength: 50 * mm, CoreWidth: 8 * mm, CornerRadius: 4 * mm, Height: 9 * mm}, w, 5000)
	round := wound(t, Round{CoreDiameter: 8 * mm, Height: 9 * mm}, w, 5000)
	circle := wound(t, Racetrack{CoreLength: 8 * mm, CoreWidth: 8 * mm, Height: 9 * mm}, w, 5000)
	for _, pair := range [][2]Winding{{track, same}, {round, circle}} {
		close(t, "Resistance", float64(pair[0].Resistance()), float64(pair[1].Resistance()), 1e-12)
		close(t, "Inductance", float64(pair[0].Inductance()), float64(pair[1].Inductance()), 1e-9)
		close(t, "Capacitance", float64(pair[0].Capacitance()), float64(pair[1].Capacitance()), 1e-12)
	}
}

func TestLawsOfWindings(t *testing.T) {
	random := rand.New(rand.NewSource(2))
	for range 20 {
		f, w, turns := randomFormer(random), gauge(t, 40+float64(random.Intn(5))), 300+random.Intn(6000)
		for _, style := range []Style{{}, {Lay: Layered}, {Lay: Orthocyclic}, {Packing: 0.6}} {
			c := wound(t, f, w, turns, style)
			more := wound(t, f, w, turns+200, style)
			if more.Resistance() <= c.Resistance() || more.Inductance() <= c.Inductance() || more.Mass() <= c.Mass() {
				t.Errorf("%v: more turns give less", c)
			}
			r, b := c.CapacitanceRange(), c.BuildRange()
			if !(r.Low > 0 && r.Low <= r.Value && r.Value <= r.High && b.Low <= b.Value && b.Value <= b.High) {
				t.Errorf("%v: ranges out of order: %v, %v", c, r, b)
			}
			// A loop's inductance lies below µ0·N²·area/height, the long solenoid's.
			if most := 4e-7 * math.Pi * sq(float64(turns)) * float64(c.Area()) / float64(c.Shape().Height); float64(c.Inductance()) > most {
				t.Errorf("%v: inductance %v above that of a long solenoid", c, c.Inductance())
			}
			hot, err := c.ResistanceAt(units.Celsius(70))
			if err != nil {
				t.Fatal(err)
			}
			close(t, "ResistanceAt", float64(hot/c.Resistance()), 1.1965, 1e-6) // 1 + 0.00393·50
		}
	}
}

func TestLevelAgainst(t *testing.T) {
	w := gauge(t, 42)
	close(t, "double", float64(wound(t, steel, w, 6000).LevelAgainst(wound(t, steel, w, 3000))), 6.0206, 1e-5)
	close(t, "itself", float64(wound(t, steel, w, 6000).LevelAgainst(wound(t, steel, w, 6000))), 0, 0)
}

func TestOnAndWith(t *testing.T) {
	c := wound(t, steel, gauge(t, 43), 5000, Style{Packing: 0.7})
	low := steel
	low.Height = 8 * mm
	flat, err := c.On(low)
	if err != nil {
		t.Fatal(err)
	}
	close(t, "build over height", float64(flat.Build()/c.Build()), 10.0/8, 1e-12)
	fewer, err := c.With(4000)
	if err != nil || fewer.Turns() != 4000 || fewer.style != c.style {
		t.Errorf("With: got %v, %v", fewer, err)
	}
	if text := (Winding{}).String(); !strings.Contains(text, "no winding") {
		t.Errorf("zero winding: %q", text)
	}
}

func BenchmarkWind(b *testing.B) {
	w := gauge(b, 42)
	for b.Loop() {
		if _, err := Wind(steel, w, 8000); err != nil {
			b.Fatal(err)
		}
	}
}
