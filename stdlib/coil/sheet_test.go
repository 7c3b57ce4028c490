package coil

import (
	"math"
	"math/rand"
	"strings"
	"testing"

	"lode/stdlib/wire"
	"lode/units"
)

func TestBuildSheet(t *testing.T) {
	c := wound(t, steel, gauge(t, 42), 6000)
	s, err := c.BuildSheet(Order{Direction: Counterclockwise, Polarity: South, Temperature: units.Celsius(25), Traverse: 0.25 * mm})
	if err != nil {
		t.Fatal(err)
	}
	close(t, "at 25 °C", float64(s.Resistance().Value/c.Resistance()), 1.01965, 1e-5) // IEC 60028: 1 + 0.00393·5
	if s.TurnsPerPass() != 40 || s.Passes() != 150 {
		t.Errorf("got %d turns in %d passes, want 40 in 150", s.TurnsPerPass(), s.Passes())
	}
	r := s.Resistance()
	for _, p := range []struct {
		ohms units.Resistance
		want bool
	}{{r.Value, true}, {r.Low, true}, {r.High, true}, {r.Low * 0.999, false}, {r.High * 1.001, false}, {units.Resistance(math.NaN()), false}} {
		if s.Pass(p.ohms) != p.want {
			t.Errorf("Pass(%v) = %v", p.ohms, !p.want)
		}
	}
	close(t, "wire to buy", float64(s.WireToBuy()/c.WireLength()), 1.05, 1e-12)
	close(t, "wire to order", float64(must(c.WireToOrder(0.1))/c.WireLength()), 1.1, 1e-12)
	for _, bad := range []float64{-0.1, 5, math.NaN(), math.Inf(1)} {
		if _, err := c.WireToOrder(bad); err == nil || !strings.Contains(err.Error(), "allowance: out of range: got ") {
			t.Errorf("allowance %g: %v", bad, err)
		}
	}
	rows := map[string]string{}
	f := s.Frame()
	for i, name := range f.Columns[0].Texts {
		rows[name] = f.Columns[1].Texts[i]
	}
	for name, want := range map[string]string{"Turns": "6000", "Direction, seen from the strings": "counterclockwise", "Pole to the strings": "south",
		"Start to": "ground", "Finish to": "output", "Traverse per turn": "0.25 mm", "Turns per pass": "40", "Resistance at 25 °C": r.Value.String()} {
		if rows[name] != want {
			t.Errorf("%s: got %q, want %q", name, rows[name], want)
		}
	}
	if !strings.Contains(rows["Cautions"], "eye protection") {
		t.Errorf("cautions: %q", rows["Cautions"])
	}
}

func TestPhase(t *testing.T) {
	for _, c := range []struct {
		o    Order
		want string
	}{{Order{}, "positive"}, {Order{Direction: Counterclockwise}, "negative"}, {Order{Polarity: South}, "negative"},
		{Order{Direction: Counterclockwise, Polarity: South}, "positive"}} {
		// Faraday's law over a square turn: the potential A = B/2·(-y, x) of a field B upwards, summed from the start on.
		// A clockwise turn goes (1,1), (1,-1), (-1,-1), (-1,1) as seen from above.
		corners := [][2]float64{{1, 1}, {1, -1}, {-1, -1}, {-1, 1}}
		if c.o.Direction == Counterclockwise {
			corners = [][2]float64{{1, 1}, {-1, 1}, {-1, -1}, {1, -1}}
		}
		rate := 1.0 // dB/dt upwards as steel comes nearer to a north pole
		if c.o.Polarity == South {
			rate = -1
		}
		finish := 0.0 // E = -dA/dt drives the charge along the wire to the finish
		for i, p := range corners {
			q := corners[(i+1)%4]
			finish -= rate / 2 * (-(p[1]+q[1])/2*(q[0]-p[0]) + (p[0]+q[0])/2*(q[1]-p[1]))
		}
		if got := c.o.phase(); got != c.want || (finish > 0) != (got == "positive") {
			t.Errorf("%v: got %s, want %s; finish at %g", c.o, got, c.want, finish)
		}
	}
}

func TestBadOrders(t *testing.T) {
	c := wound(t, steel, gauge(t, 42), 6000)
	for _, b := range []struct {
		o    []Order
		want string
	}{{[]Order{{}, {}}, "more than one"}, {[]Order{{Direction: 5}}, "Direction"}, {[]Order{{Polarity: -1}}, "Polarity"}, {[]Order{{Waste: 3}}, "Waste"},
		{[]Order{{Waste: math.NaN()}}, "Waste"}, {[]Order{{Traverse: 20 * mm}}, "Traverse"}, {[]Order{{Temperature: units.Celsius(900)}}, "temperature"}} {
		if _, err := c.BuildSheet(b.o...); err == nil || !strings.Contains(err.Error(), b.want) {
			t.Errorf("%v: got %v, want %q", b.o, err, b.want)
		}
	}
	if _, err := (Winding{}).BuildSheet(); err == nil {
		t.Error("the zero winding has a build sheet")
	}
}

func TestTurnsFromResistanceGoesBack(t *testing.T) {
	random := rand.New(rand.NewSource(5))
	for range 30 {
		f, w, turns := randomFormer(random), gauge(t, 41), 200+random.Intn(8000)
		for _, style := range []Style{{}, {Lay: Layered}, {Strands: 2}} {
			c := wound(t, f, w, turns, style)
			hot, err := c.ResistanceAt(units.Celsius(30))
			if err != nil {
				t.Fatal(err)
			}
			got, err := TurnsFromResistanceAt(f, w, hot, units.Celsius(30), style)
			if err != nil || got.Value < turns-1 || got.Value > turns+1 || got.Low > turns || got.High < turns {
				t.Errorf("%v: got %v, %v", c, got, err)
			}
		}
	}
	for _, bad := range []units.Resistance{0, -5, units.Resistance(math.NaN()), units.Resistance(math.Inf(1)), 1e12} {
		if _, err := TurnsFromResistance(steel, gauge(t, 42), bad); err == nil {
			t.Errorf("%v was accepted", bad)
		}
	}
}

func TestTurnsThatFit(t *testing.T) {
	r, err := TurnsThatFit(steel, gauge(t, 42))
	fit, _ := Fits(steel, gauge(t, 42), 10)
	if err != nil || r.Value != fit.TurnsThatFit || !(r.Low < r.Value && r.Value < r.High) {
		t.Errorf("got %v, %v, want %d", r, err, fit.TurnsThatFit)
	}
	close(t, "densest", float64(r.High)/float64(r.Value), 0.75/0.65, 1e-3)
}

func TestDepthAt(t *testing.T) {
	c := wound(t, steel, gauge(t, 42), 6000)
	half, err := c.DepthAt(3000)
	if err != nil {
		t.Fatal(err)
	}
	close(t, "half the turns", float64(half.Value/c.Build()), 0.5, 1e-12)
	if _, err := c.DepthAt(7000); err == nil {
		t.Error("a depth beyond the last turn was given")
	}
}

// Two strands in parallel halve the length of each and halve again by sharing the current, but
// lie deeper.
func TestStrands(t *testing.T) {
	w := gauge(t, 43)
	f := Round{CoreDiameter: 20 * mm, Height: 8 * mm}
	two, all := wound(t, f, w, 2000, Style{Strands: 2}), wound(t, f, w, 4000)
	close(t, "resistance", float64(two.Resistance()), float64(all.Resistance())/4, 1e-12)
	close(t, "build", float64(two.Build()), float64(all.Build()), 1e-12)
	close(t, "mass", float64(two.Mass()), float64(all.Mass()), 1e-12)
	close(t, "inductance", float64(two.Inductance()), float64(all.Inductance())/4, 1e-3)
	close(t, "capacitance", float64(two.Capacitance()), float64(all.Capacitance()), 1e-9) // the same voltage over the same layers
}

func TestTapeAndPotting(t *testing.T) {
	w := gauge(t, 40)
	f := Rectangle{CoreLength: 30 * mm, CoreWidth: 6 * mm, Height: 7 * mm}
	plain := wound(t, f, w, 900, Style{Lay: Layered})
	taped := wound(t, f, w, 900, Style{Lay: Layered, Tape: 0.05 * mm})
	second := wound(t, f, w, 900, Style{Lay: Layered, Tape: 0.05 * mm, TapeEvery: 2})
	gaps := float64(plain.Layers() - 1)
	close(t, "tape in every gap", float64(taped.Build()-plain.Build()), gaps*0.05e-3, 1e-9)
	close(t, "tape in every second", float64(second.Build()-plain.Build()), math.Floor(gaps/2)*0.05e-3, 1e-9)
	if !(taped.Capacitance() < second.Capacitance() && second.Capacitance() < plain.Capacitance()) {
		t.Errorf("tape does not lower the capacitance: %v, %v, %v", plain.Capacitance(), second.Capacitance(), taped.Capacitance())
	}
	wax, err := CompoundNamed("Paraffin")
	if err != nil {
		t.Fatal(err)
	}
	potted, err := plain.Potted(wax)
	if err != nil {
		t.Fatal(err)
	}
	if ratio := float64(potted.Capacitance() / plain.Capacitance()); ratio < 1.05 || ratio > wax.Permittivity {
		t.Errorf("potting multiplies the capacitance by %g", ratio)
	}
	// the window of the mean turn, less round wires: all that is left is wax
	void := float64(plain.Build())*7e-3*float64(plain.Shape().Perimeter(plain.Build()/2)) - 900*math.Pi/4*sq(float64(w.Overall()))*float64(plain.MeanTurn())
	close(t, "CompoundMass", float64(potted.CompoundMass()), void*900, 1e-9)
	for _, bad := range []Compound{{}, {Permittivity: math.NaN()}, {Permittivity: 3, Density: -1}} {
		if _, err := plain.Potted(bad); err == nil {
			t.Errorf("%v was accepted", bad)
		}
	}
	if _, err := CompoundNamed("honey"); err == nil {
		t.Error("honey was accepted")
	}
	for _, bad := range []Style{{Tape: 0.1 * mm}, {Lay: Layered, Tape: -mm}, {Lay: Layered, Tape: mm, TapeEvery: -1}, {Lay: Layered, Tape: mm, TapePermittivity: 0.5}, {Strands: -1}, {Strands: 101}} {
		if _, err := Wind(f, w, 900, bad); err == nil {
			t.Errorf("%+v was accepted", bad)
		}
	}
}

func TestStrandCapacitance(t *testing.T) {
	w, err := wire.Measured(0.0635*mm, 0.071*mm)
	if err != nil {
		t.Fatal(err)
	}
	c := wound(t, Round{CoreDiameter: 20 * mm, Height: 8 * mm}, w, 1000, Style{Strands: 2})
	// 78.83827 pF/m for this wire, a row of the turn-to-turn reference table
	close(t, "one neighbour", float64(c.StrandCapacitance().Low), 78.83827e-12*1000*float64(c.MeanTurn()), 1e-6)
	if got := wound(t, steel, w, 1000).StrandCapacitance(); got != (CapacitanceRange{}) {
		t.Errorf("a single wire: %v", got)
	}
}

// Laid turns have a layer for every way of the traverse.
func TestPassesOfLayers(t *testing.T) {
	f := Rectangle{CoreLength: 60 * mm, CoreWidth: 8 * mm, CornerRadius: 2 * mm, Height: 10 * mm, FlangeWidth: 16 * mm}
	for _, style := range []Style{{Lay: Layered}, {Lay: Orthocyclic}, {Lay: Layered, Strands: 3}} {
		c := wound(t, f, gauge(t, 38), 600, style)
		if _, err := c.BuildSheet(Order{Traverse: 0.3 * mm}); err == nil || !strings.Contains(err.Error(), "order Traverse: turns are laid side by side: got 0.3 mm, want 0") {
			t.Errorf("%v: a traverse of its own: %v", style, err)
		}
		if s := must(c.BuildSheet()); s.TurnsPerPass() != c.TurnsPerLayer() || s.Passes() != c.Layers() {
			t.Errorf("%v: %d turns in %d passes, want %d in %d", style, s.TurnsPerPass(), s.Passes(), c.TurnsPerLayer(), c.Layers())
		}
	}
}

// A wire that was measured has no limits of its own, which the sheet says; wire out of a table has.
func TestMeasuredWireOnTheSheet(t *testing.T) {
	for want, w := range map[bool]wire.Wire{true: must(wire.Measured(0.061*mm, 0.068*mm)), false: gauge(t, 42)} {
		list := must(wound(t, steel, w, 2000).BuildSheet()).Cautions()
		if got := strings.Contains(strings.Join(list, " "), "diameter as measured: 1 % on it is 2 % on the resistance"); got != want {
			t.Errorf("%v: %q", w, list)
		}
	}
}

// A metal whose winding stress nobody gave has no tension on the sheet, rather than none.
func TestUnknownTension(t *testing.T) {
	bronze, err := gauge(t, 40).MadeOf(wire.Material{Name: "bronze", Resistivity: 110e-9, Density: 8800})
	if err != nil {
		t.Fatal(err)
	}
	f := must(wound(t, steel, bronze, 1000).BuildSheet()).Frame()
	for i, name := range f.Columns[0].Texts {
		if name == "Tension" && f.Columns[1].Texts[i] != "not known of bronze" {
			t.Errorf("tension: %q", f.Columns[1].Texts[i])
		}
	}
}
